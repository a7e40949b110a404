import type { TopicId, VanId } from '../basics/ids.ts';
import { plainly } from '../check/wordings.ts';
import type { Gap, GapWhy } from './gaps.ts';
import { withoutBrackets } from './strip.ts';

/** Gaps that ask the same, as the operator sees them. */
export type GapGroup = {
  /** Of its first gap: it stays when more join. */
  readonly id: number;
  readonly gaps: readonly Gap[];
  /** The gap that says it most like the others do: the one with most words in common. */
  readonly words: string;
  readonly vans: readonly VanId[];
  readonly lastMs: number;
  /** The commonest reason. */
  readonly why: GapWhy;
  /** The topics that the bot thought of, the one thought of oftenest first. */
  readonly nearest: readonly TopicId[];
  /** The longest thing that staff wrote back; null when they wrote nothing. */
  readonly staffSaid: string | null;
};

const MOST_NEAREST = 3;

/** @param members The gaps' ids, in the order they came; not empty. */
export function groupOf(members: readonly number[], gaps: ReadonlyMap<number, Gap>): GapGroup | null {
  const own = members.flatMap((id) => gaps.get(id) ?? []);
  const first = own[0];
  if (first === undefined) return null;
  const vans = own.flatMap((gap) => (gap.van === null ? [] : [gap.van]));
  const votes = own.flatMap((gap) => gap.nearest.map((topic, place) => [topic, 1 / (1 + place)] as const));
  return {
    id: first.id,
    gaps: own,
    words: middleOf(own),
    vans: [...new Set(vans)].sort(),
    lastMs: Math.max(...own.map((gap) => gap.atMs)),
    why: ranked(own.map((gap) => [gap.why, 1] as const))[0] ?? first.why,
    nearest: ranked(votes).slice(0, MOST_NEAREST),
    staffSaid:
      own.flatMap((gap) => gap.staffSaid ?? []).sort((a, b) => b.length - a.length || (a < b ? -1 : 1))[0] ?? null,
  };
}

/** Names by the sum of their weights; ties by which came first. */
function ranked<Name extends string>(votes: readonly (readonly [Name, number])[]): Name[] {
  const sums = new Map<Name, number>();
  for (const [name, weight] of votes) sums.set(name, (sums.get(name) ?? 0) + weight);
  return [...sums].sort((a, b) => b[1] - a[1]).map(([name]) => name);
}

function middleOf(gaps: readonly Gap[]): string {
  const words = gaps.map((gap) => new Set(gap.text.toLowerCase().match(/[\p{L}\p{N}]{3,}/gu) ?? []));
  const counts = new Map<string, number>();
  for (const set of words) for (const word of set) counts.set(word, (counts.get(word) ?? 0) + 1);
  let best = 0;
  let most = -1;
  for (const [i, set] of words.entries()) {
    const shared = [...set].reduce((sum, word) => sum + (counts.get(word) ?? 0) - 1, 0) / Math.sqrt(set.size + 1);
    if (shared > most) [best, most] = [i, shared];
  }
  return gaps[best]?.text ?? '';
}

/** A group's words as they may stand in the graph, each once: what differs in case and signs alone is one. */
export function wordingsOf({ gaps }: Pick<GapGroup, 'gaps'>): readonly string[] {
  const words = gaps.map((gap) => withoutBrackets(gap.text)).filter((text) => text !== '');
  return [...new Map(words.map((text) => [plainly(text), text])).values()];
}
