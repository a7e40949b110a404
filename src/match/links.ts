import type { PartId } from '../basics/ids.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { stem } from '../language/stems.ts';
import { tokens } from '../language/tokens.ts';

/** What hirers call a part: its name, its other names, the names of what one presses or reads on it, glossary words. */
export type Naming = { readonly says: string; readonly part: PartId; readonly role: PartId };

/** One naming found in a text. `parts`: all that go by this name; vans differ in which they have. */
export type Mention = { readonly parts: readonly PartId[]; readonly roles: readonly PartId[] };

export type Linker = (stems: readonly string[]) => readonly Mention[];

/** All that parts are called, in the graph's order. `role` is what the part is a variant of, at the top. */
export function namings({ parts, glossary }: Pick<Knowledge, 'parts' | 'glossary'>): readonly Naming[] {
  const roleOf = (id: PartId): PartId => {
    const role = parts.get(id)?.is;
    return role === undefined ? id : roleOf(role);
  };
  const all: Naming[] = [];
  const add = (says: string, part: PartId) => all.push({ says, part, role: roleOf(part) });
  for (const part of parts.values()) {
    for (const says of [part.name, ...part.also]) add(says, part.id);
    for (const control of Object.values(part.controls)) {
      for (const says of [control.name, ...control.also]) add(says, part.id);
    }
  }
  for (const { says, part } of glossary.words) if (part !== undefined) add(says, part);
  return all;
}

/** Articles and the like: 'the flap in the toilet' and 'flap in toilet' are one name. */
const SKIPPED = new Set(['the', 'a', 'an', 'our', 'my', 'your', 'its'].map(stem));

type Entry = { readonly says: readonly string[]; readonly parts: Set<PartId>; readonly roles: Set<PartId> };

/** Finds the namings in a text, the longest at each place. Names of several parts give one mention with all of them. */
export function createLinker(list: readonly Naming[]): Linker {
  const byText = new Map<string, Entry>();
  const byFirst = new Map<string, Entry[]>();
  for (const { says, part, role } of list) {
    const stems = tokens(says)
      .map((token) => stem(token.text))
      .filter((word) => !SKIPPED.has(word));
    const [first] = stems;
    if (first === undefined) continue;
    let entry = byText.get(stems.join(' '));
    if (entry === undefined) {
      entry = { says: stems, parts: new Set(), roles: new Set() };
      byText.set(stems.join(' '), entry);
      byFirst.set(first, [...(byFirst.get(first) ?? []), entry]);
    }
    entry.parts.add(part);
    entry.roles.add(role);
  }
  for (const entries of byFirst.values()) entries.sort((a, b) => b.says.length - a.says.length);
  return (stems) => {
    const words = stems.filter((word) => !SKIPPED.has(word));
    const found: Mention[] = [];
    for (let at = 0; at < words.length; ) {
      const entries = byFirst.get(words[at] as string) ?? [];
      const entry = entries.find(({ says }) => says.every((word, i) => words[at + i] === word));
      if (entry !== undefined) found.push({ parts: [...entry.parts], roles: [...entry.roles] });
      at += entry?.says.length ?? 1;
    }
    return found;
  };
}
