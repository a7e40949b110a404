import type { FC } from 'hono/jsx';
import {
  type ChangeEffect,
  type GapGroup,
  type GrowthRow,
  type Knowledge,
  summedBy,
  type Thin,
} from '../../src/index.ts';
import { counted } from '../pages/counted.ts';
import { type Drawn, growthPage, HOME, Wide } from './growth-frame.tsx';
import { GRAPH } from './growth-picture-page.tsx';
import { answeredShare, ByWeek, Ended, helpedShare } from './growth-plot.tsx';
import { decisionWords } from './growth-words.ts';

const MOST_GROUPS = 5;

export type Figures = {
  readonly rows: readonly GrowthRow[];
  readonly groups: readonly GapGroup[];
  readonly effects: readonly ChangeEffect[];
};

/** How often the bot helps, what it is asked most in vain, and what the latest changes did. */
export function figuresPage(drawn: Drawn, { rows, groups, effects }: Figures, knowledge: Knowledge) {
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
      <h2>In a hundred, by week</h2>
      <Wide label="In a hundred, by week">
        <ByWeek weeks={weeks} />
      </Wide>
      <p class="about">
        Answered: of all that was asked, what was answered at once. Helped: of those who said, the ones it helped.
      </p>
      <h2>Asked most, without an answer</h2>
      {groups.length === 0 ? <p>Nothing is waiting to be taught.</p> : null}
      <ol class="asked">
        {groups.slice(0, MOST_GROUPS).map((group) => (
          <li>
            <a href={`${HOME}/group/${group.id}`}>
              <span class="times">{group.gaps.length}</span>
              <q>{group.words}</q>
            </a>
          </li>
        ))}
      </ol>
      <Taught effects={effects} knowledge={knowledge} />
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

/** What the latest changes did: in their trials, and since. */
const Taught: FC<{ effects: readonly ChangeEffect[]; knowledge: Knowledge }> = ({ effects, knowledge }) =>
  effects.length === 0 ? null : (
    <Wide label="What the latest changes did">
      <table>
        <caption>What the latest changes did</caption>
        <thead>
          <tr>
            {['taught', 'better', 'worse', 'answered since', 'helped', 'still stuck'].map((name) => (
              <th scope="col">{name}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {effects.map(({ change, since }) => (
            <tr>
              <th scope="row">
                {decisionWords(change.decision, knowledge)}
                {change.undone === null ? null : <span class="about">{`Taken back by ${change.undone.by}`}</span>}
              </th>
              {[change.figures.better.length, change.figures.worse.length].map((count) => (
                <td>{count}</td>
              ))}
              {(since === null ? ['-', '-', '-'] : [since.answered, since.helped, since.stillStuck]).map((count) => (
                <td>{count}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );

function sharesOf(row: GrowthRow): string {
  const shares = [
    ['answered', answeredShare(row)],
    ['helped', helpedShare(row)],
  ] as const;
  return shares
    .flatMap(([name, share]) => (share === null ? [] : `${Math.round(100 * share)} in a hundred ${name}`))
    .join(', ');
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
          {['answered', 'chosen', 'passed', 'helped', 'still stuck', 'minutes to a person'].map((name) => (
            <th scope="col">{name}</th>
          ))}
          <th scope="col">shares</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ row, name }) => (
          <tr>
            <th scope="row">{name}</th>
            {[row.answered, row.chosen, row.passed, row.helped, row.stillStuck].map((count) => (
              <td>{count}</td>
            ))}
            <td>{row.takenUp === 0 ? '-' : Math.round(row.waitMinutes / row.takenUp)}</td>
            <td>
              <Ended row={row} />
              <span class="hush">{sharesOf(row)}</span>
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
