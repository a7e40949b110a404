import { type Change, type Gap, type Served, topicTaught } from '../../src/index.ts';
import type { Draft, Tried } from './growth-types.ts';
import { askedOnce, topicAsked } from './trial.ts';

/** A gap's words are tried for so many of a group. */
const MOST_WORDS = 12;

/** What the gaps' own words get, before and after. */
export function wordsTried(gaps: readonly Gap[], before: Served, after: Served): Change[] {
  return gaps.slice(0, MOST_WORDS).map(({ text, van }) => {
    const known = van !== null && after.knowledge.vans.has(van) ? van : ([...after.knowledge.vans.keys()][0] ?? null);
    return { text, van: known, before: cameTo(text, known, before), after: cameTo(text, known, after) };
  });
}

function cameTo(text: string, van: string | null, served: Served): string {
  const { outcome, topic, options, hazard, lacks } = askedOnce(text, van, served);
  const named = hazard ?? topic ?? lacks;
  if (named !== null) return `${outcome}: ${named}`;
  return options.length > 0 ? `${outcome}: ${options.map((option) => option.topic).join(', ')}` : outcome;
}

/** What hirers of each van that has it will read. */
export function previewsOf({ decision, gaps, knowledge }: Draft, after: Served): Tried['previews'] {
  const topic = topicTaught(decision);
  const vans = [...knowledge.vans.values()].filter((van) => topic === null || van.topics.has(topic));
  const text = gaps[0]?.text ?? '';
  return vans.map((van) => ({
    van: van.name,
    text: topic === null ? askedOnce(text, van.id, after).reply : topicAsked(topic, van.id, after),
  }));
}
