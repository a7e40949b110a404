import type { FC } from 'hono/jsx';
import { type GrowthRow, type Knowledge, summedBy, type Thin } from '../../src/index.ts';
import { counted } from '../pages/counted.ts';
import { type Drawn, growthPage, HOME, Wide } from './growth-frame.tsx';
import { GRAPH } from './growth-picture-page.tsx';
import { answeredShare, ByWeek, Ended } from './growth-plot.tsx';

export function figuresPage(drawn: Drawn, rows: readonly GrowthRow[], knowledge: Knowledge) {
  const weeks = summedBy(rows, 'week');
  const byName = (by: 'van' | 'system') => {
    const names =
      by === 'van' ? new Map([...knowledge.vans.values()].map((van) => [van.id, van.name])) : knowledge.systems;
    return summedBy(rows, by).map((row) => ({
      row,
      name: row[by] === '' ? 'not known' : (names.get(row[by]) ?? row[by]),
    }));
  };
  return growthPage(
    drawn,
    'How often it helps',
    <>
      {weeks.length === 0 ? <p>Nothing has been asked yet.</p> : null}
      <h2>Answered at once, in a hundred, by week</h2>
      <ByWeek weeks={weeks} />
      <Counts caption="By week" lines={weeks.map((row) => ({ row, name: row.week }))} />
      <Counts caption="By van" lines={byName('van')} />
      <Counts caption="By system" lines={byName('system')} />
      <p>
        <a class="press" href={`${HOME}/figures.csv`}>
          As a CSV file
        </a>
      </p>
    </>,
  );
}

const Counts: FC<{ caption: string; lines: readonly { readonly row: GrowthRow; readonly name: string }[] }> = ({
  caption,
  lines,
}) => (
  <Wide label={caption}>
    <table>
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{caption.replace('By ', '')}</th>
          {['answered', 'offered', 'passed', 'helped', 'still stuck', 'minutes to a person'].map((name) => (
            <th scope="col">{name}</th>
          ))}
          <th scope="col">shares</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ row, name }) => (
          <tr>
            <th scope="row">{name}</th>
            {[row.answered, row.offered, row.passed, row.helped, row.stillStuck].map((count) => (
              <td>{count}</td>
            ))}
            <td>{row.takenUp === 0 ? '-' : Math.round(row.waitMinutes / row.takenUp)}</td>
            <td>
              <Ended row={row} />
              <span class="hush">{`${Math.round(100 * answeredShare(row))} in a hundred answered`}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </Wide>
);

export function thinPage(drawn: Drawn, thin: readonly Thin[], { systems }: Knowledge) {
  const sections = [
    { kind: 'few-wordings', title: 'Answers with few ways of asking' },
    { kind: 'no-causes', title: 'Faults without causes' },
    { kind: 'not-described', title: 'Parts that no answer is about' },
  ] as const;
  return growthPage(
    drawn,
    'Where the graph is thin',
    sections.map(({ kind, title }) => {
      const own = thin.filter((each) => each.kind === kind);
      return (
        <section>
          <h2>{`${title}: ${own.length}`}</h2>
          <ul class="thin">
            {own.map((each) => (
              <li>
                <a href={`${GRAPH}/${each.kind === 'not-described' ? 'part' : 'topic'}/${each.id}`}>{each.name}</a>
                <span class="about">
                  {`${systems.get(each.system) ?? each.system}${each.kind === 'few-wordings' ? `; ${counted(each.count, 'way')} of asking` : ''}`}
                </span>
              </li>
            ))}
          </ul>
        </section>
      );
    }),
  );
}
