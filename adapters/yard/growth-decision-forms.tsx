import type { FC, PropsWithChildren } from 'hono/jsx';
import {
  type GapGroup,
  type GrowthDecision,
  KINDS,
  type Knowledge,
  topicDraft,
  withoutBrackets,
  wordingsOf,
} from '../../src/index.ts';
import { Deed } from './growth-frame.tsx';
import type { Session } from './session.ts';

type Asked = {
  readonly session: Session;
  readonly action: string;
  readonly once: string;
  readonly group: GapGroup;
  readonly knowledge: Knowledge;
  /** What was decided before: its words stand in its form again. */
  readonly draft: GrowthDecision | null;
};

const PLACES = [
  ['facts', 'add a line'],
  ['first', 'write the first sentence anew'],
  ['otherwise', 'what to do if it does not work'],
] as const;

/** One form for each thing that can be decided about a group; the first button is the suggestion. */
export const DecisionForms: FC<Asked> = ({ session, action, once, group, knowledge, draft }) => {
  const [likeliest, ...others] = group.nearest.flatMap((id) => knowledge.topics.get(id) ?? []);
  const wordings = wordingsOf(group).join('\n');
  const deed = { session, action, once };
  const adding = draft?.kind === 'add-wordings' ? draft : null;
  const written = draft?.kind === 'new-topic';
  const fresh = draft?.kind === 'new-topic' ? draft.topic : topicDraft(group, knowledge);
  const word = draft?.kind === 'teach-word' ? draft : null;
  const better = draft?.kind === 'improve-answer' ? draft : null;
  const lack = draft?.kind === 'note-lack' ? draft : null;
  const aside = draft?.kind === 'set-aside' ? draft : null;
  return (
    <>
      {[likeliest, ...others].map((topic, i) =>
        topic === undefined ? null : (
          <Deed {...deed}>
            <input type="hidden" name="decision" value="add-wordings" />
            <input type="hidden" name="topic" value={topic.id} />
            <input type="hidden" name="wordings" value={wordings} />
            <button class={i === 0 ? 'press next' : 'press'} type="submit">
              {`They ask: ${topic.title}`}
            </button>
          </Deed>
        ),
      )}
      <Choice title="They ask something else that we answer" open={adding !== null}>
        <Deed {...deed}>
          <input type="hidden" name="decision" value="add-wordings" />
          <Field label="Which answer" name="topic" list="topics" value={adding?.topic} />
          <Wordings wordings={adding?.wordings.join('\n') ?? wordings} />
          <Try />
        </Deed>
      </Choice>
      <Choice
        title="Write an answer"
        open={written || (draft === null && group.staffSaid !== null && likeliest === undefined)}
      >
        <Deed {...deed}>
          <input type="hidden" name="decision" value="new-topic" />
          <Field label="The question, as a heading" name="title" value={fresh.title} />
          <label>
            Belongs to
            <select name="system">
              {[...knowledge.systems].map(([id, title]) => (
                <option value={id} selected={id === fresh.system}>
                  {title}
                </option>
              ))}
            </select>
          </label>
          <label>
            Kind
            <select name="kind">
              {KINDS.filter((kind) => kind !== 'hazard' && kind !== 'calculation').map((kind) => (
                <option value={kind} selected={kind === fresh.kind}>
                  {kind}
                </option>
              ))}
            </select>
          </label>
          <Field
            label="Only vans that have (parts, or nothing for every van)"
            name="about"
            list="parts"
            value={fresh.about.join(', ')}
            optional
          />
          <Area label="The answer" name="first" text={fresh.first} />
          <Area label="Steps, one a line" name="steps" text={fresh.steps.join('\n')} optional />
          <Field label="If that does not work" name="otherwise" value={fresh.otherwise ?? ''} optional />
          <Wordings wordings={fresh.wordings.join('\n')} />
          <Try />
        </Deed>
      </Choice>
      <Choice title="Teach a word" open={word !== null}>
        <Deed {...deed}>
          <input type="hidden" name="decision" value="teach-word" />
          <Field label="Hirers say" name="says" value={word?.says} />
          <Field label="We say" name="means" value={word?.means} />
          <Field label="The part it names" name="part" list="parts" value={word?.part ?? ''} optional />
          <Try />
        </Deed>
      </Choice>
      <Choice title="Make an answer better" open={better !== null}>
        <Deed {...deed}>
          <input type="hidden" name="decision" value="improve-answer" />
          <Field label="Which answer" name="topic" list="topics" value={better?.topic ?? likeliest?.id} />
          <label>
            Where
            <select name="place">
              {PLACES.map(([place, words]) => (
                <option value={place} selected={place === (better?.place ?? 'facts')}>
                  {words}
                </option>
              ))}
            </select>
          </label>
          <VanChoice knowledge={knowledge} any="in every van" chosen={better?.van ?? null} />
          <Area label="The words" name="say" text={better?.say ?? withoutBrackets(group.staffSaid ?? '')} />
          <Try />
        </Deed>
      </Choice>
      <Choice title="The van has none" open={lack !== null}>
        <Deed {...deed}>
          <input type="hidden" name="decision" value="note-lack" />
          <VanChoice knowledge={knowledge} any={null} chosen={lack?.van ?? group.vans[0] ?? null} />
          <Field label="Has no (part)" name="part" list="parts" value={lack?.part} />
          <Area label="What it has instead, in a sentence" name="say" text={lack?.say ?? ''} />
          <Try />
        </Deed>
      </Choice>
      <Choice title="None of ours" open={aside !== null}>
        <Deed {...deed}>
          <input type="hidden" name="decision" value="set-aside" />
          <p>Such questions then go to us at once, without a guess. The next page shows what hirers read.</p>
          <Wordings wordings={aside?.wordings.join('\n') ?? wordings} />
          <Try />
        </Deed>
      </Choice>
    </>
  );
};

const Choice: FC<PropsWithChildren<{ title: string; open?: boolean }>> = ({ title, open, children }) => (
  <details open={open === true}>
    <summary>{title}</summary>
    {children}
  </details>
);

const Field: FC<{ label: string; name: string; value?: string | undefined; list?: string; optional?: boolean }> = (
  props,
) => (
  <label>
    {props.label}
    <input
      name={props.name}
      value={props.value ?? ''}
      list={props.list}
      required={props.optional !== true}
      autocomplete="off"
    />
  </label>
);

const Area: FC<{ label: string; name: string; text: string; optional?: boolean }> = ({
  label,
  name,
  text,
  optional,
}) => (
  <label>
    {label}
    <textarea name={name} rows={3} required={optional !== true}>
      {text}
    </textarea>
  </label>
);

const Wordings: FC<{ wordings: string }> = ({ wordings }) => (
  <label>
    Ways of asking, one a line
    <textarea name="wordings" rows={5} required>
      {wordings}
    </textarea>
  </label>
);

const VanChoice: FC<{ knowledge: Knowledge; any: string | null; chosen: string | null }> = ({
  knowledge,
  any,
  chosen,
}) => (
  <label>
    Van
    <select name="van">
      {any === null ? null : <option value="">{any}</option>}
      {[...knowledge.vans.values()].map((van) => (
        <option value={van.id} selected={van.id === chosen}>
          {van.name}
        </option>
      ))}
    </select>
  </label>
);

const Try: FC = () => (
  <button class="press next" type="submit">
    Try it
  </button>
);
