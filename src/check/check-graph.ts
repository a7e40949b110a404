import { SITE_KNOWN } from '../knowledge/holds.ts';
import type { Knowledge, Topic } from '../knowledge/knowledge.ts';
import type { SlipAt } from '../knowledge/raw-graph.ts';
import type { Slip } from '../knowledge/slip.ts';
import { inReadingOrder } from '../knowledge/slip.ts';
import { answerBlocks } from '../reply/answer.ts';
import { plainText } from '../reply/reply.ts';
import { ONLY_ASKED } from '../safety/hazards.ts';
import { safetySlips } from '../safety/slips.ts';
import { causeSlips } from './causes.ts';
import { lackSlips } from './lacks.ts';
import { pictureSlips } from './pictures.ts';
import { conditionsIn, fileOf } from './texts.ts';
import { unfilledSlots } from './unfilled-slots.ts';
import { wordingSlips } from './wordings.ts';

export const LONGEST_ANSWER = 900;
export const MOST_STEPS = 7;

/** Proves what the schema cannot: that the graph holds together for every van. All slips at once, in reading order. */
export function checkGraph(knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  const slips: Slip[] = [];
  for (const topic of knowledge.topics.values()) {
    slips.push(...conditionSlips(topic, knowledge, slipAt), ...answerSlips(topic, knowledge, slipAt));
    slips.push(...slotSlips(topic, knowledge, slipAt), ...causeSlips(topic, knowledge, slipAt));
  }
  slips.push(...unusedSlips(knowledge, slipAt), ...wordingSlips(knowledge, slipAt), ...lackSlips(knowledge, slipAt));
  slips.push(...pictureSlips(knowledge, slipAt), ...noticeSlips(knowledge, slipAt));
  return inReadingOrder(slips);
}

function conditionSlips(topic: Topic, knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  return conditionsIn(topic).flatMap(({ field, term }) => {
    const name = term.replace(/^!/, '');
    const known =
      name === SITE_KNOWN || (name.startsWith('van:') ? knowledge.vans.has(name.slice(4)) : knowledge.parts.has(name));
    return known
      ? []
      : [slipAt(fileOf(knowledge, topic.id), field, `the condition '${term}' names nothing`, 'a part id or van:name')];
  });
}

function answerSlips(topic: Topic, knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  const at = fileOf(knowledge, topic.id);
  if (topic.notice && !ONLY_ASKED.has(topic.id))
    return topic.answer === undefined
      ? []
      : [slipAt(at, ['topics', topic.id, 'answer'], 'a notice has its text in safety.yaml', 'no answer here')];
  if (topic.answer === undefined) return [slipAt(at, ['topics', topic.id], 'the topic has no answer', 'an answer')];
  const slips: Slip[] = [];
  for (const scope of knowledge.vans.values()) {
    if (!scope.topics.has(topic.id)) continue;
    const blocks = answerBlocks(topic.id, { knowledge, scope, site: null, nowMs: 0 });
    const said = blocks.filter((block) => block.kind !== 'picture');
    const { length } = plainText({ blocks: said, choices: [] });
    if (length > LONGEST_ANSWER) {
      slips.push(
        slipAt(
          at,
          ['topics', topic.id, 'answer'],
          `the answer for ${scope.name} has ${length} characters`,
          `at most ${LONGEST_ANSWER}`,
        ),
      );
    }
    if (blocks.every((block) => block.kind !== 'line')) {
      slips.push(
        slipAt(
          at,
          ['topics', topic.id, 'answer', 'first'],
          `no first line holds for ${scope.name}`,
          'a clause without a condition at the end',
        ),
      );
    }
    for (const block of blocks) {
      if (block.kind === 'steps' && block.items.length > MOST_STEPS) {
        slips.push(
          slipAt(
            at,
            ['topics', topic.id, 'answer', 'steps'],
            `${block.items.length} steps for ${scope.name}`,
            `at most ${MOST_STEPS}`,
          ),
        );
      }
    }
  }
  return slips;
}

/** Every slot must be filled for every van that says it, at no site and at each. */
function slotSlips(topic: Topic, knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  const slips: Slip[] = [];
  for (const scope of knowledge.vans.values()) {
    if (!scope.topics.has(topic.id)) continue;
    for (const { field, owner, name } of unfilledSlots(topic, scope, knowledge)) {
      const problem = `{${owner}.${name}} is not filled for ${scope.name}`;
      slips.push(slipAt(fileOf(knowledge, topic.id), field, problem, `a value '${name}' in vans/${scope.id}.yaml`));
    }
  }
  return slips;
}

/** A graph that drops a hazard, its notice or its pass is refused. */
function noticeSlips(knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  return safetySlips(knowledge.safety, knowledge.topics).map(({ where, field, problem, expected }) => {
    const topic = where === 'topic' ? knowledge.topics.get(String(field[0])) : undefined;
    return topic === undefined
      ? slipAt('safety.yaml', field, problem, expected)
      : slipAt(fileOf(knowledge, topic.id), ['topics', ...field], problem, expected);
  });
}

/** Every topic is in some scope, and every part is had by a van, is a role, or belongs to a part that is. */
function unusedSlips(knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  const slips: Slip[] = [];
  const scopes = [...knowledge.vans.values()];
  for (const topic of knowledge.topics.values()) {
    if (!scopes.some((scope) => scope.topics.has(topic.id))) {
      slips.push(
        slipAt(
          fileOf(knowledge, topic.id),
          ['topics', topic.id, 'about'],
          'the topic is in no van',
          'parts that some van has',
        ),
      );
    }
  }
  for (const part of knowledge.parts.values()) {
    if (!scopes.some((scope) => scope.parts.has(part.id))) {
      slips.push(
        slipAt(`systems/${part.system}.yaml`, ['parts', part.id], 'no van has this part', 'a van that has it'),
      );
    }
  }
  return slips;
}
