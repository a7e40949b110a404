import type { Scorer } from './scorer.ts';
import type { Vector } from './vector.ts';

/** A class by its number, with its share of the probability. */
export type Share = { readonly label: number; readonly probability: number };

/**
 * How a text's probability falls on the classes. `inScope`, `chat`, `person` and `background` share 1 between them;
 * `outOfScope` are the rivals, each as its odds against all that is in scope.
 */
export type Ranking = {
  readonly inScope: readonly Share[];
  readonly outOfScope: readonly Share[];
  /** The likeliest kind of small talk, and all kinds together. */
  readonly chat: Share | null;
  readonly chatAll: number;
  readonly person: number;
  readonly background: number;
};

/** What each class is, by number. */
export type Role = 'topic' | 'chat' | 'person' | 'background';

/** The role of a class, from its key ({@link classKey}). */
export function roleOf(key: string): Role {
  return key.startsWith('topic/')
    ? 'topic'
    : key.startsWith('chat/')
      ? 'chat'
      : key === 'person'
        ? 'person'
        : 'background';
}

export type Ranker = (vector: Vector, inScope: readonly boolean[], leaning: Float64Array | null) => Ranking;

export type RankerOptions = {
  readonly scorer: Scorer;
  readonly roles: readonly Role[];
  /** Scores are divided by this before they become probabilities. */
  readonly temperature: number;
};

/** How many are put in order; the tail is never looked at. */
const KEPT = 12;

/**
 * Ranks with a softmax over what the van has and what is no topic; topics of other vans stay beside it as rivals.
 *
 * `leaning`, one number for each class, is added to the logits: what a message that refers back leans towards.
 */
export function createRanker({ scorer, roles, temperature }: RankerOptions): Ranker {
  const scores = new Float64Array(roles.length);
  return (vector, inScope, leaning) => {
    scorer.score(vector, scores);
    for (let c = 0; c < scores.length; c++) scores[c] = (scores[c] as number) / temperature + (leaning?.[c] ?? 0);
    let highest = -Infinity;
    for (let c = 0; c < scores.length; c++)
      if (inScope[c] && (scores[c] as number) > highest) highest = scores[c] as number;
    let sum = 0;
    for (let c = 0; c < scores.length; c++) {
      const raised = Math.exp((scores[c] as number) - highest);
      scores[c] = raised;
      if (inScope[c]) sum += raised;
    }
    return shares(scores, sum, roles, inScope);
  };
}

function shares(raised: Float64Array, sum: number, roles: readonly Role[], inScope: readonly boolean[]): Ranking {
  const inside: Share[] = [];
  const outside: Share[] = [];
  let chat: Share | null = null;
  let chatAll = 0;
  let person = 0;
  let background = 0;
  for (let label = 0; label < raised.length; label++) {
    const probability = (raised[label] as number) / sum;
    switch (roles[label] as Role) {
      case 'topic':
        keep(inScope[label] ? inside : outside, { label, probability });
        break;
      case 'chat':
        chatAll += probability;
        if (chat === null || probability > chat.probability) chat = { label, probability };
        break;
      case 'person':
        person = probability;
        break;
      case 'background':
        background = probability;
    }
  }
  return { inScope: inside, outOfScope: outside, chat, chatAll, person, background };
}

/** Puts a share in its place, best first, and drops what falls off the end. */
function keep(list: Share[], share: Share): void {
  if (list.length === KEPT && share.probability <= (list[KEPT - 1] as Share).probability) return;
  let at = list.length;
  while (at > 0 && (list[at - 1] as Share).probability < share.probability) at--;
  list.splice(at, 0, share);
  if (list.length > KEPT) list.pop();
}
