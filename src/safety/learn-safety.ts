import type { TopicId } from '../basics/ids.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import type { TalkData, TopicData } from '../knowledge/schema.ts';
import { featuresOf } from './features.ts';
import { ONLY_ASKED } from './hazards.ts';
import { type LearnOptions, learn, type SecondNet } from './second-net.ts';
import { createTongues, ENGLISH, type Tongue } from './tongues.ts';
import { wordsOf } from './words.ts';

/** One text with its hazard, or null where nobody is in danger. `weight` 1 is usual. */
export type SafetyLine = { readonly text: string; readonly hazard: TopicId | null; readonly weight: number };

/** Sentences written as examples say more than wordings: they are the hard cases. */
const DANGER_WEIGHT = 2;
const HARD_PLAIN_WEIGHT = 3;

/** Everything the second net may learn from, in a fixed order: examples, the topics' wordings, talk. */
export function safetyLines(
  safety: Pick<SafetyData, 'notices' | 'reading'>,
  topics: Iterable<readonly [TopicId, Pick<TopicData, 'wordings'>]>,
  talk: Pick<TalkData, 'chat' | 'person' | 'background'> | null,
): readonly SafetyLine[] {
  const lines: SafetyLine[] = [];
  const addAll = (texts: readonly string[], hazard: TopicId | null, weight: number) => {
    for (const text of texts) lines.push({ text, hazard, weight });
  };
  const { danger, plain } = safety.reading.examples;
  for (const [hazard, texts] of Object.entries(danger)) addAll(texts, hazard, DANGER_WEIGHT);
  addAll(plain, null, HARD_PLAIN_WEIGHT);
  for (const [id, { wordings }] of topics) {
    const hazard = Object.hasOwn(safety.notices, id) && !ONLY_ASKED.has(id) ? id : null;
    addAll(Object.values(wordings).flat(), hazard, hazard === null ? 1 : DANGER_WEIGHT);
  }
  if (talk !== null) {
    for (const { wordings } of Object.values(talk.chat)) addAll(Object.values(wordings).flat(), null, 1);
    addAll(Object.values(talk.person).flat(), null, 1);
    addAll(Object.values(talk.background).flat(), null, 1);
  }
  return lines;
}

/** Learns the second net. Takes some seconds: work for a worker, not for a message. */
export function learnSafety(
  safety: Pick<SafetyData, 'reading'>,
  lines: readonly SafetyLine[],
  options?: LearnOptions,
): SecondNet {
  const signs = new Map(Object.entries(safety.reading.signs));
  const tonguesOf = createTongues(safety.reading);
  const tongues = lines.map(({ text }) => tonguesOf(text)[0]);
  const evened = evenedOut(
    lines,
    tongues.map(({ code }) => code),
  );
  const examples = evened.map(({ text, hazard, weight }, at) => {
    const { reader, apostrophes } = tongues[at] as Tongue;
    const words = reader.parted(wordsOf(text, signs, apostrophes).words);
    return { text, features: featuresOf(words, reader.read(words), reader), hazard, weight };
  });
  return learn(examples, options);
}

/**
 * Gives ordinary talk in each language the share that it has in English. There are fewer ordinary sentences in the others, so
 * that their smallest words would speak for danger.
 */
function evenedOut(lines: readonly SafetyLine[], codes: readonly string[]): readonly SafetyLine[] {
  const weighed = new Map<string, { plain: number; danger: number }>();
  lines.forEach(({ hazard, weight }, at) => {
    const code = codes[at] ?? ENGLISH;
    const so = weighed.get(code) ?? { plain: 0, danger: 0 };
    weighed.set(code, hazard === null ? { ...so, plain: so.plain + weight } : { ...so, danger: so.danger + weight });
  });
  const shareOf = (code: string) => {
    const { plain = 0, danger = 0 } = weighed.get(code) ?? {};
    return plain === 0 || danger === 0 ? null : plain / danger;
  };
  const english = shareOf(ENGLISH);
  return lines.map((line, at) => {
    const own = shareOf(codes[at] ?? ENGLISH);
    if (line.hazard !== null || english === null || own === null) return line;
    return { ...line, weight: (line.weight * english) / own };
  });
}
