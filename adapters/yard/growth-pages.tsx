import { type ChangeRecord, type GapGroup, type Knowledge, lineDiff } from '../../src/index.ts';
import { counted } from '../pages/counted.ts';
import { dayAt } from '../pages/when.ts';
import { Deed, type Drawn, growthPage, HOME, Wide } from './growth-frame.tsx';
import { aboutGroup, decisionWords } from './growth-words.ts';
import type { Hindered } from './growth-world.ts';

export function groupsPage(drawn: Drawn, groups: readonly GapGroup[], knowledge: Knowledge) {
  const gaps = groups.reduce((sum, group) => sum + group.gaps.length, 0);
  return growthPage(
    drawn,
    'What it could not answer',
    <>
      <p>
        {groups.length === 0
          ? 'Nothing is waiting to be taught.'
          : `${counted(gaps, 'question')} ${gaps === 1 ? 'asks' : 'ask'} ${counted(groups.length, 'thing')}. ${groups.length === 1 ? 'Touch it' : 'Touch one'} to teach it.`}
      </p>
      <ol class="asked">
        {groups.map((group) => (
          <li>
            <a href={`${HOME}/group/${group.id}`}>
              <span class="times">{group.gaps.length}</span>
              <span>
                <q>{group.words}</q>
                <span class="about">{aboutGroup(group, knowledge, drawn.world.firm.timeZone)}</span>
              </span>
            </a>
          </li>
        ))}
      </ol>
    </>,
  );
}

export function changesPage(drawn: Drawn, changes: readonly ChangeRecord[], knowledge: Knowledge, once: string) {
  return growthPage(
    drawn,
    'What was taught',
    <>
      {changes.length === 0 ? <p>Nothing yet.</p> : null}
      <ol class="taught">
        {changes.map((change) => (
          <li>
            <h2>{decisionWords(change.decision, knowledge)}</h2>
            <p>
              {`${change.by}, ${dayAt(change.atMs, drawn.world.firm.timeZone)}. Right before ${change.figures.before.right}, after ${change.figures.after.right} of ${change.figures.after.questions}; ${counted(change.gaps.length, 'question')} settled.`}
              {change.why === '' ? '' : ` ${change.why}`}
            </p>
            {change.undone === null ? (
              <Deed session={drawn.session} action={`${HOME}/changes/${change.id}/undo`} once={once}>
                <button class="press" type="submit">
                  Take it back
                </button>
              </Deed>
            ) : (
              <p>{`Taken back by ${change.undone.by}.`}</p>
            )}
          </li>
        ))}
      </ol>
    </>,
  );
}

/** Somebody else was first. */
export function decidedPage(drawn: Drawn, change: ChangeRecord, knowledge: Knowledge) {
  return growthPage(
    drawn,
    'That is decided',
    <section class="problems" role="alert">
      <p>
        {`${change.by} decided on these questions, ${dayAt(change.atMs, drawn.world.firm.timeZone)}: ${decisionWords(change.decision, knowledge)}. To decide otherwise, take that back first.`}
      </p>
      <p>
        <a class="press" href={`${HOME}/changes`}>
          What was taught
        </a>
      </p>
    </section>,
  );
}

/** What stood in the way of writing, with both sides where there are two. */
export function hinderedPage(drawn: Drawn, hindered: Hindered, back: string) {
  return growthPage(
    drawn,
    'Nothing was changed',
    <section class="problems" role="alert">
      {hindered.kind === 'refused' ? (
        <ul>
          {hindered.problems.map((problem) => (
            <li>{problem}</li>
          ))}
        </ul>
      ) : hindered.kind === 'failed' ? (
        <p>{hindered.why}</p>
      ) : (
        <>
          <p>{`graph/${hindered.ours.path} has been changed by somebody else meanwhile.`}</p>
          <h2>This change</h2>
          <Wide label="This change">
            <pre>{lineDiff(hindered.ours)}</pre>
          </Wide>
          <h2>The other</h2>
          <Wide label="The other">
            <pre>{lineDiff(hindered.theirs)}</pre>
          </Wide>
        </>
      )}
      <p>
        <a class="press" href={back}>
          Look again
        </a>
      </p>
    </section>,
  );
}
