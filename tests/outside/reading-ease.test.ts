import { flesch } from 'flesch';
import { syllable } from 'syllable';
import { describe, expect, it } from 'vitest';
import { answerBlocks } from '../../src/reply/answer.ts';
import { plainText } from '../../src/reply/reply.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

/*
 * Flesch reading ease, R. Flesch, 'A new readability yardstick', Journal of Applied Psychology 32 (1948): 60 to 70 is plain
 * English. Sentences are counted at full stops, question marks, colons and line ends; syllables by the library.
 */
const EASE = 65;
const LONGEST = 900;

const knowledge = realKnowledge();
const site = Object.values(knowledge.places.sites)[0] ?? null;

function easeOf(text: string): number {
  const sentences = text.split(/[.!?:]\s|\n/).filter((piece) => /[a-z]/i.test(piece)).length;
  const words = text.match(/[A-Za-z0-9'’-]*[A-Za-z][A-Za-z0-9'’-]*/g) ?? [];
  return flesch({ sentence: Math.max(1, sentences), word: words.length, syllable: syllable(words.join(' ')) });
}

const answers = [...knowledge.vans.values()].flatMap((scope) =>
  [...scope.topics].flatMap((id) => {
    const text = plainText({
      blocks: answerBlocks(id, { knowledge, scope, site, nowMs: Date.parse('2027-07-15T11:00:00Z') }).filter(
        (block) => block.kind !== 'picture',
      ),
      choices: [],
    });
    return text === '' ? [] : [{ id, van: scope.name, text }];
  }),
);

describe('every answer in every van', () => {
  it('is there', () => {
    const missing = [...knowledge.topics.values()].filter(
      (topic) => !topic.notice && !answers.some((answer) => answer.id === topic.id),
    );
    expect(missing.map((topic) => topic.id)).toEqual([]);
  });

  it('is plain English', () => {
    const hard = answers
      .filter(({ text }) => easeOf(text) < EASE)
      .map(({ id, van, text }) => `${id} in ${van}: ${easeOf(text).toFixed(0)}`);
    expect(hard).toEqual([]);
  });

  it('fits on a phone', () => {
    expect(
      answers.filter(({ text }) => text.length > LONGEST).map(({ id, van, text }) => `${id} in ${van}: ${text.length}`),
    ).toEqual([]);
  });

  it('leaves no slot unfilled', () => {
    expect(
      answers.filter(({ text }) => /\{[a-z-]+\.[A-Za-z0-9-]+\}/.test(text)).map(({ id, van }) => `${id} in ${van}`),
    ).toEqual([]);
  });

  // The firm's own rules of wording: never belittle, never vouch for safety on the firm's word alone.
  it.each(['simply', 'obviously', 'until we say so', 'safe to go back'])('never says "%s"', (words) => {
    expect(
      answers.filter(({ text }) => text.toLowerCase().includes(words)).map(({ id, van }) => `${id} in ${van}`),
    ).toEqual([]);
  });

  it('tells ease from difficulty', () => {
    expect(easeOf('Turn the tap. Wait a bit.')).toBeGreaterThan(EASE);
    expect(
      easeOf(
        'Notwithstanding considerable administrative circumstances, individual regularisation necessitates authorisation.',
      ),
    ).toBeLessThan(EASE);
  });
});
