import type { TopicId } from '../basics/ids.ts';
import type { Guard, RuleData, TongueData } from '../knowledge/safety-schema.ts';
import type { Hit } from './lexicon.ts';
import type { Level } from './types.ts';
import type { Word } from './words.ts';

/** A rule with its groups by number. `hazard` is null for an idiom, which hides words instead. */
export type Rule = {
  readonly hazard: TopicId | null;
  /** As written, for `ask --why`. */
  readonly name: string;
  readonly terms: readonly number[];
  readonly within: number;
  readonly ordered: boolean;
  readonly across: boolean;
  readonly unless: readonly number[];
  readonly despite: ReadonlySet<Guard>;
  readonly level: Level | null;
};

/** Where a rule was met: one hit for each term. */
export type Met = { readonly rule: Rule; readonly hits: readonly Hit[] };

const WITHIN = 9;
/** Hits of one term beyond this many are repetitions. */
const MOST_TRIED = 6;

/** Every group a tongue needs, by name: its own, and one for each phrase that a rule gives in words. */
export function groupsOf(tongue: TongueData): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, readonly string[]>(Object.entries(tongue.groups));
  for (const rules of [tongue.idioms, ...Object.values(tongue.hazards)]) {
    for (const rule of rules) {
      const { all, unless } = plain(rule);
      for (const term of [...all, ...unless]) if (!groups.has(term)) groups.set(term, [term]);
    }
  }
  return groups;
}

/** The rules of a tongue, idioms apart. */
export function rulesOf(
  tongue: TongueData,
  groups: ReadonlyMap<string, number>,
): { idioms: readonly Rule[]; hazards: readonly Rule[] } {
  const rule = (hazard: TopicId | null) => (data: RuleData) => compiled(hazard, data, groups);
  return {
    idioms: tongue.idioms.map(rule(null)),
    hazards: Object.entries(tongue.hazards).flatMap(([hazard, rules]) => rules.map(rule(hazard))),
  };
}

type PlainRule = {
  all: readonly string[];
  within: number;
  ordered: boolean;
  across: boolean;
  unless: readonly string[];
  despite: readonly Guard[];
  level: Level | null;
};

function plain(rule: RuleData): PlainRule {
  if ('all' in rule) return { ...rule, within: rule.within ?? (rule.across ? 40 : WITHIN), level: rule.level ?? null };
  return { all: rule, within: WITHIN, ordered: false, across: false, unless: [], despite: [], level: null };
}

function compiled(hazard: TopicId | null, data: RuleData, groups: ReadonlyMap<string, number>): Rule {
  const { all, within, ordered, across, unless, despite, level } = plain(data);
  const number = (term: string) => groups.get(term) ?? -1;
  return {
    hazard,
    name: all.join(ordered ? ' > ' : ' + '),
    terms: all.map(number),
    within,
    ordered,
    across,
    unless: unless.map(number),
    despite: new Set(despite),
    level,
  };
}

/**
 * All ways to meet a rule, up to a few. Its hits do not overlap, and stand in one sentence unless the rule says otherwise.
 *
 * @param usable Which hits count.
 */
export function meetings(
  rule: Rule,
  words: readonly Word[],
  hits: ReadonlyMap<number, readonly Hit[]>,
  usable: (hit: Hit) => boolean,
): readonly Met[] {
  const choices: (readonly Hit[])[] = [];
  for (const term of rule.terms) {
    const found = hits.get(term)?.filter(usable) ?? [];
    if (found.length === 0) return [];
    choices.push(found.slice(0, MOST_TRIED));
  }
  const met: Met[] = [];
  const extend = (chosen: readonly Hit[]): void => {
    const next = choices[chosen.length];
    if (next === undefined) {
      met.push({ rule, hits: chosen });
      return;
    }
    for (const hit of next) if (fits(hit, chosen, rule, words)) extend([...chosen, hit]);
  };
  extend([]);
  return met;
}

function fits(hit: Hit, chosen: readonly Hit[], rule: Rule, words: readonly Word[]): boolean {
  for (const other of chosen) {
    if (hit.from < other.to && other.from < hit.to) return false;
    if (rule.ordered && hit.from < other.to) return false;
    if (Math.max(hit.to, other.to) - Math.min(hit.from, other.from) > rule.within) return false;
    if (!rule.across && words[hit.from]?.sentence !== words[other.from]?.sentence) return false;
  }
  return true;
}
