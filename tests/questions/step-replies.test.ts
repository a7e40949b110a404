import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { readStepAnswer, type StepAnswer } from '../../src/faults/read-step-answer.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

/* Replies to the graph's own steps, written before the reader was looked at: tests/questions/step-replies.yaml. */

const rows = z
  .object({
    replies: z.array(z.tuple([z.string(), z.string(), z.string(), z.enum(['check', 'fix']), z.string(), z.string()])),
  })
  .parse(parse(readFileSync(new URL('step-replies.yaml', import.meta.url), 'utf8'))).replies;

/** An answer in one word. `again`: the step would be put again, which costs a message and misleads nobody. */
function inShort(answer: StepAnswer): string {
  if (['other', 'unclear', 'done'].includes(answer.kind)) return 'again';
  if (answer.kind !== 'told') return answer.kind;
  const { told } = answer;
  if (told.kind === 'observed') return told.answer;
  return told.kind === 'tried' ? (told.worked ? 'worked' : 'failed') : told.kind;
}

const knowledge = realKnowledge();
const read = rows.map(([topic, id, van, step, text, expected]) => {
  const scope = knowledge.vans.get(van);
  const cause = scope?.causes(topic).find((each) => each.id === id);
  if (scope === undefined || cause === undefined) throw new Error(`${van} has no ${topic} ${id}`);
  return { at: `${van} ${topic} ${id} '${text}'`, expected, got: inShort(readStepAnswer(text, step, cause, scope)) };
});
const right = read.filter(({ expected, got }) => expected === got);
const OPPOSITES = ['again worked', 'again yes', 'again no', 'yes no', 'no yes', 'worked failed', 'failed worked'];

describe('replies to a step as hirers word them', () => {
  it('are read right in at least 85 of 100', () => {
    expect(right.length / read.length).toBeGreaterThanOrEqual(0.85);
  });

  it('are never read the wrong way round', () => {
    expect(read.filter(({ expected, got }) => OPPOSITES.includes(`${expected} ${got}`))).toEqual([]);
  });
});
