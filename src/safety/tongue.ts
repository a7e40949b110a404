import type { TopicId } from '../basics/ids.ts';
import { GUARDS, type Guard, type ReadingData, type TongueData } from '../knowledge/safety-schema.ts';
import { type Guarded, guardedBy } from './guards.ts';
import { createLexicon, type Hit, type Hits, type Lexicon, listed } from './lexicon.ts';
import { byFirstTerm, type Company, meetings, type Rule, rulesOf, WITHIN } from './rules.ts';
import type { SenseFinder } from './senses.ts';
import type { WordList } from './spelling.ts';
import type { Level } from './types.ts';
import type { Word } from './words.ts';

/** A rule that was met. `to` is the word after the last it spans. */
export type Alarm = {
  readonly hazard: TopicId;
  readonly level: Level | null;
  readonly firm: boolean;
  /** The rule as written, hazard apart. */
  readonly rule: string;
  readonly terms: number;
  readonly to: number;
  readonly why: string;
};

/** What one language makes of a text. `aside` says what was seen and does not count, and why. */
export type TongueReading = {
  readonly alarms: readonly Alarm[];
  readonly aside: readonly string[];
  /** Names of the groups that stand there, sorted: neither part of a saying nor set aside by a guard. */
  readonly groups: readonly string[];
  /** What set something aside, with the group it set aside: 'negated smell', sorted. */
  readonly guarded: readonly string[];
  /** Whether a rule was met that a guard, or something harmless beside it, sets aside. */
  readonly stopped: boolean;
  /** The words in the reach of a negation. */
  readonly negated: ReadonlySet<number>;
};

export type TongueReader = Pick<Lexicon, 'parted' | 'mended' | 'meant'> & {
  readonly senses: SenseFinder;
  readonly read: (words: readonly Word[]) => TongueReading;
};

const NOTHING: TongueReading = { alarms: [], aside: [], groups: [], guarded: [], stopped: false, negated: new Set() };

const NO_SENSES: SenseFinder = () => [];

/** Names of the groups that are no group of the data: a guard's words, and all sayings of one phrase. */
const guardGroup = (guard: Guard) => `(${guard})`;
const SAYING = '(saying)';
const TURN = '(turn)';
const START = '(start)';

/**
 * Compiles one language of the safety reading.
 *
 * @param right Words that look like a danger word and are none.
 */
export function createTongueReader(
  tongue: TongueData,
  hazards: ReadingData['hazards'],
  right: WordList,
  senses: SenseFinder = NO_SENSES,
): TongueReader {
  const sayings = listed(tongue.idioms);
  const groups = new Map<string, readonly string[]>();
  for (const [name, phrases] of Object.entries(tongue.groups)) groups.set(name, listed(phrases));
  for (const guard of GUARDS) groups.set(guardGroup(guard), listed(tongue.guards[guard]));
  groups.set(TURN, listed(tongue.turns));
  groups.set(START, listed(tongue.starts));
  groups.set(
    SAYING,
    sayings.filter((saying) => !saying.includes('+')),
  );
  const together = sayings.filter((saying) => saying.includes('+')).map((saying) => saying.split(/ *\+ */));
  for (const term of together.flat()) if (!groups.has(term)) groups.set(term, [term]);

  const lexicon = createLexicon({ groups, right, fillers: new Set(listed(tongue.fillers)) });
  const number = (name: string) => lexicon.groups.get(name) ?? -1;
  const idioms = byFirstTerm(
    together.map((terms): Company => ({ terms: terms.map(number), within: WITHIN, across: false })),
  );
  const rules = byFirstTerm(rulesOf(hazards, lexicon.groups));
  const guardGroups = {
    guards: new Map(GUARDS.map((guard) => [guard, number(guardGroup(guard))] as const)),
    turn: number(TURN),
    start: number(START),
  };
  const names = new Map(Object.keys(tongue.groups).map((name) => [number(name), name] as const));

  const read = (words: readonly Word[]): TongueReading => {
    const hits = lexicon.find(words);
    if (hits.size === 0) return NOTHING;
    const aside: string[] = [];
    const hidden = hide(words, hits, number(SAYING), idioms, aside);
    const guarded = guardedBy(guardGroups, words, hits, hidden);
    const alarms: Alarm[] = [];
    let anyStopped = false;
    for (const group of hits.keys()) {
      for (const rule of rules.get(group) ?? []) {
        const met = words.length > rule.most ? [] : meetings(rule, words, hits, hidden);
        if (met.length === 0) continue;
        const stopped = met.map((each) => stop(rule, each, guarded, hits));
        const at = stopped.indexOf(null);
        const each = met[at === -1 ? 0 : at] ?? [];
        const why = `${rule.hazard}: '${said(each, words)}' (${rule.name})`;
        if (at === -1) {
          aside.push(`${why}: ${WHY[stopped[0] ?? 'company']}`);
          anyStopped = true;
        } else alarms.push(alarmOf(rule, each, why));
      }
    }
    const negated = new Set(words.map((_, at) => at).filter((at) => guarded(at).has('negated')));
    return { alarms, aside, ...seen(hits, hidden, guarded, names), stopped: anyStopped, negated };
  };
  return {
    read,
    parted: lexicon.parted,
    mended: lexicon.mended,
    meant: lexicon.meant,
    senses,
  };
}

/** The words that are part of a saying. */
function hide(
  words: readonly Word[],
  hits: Hits,
  saying: number,
  idioms: ReadonlyMap<number, readonly Company[]>,
  aside: string[],
): ReadonlySet<number> {
  const hidden = new Set<number>();
  const hideAll = (met: readonly Hit[]) => {
    aside.push(`a saying: ${said(met, words)}`);
    for (const hit of met) for (let at = hit.from; at < hit.to; at++) hidden.add(at);
  };
  for (const hit of hits.get(saying) ?? []) hideAll([hit]);
  for (const group of hits.keys()) {
    for (const idiom of idioms.get(group) ?? []) for (const met of meetings(idiom, words, hits, NO_WORDS)) hideAll(met);
  }
  return hidden;
}

const NO_WORDS: ReadonlySet<number> = new Set();

function alarmOf({ hazard, level, firm, name, terms }: Rule, met: readonly Hit[], why: string): Alarm {
  return { hazard, level, firm, rule: name, terms: terms.length, to: Math.max(...met.map((hit) => hit.to)), why };
}

/** The groups of a text, parted into those that count and those that a guard set aside. */
function seen(
  hits: Hits,
  hidden: ReadonlySet<number>,
  guarded: Guarded,
  names: ReadonlyMap<number, string>,
): Pick<TongueReading, 'groups' | 'guarded'> {
  const groups: string[] = [];
  const set = new Set<string>();
  for (const [group, list] of hits) {
    const name = names.get(group);
    if (name === undefined) continue;
    const shown = list.filter((hit) => !hidden.has(hit.from));
    if (shown.some((hit) => guarded(hit.from).size === 0)) groups.push(name);
    else for (const hit of shown) for (const guard of guarded(hit.from)) set.add(`${guard} ${name}`);
  }
  return { groups: groups.sort(), guarded: [...set].sort() };
}

type Stop = Guard | 'company';

/** What sets aside a rule that was met, or null. */
function stop(rule: Rule, met: readonly Hit[], guarded: Guarded, hits: Hits): Stop | null {
  if (rule.unless.some((group) => hits.has(group))) return 'company';
  for (const hit of met) for (const guard of guarded(hit.from)) if (!rule.despite.has(guard)) return guard;
  return null;
}

const WHY: Readonly<Record<Stop, string>> = {
  company: 'something harmless beside it',
  negated: 'it says that there is none',
  question: 'a question about it',
  purpose: 'asks what it is for',
  supposed: 'only supposed',
  past: 'long ago',
  elsewhere: 'somewhere else',
};

function said(met: readonly Hit[], words: readonly Word[]): string {
  return [...met]
    .sort((a, b) => a.from - b.from)
    .map((hit) =>
      words
        .slice(hit.from, hit.to)
        .map((word) => word.text)
        .join(' '),
    )
    .join(' ... ');
}
