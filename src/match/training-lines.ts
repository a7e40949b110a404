import type { Knowledge } from '../knowledge/knowledge.ts';
import { classKey } from './classes.ts';
import type { ChatKind } from './types.ts';

/** One text to learn from. `writer` groups lines of one hand, so that they can be left out together. */
export type TrainingLine = { readonly text: string; readonly key: string; readonly writer: string };

/** Two lines with the same are one to learn from. */
export function identityOf({ key, text }: TrainingLine): string {
  return `${key}\t${text}`;
}

export function identities(lines: readonly TrainingLine[]): ReadonlySet<string> {
  return new Set(lines.map(identityOf));
}

/** The writer of what the graph itself says of a topic. */
export const FIRM = 'firm';

/** Everything the matcher may learn from, in a fixed order: wordings and titles, small talk, asking for a person, the rest. */
export function trainingLines(knowledge: Pick<Knowledge, 'topics' | 'talk'>): readonly TrainingLine[] {
  const lines: TrainingLine[] = [];
  const addAll = (key: string, wordings: Readonly<Record<string, readonly string[]>>) => {
    for (const [writer, texts] of Object.entries(wordings)) for (const text of texts) lines.push({ text, key, writer });
  };
  for (const topic of knowledge.topics.values()) {
    const key = classKey({ kind: 'topic', topic: topic.id });
    lines.push({ text: topic.title, key, writer: FIRM });
    addAll(key, topic.wordings);
  }
  for (const [chat, { wordings }] of Object.entries(knowledge.talk.chat)) {
    addAll(classKey({ kind: 'chat', chat: chat as ChatKind }), wordings);
  }
  addAll(classKey({ kind: 'person' }), knowledge.talk.person);
  addAll(classKey({ kind: 'background' }), knowledge.talk.background);
  return lines;
}
