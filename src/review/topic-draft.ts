import type { PartId, TopicId } from '../basics/ids.ts';
import { plainly } from '../check/wordings.ts';
import type { Knowledge, Part } from '../knowledge/knowledge.ts';
import type { TopicKind } from '../knowledge/schema.ts';
import type { NewTopic } from './decisions.ts';
import { type GapGroup, wordingsOf } from './gap-groups.ts';
import { withoutBrackets } from './strip.ts';

/** Asked with these words it is likely of that kind; the first that fits. Signs are gone from the words by then. */
const KIND_SIGNS: readonly (readonly [RegExp, TopicKind])[] = [
  [/\b(?:won ?t|isn ?t|doesn ?t|not working|broken|stuck|leak\w*)\b/, 'symptom'],
  [/^where\b|\bwhere (?:is|are|do|can)\b/, 'where'],
  [/\b(?:allowed|may we|may i|can we|can i|are we)\b/, 'hire-rule'],
  [/^how\b|\bhow (?:do|to|does)\b/, 'how-to'],
];
const SHORTEST_NAME = 4;
const USUAL_SYSTEM = 'hire';

/**
 * A topic as the operator may begin with it: the heading from the words most like the others, the answer from what staff
 * wrote, the parts from what is named in half of the questions or more, the kind from how it is asked.
 */
export function topicDraft(group: GapGroup, knowledge: Knowledge): NewTopic {
  const texts = group.gaps.map(({ text }) => plainly(text));
  const about = partsNamedIn(texts, knowledge);
  const [nearest] = group.nearest;
  const likeliest = nearest === undefined ? undefined : knowledge.topics.get(nearest);
  const [part] = about;
  const system = knowledge.parts.get(part ?? '')?.system ?? likeliest?.system ?? USUAL_SYSTEM;
  const title = asHeading(group.words);
  return {
    system,
    id: idFor(system, title),
    kind: kindOf(texts),
    title,
    about,
    first: withoutBrackets(group.staffSaid ?? ''),
    steps: [],
    otherwise: null,
    wordings: wordingsOf(group),
  };
}

function partsNamedIn(texts: readonly string[], { parts, vans }: Knowledge): readonly PartId[] {
  const had = (id: PartId): boolean => [...vans.values()].some((van) => van.parts.has(id));
  const isNamed = ({ name, also }: Part): boolean => {
    const names = [name, ...also].map(plainly).filter((each) => each.length >= SHORTEST_NAME);
    const count = texts.filter((text) => names.some((each) => ` ${text} `.includes(` ${each} `))).length;
    return count > 0 && count >= texts.length / 2;
  };
  const named = [...parts.values()].filter((part) => had(part.id) && isNamed(part)).map(({ id }) => id);
  // A role says it for all its variants.
  return named.filter((id) => !named.includes(parts.get(id)?.is ?? ''));
}

function kindOf(texts: readonly string[]): TopicKind {
  const votes = texts.map((text) => KIND_SIGNS.find(([sign]) => sign.test(text))?.[1] ?? 'fact');
  const counts = new Map<TopicKind, number>();
  for (const vote of votes) counts.set(vote, (counts.get(vote) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 'fact';
}

/** 'May we fly a drone?' for 'may we fly a drone'. */
function asHeading(words: string): string {
  const plain = withoutBrackets(words);
  return plain === '' ? '' : `${plain.slice(0, 1).toUpperCase()}${plain.slice(1).replace(/[.?!]*$/, '')}?`;
}

const IDLE = new Set([
  'the',
  'a',
  'an',
  'is',
  'are',
  'do',
  'does',
  'how',
  'what',
  'where',
  'can',
  'we',
  'i',
  'to',
  'of',
  'in',
  'my',
]);
const MOST_WORDS = 4;

/** 'hire-bike-rack' for 'Is there a bike rack?' of the system hire. */
export function idFor(system: string, title: string): TopicId {
  const words = (title.toLowerCase().match(/[a-z0-9]+/g) ?? []).filter((word) => !IDLE.has(word));
  return [system, ...words.slice(0, MOST_WORDS)].join('-');
}
