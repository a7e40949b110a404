import type { TopicId, VanId } from '../../basics/ids.ts';
import { seeded } from '../../basics/seeded.ts';
import type { ScopedCause } from '../../knowledge/knowledge.ts';
import { type Problem, problemOf } from '../problem.ts';
import { drawHirer, type Hirer, play } from './hirer.ts';
import { forFixed, type Minutes, type OffByTwo, offByTwo } from './off-by-two.ts';
import { expectedMinutes, type Optimum, optimum, type Policy } from './optimum.ts';
import { atRandom, likeliestChecks, likeliestFixes, listed, ours } from './policies.ts';
import { keyOf } from './position.ts';

export const RIVALS = ['optimum', 'ours', 'fixesOnly', 'checkThenFix', 'listed', 'random'] as const;
export type Rival = (typeof RIVALS)[number];

/** The steps within which a walk ought to end. */
export const FEW_STEPS = 6;

/** Means over the hirers; `cured` and `inFewSteps` are shares of them. */
export type Score = {
  readonly minutes: number;
  readonly steps: number;
  readonly cured: number;
  readonly inFewSteps: number;
};

export type Row = {
  readonly symptom: TopicId;
  readonly van: VanId;
  readonly causes: number;
  readonly hirers: number;
  /** Expected minutes, computed and not played: of the best of all walks, and of ours. */
  readonly exact: { readonly optimum: number; readonly ours: number };
  readonly scores: Readonly<Record<Rival, Score>>;
  readonly offByTwo: OffByTwo;
};

export type SimulateOptions = {
  /** Hirers for each symptom and van. */
  readonly hirers: number;
  readonly seed: number;
  /** The price of a pass in minutes. */
  readonly passMinutes: number;
  /** The chance that a simulated answer is mistaken, instead of what each check says of itself. */
  readonly error?: number;
};

export type Simulate = (symptom: TopicId, van: VanId, causes: readonly ScopedCause[]) => Row;

/** Plays simulated hirers through one symptom of one van. The same options give the same rows, in whatever order. */
export function createSimulator(options: SimulateOptions): Simulate {
  // Vans often share a symptom's causes to the letter; the best of all walks is then the same.
  const solved = new Map<string, Optimum>();
  return (symptom, van, causes) => {
    const problem = problemOf(causes, options.passMinutes);
    const key = JSON.stringify(problem);
    const best = solved.get(key) ?? optimum(problem);
    solved.set(key, best);
    return simulate(symptom, van, causes, problem, best, options);
  };
}

function simulate(
  symptom: TopicId,
  van: VanId,
  causes: readonly ScopedCause[],
  problem: Problem,
  best: Optimum,
  { hirers, seed, passMinutes, error }: SimulateOptions,
): Row {
  const world =
    error === undefined
      ? problem
      : problemOf(
          causes.map((cause) => answeringWrong(cause, error)),
          passMinutes,
        );
  const random = seeded(seed ^ hashOf(`${symptom} ${van}`));
  const policies: Record<Rival, Policy> = {
    optimum: best.policy,
    ours: remembering(problem, ours),
    fixesOnly: likeliestFixes,
    checkThenFix: likeliestChecks,
    listed,
    random: atRandom(random),
  };
  const drawn = Array.from({ length: hirers }, () => drawHirer(world, random));
  return {
    symptom,
    van,
    causes: causes.length,
    hirers,
    exact: { optimum: best.minutes, ours: expectedMinutes(problem, policies.ours) },
    scores: scoresOf(problem, policies, drawn),
    offByTwo: offByTwo(problem, policies),
  };
}

/** How far mean minutes lie under each rival's: 0.3 is 30 per cent under. */
export type Under = {
  readonly underFixesOnly: number;
  readonly underCheckThenFix: number;
  readonly underListed: number;
  readonly underRandom: number;
};

export type Summary = Under & {
  /** How far our expected minutes lie over those of the best of all walks, all rows pooled: 0.01 is one per cent. */
  readonly overOptimum: number;
  /** The same for the row where it is most. */
  readonly overOptimumAtMost: number;
  /** The same as played: the best walk and ours met the same hirers. */
  readonly overOptimumPlayed: number;
  /** What the best of all walks would reach: no walk lies further under. */
  readonly best: Under;
  /** Share of hirers whose walk ended, cured or passed, in at most {@link FEW_STEPS} steps. */
  readonly inFewSteps: number;
  readonly means: Readonly<Record<Rival, Score>>;
  /** Where every prior is off by two, expected: the mean of all combinations, and each row's worst for ours. */
  readonly offByTwo: {
    readonly mean: Minutes;
    readonly worst: Minutes;
    readonly underFixesOnly: number;
    readonly underCheckThenFix: number;
    /** Negative where ours takes longer. */
    readonly worstUnderCheckThenFix: number;
    /** Share of all combinations of all rows in which ours takes fewer minutes. */
    readonly betterThanFixesOnly: number;
    readonly betterThanCheckThenFix: number;
  };
  readonly rows: number;
  readonly hirers: number;
};

/**
 * All rows pooled: each hirer counts once.
 *
 * @param rows At least one.
 */
export function summarise(rows: readonly Row[]): Summary {
  const exact = { optimum: 0, ours: 0 };
  for (const row of rows) {
    exact.optimum += row.exact.optimum * row.hirers;
    exact.ours += row.exact.ours * row.hirers;
  }
  const means = pooled(rows, (row) => row.scores);
  return {
    overOptimum: exact.ours / exact.optimum - 1,
    overOptimumAtMost: Math.max(...rows.map(overOptimum)),
    overOptimumPlayed: means.ours.minutes / means.optimum.minutes - 1,
    ...underRivals(means, 'ours'),
    best: underRivals(means, 'optimum'),
    inFewSteps: means.ours.inFewSteps,
    means,
    offByTwo: pooledOffByTwo(rows),
    rows: rows.length,
    hirers: rows.reduce((sum, row) => sum + row.hirers, 0),
  };
}

export function overOptimum({ exact }: Row): number {
  return exact.ours / exact.optimum - 1;
}

function scoresOf(
  problem: Problem,
  policies: Readonly<Record<Rival, Policy>>,
  hirers: readonly Hirer[],
): Record<Rival, Score> {
  return forRivals((rival) => {
    let [minutes, steps, cured, few] = [0, 0, 0, 0];
    for (const hirer of hirers) {
      const played = play(problem, policies[rival], hirer);
      minutes += played.minutes;
      steps += played.steps;
      cured += played.cured ? 1 : 0;
      few += played.steps <= FEW_STEPS ? 1 : 0;
    }
    const n = hirers.length;
    return { minutes: minutes / n, steps: steps / n, cured: cured / n, inFewSteps: few / n };
  });
}

function pooled(rows: readonly Row[], scores: (row: Row) => Readonly<Record<Rival, Score>>): Record<Rival, Score> {
  const hirers = rows.reduce((sum, row) => sum + row.hirers, 0);
  const mean = (rival: Rival, field: keyof Score) =>
    rows.reduce((sum, row) => sum + scores(row)[rival][field] * row.hirers, 0) / hirers;
  return forRivals((rival) => ({
    minutes: mean(rival, 'minutes'),
    steps: mean(rival, 'steps'),
    cured: mean(rival, 'cured'),
    inFewSteps: mean(rival, 'inFewSteps'),
  }));
}

function pooledOffByTwo(rows: readonly Row[]): Summary['offByTwo'] {
  const meanOf = (pick: (row: Row) => number) => rows.reduce((sum, row) => sum + pick(row), 0) / rows.length;
  const mean = forFixed((rival) => meanOf((row) => row.offByTwo.mean[rival]));
  const worst = forFixed((rival) => meanOf((row) => row.offByTwo.worst[rival]));
  return {
    mean,
    worst,
    underFixesOnly: 1 - mean.ours / mean.fixesOnly,
    underCheckThenFix: 1 - mean.ours / mean.checkThenFix,
    worstUnderCheckThenFix: 1 - worst.ours / worst.checkThenFix,
    betterThanFixesOnly: meanOf((row) => row.offByTwo.betterThan.fixesOnly),
    betterThanCheckThenFix: meanOf((row) => row.offByTwo.betterThan.checkThenFix),
  };
}

function underRivals(means: Readonly<Record<Rival, Score>>, whose: 'ours' | 'optimum'): Under {
  const under = (rival: Rival) => 1 - means[whose].minutes / means[rival].minutes;
  return {
    underFixesOnly: under('fixesOnly'),
    underCheckThenFix: under('checkThenFix'),
    underListed: under('listed'),
    underRandom: under('random'),
  };
}

function forRivals<T>(make: (rival: Rival) => T): Record<Rival, T> {
  return {
    optimum: make('optimum'),
    ours: make('ours'),
    fixesOnly: make('fixesOnly'),
    checkThenFix: make('checkThenFix'),
    listed: make('listed'),
    random: make('random'),
  };
}

function answeringWrong(cause: ScopedCause, wrong: number): ScopedCause {
  return cause.check === undefined ? cause : { ...cause, check: { ...cause.check, wrong } };
}

/** A policy that depends on the place alone, asked once for each place. */
function remembering(problem: Problem, policy: Policy): Policy {
  const known = new Map<number, ReturnType<Policy>>();
  return (_, at) => {
    const key = keyOf(problem, at);
    const action = known.get(key) ?? policy(problem, at);
    known.set(key, action);
    return action;
  };
}

function hashOf(text: string): number {
  let hash = 2166136261;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 16777619);
  return hash >>> 0;
}
