import type { TopicId } from '../basics/ids.ts';
import { mixed, roundOrder, textSeed } from '../basics/seeded.ts';

/** One text to learn from. `hazard` is null where there is no danger; `weight` 1 is usual. */
export type Example = {
  readonly text: string;
  readonly features: readonly string[];
  readonly hazard: TopicId | null;
  readonly weight: number;
};

/** What learning leaves behind: plain data that may cross from a worker. One row of `hazardWeights` for each hazard. */
export type SecondNet = {
  readonly features: readonly string[];
  readonly weights: Float32Array;
  readonly bias: number;
  readonly hazards: readonly TopicId[];
  readonly hazardWeights: Float32Array;
};

export type LearnOptions = {
  /** Passes over the examples. Few leave it unsure, many make it trust what it saw once. */
  readonly passes: number;
  /** The first step of Adagrad; it shrinks as a feature is seen more. */
  readonly step: number;
  /** Pull of every weight towards zero at each step. */
  readonly pull: number;
};

const SEED = 7;
export const LEARN: LearnOptions = { passes: 30, step: 0.5, pull: 1e-4 };

/**
 * Learns to tell danger from no danger (logistic regression by Adagrad), and which danger (naive Bayes over the dangers alone).
 * Each text counts as much as another, however long. The order is drawn from the texts themselves: the same examples, the same
 * net, and an example more or less changes what it says and not, by the luck of the draw, what it does not touch.
 */
export function learn(examples: readonly Example[], { passes, step, pull }: LearnOptions = LEARN): SecondNet {
  const index = new Map<string, number>();
  const rows = examples.map(({ features, hazard, weight }) => ({ at: numbered(features, index), hazard, weight }));
  const weights = new Float64Array(index.size);
  const squares = new Float64Array(index.size).fill(1e-6);
  let bias = 0;
  let biasSquare = 1e-6;
  const seeds = Int32Array.from(examples, ({ text }) => textSeed(text));
  for (let pass = 0; pass < passes; pass++) {
    for (const line of roundOrder(seeds, mixed(SEED + pass)).order) {
      const { at, hazard, weight } = rows[line] as Row;
      const share = shareOf(at.length);
      const error = (logistic(total(at, weights, bias) * share) - (hazard === null ? 0 : 1)) * weight * share;
      for (const each of at) {
        const slope = error + pull * (weights[each] as number);
        const square = (squares[each] as number) + slope * slope;
        squares[each] = square;
        weights[each] = (weights[each] as number) - (step * slope) / Math.sqrt(square);
      }
      biasSquare += error * error;
      bias -= (step * error) / Math.sqrt(biasSquare);
    }
  }
  return { features: [...index.keys()], weights: Float32Array.from(weights), bias, ...hazardNet(rows, index.size) };
}

type Row = { readonly at: Uint32Array; readonly hazard: TopicId | null; readonly weight: number };

/** log P(feature | hazard) - log P(feature), each hazard counting the same. */
function hazardNet(rows: readonly Row[], size: number): Pick<SecondNet, 'hazards' | 'hazardWeights'> {
  const hazards = [...new Set(rows.flatMap(({ hazard }) => hazard ?? []))].sort();
  const counts = hazards.map(() => new Float64Array(size));
  const texts = new Float64Array(hazards.length);
  for (const { at, hazard } of rows) {
    const which = hazard === null ? -1 : hazards.indexOf(hazard);
    if (which === -1) continue;
    texts[which] = (texts[which] as number) + 1;
    for (const each of at)
      (counts[which] as Float64Array)[each] = ((counts[which] as Float64Array)[each] as number) + 1;
  }
  const hazardWeights = new Float32Array(hazards.length * size);
  for (let feature = 0; feature < size; feature++) {
    const rates = hazards.map(
      (_, which) => (((counts[which] as Float64Array)[feature] as number) + 0.05) / ((texts[which] as number) + 1),
    );
    const mean = rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
    rates.forEach((rate, which) => {
      hazardWeights[which * size + feature] = Math.log(rate / mean);
    });
  }
  return { hazards, hazardWeights };
}

/** What the net says of a text. */
export type Opinion = {
  /** The chance of any danger, 0..1. */
  readonly chance: number;
  /** How much the text speaks for a hazard; only differences between hazards mean anything. */
  readonly leaning: (hazard: TopicId) => number;
  /** The features that spoke loudest for danger, loudest first. */
  readonly loudest: readonly string[];
};

/** Reads with a net that has been learnt. */
export function createNetReader(net: SecondNet): (features: readonly string[]) => Opinion {
  const index = new Map(net.features.map((feature, at) => [feature, at] as const));
  const size = net.features.length;
  return (features) => {
    const at: number[] = [];
    for (const feature of features) {
      const known = index.get(feature);
      if (known !== undefined) at.push(known);
    }
    const chance = logistic(total(at, net.weights, net.bias) * shareOf(features.length));
    return {
      chance,
      leaning: (hazard) => {
        const which = net.hazards.indexOf(hazard);
        if (which === -1) return 0;
        let sum = 0;
        for (const each of at) sum += net.hazardWeights[which * size + each] as number;
        return sum * shareOf(features.length);
      },
      get loudest() {
        return loudestOf(at, net.weights).map((each) => net.features[each] as string);
      },
    };
  };
}

const LOUDEST = 4;

function loudestOf(at: readonly number[], weights: Float32Array): readonly number[] {
  const loudest: number[] = [];
  for (const each of at) {
    const weight = weights[each] as number;
    let place = loudest.length;
    while (place > 0 && (weights[loudest[place - 1] as number] as number) < weight) place--;
    if (place < LOUDEST) loudest.splice(place, 0, each);
    if (loudest.length > LOUDEST) loudest.pop();
  }
  return loudest;
}

function numbered(features: readonly string[], index: Map<string, number>): Uint32Array {
  return Uint32Array.from(features, (feature) => {
    const known = index.get(feature);
    if (known !== undefined) return known;
    index.set(feature, index.size);
    return index.size - 1;
  });
}

/** Long texts weigh no more than short ones. */
function shareOf(features: number): number {
  return 1 / Math.sqrt(features + 1);
}

function total(at: Iterable<number>, weights: Float64Array | Float32Array, bias: number): number {
  let sum = bias;
  for (const each of at) sum += weights[each] as number;
  return sum;
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
