import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { learntFor } from '../../../adapters/training/models.ts';
import { seeded } from '../../../src/basics/seeded.ts';
import { SIGNALS, signalsOf } from '../../../src/match/calibration.ts';
import { createJudge } from '../../../src/match/judge.ts';
import { LEAN_SIGNS, type Leaning, leanSigns } from '../../../src/match/leaning.ts';
import { fitLogistic, type Row } from '../../../src/match/logistic.ts';
import { createRanker, roleOf } from '../../../src/match/ranking.ts';
import { trained } from '../../../src/match/ready.ts';
import { readReference } from '../../../src/match/refer-back.ts';
import { vectorOf } from '../../../src/match/vector.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';
import { type Recorded, recordedSets } from './recorded.ts';

/*
 * Fits how much a message leans on the one before it, and how sure one may then be: prints the numbers of
 * src/match/leaning.ts. From follow-ups written for this, and against them messages that only look like follow-ups:
 * the tuning half's single questions and the background's lines, after something else.
 */

type Line = {
  readonly first: string;
  readonly second: string;
  readonly van: string;
  readonly text: string;
  readonly then: string;
};
/** What was said, what before it, and the class meant: null for none of the topics. */
type Case = {
  readonly text: string;
  readonly van: string;
  readonly before: string;
  readonly last: string;
  readonly meant: string | null;
};

/** Of messages that look like follow-ups: those that are none but a question of its own, and those that are none of ours. */
const SHARES = process.argv[3] === 'loose' ? { own: 0.5, none: 0.2 } : { own: 0.03, none: 0.12 };
const PULL = 0.01;
const RATE = 0.04;
const ROUNDS = 3000;
const RIDGE = 3;

const knowledge = realKnowledge();
const { model } = learntFor('dist/graphs', knowledge);
if (model === null) throw new Error('build first: the weights are not there');
const ready = trained(knowledge, model);
const judge = createJudge(knowledge, ready);
const { keys } = ready;
const roles = keys.map(roleOf);
const random = seeded(9);

const written: readonly Case[] = (
  parse(readFileSync('tests/bench/understanding/follow-ups.yaml', 'utf8')) as readonly Line[]
).map(({ first, second, van, text, then }) => ({ text: then, van, before: text, last: first, meant: second }));
const after = (text: string, van: string, meant: string | null): Case => {
  const { before, last } = written[Math.floor(random() * written.length)] as Case;
  return { text, van, before, last, meant };
};
const singles = (recordedSets(knowledge)['topics'] ?? [])
  .filter((one) => one.half === 'tuning')
  .map(({ text, van, topics }: Recorded) => after(text, van, topics[0] ?? null));
const vans = [...knowledge.vans.keys()];
const none = Object.values(knowledge.talk.background)
  .flat()
  .map((text, i) => after(text, vans[i % vans.length] as string, null));

/** Which messages: those that follow, those that only point, or those that do neither but say too little alone. */
const KIND = ({ loose: 'none', points: 'points' } as const)[process.argv[3] ?? ''] ?? 'follows';
/** Only what the matcher would let lean. */
const leans = ({ text, van }: Case): boolean => {
  const { kind } = readReference(text);
  if ((kind === 'corrects' ? 'follows' : kind) !== KIND) return false;
  if (KIND === 'none' && judge.judge(text, van, null).decision.kind === 'answer') return false;
  const { decision } = judge.judge(text, van, null);
  return (
    !(decision.kind === 'answer' && decision.probability >= 0.85) &&
    decision.kind !== 'chat' &&
    decision.kind !== 'person'
  );
};

type Prepared = {
  readonly own: Float64Array;
  readonly signs: Leaning;
  readonly target: readonly number[];
  readonly inScope: readonly boolean[];
  readonly weight: number;
  readonly one: Case;
};

const sets = [written.filter(leans), singles.filter(leans), none.filter(leans)] as const;
console.log(`lean: ${sets[0].length} written, ${sets[1].length} of their own, ${sets[2].length} none of ours`);
const shares = [1 - SHARES.own - SHARES.none, SHARES.own, SHARES.none];
const prepared = sets.flatMap((set, s) =>
  set.map((one): Prepared => {
    const scope = knowledge.vans.get(one.van);
    const inScope = keys.map((key, c) => roles[c] !== 'topic' || scope?.topics.has(key.slice(6)) === true);
    const target = keys.flatMap((key, c) =>
      (one.meant === null ? roles[c] !== 'topic' : key === `topic/${one.meant}`) ? [c] : [],
    );
    return {
      own: judge.scoresOf(one.text),
      signs: leanSigns(one.last, judge.scoresOf(one.before), keys, knowledge.topics),
      target,
      inScope,
      weight: (shares[s] as number) / set.length,
      one,
    };
  }),
);

function leant({ own, signs }: Prepared, weights: readonly number[]): Float64Array {
  return own.map((score, c) =>
    signs.reduce((sum, sign, j) => sum + (weights[j] as number) * (sign[c] as number), score),
  );
}

function probabilities(one: Prepared, weights: readonly number[]): Float64Array {
  const scores = leant(one, weights);
  const highest = scores.reduce((most, score, c) => (one.inScope[c] ? Math.max(most, score) : most), -Infinity);
  const raised = scores.map((score, c) => (one.inScope[c] ? Math.exp(score - highest) : 0));
  const sum = raised.reduce((a, b) => a + b, 0);
  return raised.map((each) => each / sum);
}

let weights: readonly number[] = LEAN_SIGNS.map(() => 0);
for (let round = 0; round < ROUNDS; round++) {
  const slope = weights.map((weight) => PULL * weight);
  for (const one of prepared) {
    const p = probabilities(one, weights);
    const whole = one.target.reduce((sum, c) => sum + (p[c] as number), 0);
    const targets = new Set(one.target);
    for (let c = 0; c < p.length; c++) {
      if (!one.inScope[c]) continue;
      const off = (p[c] as number) - (targets.has(c) ? (p[c] as number) / Math.max(1e-12, whole) : 0);
      for (let j = 0; j < slope.length; j++)
        slope[j] = (slope[j] as number) + one.weight * off * ((one.signs[j] as Float64Array)[c] as number);
    }
  }
  weights = weights.map((weight, j) => weight - RATE * (slope[j] as number));
}
console.log(LEAN_SIGNS.map((name, j) => `${name}: ${(weights[j] as number).toFixed(2)}`).join(', '));

const rank = createRanker({ scorer: ready.scorer, roles, temperature: ready.temperature });
const rows = prepared.map((one) => {
  const seen = ready.see(one.one.text);
  const lean = one.own.map((_, c) =>
    one.signs.reduce((sum, sign, j) => sum + (weights[j] as number) * (sign[c] as number), 0),
  );
  const ranking = rank(vectorOf(seen, ready.space), one.inScope, lean);
  const place = ranking.inScope.slice(0, 3).findIndex(({ label }) => keys[label] === `topic/${one.one.meant}`);
  const signals = signalsOf(ranking, seen, knowledge.vans.get(one.one.van)?.parts ?? new Set());
  // The background's lines were trained on, so that they know no unknown word: how much one counts cannot be learnt.
  return {
    x: signals.map((signal, i) => (SIGNALS[i] === 'unknown' ? 0 : signal)),
    place,
    weight: one.weight * prepared.length,
  };
});
const weightsFor = (y: (place: number) => boolean): string =>
  fitLogistic(
    rows.map(({ x, place, weight }): Row => ({ x, y: y(place), weight })),
    RIDGE,
  )
    .map((each) => each.toFixed(3))
    .join(', ');
console.log(`best: [${weightsFor((place) => place === 0)}]`);
console.log(`among: [${weightsFor((place) => place >= 0)}]`);
for (const [s, name] of ['written', 'of their own', 'none of ours'].entries()) {
  const some = rows.filter((_, i) => sets[s]?.includes((prepared[i] as Prepared).one));
  console.log(
    `${name}: first ${some.filter(({ place }) => place === 0).length} of ${some.length}, among three ${some.filter(({ place }) => place >= 0).length}`,
  );
}
