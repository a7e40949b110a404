import { type FaultCounts, type Knowledge, percent } from '../../src/index.ts';
import { counted } from '../pages/counted.ts';
import { Deed, type Drawn, growthPage, HOME, Wide } from './growth-frame.tsx';

/**
 * What the walks have shown of each fault's causes beside what the graph takes as their chances. Where the two part, new
 * chances are proposed; nothing changes until an operator presses.
 *
 * @param hindered What stood in the way of the last press, or null.
 */
export function faultsPage(
  drawn: Drawn,
  report: readonly FaultCounts[],
  { topics, vans }: Knowledge,
  once: string,
  hindered: string | null,
) {
  const sorted = [...report].sort((a, b) => Number(b.parts) - Number(a.parts) || b.walks - a.walks);
  return growthPage(
    drawn,
    'What the faults turned out to be',
    <>
      {hindered === null ? null : (
        <section class="problems" role="alert">
          <h2>Nothing was changed</h2>
          <p>{hindered}</p>
        </section>
      )}
      {sorted.length === 0 ? <p>No walk through a fault has ended yet.</p> : null}
      {sorted.map((counts) => {
        const { symptom, van, walks, fixed, passed, unresolved } = counts;
        const title = `${topics.get(symptom)?.title ?? symptom}, ${vans.get(van)?.name ?? van}`;
        const passes = `${passed} passed to people, ${unresolved} of them without a likely cause`;
        return (
          <section>
            <h2>{title}</h2>
            <p>{`${counted(walks, 'walk')}: ${fixed} fixed, ${passes}.`}</p>
            <Wide label={title}>
              <table>
                <thead>
                  <tr>
                    <th scope="col">Cause</th>
                    <th scope="col">Taken as</th>
                    <th scope="col">Found, with 95 % of certainty</th>
                    <th scope="col">Cured</th>
                    {counts.parts ? <th scope="col">Proposed</th> : null}
                  </tr>
                </thead>
                <tbody>
                  {counts.causes.map((row) => (
                    <tr>
                      <th scope="row">{row.parts ? <b>{row.say}</b> : row.say}</th>
                      <td>{percent(row.prior)}</td>
                      <td>{`${percent(row.share)} (${percent(row.interval[0])} to ${percent(row.interval[1])})`}</td>
                      <td>{row.cured}</td>
                      {counts.parts ? <td>{percent(row.proposed)}</td> : null}
                    </tr>
                  ))}
                </tbody>
              </table>
            </Wide>
            {counts.parts ? (
              <Deed
                session={drawn.session}
                action={`${HOME}/faults/${symptom}/${van}/accept`}
                once={`${once}${symptom}${van}`}
              >
                <button type="submit" class="press">
                  Take what is proposed
                </button>
              </Deed>
            ) : (
              <p class="about">What was found agrees with what is taken.</p>
            )}
          </section>
        );
      })}
    </>,
  );
}
