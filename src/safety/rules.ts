import type { TopicId } from '../basics/ids.ts';
import type { Guard, ReadingData, RuleData } from '../knowledge/safety-schema.ts';
import type { Hit, Hits } from './lexicon.ts';
import type { Level } from './types.ts';
import type { Word } from './words.ts';

/** Groups that must stand near each other. */
export type Company = { readonly terms: readonly number[]; readonly within: number; readonly across: boolean };

/** A rule with its groups by number. */
export type Rule = Company & {
  readonly hazard: TopicId;
  /** As written, for `ask --why`. */
  readonly name: string;
  readonly unless: readonly number[];
  readonly most: number;
  readonly firm: boolean;
  readonly despite: ReadonlySet<Guard>;
  readonly level: Level | null;
};

export const WITHIN = 9;
const WITHIN_ACROSS = 40;
const NO_GROUP = -1;
/** Hits of one term beyond this many are repetitions. */
const MOST_TRIED = 6;

/** The rules that a language has all the groups for. */
export function rulesOf(hazards: ReadingData['hazards'], groups: ReadonlyMap<string, number>): readonly Rule[] {
  return Object.entries(hazards).flatMap(([hazard, rules]) =>
    rules.map((rule) => compiled(hazard, rule, groups)).filter((rule) => !rule.terms.includes(NO_GROUP)),
  );
}

function compiled(hazard: TopicId, data: RuleData, groups: ReadonlyMap<string, number>): Rule {
  const number = (name: string) => groups.get(name) ?? NO_GROUP;
  return {
    hazard,
    name: data.all.join(' + '),
    terms: data.all.map(number),
    within: data.within ?? (data.across ? WITHIN_ACROSS : WITHIN),
    across: data.across,
    unless: data.unless.map(number).filter((group) => group !== NO_GROUP),
    most: data.most ?? Number.POSITIVE_INFINITY,
    firm: data.firm,
    despite: new Set(data.despite),
    level: data.level ?? null,
  };
}

/** Companies by the group each begins with, so that only those are looked at whose first group is there. */
export function byFirstTerm<T extends Company>(companies: readonly T[]): ReadonlyMap<number, readonly T[]> {
  const found = new Map<number, T[]>();
  for (const company of companies) {
    const first = company.terms[0] ?? NO_GROUP;
    found.set(first, [...(found.get(first) ?? []), company]);
  }
  return found;
}

/**
 * All ways to find groups together, up to a few: one hit for each, which do not overlap.
 *
 * @param hidden Words that are part of a saying and count for nothing.
 */
export function meetings(
  company: Company,
  words: readonly Word[],
  hits: Hits,
  hidden: ReadonlySet<number>,
): readonly (readonly Hit[])[] {
  if (!company.terms.every((term) => hits.has(term))) return [];
  const choices: (readonly Hit[])[] = [];
  for (const term of company.terms) {
    const found = hits.get(term)?.filter((hit) => !hidden.has(hit.from)) ?? [];
    if (found.length === 0) return [];
    choices.push(found.slice(0, MOST_TRIED));
  }
  const met: (readonly Hit[])[] = [];
  const extend = (chosen: readonly Hit[]): void => {
    const next = choices[chosen.length];
    if (next === undefined) met.push(chosen);
    else for (const hit of next) if (fits(hit, chosen, company, words)) extend([...chosen, hit]);
  };
  extend([]);
  return met;
}

function fits(hit: Hit, chosen: readonly Hit[], { within, across }: Company, words: readonly Word[]): boolean {
  for (const other of chosen) {
    if (hit.from < other.to && other.from < hit.to) return false;
    if (Math.max(hit.to, other.to) - Math.min(hit.from, other.from) > within) return false;
    if (!across && words[hit.from]?.sentence !== words[other.from]?.sentence) return false;
  }
  return true;
}
