import { scaleLinear, scalePoint } from 'd3-scale';
import { line, stack } from 'd3-shape';
import type { FC } from 'hono/jsx';
import type { GrowthRow } from '../../src/index.ts';

const BAR = 220;
const HIGH = 18;

const ENDS = ['answered', 'chosen', 'passed'] as const;
type End = (typeof ENDS)[number];

/** How a row's questions ended: told apart by tone, never by hue; the numbers stand beside it. */
export const Ended: FC<{ row: GrowthRow }> = ({ row }) => {
  const wide = scaleLinear([0, Math.max(1, questionsOf(row))], [0, BAR]);
  const parts = stack<GrowthRow, End>().keys(ENDS)([row]);
  return (
    <svg class="ended" viewBox={`0 0 ${BAR} ${HIGH}`} width={BAR} height={HIGH} aria-hidden="true" focusable="false">
      {parts.map(({ key, 0: part }) => {
        const [from = 0, to = 0] = part ?? [];
        return (
          <rect
            class={key}
            x={wide(from).toFixed(1)}
            y="1"
            width={(wide(to) - wide(from)).toFixed(1)}
            height={HIGH - 2}
          />
        );
      })}
      <rect class="edge" x="1" y="1" width={BAR - 2} height={HIGH - 2} />
    </svg>
  );
};

const PLOT_WIDE = 640;
const PLOT_HIGH = 210;
const LEFT = 46;
const RIGHT = 142;
const TOP = 14;
const BOTTOM = 34;
/** So many dates have room below the plot. */
const MOST_DATES = 6;

type Share = {
  readonly name: string;
  readonly drawn: 'whole' | 'dashed';
  /** Null where there was nothing to share. */
  readonly of: (row: GrowthRow) => number | null;
};

const SHARES: readonly Share[] = [
  { name: 'answered', drawn: 'whole', of: answeredShare },
  { name: 'helped', drawn: 'dashed', of: helpedShare },
];

/** Two shares week by week: of all questions those answered at once, and of those who said so the ones it helped. */
export const ByWeek: FC<{ weeks: readonly GrowthRow[] }> = ({ weeks }) => {
  const across = scalePoint(
    weeks.map(({ week }) => week),
    [LEFT + 8, PLOT_WIDE - RIGHT],
  );
  const up = scaleLinear([0, 1], [PLOT_HIGH - BOTTOM, TOP]);
  const at = (week: string): number => across(week) ?? LEFT;
  const every = Math.ceil(weeks.length / MOST_DATES);
  return (
    <svg class="weeks" viewBox={`0 0 ${PLOT_WIDE} ${PLOT_HIGH}`} aria-hidden="true" focusable="false">
      {up.ticks(2).map((share) => (
        <>
          <line class="rule" x1={LEFT} x2={PLOT_WIDE - RIGHT + 8} y1={up(share)} y2={up(share)} />
          <text x={LEFT - 8} y={up(share) + 5} text-anchor="end">{`${share * 100}`}</text>
        </>
      ))}
      {weeks.map(({ week }, i) =>
        i % every === 0 ? (
          <text x={at(week)} y={PLOT_HIGH - 8} text-anchor="middle">
            {week.slice(5).split('-').reverse().join('/')}
          </text>
        ) : null,
      )}
      {apart(SHARES.map((share) => ({ share, known: knownOf(share, weeks) }))).map(({ share, known, labelY }) => (
        <g class={share.drawn}>
          <path
            d={
              line<Known>(
                ({ week }) => at(week),
                ({ value }) => up(value),
              )(known) ?? ''
            }
          />
          {known.map(({ week, value }) => (
            <circle cx={at(week)} cy={up(value)} r="5" />
          ))}
          {known.length === 0 ? null : (
            <text x={PLOT_WIDE - RIGHT + 14} y={up(labelY) + 5}>
              {`${share.name} ${Math.round(100 * (known.at(-1)?.value ?? 0))}`}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
};

type Known = { readonly week: string; readonly value: number };

function knownOf({ of }: Share, weeks: readonly GrowthRow[]): readonly Known[] {
  return weeks.flatMap((row) => {
    const value = of(row);
    return value === null ? [] : [{ week: row.week, value }];
  });
}

const LABELS_APART = 0.13;

/** Where each line's name stands at its end, so that two names are never written over each other. */
function apart(lines: readonly { readonly share: Share; readonly known: readonly Known[] }[]) {
  let free = Number.POSITIVE_INFINITY;
  return [...lines]
    .sort((a, b) => (b.known.at(-1)?.value ?? 0) - (a.known.at(-1)?.value ?? 0))
    .map((each) => {
      const labelY = Math.min(free, each.known.at(-1)?.value ?? 0);
      free = labelY - LABELS_APART;
      return { ...each, labelY };
    });
}

function questionsOf({ answered, chosen, passed }: GrowthRow): number {
  return answered + chosen + passed;
}

/** Of all questions, those answered at once; null when there were none. */
export function answeredShare(row: GrowthRow): number | null {
  const total = questionsOf(row);
  return total === 0 ? null : row.answered / total;
}

/** Of those who said whether it helped, those whom it did; null when nobody said. */
export function helpedShare({ helped, stillStuck }: GrowthRow): number | null {
  return helped + stillStuck === 0 ? null : helped / (helped + stillStuck);
}
