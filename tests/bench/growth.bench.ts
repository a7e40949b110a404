import { readFileSync } from 'node:fs';
import { bench, describe } from 'vitest';
import { seeded } from '../../src/basics/seeded.ts';
import { createGlossary } from '../../src/language/glossary.ts';
import { createGrouping, type Grouping } from '../../src/review/grouping.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

/* To hold: 10,000 gaps regrouped in under 5 s, a new one joined in under 5 ms (issue 9). */

const knowledge = realKnowledge();
const wordings = [...knowledge.topics.values()].flatMap((topic) => Object.values(topic.wordings).flat());
const glossary = createGlossary(knowledge.glossary.words);
const random = seeded(9);
const words = readFileSync('graph/questions.yaml', 'utf8').match(/[a-z]{4,}/g) ?? [];
/** Wordings with a word put in, so that no two are the same. */
const gaps = Array.from({ length: 10_000 }, () => {
  const text = wordings[Math.floor(random() * wordings.length)] ?? '';
  return `${text} ${words[Math.floor(random() * words.length)]}`;
});

function filled(): Grouping {
  const grouping = createGrouping(glossary, wordings);
  for (const [i, gap] of gaps.entries()) grouping.join(i, gap);
  return grouping;
}

describe('10,000 gaps', () => {
  const grouping = filled();
  let next = gaps.length;
  bench('regrouped', () => grouping.regroup(), { iterations: 3, warmupIterations: 0, time: 0, warmupTime: 0 });
  bench('one more joined', () => grouping.join(next++, gaps[next % gaps.length] ?? ''), { iterations: 200, time: 0 });
});
