import type { FC } from 'hono/jsx';
import type { Bar } from '../../src/index.ts';

const WIDE = 300;
const HIGH = 26;

/**
 * What is used against what there is, as a bar with its limit marked and the figures beneath. Segments are told apart by
 * tone and hatching, never by hue; what stands past the limit is hatched.
 */
export const SumBar: FC<{ bar: Bar }> = ({ bar }) => {
  const used = bar.segments.reduce((sum, segment) => sum + segment.amount, 0);
  const most = Math.max(used, bar.limit, 1e-9);
  const at = (amount: number) => Math.round((amount / most) * WIDE * 10) / 10;
  let from = 0;
  return (
    <figure class="sum">
      <figcaption>{bar.title}</figcaption>
      <svg viewBox={`-1 0 ${WIDE + 2} ${HIGH + 14}`} aria-hidden="true" focusable="false">
        <rect
          x="0"
          y="8"
          width={at(bar.limit)}
          height={HIGH}
          fill="var(--sheet)"
          stroke="var(--ink)"
          stroke-width="2"
        />
        {bar.segments.map((segment, i) => {
          const x = at(from);
          from += segment.amount;
          return (
            <rect
              x={x}
              y="8"
              width={Math.max(0, at(from) - x)}
              height={HIGH}
              class={i % 2 === 0 ? 'part' : 'part other'}
            />
          );
        })}
        {used > bar.limit ? <path class="over" d={hatch(at(bar.limit), WIDE)} /> : null}
        <path class="limit" d={`M${at(bar.limit)} 2V${HIGH + 13}`} />
      </svg>
      <table>
        <tbody>
          {bar.segments.map((segment) => (
            <tr>
              <th scope="row">{segment.label}</th>
              <td>{figure(segment.amount, bar.unit)}</td>
            </tr>
          ))}
          <tr class="total">
            <th scope="row">Together</th>
            <td>{figure(used, bar.unit)}</td>
          </tr>
          <tr>
            <th scope="row">There is</th>
            <td>{figure(bar.limit, bar.unit)}</td>
          </tr>
        </tbody>
      </table>
    </figure>
  );
};

function figure(amount: number, unit: string): string {
  const rounded = amount >= 100 ? Math.round(amount) : Math.round(amount * 10) / 10;
  return `${rounded.toLocaleString('en-GB')} ${unit}`;
}

/** Slanted strokes between two places of the bar. */
function hatch(from: number, to: number): string {
  let path = '';
  for (let x = from + 4; x < to; x += 9) path += `M${x} ${8 + HIGH}l${Math.min(10, to - x)} -${HIGH}`;
  return path;
}
