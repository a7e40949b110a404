import { KINDRED_WORDS } from './kindred-words.ts';
import { stem } from './stems.ts';
import { tokens } from './tokens.ts';

type Saying = { readonly stems: readonly string[]; readonly meaning: string };

/** The sayings by their first stem, read once. */
let sayings: ReadonlyMap<string, readonly Saying[]> | null = null;

/**
 * What a text's words come to in plain terms: 'the tank stinks' -> 'smell', 'tank'. Strangers who avoid each other's
 * words often still share these.
 *
 * @param stems Of the text's words, in order.
 * @returns     Each meaning once, in the order found.
 */
export function meaningsOf(stems: readonly string[]): readonly string[] {
  sayings ??= readSayings();
  const found = new Set<string>();
  for (let at = 0; at < stems.length; at++) {
    for (const saying of sayings.get(stems[at] as string) ?? []) {
      if (saying.stems.every((word, i) => stems[at + i] === word)) found.add(saying.meaning);
    }
  }
  return [...found];
}

/** The words of the list, for a speller that must not change them. */
export function kindredWords(): readonly string[] {
  return [...KINDRED_WORDS.matchAll(/[a-z]+/g)].map(([word]) => word);
}

function readSayings(): ReadonlyMap<string, readonly Saying[]> {
  const byFirst = new Map<string, Saying[]>();
  for (const line of KINDRED_WORDS.trim().split('\n')) {
    const colon = line.indexOf(':');
    const meaning = line.slice(0, colon);
    for (const said of line.slice(colon + 1).split(',')) {
      const stems = tokens(said).map((token) => stem(token.text));
      const first = stems[0];
      if (first === undefined) continue;
      const list = byFirst.get(first) ?? [];
      if (list.length === 0) byFirst.set(first, list);
      list.push({ stems, meaning });
    }
  }
  return byFirst;
}
