import type { GapGroup, GrowthDecision, Knowledge } from '../../src/index.ts';
import { counted } from '../pages/counted.ts';
import { DecisionForms } from './growth-decision-forms.tsx';
import { type Drawn, growthPage, HOME } from './growth-frame.tsx';
import { aboutGroup } from './growth-words.ts';

/** What was decided before and is to be changed, and what stood in its way. */
export type GroupTold = { readonly problems: readonly string[]; readonly draft: GrowthDecision | null };

/** One group and everything that can be decided about it. The first press is the suggestion. */
export function groupPage(drawn: Drawn, group: GapGroup, knowledge: Knowledge, once: string, told: GroupTold | null) {
  const action = `${HOME}/group/${group.id}/try`;
  const { session, world } = drawn;
  return growthPage(
    drawn,
    `‘${group.words}’`,
    <>
      {told === null || told.problems.length === 0 ? null : (
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
      <DecisionForms
        session={session}
        action={action}
        once={once}
        group={group}
        knowledge={knowledge}
        draft={told?.draft ?? null}
      />
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
