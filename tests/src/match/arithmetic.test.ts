import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOf } from '../../../src/match/calibration.ts';
import { fitLogistic } from '../../../src/match/logistic.ts';
import { packedScorer, packWeights } from '../../../src/match/model.ts';
import { mixIn, naiveBayes } from '../../../src/match/naive-bayes.ts';
import { createRanker, roleOf } from '../../../src/match/ranking.ts';
import type { Scorer } from '../../../src/match/scorer.ts';
import type { Vector } from '../../../src/match/vector.ts';

const vector = (weights: Record<number, number>): Vector => ({
  at: Int32Array.from(Object.keys(weights).map(Number)),
  weight: Float32Array.from(Object.values(weights)),
});
const scoresOf = (scorer: Scorer, of: Vector) => {
  const out = new Float64Array(scorer.classes);
  scorer.score(of, out);
  return [...out];
};

describe('logistic regression', () => {
  it('finds the weights that made the data', () => {
    const rows = Array.from({ length: 4000 }, (_, i) => {
      const x = (i % 41) / 10 - 2;
      const p = 1 / (1 + Math.exp(-(0.5 + 1.5 * x)));
      return { x: [1, x], y: (i * 0.618033988749895) % 1 < p, weight: 1 };
    });
    const [constant, slope] = fitLogistic(rows, 1e-6);
    expect(constant).toBeCloseTo(0.5, 1);
    expect(slope).toBeCloseTo(1.5, 1);
  });

  it('says the share of the rows that came true when nothing else is known', () => {
    const rows = [true, true, true, false].map((y) => ({ x: [1], y, weight: 1 }));
    expect(chanceOf(fitLogistic(rows, 1), [1])).toBeCloseTo(0.75, 6);
  });

  it('gives no weights for no rows', () => {
    expect(fitLogistic([], 1)).toEqual([]);
  });
});

describe('naive Bayes', () => {
  const vectors = [vector({ 0: 1, 1: 1 }), vector({ 1: 2 }), vector({ 2: 1 })];
  const bayes = naiveBayes(vectors, [0, 0, 1], 2, 3);

  it('scores as its definition says', () => {
    // Sums: class 0 has (1, 3, 0) of 4, class 1 has (0, 0, 1) of 1; smoothing 0.1 on three features.
    const log = (sum: number, total: number) => Math.log((sum + 0.1) / (total + 0.3));
    const [first, second] = scoresOf(bayes, vector({ 0: 1, 2: 2 })) as [number, number];
    const wanted = log(1, 4) + 2 * log(0, 4) - (log(0, 1) + 2 * log(1, 1));
    expect(first - second).toBeCloseTo(wanted, 5);
  });

  it('can be mixed into fitted weights without changing what either says', () => {
    const rows = Float32Array.from([0.3, -0.2, 0, 0.7, -0.4, 0.1]);
    const mixed = Float32Array.from(rows);
    mixIn(mixed, bayes, 0.5);
    const text = vector({ 0: 0.4, 1: 0.9 });
    const lead = (all: readonly number[]) => (all[0] as number) - (all[1] as number);
    const fitted = [0, 1].map((c) => 0.4 * (rows[c] as number) + 0.9 * (rows[2 + c] as number));
    const both = [0, 1].map((c) => 0.4 * (mixed[c] as number) + 0.9 * (mixed[2 + c] as number));
    expect(lead(both)).toBeCloseTo(lead(fitted) + 0.5 * lead(scoresOf(bayes, text)), 4);
  });
});

describe('8-bit weights', () => {
  it('score as the full ones do, to within their rounding', () => {
    const weight = fc.float({ min: -4, max: 4, noNaN: true });
    fc.assert(
      fc.property(fc.array(weight, { minLength: 12, maxLength: 12 }), (list) => {
        const rows = Float32Array.from(list);
        const scorer = packedScorer(packWeights({ rows, classes: 3 }));
        const text = vector({ 0: 1, 1: -0.5, 2: 0.25, 3: 2 });
        for (const [c, score] of scoresOf(scorer, text).entries()) {
          const exact = text.at.reduce(
            (sum, f, i) => sum + (text.weight[i] as number) * (rows[f * 3 + c] as number),
            0,
          );
          expect(Math.abs(score - exact)).toBeLessThanOrEqual((3.75 * 4) / 254 + 1e-5);
        }
      }),
    );
  });
});

describe('ranking', () => {
  const keys = ['topic/a', 'topic/b', 'topic/c', 'chat/thanks', 'chat/bye', 'person', 'background'];
  const scorer: Scorer = {
    classes: keys.length,
    score: (_, out) => out.set([2, 1, 3, 0, 0.5, -1, 0]),
    weight: () => 0,
  };
  const rank = createRanker({ scorer, roles: keys.map(roleOf), temperature: 1 });
  const inScope = [true, true, false, true, true, true, true];
  const ranking = rank(vector({}), inScope, null);

  it('shares 1 among what the van has and what is no topic', () => {
    const topics = ranking.inScope.reduce((sum, share) => sum + share.probability, 0);
    expect(topics + ranking.chatAll + ranking.person + ranking.background).toBeCloseTo(1, 9);
  });

  it('keeps topics of other vans as rivals, by their odds', () => {
    expect(ranking.inScope.map((share) => keys[share.label])).toEqual(['topic/a', 'topic/b']);
    expect(ranking.outOfScope[0]?.probability).toBeCloseTo(Math.E * (ranking.inScope[0]?.probability ?? 0), 9);
  });

  it('moves towards what it leans on', () => {
    const leaning = Float64Array.from([0, 3, 0, 0, 0, 0, 0]);
    expect(keys[rank(vector({}), inScope, leaning).inScope[0]?.label ?? -1]).toBe('topic/b');
  });
});
