import type { ScopedCause } from '../knowledge/knowledge.ts';
import { type Masses, massesOf, sum } from './beliefs.ts';
import { lookAhead } from './look-ahead.ts';
import { type Action, everythingOpen, type Open, withoutCheck, withoutFix } from './plan.ts';
import { type Chances, type Problem, problemOf } from './problem.ts';
import type { Next, Walk } from './types.ts';

export type NextOptions = {
  /** What a pass costs before people take it up: firm.yaml's passMinutes at this hour. */
  readonly passMinutes: number;
  readonly chances?: Partial<Chances>;
};

/** A check of at most so many minutes is done at a glance. */
const GLANCE_MINUTES = 1;
/** A fix of more minutes than this is work: the glance that could spare it comes first. */
const WORK_MINUTES = 3;
/** Looks two actions ahead while at most so many are open. */
const DEEP_ACTIONS = 13;
/** So sure of a cause, the glance would only delay its fix. */
const SURE = 0.75;

/**
 * The step with the least expected minutes to cure.
 *
 * @param causes The symptom's causes in this van ({@link ScopedCause}), the same as at the walk's other steps; answers
 *               about causes that have since gone from the graph are passed over.
 */
export function nextStep(walk: Walk, causes: readonly ScopedCause[], { passMinutes, chances }: NextOptions): Next {
  const cured = walk.done.find((done) => done.kind === 'fix' && done.worked === true);
  if (cured?.kind === 'fix') return { kind: 'fixed', cause: cured.byItself === true ? null : cured.cause };
  const problem = problemOf(causes, passMinutes, chances);
  const masses = massesOf(problem, causes, walk);
  const likely = likeliest(masses, causes);
  if (walk.done.some((done) => done.kind === 'stop')) return { kind: 'pass', why: 'stopped', likely };

  const open = openActions(problem, causes, walk);
  const action = choose(problem, masses, open);
  if (action.kind === 'pass') {
    return { kind: 'pass', why: (open.checks | open.fixes) === 0 ? 'nothing-left' : 'cheaper', likely };
  }
  const cause = causes[action.i]?.id;
  return cause === undefined ? { kind: 'pass', why: 'nothing-left', likely } : { kind: action.kind, cause };
}

/** The choice in numbers: look-ahead, with a glance before the work it could spare. */
export function choose(problem: Problem, masses: Masses, open: Open): Action {
  const { action } = lookAhead(problem, masses, open, depthFor(open));
  if (action.kind !== 'fix') return action;
  const { i } = action;
  const check = problem.checks[i];
  const glance =
    check !== null && check !== undefined && check.minutes <= GLANCE_MINUTES && (open.checks & (1 << i)) !== 0;
  const work = (problem.fixes[i]?.minutes ?? 0) > WORK_MINUTES;
  const sure = (masses[i] ?? 0) >= SURE * sum(masses);
  return glance && work && !sure ? { kind: 'check', i } : action;
}

/** Two actions ahead comes within 3 % of the best of all walks; past so many actions that would take too long. */
function depthFor(open: Open): number {
  return bitCount(open.checks) + bitCount(open.fixes) <= DEEP_ACTIONS ? 2 : 1;
}

function bitCount(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count++;
  return count;
}

/** Whatever was put to the hirer is never put again, whether it was answered, skipped or seen earlier. */
export function openActions(problem: Problem, causes: readonly ScopedCause[], walk: Walk): Open {
  return walk.done.reduce((open, done) => {
    const i = causes.findIndex((cause) => cause.id === done.cause);
    if (i < 0 || done.kind === 'stop') return open;
    return done.kind === 'check' ? withoutCheck(problem, open, i, done.earlier) : withoutFix(problem, open, i);
  }, everythingOpen(problem));
}

function likeliest(masses: Masses, causes: readonly ScopedCause[]) {
  const half = sum(masses) / 2;
  return causes.find((_, i) => (masses[i] ?? 0) > half)?.id ?? null;
}
