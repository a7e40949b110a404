import type { TopicId } from '../basics/ids.ts';
import type { ScopedCause } from '../knowledge/knowledge.ts';
import { afterAnswer, afterFailed, type Masses } from './beliefs.ts';
import { lookAhead } from './look-ahead.ts';
import { choose, type NextOptions } from './next-step.ts';
import { everythingOpen, withoutCheck, withoutFix } from './plan.ts';
import { type Problem, problemOf } from './problem.ts';

/** A symptom the message may mean, with the matcher's probability and its causes in this van. */
export type Entry = {
  readonly symptom: TopicId;
  readonly probability: number;
  readonly causes: readonly ScopedCause[];
};

/** `which`: ask which of these it is, likeliest first. `walk`: the question would cost more than it saves. */
export type Apart =
  | { readonly kind: 'walk'; readonly symptom: TopicId }
  | { readonly kind: 'which'; readonly symptoms: readonly TopicId[] };

/** Reading a short list and pressing one of it. */
const WHICH_MINUTES = 0.5;
const MOST_SYMPTOMS = 3;

/**
 * Whether to ask which symptom it is, by the same rule as every other step: the least expected minutes to cure.
 * Asked, the walk begins on the right one. Not asked, it begins on the likeliest; where that is wrong its minutes are
 * lost, and it ends with people.
 *
 * @param entries At least one; probabilities need not sum to 1.
 */
export function tellApart(entries: readonly [Entry, ...Entry[]], { passMinutes, chances }: NextOptions): Apart {
  const ranked = [...entries].sort((a, b) => b.probability - a.probability).slice(0, MOST_SYMPTOMS);
  const [likeliest = entries[0], ...others] = ranked;
  const total = ranked.reduce((sum, entry) => sum + entry.probability, 0);
  const shareOf = (entry: Entry) => (total === 0 ? 1 / ranked.length : entry.probability / total);
  const inVain = minutesInVain(problemOf(likeliest.causes, passMinutes, chances));
  const lost = others.reduce((sum, entry) => {
    const right = problemOf(entry.causes, passMinutes, chances);
    return sum + shareOf(entry) * (inVain + minutesOfPass(right) - minutesOf(right));
  }, 0);
  if (lost <= WHICH_MINUTES) return { kind: 'walk', symptom: likeliest.symptom };
  return { kind: 'which', symptoms: ranked.map((entry) => entry.symptom) };
}

/** The expected minutes where people are asked at once. */
function minutesOfPass({ prior, pass }: Problem): number {
  return prior.reduce((sum, chance, h) => sum + chance * (pass[h] ?? 0), 0);
}

/** The expected minutes of a walk begun on the right symptom. */
function minutesOf(problem: Problem): number {
  return lookAhead(problem, Float64Array.from(problem.prior), everythingOpen(problem), 1).minutes;
}

/** The minutes of a walk on which every check says no and no fix helps, until it would pass. */
function minutesInVain(problem: Problem): number {
  let masses: Masses = Float64Array.from(problem.prior);
  let open = everythingOpen(problem);
  for (let minutes = 0; ; ) {
    const action = choose(problem, masses, open);
    if (action.kind === 'pass') return minutes;
    const { i } = action;
    if (action.kind === 'check') {
      minutes += problem.checks[i]?.minutes ?? 0;
      masses = afterAnswer(problem, masses, i, 'no');
      open = withoutCheck(problem, open, i);
    } else {
      minutes += problem.fixes[i]?.minutes ?? 0;
      masses = afterFailed(problem, masses, i);
      open = withoutFix(problem, open, i);
    }
  }
}
