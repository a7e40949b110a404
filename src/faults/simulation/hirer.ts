import type { Problem } from '../problem.ts';
import type { Observation } from '../types.ts';
import type { Policy } from './optimum.ts';
import { answered, failedFix, startOf } from './position.ts';

/**
 * A simulated hirer: the true hypothesis, what each check would be answered, and whether each fix would cure.
 * Drawn whole before the walk, so that every policy meets the very same hirer.
 */
export type Hirer = {
  readonly truth: number;
  readonly answers: readonly Observation[];
  readonly cures: readonly boolean[];
};

export type Played = { readonly minutes: number; readonly steps: number; readonly cured: boolean };

/** Takes the same number of draws from `random` whatever comes, so that hirers match across error rates. */
export function drawHirer(world: Problem, random: () => number): Hirer {
  const truth = pick(world.prior, random());
  const answers = world.checks.map((check): Observation => {
    const tells = random() >= world.cannotTell;
    const yes = random() < (check?.yes[truth] ?? 0);
    return tells ? (yes ? 'yes' : 'no') : 'cannot-tell';
  });
  const cures = world.fixes.map((fix, i) => random() < (fix?.success ?? 0) && i === truth);
  return { truth, answers, cures };
}

/** One walk to its end. Checks and fixes are its steps; the pass at the end is not one. */
export function play(problem: Problem, policy: Policy, hirer: Hirer): Played {
  let at = startOf(problem);
  let minutes = 0;
  for (let steps = 0; ; steps++) {
    const action = policy(problem, at);
    if (action.kind === 'pass') return { minutes: minutes + (problem.pass[hirer.truth] ?? 0), steps, cured: false };
    const { i } = action;
    if (action.kind === 'check') {
      minutes += problem.checks[i]?.minutes ?? 0;
      at = answered(problem, at, i, hirer.answers[i] ?? 'cannot-tell');
    } else {
      minutes += problem.fixes[i]?.minutes ?? 0;
      if (hirer.cures[i] === true) return { minutes, steps: steps + 1, cured: true };
      at = failedFix(problem, at, i);
    }
  }
}

function pick(weights: readonly number[], share: number): number {
  let left = share * weights.reduce((sum, each) => sum + each, 0);
  for (let i = 0; i < weights.length; i++) {
    left -= weights[i] ?? 0;
    if (left < 0) return i;
  }
  return weights.length - 1;
}
