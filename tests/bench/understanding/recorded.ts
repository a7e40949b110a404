import { existsSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { Knowledge } from '../../../src/knowledge/knowledge.ts';
import type { Decision, Matcher, Understood } from '../../../src/match/types.ts';

/** A recorded message, what it asks, and in which half it is measured. */
export type Recorded = {
  readonly text: string;
  readonly van: string;
  /** The topics wanted, in order; empty for what no topic answers. */
  readonly topics: readonly string[];
  readonly before: { readonly topic: string; readonly text: string } | null;
  readonly half: 'tuning' | 'aside';
};

/** FNV-1a: the halves never change with the order of the files. */
function halfOf(text: string): Recorded['half'] {
  let hash = 2166136261;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 16777619);
  return (hash >>> 0) % 2 === 1 ? 'aside' : 'tuning';
}

type Line = Readonly<Partial<Record<'text' | 'topic' | 'van' | 'first' | 'second' | 'then', string>>>;

function linesOf(file: string): readonly Line[] {
  const path = `tests/questions/${file}.yaml`;
  return existsSync(path) ? (parse(readFileSync(path, 'utf8')) as readonly Line[]) : [];
}

const VANS = ['dunlin', 'wren', 'curlew', 'plover', 'godwit'];

function recorded(text: string, van: string | undefined, at: number, topics: readonly string[]): Recorded {
  return { text, van: van ?? (VANS[at % VANS.length] as string), topics, before: null, half: halfOf(text) };
}

/** All recorded messages by what they are for. */
export function recordedSets({ questions }: Knowledge): Readonly<Record<string, readonly Recorded[]>> {
  const single = [...questions.questions, ...linesOf('topics')].filter((line) => line.topic !== undefined);
  const plain = (file: string) =>
    linesOf(file).map((line, i) =>
      recorded(line.text ?? '', line.van, i, line.topic === undefined ? [] : [line.topic]),
    );
  return {
    topics: single.map((line, i) => recorded(line.text ?? '', line.van, i, [line.topic ?? ''])),
    'off-topic': plain('off-topic'),
    lacks: plain('lacks'),
    person: plain('person'),
    two: linesOf('two').map((line, i) => recorded(line.text ?? '', line.van, i, [line.first ?? '', line.second ?? ''])),
    'follow-ups': linesOf('follow-ups').map((line, i) => ({
      ...recorded(line.then ?? '', line.van, i, [line.second ?? '']),
      before: { topic: line.first ?? '', text: line.text ?? '' },
    })),
  };
}

/** What came of a message, in a word. */
export function outcomeOf(matcher: Matcher, { text, van, topics, before }: Recorded): string {
  const context = { van, lastTopic: before?.topic ?? null, lastText: before?.text ?? '' };
  const all = matcher.understand(text, context);
  const answered = all.flatMap(({ decision }) => (decision.kind === 'answer' ? [decision.topic] : []));
  if (answered.length > 0) {
    const right = topics.length > 0 && answered.every((topic, i) => topic === topics[i]);
    return right ? (answered.length < topics.length ? 'one of two' : 'right') : 'wrong';
  }
  const first = all[0]?.decision as Decision;
  if (first.kind === 'choose') return offers(all, topics) ? 'offered' : 'offered others';
  return first.kind;
}

function offers(all: readonly Understood[], topics: readonly string[]): boolean {
  const offered = all.flatMap(({ decision }) => (decision.kind === 'choose' ? decision.topics : []));
  return offered.some(({ topic }) => topics.includes(topic));
}

/** Shares of the outcomes, commonest first: 'right 81.2, offered 13.2'. */
export function sharesOf(outcomes: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const outcome of outcomes) counts.set(outcome, (counts.get(outcome) ?? 0) + 1);
  return [...counts]
    .sort((a, b) => b[1] - a[1])
    .map(([outcome, count]) => `${outcome} ${((100 * count) / outcomes.length).toFixed(1)}`)
    .join(', ');
}
