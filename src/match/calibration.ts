import type { PartId } from '../basics/ids.ts';
import type { Ranking } from './ranking.ts';
import type { Seen } from './seen.ts';

/** What a ranking shows of how far it may be trusted, in the order of {@link SIGNALS}. */
export type Signals = readonly number[];

export const SIGNALS = ['one', 'best', 'lead', 'three', 'rival', 'background', 'unknown', 'length', 'absent'] as const;

/** Weights of a logistic regression over the signals. */
export type Logistic = readonly number[];

export type Calibration = {
  /** The best topic is the right one. */
  readonly best: Logistic;
  /** The right one is among the three best. */
  readonly among: Logistic;
  /** The message is about kit that the van lacks. */
  readonly lacks: Logistic;
};

const LEAST = 1e-4;

/**
 * Reads the signals off a ranking. Probabilities go in as their logits, kept within about 9 of zero.
 *
 * @param has The parts of the van, their roles among them.
 */
export function signalsOf({ inScope, outOfScope, background }: Ranking, seen: Seen, has: ReadonlySet<PartId>): Signals {
  const best = inScope[0]?.probability ?? 0;
  const second = inScope[1]?.probability ?? 0;
  const three = inScope.slice(0, 3).reduce((sum, share) => sum + share.probability, 0);
  const rival = outOfScope[0]?.probability ?? 0;
  const words = Math.max(1, seen.words.length);
  const unknown = seen.words.filter((word) => !word.known).length / words;
  return [
    1,
    logit(best),
    Math.log((best + LEAST) / (second + LEAST)),
    logit(three),
    Math.log((rival + LEAST) / (best + LEAST)),
    logit(background),
    unknown,
    Math.log(words),
    namesAbsent(seen, has) ? 1 : 0,
  ];
}

/** Whether the text names something that the van has none of. */
export function namesAbsent({ mentions }: Seen, has: ReadonlySet<PartId>): boolean {
  return mentions.some(({ parts }) => parts.every((part) => !has.has(part)));
}

export function chanceOf(logistic: Logistic, signals: Signals): number {
  let sum = 0;
  for (let i = 0; i < signals.length; i++) sum += (logistic[i] ?? 0) * (signals[i] as number);
  return 1 / (1 + Math.exp(-sum));
}

function logit(probability: number): number {
  const inside = Math.min(1 - LEAST, Math.max(LEAST, probability));
  return Math.log(inside / (1 - inside));
}
