import type { CauseId, TopicId, VanId } from '../basics/ids.ts';
import type { Knowledge, ScopedCause } from '../knowledge/knowledge.ts';
import type { Event } from '../thread/thread.ts';
import { betaQuantile } from './beta.ts';

export type WalkEnded = Extract<Event, { kind: 'walk-ended' }>;

/** What walks of one symptom in one van have shown of one cause. Shares are of the walks that count. */
export type CauseCount = {
  readonly cause: CauseId;
  readonly say: string;
  readonly prior: number;
  /** Walks in which its fix cured. */
  readonly cured: number;
  /** Walks passed with it believed in most: likely, not proven. */
  readonly believed: number;
  readonly share: number;
  /** In which the true share lies with 95 %. */
  readonly interval: readonly [number, number];
  /** The prior lies outside the interval. */
  readonly parts: boolean;
  readonly proposed: number;
};

export type FaultCounts = {
  readonly symptom: TopicId;
  readonly van: VanId;
  readonly walks: number;
  readonly fixed: number;
  readonly passed: number;
  readonly left: number;
  /** Passed with no cause believed in more than the rest together, or working again by whatever: they count for no cause. */
  readonly unresolved: number;
  readonly causes: readonly CauseCount[];
  /** Whether any cause's prior and counts part: then the proposed priors are worth a look. */
  readonly parts: boolean;
};

/** How many walks the written priors weigh: 20 walks of experience move a prior half way to what they show. */
const PRIOR_WALKS = 20;
/** Jeffreys' prior of a Dirichlet distribution: half a walk for each cause. */
const JEFFREYS = 0.5;
const TAIL = 0.025;

/**
 * Counts how walks ended, by symptom and van, in the graph's order. The counts are Dirichlet counts: each cause's share
 * has a beta distribution as its marginal, which gives the interval. Nothing changes by itself: new priors are proposed
 * for the operator to accept.
 */
export function countFaults(ended: readonly WalkEnded[], { topics, vans }: Knowledge): readonly FaultCounts[] {
  return [...topics.keys()].flatMap((symptom) =>
    [...vans.values()].flatMap((van) => {
      const own = ended.filter((walk) => walk.symptom === symptom && walk.van === van.id);
      const causes = van.causes(symptom);
      return own.length === 0 || causes.length === 0 ? [] : [countsOf(symptom, van.id, own, causes)];
    }),
  );
}

function countsOf(
  symptom: TopicId,
  van: VanId,
  walks: readonly WalkEnded[],
  causes: readonly ScopedCause[],
): FaultCounts {
  const ends = (end: WalkEnded['end'], cause?: CauseId) =>
    walks.filter((walk) => walk.end === end && (cause === undefined || walk.cause === cause)).length;
  const counts = causes.map(({ id }) => ({ cured: ends('fixed', id), believed: ends('passed', id) }));
  const total = counts.reduce((sum, { cured, believed }) => sum + cured + believed, 0);
  const proposed = roundedToOne(
    causes.map(({ prior }, i) => (PRIOR_WALKS * prior + countAt(counts, i)) / (PRIOR_WALKS + total)),
  );
  const rows = causes.map((cause, i): CauseCount => {
    const count = countAt(counts, i);
    const a = count + JEFFREYS;
    const b = total - count + JEFFREYS * (causes.length - 1);
    // One cause alone has the whole share, whatever was counted.
    const interval: [number, number] =
      causes.length === 1 ? [1, 1] : [betaQuantile(TAIL, a, b), betaQuantile(1 - TAIL, a, b)];
    return {
      cause: cause.id,
      say: cause.say,
      prior: cause.prior,
      cured: counts[i]?.cured ?? 0,
      believed: counts[i]?.believed ?? 0,
      share: total === 0 ? 0 : count / total,
      interval,
      parts: cause.prior < interval[0] || cause.prior > interval[1],
      proposed: proposed[i] ?? cause.prior,
    };
  });
  const passed = ends('passed');
  return {
    symptom,
    van,
    walks: walks.length,
    fixed: ends('fixed'),
    passed,
    left: ends('left'),
    unresolved: passed + ends('fixed') - total,
    causes: rows,
    parts: rows.some((row) => row.parts),
  };
}

function countAt(counts: readonly { readonly cured: number; readonly believed: number }[], i: number): number {
  return (counts[i]?.cured ?? 0) + (counts[i]?.believed ?? 0);
}

/** Hundredths that sum to 1 exactly, by largest remainder; none falls to 0, which would rule a cause out for good. */
function roundedToOne(shares: readonly number[]): number[] {
  const whole = shares.map((share) => Math.max(1, Math.floor(share * 100 + 1e-9)));
  const byRemainder = shares
    .map((_, i) => i)
    .sort((a, b) => remainder(shares[b], whole[b]) - remainder(shares[a], whole[a]) || a - b);
  let left = 100 - whole.reduce((sum, each) => sum + each, 0);
  for (let k = 0; left > 0; k++, left--) {
    const i = byRemainder[k % byRemainder.length] ?? 0;
    whole[i] = (whole[i] ?? 0) + 1;
  }
  for (; left < 0; left++) {
    const largest = whole.indexOf(Math.max(...whole));
    whole[largest] = (whole[largest] ?? 0) - 1;
  }
  return whole.map((each) => each / 100);
}

function remainder(share: number | undefined, whole: number | undefined): number {
  return (share ?? 0) * 100 - (whole ?? 0);
}
