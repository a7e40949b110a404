import type { FC } from 'hono/jsx';
import type { GrowthRow } from '../../src/index.ts';

const BAR = 220;
const HIGH = 18;

type Share = { readonly name: string; readonly count: number };

/** How a row's questions ended: told apart by tone and hatching, never by hue; the numbers stand beside it. */
export const Ended: FC<{ row: GrowthRow }> = ({ row }) => {
  const shares: readonly Share[] = [
    { name: 'answered', count: row.answered },
    { name: 'offered', count: row.offered },
    { name: 'passed', count: row.passed },
  ];
  const total = shares.reduce((sum, { count }) => sum + count, 0);
  let from = 0;
  return (
    <svg class="ended" viewBox={`0 0 ${BAR} ${HIGH}`} width={BAR} height={HIGH} aria-hidden="true" focusable="false">
      {shares.map(({ name, count }) => {
        const wide = total === 0 ? 0 : (count / total) * BAR;
        const x = from;
        from += wide;
        return <rect class={name} x={x.toFixed(1)} y="1" width={wide.toFixed(1)} height={HIGH - 2} />;
      })}
      <rect class="edge" x="1" y="1" width={BAR - 2} height={HIGH - 2} />
    </svg>
  );
};

const PLOT_WIDE = 640;
const PLOT_HIGH = 150;

/** The share answered at once, week by week, as a line with its points. */
export const ByWeek: FC<{ weeks: readonly GrowthRow[] }> = ({ weeks }) => {
  const at = (i: number) => 46 + (i * (PLOT_WIDE - 76)) / Math.max(1, weeks.length - 1);
  const up = (share: number) => PLOT_HIGH - 25 - share * (PLOT_HIGH - 45);
  const points = weeks.map((row, i) => [at(i), up(answeredShare(row))] as const);
  return (
    <svg class="weeks" viewBox={`0 0 ${PLOT_WIDE} ${PLOT_HIGH}`} aria-hidden="true" focusable="false">
      {[0, 0.5, 1].map((share) => (
        <>
          <line class="rule" x1="40" x2={PLOT_WIDE - 30} y1={up(share)} y2={up(share)} />
          <text x="0" y={up(share) + 5}>{`${share * 100}`}</text>
        </>
      ))}
      <polyline points={points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')} />
      {points.map(([x, y]) => (
        <circle cx={x.toFixed(1)} cy={y.toFixed(1)} r="5" />
      ))}
    </svg>
  );
};

export function answeredShare({ answered, offered, passed }: GrowthRow): number {
  const total = answered + offered + passed;
  return total === 0 ? 0 : answered / total;
}
