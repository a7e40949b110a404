import type { Knowledge } from '../knowledge/knowledge.ts';
import type { SlipAt } from '../knowledge/raw-graph.ts';
import type { Slip } from '../knowledge/slip.ts';
import { fileOf } from './texts.ts';

const FEWEST_QUESTIONS = 2;

/** No wording stands under two topics; every topic has recorded questions, which are not its wordings. */
export function wordingSlips(knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  const slips: Slip[] = [];
  const owner = new Map<string, string>();
  for (const topic of knowledge.topics.values()) {
    for (const [writer, wordings] of Object.entries(topic.wordings)) {
      wordings.forEach((wording, i) => {
        const plain = plainly(wording);
        const other = owner.get(plain);
        if (other !== undefined) {
          slips.push(
            slipAt(
              fileOf(knowledge, topic.id),
              ['topics', topic.id, 'wordings', writer, i],
              `'${wording}' stands under ${other} as well`,
              'each wording under one topic, once',
            ),
          );
        }
        owner.set(plain, topic.id);
      });
    }
  }
  const asked = new Map<string, number>();
  knowledge.questions.questions.forEach((question, i) => {
    if (question.topic !== undefined) asked.set(question.topic, (asked.get(question.topic) ?? 0) + 1);
    if (owner.has(plainly(question.text))) {
      slips.push(
        slipAt(
          'questions.yaml',
          ['questions', i, 'text'],
          'this question is a wording as well',
          'questions that are never trained on',
        ),
      );
    }
  });
  for (const topic of knowledge.topics.values()) {
    const count = asked.get(topic.id) ?? 0;
    if (count < FEWEST_QUESTIONS) {
      slips.push(
        slipAt(
          fileOf(knowledge, topic.id),
          ['topics', topic.id],
          `${count} recorded questions in questions.yaml`,
          `at least ${FEWEST_QUESTIONS}`,
        ),
      );
    }
  }
  return slips;
}

/** A wording as it is compared with others: letters and figures alone. */
export function plainly(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
