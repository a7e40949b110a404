import type { TopicId } from '../basics/ids.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import type { TalkData, TopicData } from '../knowledge/schema.ts';
import { featuresOf } from './features.ts';
import { ONLY_ASKED } from './hazards.ts';
import { type Example, type LearnOptions, type LearntNet, learnOn, learnPaced, type SecondNet } from './second-net.ts';
import { createTongues, ENGLISH, type Tongue } from './tongues.ts';
import { wordsOf } from './words.ts';

/** One text with its hazard, or null where nobody is in danger. `weight` 1 is usual. */
export type SafetyLine = { readonly text: string; readonly hazard: TopicId | null; readonly weight: number };

/** Sentences written as examples say more than wordings: they are the hard cases. */
const DANGER_WEIGHT = 2;
const HARD_PLAIN_WEIGHT = 3;
/** The topics' wordings and talk are what hirers say on ordinary days: at half of this, half as many again raise a notice. */
const WORDING_WEIGHT = 2;

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
    addAll(Object.values(wordings).flat(), hazard, hazard === null ? WORDING_WEIGHT : DANGER_WEIGHT);
  }
  if (talk !== null) {
    for (const { wordings } of Object.values(talk.chat)) addAll(Object.values(wordings).flat(), null, WORDING_WEIGHT);
    addAll(Object.values(talk.person).flat(), null, WORDING_WEIGHT);
    addAll(Object.values(talk.background).flat(), null, WORDING_WEIGHT);
  }
  return lines;
}

/** Learns the second net. Takes some seconds: work for a worker, not for a message. */
export function learnSafety(
  safety: Pick<SafetyData, 'reading'>,
  lines: readonly SafetyLine[],
  options?: LearnOptions,
): SecondNet {
  return learnSafetyPaced(safety, lines, options).net;
}

/** The same, with what {@link learnSafetyOn} needs. */
export function learnSafetyPaced(
  safety: Pick<SafetyData, 'reading'>,
  lines: readonly SafetyLine[],
  options?: LearnOptions,
): LearntNet {
  const tonguesOf = createTongues(safety.reading);
  const tongues = lines.map(({ text }) => tonguesOf(text)[0]);
  const evened = evenedOut(
    lines,
    tongues.map(({ code }) => code),
  );
  const example = exampleReader(safety);
  return learnPaced(
    evened.map((line, at) => example(line, tongues[at] as Tongue)),
    options,
  );
}

/** More changed lines than this are no small change. */
const MOST_CHANGED = 200;
/** So many dangers, and so many plain lines, that share the most with what changed are learnt beside it. */
const NEAR = 300;

/**
 * Learns a small change of the lines from where the whole learning ended: what came and went, and the lines most like it.
 *
 * @returns Null where it takes the whole learning: a danger came or went, much has changed, or a line is not English and so
 *          changes what the others of its language weigh.
 */
export function learnSafetyOn(
  learnt: LearntNet,
  safety: Pick<SafetyData, 'reading'>,
  before: readonly SafetyLine[],
  after: readonly SafetyLine[],
): SecondNet | null {
  const [was, will] = [new Set(before.map(identity)), new Set(after.map(identity))];
  const gone = before.filter((line) => !will.has(identity(line)));
  const come = after.filter((line) => !was.has(identity(line)));
  const changed = [...gone, ...come];
  if (changed.length > MOST_CHANGED || changed.some(({ hazard }) => hazard !== null)) return null;
  const tonguesOf = createTongues(safety.reading);
  const read = exampleReader(safety);
  const isEnglish = ({ text }: SafetyLine) => tonguesOf(text)[0].code === ENGLISH;
  if (!changed.every(isEnglish)) return null;
  const example = (line: SafetyLine) => read(line, tonguesOf(line.text)[0]);
  const stayed = after.filter((line) => was.has(identity(line)));
  const near = nearest(stayed, changed).filter(isEnglish).map(example);
  return learnOn(learnt, { before: [...near, ...gone.map(example)], after: [...near, ...come.map(example)] });
}

function identity({ text, hazard }: SafetyLine): string {
  return `${hazard}\t${text}`;
}

/** The lines that share the most words with some others, a rare word counting more; dangers and plain ones apart. */
function nearest(lines: readonly SafetyLine[], others: readonly SafetyLine[]): readonly SafetyLine[] {
  const words = ({ text }: SafetyLine): ReadonlySet<string> =>
    new Set(text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []);
  const counts = new Map(others.flatMap((line) => [...words(line)]).map((word) => [word, 0]));
  const shared = lines.map((line) => {
    const own = [...words(line)].filter((word) => counts.has(word));
    for (const word of own) counts.set(word, (counts.get(word) as number) + 1);
    return { line, own };
  });
  const ranked = shared
    .map(({ line, own }) => ({ line, score: own.reduce((sum, word) => sum + 1 / (counts.get(word) as number), 0) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .map(({ line }) => line);
  const isDanger = ({ hazard }: SafetyLine): boolean => hazard !== null;
  return [...ranked.filter(isDanger).slice(0, NEAR), ...ranked.filter((line) => !isDanger(line)).slice(0, NEAR)];
}

function exampleReader(safety: Pick<SafetyData, 'reading'>): (line: SafetyLine, tongue: Tongue) => Example {
  const signs = new Map(Object.entries(safety.reading.signs));
  return ({ text, hazard, weight }, { reader, apostrophes }) => {
    const words = reader.parted(wordsOf(text, signs, apostrophes).words);
    return { text, features: featuresOf(words, reader.read(words), reader), hazard, weight };
  };
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
