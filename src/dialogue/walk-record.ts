import type { Done, Walk } from '../faults/types.ts';
import { firstThatHolds } from '../knowledge/holds.ts';
import type { VanScope } from '../knowledge/knowledge.ts';
import type { Says } from '../knowledge/schema.ts';
import { fillSlots } from '../knowledge/slots.ts';
import type { Tried } from '../thread/thread.ts';
import type { Situation } from './draft.ts';

/** What was done on a walk, in the words the hirer read and gave. Observations from earlier in the thread are left out. */
export function stepRecord(walk: Walk, scope: VanScope, situation: Situation): Tried[] {
  const causes = scope.causes(walk.symptom);
  return walk.done.flatMap((done): Tried[] => {
    const cause = causes.find((each) => each.id === done.cause);
    if (cause === undefined || (done.kind === 'check' && done.earlier === true)) return [];
    const did =
      done.kind === 'check'
        ? stepWords(cause.check?.ask, scope, situation)
        : done.kind === 'fix'
          ? stepWords(done.byItself === true ? cause.check?.ask : cause.fix.do, scope, situation)
          : 'Stopped';
    return [{ did, answered: answered(done) }];
  });
}

/** The record as lines for the brief and for 'what have we tried'. */
export function triedLines(walk: Walk, scope: VanScope, situation: Situation): string[] {
  return stepRecord(walk, scope, situation).map(({ did, answered: came }) => `${did} - ${came}`);
}

/** A text of a check or fix as it is said in the van. */
export function stepWords(says: Says | undefined, scope: VanScope, { served, site }: Situation): string {
  const text = firstThatHolds(says, scope) ?? '';
  const { knowledge } = served;
  return fillSlots(text, { van: scope.data, parts: knowledge.parts, firm: knowledge.firm, site }).text;
}

/** The words of the step that is with the hirer; '' when there is none. */
export function stepNow({ symptom, now }: Walk, scope: VanScope, situation: Situation): string {
  const cause = scope.causes(symptom).find(({ id }) => id === now?.cause);
  return stepWords(now?.kind === 'check' ? cause?.check?.ask : cause?.fix.do, scope, situation);
}

function answered(done: Done): string {
  switch (done.kind) {
    case 'check':
      return done.answer === 'cannot-tell' ? 'cannot tell' : done.answer;
    case 'fix':
      if (done.byItself === true) return 'works again';
      return done.worked === null ? 'skipped' : done.worked ? 'worked' : 'no better';
    case 'stop':
      return done.said;
  }
}
