import type { PartId } from '../basics/ids.ts';
import { codeNameOf } from '../basics/learning.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import type { GlossaryLine } from '../language/glossary.ts';
import { classKey } from './classes.ts';
import { type Naming, namings } from './links.ts';
import { type TrainingLine, trainingLines } from './training-lines.ts';

/** Everything training looks at, as plain data: it can be sent to a worker. */
export type TrainingInput = {
  readonly lines: readonly TrainingLine[];
  readonly glossary: readonly GlossaryLine[];
  /** What parts are called. */
  readonly namings: readonly Naming[];
  /** For each topic's class the names of the groups it shares weights with. */
  readonly groups: Readonly<Record<string, readonly string[]>>;
  /** For each van the classes of the topics it has, and its parts. */
  readonly vans: Readonly<Record<string, { readonly keys: readonly string[]; readonly parts: readonly PartId[] }>>;
};

export function trainingInput(
  knowledge: Pick<Knowledge, 'topics' | 'talk' | 'glossary' | 'vans' | 'parts'>,
): TrainingInput {
  const groups: Record<string, readonly string[]> = {};
  for (const topic of knowledge.topics.values()) {
    groups[classKey({ kind: 'topic', topic: topic.id })] = [`system/${topic.system}`, `kind/${topic.kind}`];
  }
  const vans: Record<string, TrainingInput['vans'][string]> = {};
  for (const van of knowledge.vans.values()) {
    const keys = [...van.topics].map((topic) => classKey({ kind: 'topic', topic }));
    vans[van.id] = { keys, parts: [...van.parts] };
  }
  const glossary = knowledge.glossary.words.map(({ says, means }) => ({ says, means }));
  return { lines: trainingLines(knowledge), glossary, namings: namings(knowledge), groups, vans };
}

/**
 * A short name for exactly this input and the code that learns from it (FNV-1a, two lanes of 32 bits, in hex): models are
 * kept under it. What each van has does not change the weights and is left out.
 */
export function inputHash({ lines, glossary, namings, groups }: TrainingInput, code = codeNameOf('match')): string {
  let low = 0x811c9dc5;
  let high = 0x01000193;
  const add = (text: string): void => {
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      low = Math.imul(low ^ code, 0x01000193);
      high = Math.imul(high ^ code, 0x85ebca6b);
    }
  };
  add(JSON.stringify([code, glossary, namings, groups]));
  for (const { text, key, writer } of lines) add(`${key}\t${writer}\t${text}\n`);
  return [low, high].map((lane) => (lane >>> 0).toString(16).padStart(8, '0')).join('');
}
