import type { TopicId } from '../basics/ids.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import type { Calibration } from './calibration.ts';
import type { Reference } from './refer-back.ts';

/**
 * What may draw a message that leans towards a class: the earlier message's own scores, which carry what it was about;
 * topics that the last one names as kin; those that name it; those about a part of it; those of its system; itself;
 * itself where another figure or place may be asked for; and what is no topic.
 */
export const LEAN_SIGNS = ['said', 'kin', 'names', 'part', 'system', 'self', 'again', 'plain'] as const;

/** For each sign a number for each class. */
export type Leaning = readonly Float64Array[];

/** Fitted on follow-ups written for it (tests/bench/understanding/fit-leaning.ts prints them). */
const LEAN: readonly number[] = [0.23, 1.79, 0.72, 0.26, 1.83, 0, 0.8, 2.42];
/** For one that names nothing at all: all it is about stands in what was said before. */
const LEAN_POINTS: readonly number[] = [0.33, 0.45, 1.5, 0.98, 1.85, -2.44, -0.17, 4.73];
/** For a message that does not point back and yet says too little alone; set by hand, the written ones are too few. */
const LEAN_LITTLE: readonly number[] = [0, 2, 0.9, 0, 0.4, 0, 0, 0];
/** Kinds of topic that one asks a second time, with something else in mind: 'and from freezing?', 'somewhere cheaper?'. */
const AGAIN: ReadonlySet<string> = new Set(['calculation', 'where']);
/** Somebody who corrects never means the last topic again. */
const CORRECTED = -4;

/** How sure one may be of what leans; fitted with it. */
const FOLLOWING: Sure = {
  best: [-4.361, 0.247, 0.362, 0.108, -0.105, -0.157, 0, 1.337, 0],
  among: [-4.301, 0.215, 0.048, 0.238, -0.205, -0.212, 0, 2.012, 0],
};
const POINTING: Sure = {
  best: [-1.519, 0.162, 0.234, 0.057, -0.124, 0.104, 0, 1.017, 0],
  among: [-1.387, 0.092, 0.116, 0.118, -0.084, 0.035, 0, 1.455, 0],
};

type Sure = Pick<Calibration, 'best' | 'among'>;

/** How sure one may be of a message that leans so; `alone` of one that does not point back. */
export function leantCalibration(how: Reference['kind'], alone: Sure): Sure {
  return how === 'none' ? alone : how === 'points' ? POINTING : FOLLOWING;
}

/**
 * The signs of what was said before.
 *
 * @param before The logits of the earlier message, by class, around zero.
 * @param keys   The classes, 'topic/...' for topics.
 */
export function leanSigns(
  lastTopic: TopicId | null,
  before: Float64Array,
  keys: readonly string[],
  topics: Knowledge['topics'],
): Leaning {
  const last = lastTopic === null ? undefined : topics.get(lastTopic);
  const parts = new Set(last?.about ?? []);
  const signs = LEAN_SIGNS.map(() => new Float64Array(keys.length));
  for (const [c, key] of keys.entries()) {
    const topic = topics.get(key.replace(/^topic\//, ''));
    const found =
      topic === undefined
        ? [0, 0, 0, 0, 0, 0, 0, 1]
        : [
            before[c] as number,
            last?.kin.includes(topic.id),
            last !== undefined && topic.kin.includes(last.id),
            topic.about.some((part) => parts.has(part)),
            topic.system === last?.system,
            topic.id === last?.id,
            topic.id === last?.id && AGAIN.has(topic.kind),
            0,
          ].map(Number);
    for (const [j, sign] of signs.entries()) sign[c] = found[j] || 0;
  }
  return signs;
}

/** What to add to the scores of a message that leans on an earlier one, by how it refers to it. */
export function leaningOn(
  lastTopic: TopicId | null,
  before: Float64Array,
  keys: readonly string[],
  topics: Knowledge['topics'],
  how: Reference['kind'],
): Float64Array {
  const weights = how === 'none' ? LEAN_LITTLE : how === 'points' ? LEAN_POINTS : LEAN;
  const signs = leanSigns(lastTopic, before, keys, topics);
  return before.map((_, c) => {
    const self = how === 'corrects' && keys[c] === `topic/${lastTopic}` ? CORRECTED : 0;
    return signs.reduce((sum, sign, j) => sum + (weights[j] as number) * (sign[c] as number), self);
  });
}
