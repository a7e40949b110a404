import type { PartId, VanId } from '../basics/ids.ts';
import type { Clause, Says, When } from './schema.ts';

/** Just enough of a van, and of where it stands, to judge a condition. */
export type Holder = { readonly id: VanId; readonly parts: ReadonlySet<PartId>; readonly atKnownSite?: boolean };

/** The condition that the booking's site is known, so that {site.taps} and the like can be filled. */
export const SITE_KNOWN = 'site';

/** Whether a condition holds for a van; no condition always holds. */
export function holds(condition: When | undefined, van: Holder): boolean {
  if (condition === undefined) return true;
  const terms = typeof condition === 'string' ? [condition] : condition;
  return terms.every((term) => {
    const refused = term.startsWith('!');
    const name = refused ? term.slice(1) : term;
    return isSo(name, van) !== refused;
  });
}

function isSo(name: string, van: Holder): boolean {
  if (name === SITE_KNOWN) return van.atKnownSite === true;
  return name.startsWith('van:') ? name.slice(4) === van.id : van.parts.has(name);
}

/** The first clause that holds, or null. */
export function firstThatHolds(says: Says | undefined, van: Holder): string | null {
  if (says === undefined) return null;
  if (typeof says === 'string') return says;
  for (const clause of says) if (holds(conditionOf(clause), van)) return textOf(clause);
  return null;
}

/** Every clause that holds, in order. */
export function allThatHold(clauses: readonly Clause[], van: Holder): string[] {
  return clauses.filter((clause) => holds(conditionOf(clause), van)).map(textOf);
}

/** Every text of a clause list, whether it holds or not: for checks. */
export function everyText(says: Says | readonly Clause[] | undefined): string[] {
  if (says === undefined) return [];
  return typeof says === 'string' ? [says] : says.map(textOf);
}

/** The conditions named in a clause list. */
export function conditionsOf(says: Says | readonly Clause[] | undefined): string[] {
  if (says === undefined || typeof says === 'string') return [];
  return says.flatMap((clause) => conditionOf(clause) ?? []);
}

function textOf(clause: Clause): string {
  return typeof clause === 'string' ? clause : clause.say;
}

function conditionOf(clause: Clause): When | undefined {
  return typeof clause === 'string' ? undefined : clause.when;
}
