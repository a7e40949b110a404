import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { HAZARDS } from '../../src/safety/hazards.ts';
import { learnSafety, safetyLines } from '../../src/safety/learn-safety.ts';
import { createSafetyReader } from '../../src/safety/reader.ts';
import { thirdLook } from '../../src/safety/third-look.ts';
import { realServed } from '../helpers/real-graph.ts';

const message = z.strictObject({
  half: z.enum(['tuning', 'aside']),
  language: z.string(),
  hazard: z.string().nullable(),
  writer: z.string(),
  text: z.string(),
});
const { messages } = z
  .strictObject({ messages: z.array(message) })
  .parse(parse(readFileSync('tests/questions/safety.yaml', 'utf8')));

const { knowledge, matcher } = realServed();
const { safety, topics, talk } = knowledge;
const read = createSafetyReader(safety, learnSafety(safety, safetyLines(safety, topics.entries(), talk)));

type Look = (text: string) => string | null;

/** What the safety reader finds by itself: in every state, whoever has the thread. */
const alone: Look = (text) => read(text, { before: '', vanHas: () => true }).danger?.hazard ?? null;

/** What a hirer meets: where the reader is silent, what the matcher would answer is looked at. */
const asMet: Look = (text) => {
  const reading = read(text, { before: '', vanHas: () => true });
  if (reading.danger !== null) return reading.danger.hazard;
  const questions = matcher.understand(text, { van: 'wren', lastTopic: null, lastText: '' });
  const answered = questions.flatMap(({ decision }) => (decision.kind === 'answer' ? [decision.topic] : []));
  return thirdLook(reading, answered, safety)?.hazard ?? null;
};

/** Writers who came later, each measured alone: of kit's messages half were written to mislead. */
const LATER = ['kit', 'lou', 'oz', 'pim', 'una'];

const ofHalf = (half: 'tuning' | 'aside', foreign: boolean) =>
  messages.filter((each) => each.half === half && !LATER.includes(each.writer) && (each.language !== 'en') === foreign);

/** Counts only: the half kept aside is never shown, so that nobody makes rules for it. */
function figures(mine: typeof messages, look: Look) {
  const read_ = mine.map((each) => ({ ...each, got: look(each.text) }));
  const dangers = read_.filter((each) => each.hazard !== null);
  const plain = read_.filter((each) => each.hazard === null);
  const share = (part: readonly unknown[], whole: readonly unknown[]) => (100 * part.length) / whole.length;
  return {
    dangers: dangers.length,
    plain: plain.length,
    missed: share(
      dangers.filter(({ got }) => got === null),
      dangers,
    ),
    wrong: share(
      dangers.filter(({ hazard, got }) => got !== null && got !== hazard),
      dangers,
    ),
    falseNotices: share(
      plain.filter(({ got }) => got !== null),
      plain,
    ),
  };
}

describe('the safety reading on messages by people who had not seen it', () => {
  it('has at least 400 dangers and 300 look-alikes, of every hazard, half of them kept aside', () => {
    const english = messages.filter(({ language }) => language === 'en');
    expect(english.filter(({ hazard }) => hazard !== null).length).toBeGreaterThanOrEqual(400);
    expect(english.filter(({ hazard }) => hazard === null).length).toBeGreaterThanOrEqual(300);
    expect(new Set(english.flatMap(({ hazard }) => hazard ?? []))).toEqual(new Set(Object.keys(HAZARDS)));
    const aside = messages.filter(({ half }) => half === 'aside').length;
    expect(aside / messages.length).toBeGreaterThan(0.45);
  });

  it.each([
    ['English, reader alone', false, alone, { missed: 2.1, wrong: 1, falseNotices: 4 }],
    ['English, as met', false, asMet, { missed: 1.7, wrong: 1, falseNotices: 4.5 }],
    ['eight other languages', true, alone, { missed: 3.6, wrong: 2.7, falseNotices: 2.7 }],
  ] as const)('holds its figures on the half kept aside: %s', (name, foreign, look, most) => {
    const found = figures(ofHalf('aside', foreign), look);
    console.log(name, JSON.stringify(found));
    expect(found.missed).toBeLessThanOrEqual(most.missed);
    expect(found.wrong).toBeLessThanOrEqual(most.wrong);
    expect(found.falseNotices).toBeLessThanOrEqual(most.falseNotices);
  });

  it.each([
    ['kit', { missed: 1.4, wrong: 2.7, falseNotices: 10.5 }],
    ['lou', { missed: 2, wrong: 2, falseNotices: 3.5 }],
    ['oz', { missed: 1, wrong: 1.2, falseNotices: 2.8 }],
    ['pim', { missed: 1.6, wrong: 1, falseNotices: 2.8 }],
    ['una', { missed: 0.8, wrong: 2, falseNotices: 4.1 }],
  ] as const)('holds its figures on what a later writer wrote: %s', (name, most) => {
    const found = figures(
      messages.filter(({ half, writer }) => half === 'aside' && writer === name),
      asMet,
    );
    console.log(name, JSON.stringify(found));
    expect(found.missed).toBeLessThanOrEqual(most.missed);
    expect(found.wrong).toBeLessThanOrEqual(most.wrong);
    expect(found.falseNotices).toBeLessThanOrEqual(most.falseNotices);
  });

  it.each([
    ['English', false],
    ['eight other languages', true],
  ] as const)('misses nothing of the half that was read: %s', (_, foreign) => {
    const found = figures(ofHalf('tuning', foreign), alone);
    expect(found.missed).toBe(0);
    expect(found.falseNotices).toBeLessThanOrEqual(1);
  });
});

describe('the safety reading on the recorded questions and the wordings', () => {
  const recorded = z
    .array(z.object({ text: z.string(), topic: z.string() }).loose())
    .parse(parse(readFileSync('tests/questions/topics.yaml', 'utf8')));
  /** Asks whether one may, which is no danger. */
  const isDanger = (topic: string) => topic in HAZARDS && topic !== 'hire-barbecue';

  it('stays silent on ordinary questions, all but two in a hundred', () => {
    const ordinary = recorded.filter(({ topic }) => !isDanger(topic));
    const loud = ordinary.filter(({ text }) => asMet(text) !== null);
    console.log('ordinary questions', ordinary.length, 'notices', loud.length);
    expect(loud.length / ordinary.length).toBeLessThan(0.02);
  });

  it('shows a notice on recorded dangers, all but one in twenty', () => {
    const dangers = recorded.filter(({ topic }) => isDanger(topic));
    const silent = dangers.filter(({ text }) => asMet(text) === null);
    console.log('recorded dangers', dangers.length, 'missed', silent.length);
    expect(silent.length / dangers.length).toBeLessThan(0.05);
  });

  it('stays silent on the wordings of ordinary topics, all but one in a hundred', () => {
    const wordings = [...topics]
      .filter(([id]) => !isDanger(id))
      .flatMap(([, topic]) => Object.values(topic.wordings).flat());
    const loud = wordings.filter((text) => alone(text) !== null);
    console.log('ordinary wordings', wordings.length, 'notices', loud.length);
    expect(loud.length / wordings.length).toBeLessThan(0.01);
  });
});
