import type { TopicId } from '../basics/ids.ts';
import { stemsOf } from '../faults/words.ts';
import type { Knowledge, VanScope } from '../knowledge/knowledge.ts';
import type { Ranked, Understood } from '../match/types.ts';

/** Words that complain and say nothing of what is wrong. */
const COMPLAINT =
  /\b(?:problems?|broken?|not work\w*|doesn'?t work|does not work|isn'?t working|issues?|trouble|wrong|gone|faulty?|fault|play\w* up|act\w* up|bust(?:ed)?|kaput|dead|knackered|stopped|failed|no good|rubbish)\b/i;
/** Longer messages say what is wrong, and are not vague. */
const MOST_WORDS = 7;

/**
 * The faults that a vague complaint may mean ('heating problem'): those of the system that it names, likeliest first.
 *
 * @returns Empty where it complains of nothing, says more than that, or names no system of the van.
 */
export function vagueFaults(
  { text, ranked, why }: Understood,
  scope: VanScope,
  { parts, topics, systems }: Knowledge,
  count: number,
): readonly Ranked[] {
  if (!COMPLAINT.test(text) || text.trim().split(/\s+/).length > MOST_WORDS) return [];
  const said = stemsOf(text);
  const named = new Set<string>(why.linked.flatMap((part) => parts.get(part)?.system ?? []));
  // 'Water' names the water system rather than the hot water: the title of which most is said.
  const shares = [...systems].map(([system, title]) => ({ system, share: shareSaid(stemsOf(title), said) }));
  const most = Math.max(0, ...shares.map(({ share }) => share));
  for (const { system, share } of shares) if (share > 0 && share === most) named.add(system);
  const isOne = (topic: TopicId) =>
    named.has(topics.get(topic)?.system ?? '') && scope.topics.has(topic) && scope.causes(topic).length > 0;
  const likely = ranked.filter(({ topic }) => isOne(topic));
  const others = [...scope.topics].filter((topic) => isOne(topic) && likely.every((each) => each.topic !== topic));
  return [...likely, ...others.map((topic) => ({ topic, probability: 0 }))].slice(0, count);
}

function shareSaid(title: ReadonlySet<string>, said: ReadonlySet<string>): number {
  return title.size === 0 ? 0 : [...title].filter((each) => said.has(each)).length / title.size;
}
