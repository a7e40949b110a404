import { stem } from './stems.ts';
import { tokens } from './tokens.ts';

/** One line of the firm's glossary: what hirers say, and what the firm calls it. */
export type GlossaryLine = { readonly says: string; readonly means: string };

/** `means`: each alternative of 'fuse or circuit breaker' as its own words. */
export type Meaning = { readonly length: number; readonly means: readonly (readonly string[])[] };

/** The longest saying that begins at a word, or null. Looks at stems, so 'loos' is 'loo'. */
export type Glossary = (stems: readonly string[], at: number) => Meaning | null;

type Entry = { readonly says: readonly string[]; readonly meaning: Meaning };

/** Indexes the glossary by the first stem of each saying. Of two lines with the same saying the first counts. */
export function createGlossary(lines: Iterable<GlossaryLine>): Glossary {
  const byFirst = new Map<string, Entry[]>();
  for (const line of lines) {
    const says = tokens(line.says).map((token) => stem(token.text));
    const first = says[0];
    if (first === undefined) continue;
    const means = alternatives(line.means);
    const entry = { says, meaning: { length: says.length, means } };
    byFirst.set(first, [...(byFirst.get(first) ?? []), entry]);
  }
  for (const list of byFirst.values()) list.sort((a, b) => b.says.length - a.says.length);
  return (stems, at) => {
    const entries = byFirst.get(stems[at] ?? '') ?? [];
    return entries.find((entry) => entry.says.every((word, i) => stems[at + i] === word))?.meaning ?? null;
  };
}

function alternatives(means: string): readonly (readonly string[])[] {
  return means
    .split(/\s+or\s+|[,;:()/]/)
    .map((side) => tokens(side).map((token) => token.text))
    .filter((words) => words.length > 0);
}
