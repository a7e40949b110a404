import type { TopicId } from '../basics/ids.ts';
import type { Guard, TongueData } from '../knowledge/safety-schema.ts';
import { createGuardReader, type Guarded } from './guards.ts';
import { createLexicon, type Hit } from './lexicon.ts';
import { groupsOf, type Met, meetings, type Rule, rulesOf } from './rules.ts';
import type { Level } from './types.ts';
import type { Word } from './words.ts';

/** A rule that was met and stands. `from` and `to` are the words it spans. */
export type Alarm = {
  readonly hazard: TopicId;
  readonly level: Level | null;
  readonly terms: number;
  readonly from: number;
  readonly to: number;
  readonly why: string;
};

/** What one language's rules make of a text. `aside` says what was seen and does not count, and why. */
export type TongueReading = { readonly alarms: readonly Alarm[]; readonly aside: readonly string[] };
export type TongueReader = {
  readonly read: (words: readonly Word[]) => TongueReading;
  readonly parted: (words: readonly Word[]) => readonly Word[];
  readonly mended: readonly string[];
};

/**
 * Compiles one language of the safety reading.
 *
 * @param right Words that look like a danger word and are none.
 */
export function createTongueReader(
  tongue: TongueData,
  right: ReadonlySet<string>,
  textOf: (word: Word) => string,
): TongueReader {
  const lexicon = createLexicon(groupsOf(tongue), right, textOf);
  const { idioms, hazards } = rulesOf(tongue, lexicon.groups);
  const guardsOf = createGuardReader(tongue, textOf);
  const read = (words: readonly Word[]): TongueReading => {
    const hits = lexicon.find(words);
    if (hits.size === 0) return { alarms: [], aside: [] };
    const aside: string[] = [];
    const hidden = new Set<number>();
    for (const idiom of idioms) {
      for (const met of meetings(idiom, words, hits, () => true)) {
        if (idiom.unless.some((group) => hits.has(group))) continue;
        aside.push(`a saying: ${said(met, words)}`);
        for (const hit of met.hits) for (let at = hit.from; at < hit.to; at++) hidden.add(at);
      }
    }
    const guarded = guardsOf(words, hidden);
    const alarms: Alarm[] = [];
    for (const rule of hazards) {
      const met = meetings(rule, words, hits, (hit) => !hidden.has(hit.from));
      if (met.length === 0) continue;
      const stopped = met.map((each) => reasonAside(each, guarded, hits));
      const at = stopped.indexOf(null);
      const each = met[at === -1 ? 0 : at] as Met;
      if (at === -1) aside.push(`${rule.hazard ?? ''}: ${said(each, words)} (${rule.name}): ${stopped[0]}`);
      else alarms.push(alarmOf(each, words));
    }
    return { alarms, aside };
  };
  return { read, parted: lexicon.parted, mended: lexicon.mended };
}

/** Why a rule that was met does not stand, or null. */
function reasonAside(met: Met, guarded: Guarded, hits: ReadonlyMap<number, readonly Hit[]>): string | null {
  if (met.rule.unless.some((group) => hits.has(group))) return 'something harmless beside it';
  for (const hit of met.hits) {
    for (const guard of guarded(hit.from)) if (!met.rule.despite.has(guard)) return WHY[guard];
  }
  return null;
}

const WHY: Readonly<Record<Guard, string>> = {
  negated: 'it says that there is none',
  question: 'a question about it',
  supposed: 'only supposed',
  past: 'long ago',
  elsewhere: 'somewhere else',
};

function alarmOf(met: Met, words: readonly Word[]): Alarm {
  const rule: Rule = met.rule;
  return {
    hazard: rule.hazard ?? '',
    level: rule.level,
    terms: rule.terms.length,
    from: Math.min(...met.hits.map((hit) => hit.from)),
    to: Math.max(...met.hits.map((hit) => hit.to)),
    why: `${rule.hazard}: '${said(met, words)}' met the rule ${rule.name}`,
  };
}

function said(met: Met, words: readonly Word[]): string {
  return [...met.hits]
    .sort((a, b) => a.from - b.from)
    .map((hit) =>
      words
        .slice(hit.from, hit.to)
        .map((word) => word.text)
        .join(' '),
    )
    .join(' ... ');
}
