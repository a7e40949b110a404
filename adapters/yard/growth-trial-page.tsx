import type { FC } from 'hono/jsx';
import { type Change, type Knowledge, lineDiff, type TrialSummary } from '../../src/index.ts';
import { counted } from '../pages/counted.ts';
import { Deed, type Drawn, growthPage, HOME, Wide } from './growth-frame.tsx';
import { decisionWords } from './growth-words.ts';
import type { TrialView } from './growth-world.ts';
import type { Session } from './session.ts';

type Shown = {
  readonly session: Session;
  readonly trial: string;
  readonly knowledge: Knowledge;
  readonly once: string;
};
type Done = Extract<TrialView, { state: 'done' }>;

export function trialPage(drawn: Drawn, key: string, view: TrialView, knowledge: Knowledge, once: string) {
  return growthPage(
    drawn,
    'Trying it first',
    <div id="live">
      <TrialParts session={drawn.session} trial={key} view={view} knowledge={knowledge} once={once} />
    </div>,
    `${HOME}/trial/${key}/events`,
  );
}

/** The part of the page that follows the trial. */
export const TrialParts: FC<Shown & { view: TrialView }> = (props) => {
  const { view, trial, session, knowledge, once } = props;
  const again = (
    <p>
      <a class="press" href={`${HOME}/trial/${trial}`}>
        Look again
      </a>
    </p>
  );
  switch (view.state) {
    case 'learning':
      return (
        <>
          <p>What changed is being learnt, in a few seconds; hirers are answered meanwhile.</p>
          {again}
        </>
      );
    case 'replaying':
      return (
        <>
          <p>{`Asking ${counted(view.total, 'recorded question')}: ${view.done} done.`}</p>
          <progress max={view.total} value={view.done}>{`${view.done} of ${view.total}`}</progress>
          {again}
        </>
      );
    case 'failed':
      return (
        <section class="problems" role="alert">
          <p>{`The trial could not be finished: ${view.why}`}</p>
        </section>
      );
    case 'done':
      return <DoneParts session={session} trial={trial} view={view} knowledge={knowledge} once={once} />;
  }
};

const DoneParts: FC<Shown & { view: Done }> = (props) => {
  const { session, trial, view, knowledge, once } = props;
  const { figures, verdict } = view;
  return (
    <>
      <h2>{decisionWords(view.decision, knowledge)}</h2>
      <p class={`verdict ${verdict}`} role="status">
        {VERDICTS[verdict]}
      </p>
      {verdict === 'unsafe' ? (
        <ul>
          {view.lost.map((text) => (
            <li>
              <q>{text}</q>
            </li>
          ))}
        </ul>
      ) : (
        <Deed session={session} action={`${HOME}/trial/${trial}/publish`} once={once}>
          <label>
            Why, for those who look later
            <input name="why" maxlength={200} autocomplete="off" />
          </label>
          {verdict === 'worse' ? (
            <label class="tick">
              <input type="checkbox" name="even-if-worse" value="yes" required />
              Publish it although these get worse
            </label>
          ) : null}
          {view.hirers === 0 ? null : (
            <label class="tick">
              <input type="checkbox" name="tell" value="yes" />
              {`Tell the ${counted(view.hirers, 'hirer')} still on hire who asked: ‘You asked on Tuesday ...’`}
            </label>
          )}
          <button class={verdict === 'fit' ? 'press next' : 'press'} type="submit">
            Publish
          </button>
          <a class="press" href={`${HOME}/group/${view.group.id}?trial=${trial}`}>
            Change it
          </a>
        </Deed>
      )}
      <Moved title="What these hirers now get" changes={view.words} knowledge={knowledge} />
      <Moved title="Gets worse" changes={figures.worse} knowledge={knowledge} />
      <Moved title="Gets better" changes={figures.better} knowledge={knowledge} />
      <Moved title="Changes, neither better nor worse" changes={figures.changed} knowledge={knowledge} />
      <Numbers before={figures.before} after={figures.after} />
      <h2>What hirers will read</h2>
      {view.previews.map(({ van, text }) => (
        <section class="preview">
          <h3>{van}</h3>
          <p>{text}</p>
        </section>
      ))}
      <h2>In the files</h2>
      {view.edits.map((edit) => (
        <Wide label={`graph/${edit.path}`}>
          <pre>{lineDiff(edit)}</pre>
        </Wide>
      ))}
    </>
  );
};

const VERDICTS: Readonly<Record<Done['verdict'], string>> = {
  fit: 'Nothing gets worse and every danger is still heard.',
  worse: 'Some questions that were right would go elsewhere.',
  unsafe: 'Some dangers would no longer be heard. This cannot be published.',
};

/** Topics by their titles instead of their ids. */
function inTitles(got: string, { topics }: Knowledge): string {
  return got.replace(/[a-z0-9]+(?:-[a-z0-9]+)+/g, (id) => topics.get(id)?.title ?? id);
}

const Moved: FC<{ title: string; changes: readonly Change[]; knowledge: Knowledge }> = ({
  title,
  changes,
  knowledge,
}) =>
  changes.length === 0 ? null : (
    <Wide label={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">asked</th>
            <th scope="col">before</th>
            <th scope="col">after</th>
          </tr>
        </thead>
        <tbody>
          {changes.map((change) => (
            <tr>
              <th scope="row">
                <q>{change.text}</q>
              </th>
              <td>{inTitles(change.before, knowledge)}</td>
              <td>{inTitles(change.after, knowledge)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );

const Numbers: FC<{ before: TrialSummary; after: TrialSummary }> = ({ before, after }) => (
  <Wide label="All recorded and recent questions">
    <table>
      <caption>All recorded and recent questions</caption>
      <thead>
        <tr>
          <th scope="col" />
          {['asked', 'right', 'offered', 'passed', 'wrong', 'dangers missed'].map((name) => (
            <th scope="col">{name}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {[['before', before] as const, ['after', after] as const].map(([name, sums]) => (
          <tr>
            <th scope="row">{name}</th>
            {[sums.questions, sums.right, sums.offered, sums.passed, sums.wrong, sums.safetyMissed].map((count) => (
              <td>{count}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </Wide>
);
