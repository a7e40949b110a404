import type { FC, PropsWithChildren } from 'hono/jsx';
import { type GapGroup, KINDS, type Knowledge, wordingsOf } from '../../src/index.ts';
import { Deed, type Drawn, growthPage, HOME } from './growth-frame.tsx';
import { aboutGroup, counted } from './growth-words.ts';

export type GroupTold = { readonly problems: readonly string[] };

/** One group and everything that can be decided about it. The first press is the suggestion. */
export function groupPage(drawn: Drawn, group: GapGroup, knowledge: Knowledge, key: string, told: GroupTold | null) {
  const action = `${HOME}/group/${group.id}/try`;
  const { session, world } = drawn;
  const [likeliest, ...others] = group.nearest.flatMap((id) => knowledge.topics.get(id) ?? []);
  const wordings = wordingsOf(group).join('\n');
  const deed = { session, action, key };
  return growthPage(
    drawn,
    group.words,
    <>
      {told === null ? null : (
        <section class="problems" role="alert">
          <h2>That cannot be done as it stands</h2>
          <ul>
            {told.problems.map((problem) => (
              <li>{problem}</li>
            ))}
          </ul>
        </section>
      )}
      <p>{`Asked ${counted(group.gaps.length, 'time')}: ${aboutGroup(group, knowledge, world.firm.timeZone)}.`}</p>
      <ul class="words-asked">
        {group.gaps.map((gap) => (
          <li>
            <q>{gap.text}</q>
            {gap.van === null ? null : <span class="about">{knowledge.vans.get(gap.van)?.name ?? gap.van}</span>}
          </li>
        ))}
      </ul>
      {group.staffSaid === null ? null : (
        <section>
          <h2>What one of us wrote back</h2>
          <blockquote>{group.staffSaid}</blockquote>
        </section>
      )}
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
      <Choice title="They ask something else that we answer">
        <Deed {...deed}>
          <input type="hidden" name="decision" value="add-wordings" />
          <Field label="Which answer" name="topic" list="topics" />
          <Wordings wordings={wordings} />
          <Try />
        </Deed>
      </Choice>
      <Choice title="Write an answer" open={group.staffSaid !== null && likeliest === undefined}>
        <Deed {...deed}>
          <input type="hidden" name="decision" value="new-topic" />
          <Field label="The question, as a heading" name="title" value={asHeading(group.words)} />
          <label>
            Belongs to
            <select name="system">
              {[...knowledge.systems].map(([id, title]) => (
                <option value={id} selected={id === (likeliest?.system ?? 'hire')}>
                  {title}
                </option>
              ))}
            </select>
          </label>
          <label>
            Kind
            <select name="kind">
              {KINDS.filter((kind) => kind !== 'hazard' && kind !== 'calculation').map((kind) => (
                <option value={kind} selected={kind === 'fact'}>
                  {kind}
                </option>
              ))}
            </select>
          </label>
          <Field label="Only vans that have (parts, or nothing for every van)" name="about" list="parts" optional />
          <Area label="The answer" name="first" text={group.staffSaid ?? ''} />
          <Area label="Steps, one a line" name="steps" text="" optional />
          <Field label="If that does not work" name="otherwise" optional />
          <Wordings wordings={wordings} />
          <Try />
        </Deed>
      </Choice>
      <Choice title="Teach a word">
        <Deed {...deed}>
          <input type="hidden" name="decision" value="teach-word" />
          <Field label="Hirers say" name="says" />
          <Field label="We say" name="means" />
          <Field label="The part it names" name="part" list="parts" optional />
          <Try />
        </Deed>
      </Choice>
      <Choice title="Make an answer better">
        <Deed {...deed}>
          <input type="hidden" name="decision" value="improve-answer" />
          <Field label="Which answer" name="topic" list="topics" value={likeliest?.id ?? ''} />
          <label>
            Where
            <select name="place">
              <option value="facts">add a line</option>
              <option value="first">write the first sentence anew</option>
              <option value="otherwise">what to do if it does not work</option>
            </select>
          </label>
          <VanChoice knowledge={knowledge} any="in every van" />
          <Area label="The words" name="say" text="" />
          <Try />
        </Deed>
      </Choice>
      <Choice title="The van has none">
        <Deed {...deed}>
          <input type="hidden" name="decision" value="note-lack" />
          <VanChoice knowledge={knowledge} any={null} />
          <Field label="Has no (part)" name="part" list="parts" />
          <Area label="What it has instead, in a sentence" name="say" text="" />
          <Try />
        </Deed>
      </Choice>
      <Choice title="None of ours">
        <Deed {...deed}>
          <input type="hidden" name="decision" value="set-aside" />
          <p>Such questions then go to us at once, without a guess. The next page shows what hirers read.</p>
          <Wordings wordings={wordings} />
          <Try />
        </Deed>
      </Choice>
      <datalist id="topics">
        {[...knowledge.topics.values()].map((topic) => (
          <option value={topic.id}>{topic.title}</option>
        ))}
      </datalist>
      <datalist id="parts">
        {[...knowledge.parts.values()].map((part) => (
          <option value={part.id}>{part.name}</option>
        ))}
      </datalist>
    </>,
  );
}

const Choice: FC<PropsWithChildren<{ title: string; open?: boolean }>> = ({ title, open, children }) => (
  <details open={open === true}>
    <summary>{title}</summary>
    {children}
  </details>
);

const Field: FC<{ label: string; name: string; value?: string; list?: string; optional?: boolean }> = (props) => (
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

const VanChoice: FC<{ knowledge: Knowledge; any: string | null }> = ({ knowledge, any }) => (
  <label>
    Van
    <select name="van">
      {any === null ? null : <option value="">{any}</option>}
      {[...knowledge.vans.values()].map((van) => (
        <option value={van.id}>{van.name}</option>
      ))}
    </select>
  </label>
);

const Try: FC = () => (
  <button class="press next" type="submit">
    Try it
  </button>
);

function asHeading(words: string): string {
  const plain = words.replace(/\[[a-z]+\]/g, '').trim();
  return plain === '' ? '' : `${plain.slice(0, 1).toUpperCase()}${plain.slice(1).replace(/[.?!]*$/, '')}?`;
}
