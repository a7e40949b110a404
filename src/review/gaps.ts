import type { TopicId, VanId } from '../basics/ids.ts';
import { HOUR_MS } from '../basics/time.ts';
import type { Event, GapReason } from '../thread/thread.ts';
import { type Personal, stripped } from './strip.ts';

/** Why it is a gap: the bot's own reason, or that people answered what the bot was not asked to. */
export type GapWhy = GapReason | 'staff-answered';

/** A question that the graph did not answer, or whose answer did not help. Its words are stripped of personal details. */
export type Gap = {
  /** The stored event's: gaps sort by it, oldest first. */
  readonly id: number;
  readonly threadId: string;
  readonly atMs: number;
  readonly van: VanId | null;
  readonly text: string;
  readonly why: GapWhy;
  /** What the bot thought it might be, likeliest first. */
  readonly nearest: readonly TopicId[];
  /** What staff wrote back. */
  readonly staffSaid: string | null;
  readonly ended: 'staff' | 'helped' | 'open';
};

/** An event as it was stored. */
export type ThreadEvent = {
  readonly id: number;
  readonly threadId: string;
  readonly atMs: number;
  readonly event: Event;
};

export type GapSource = {
  /** Of the kinds {@link GAP_EVENTS}, by id. */
  readonly events: readonly ThreadEvent[];
  readonly nowMs: number;
  readonly personal: (threadId: string) => Personal;
  /** What the hirer last wrote in a thread at or before an instant; null when it is not known. */
  readonly said: (threadId: string, atMs: number) => string | null;
};

/** The kinds of events that gaps are read from. */
export const GAP_EVENTS: readonly Event['kind'][] = [
  'gap',
  'offered',
  'answered',
  'helped',
  'passed',
  'staff-said',
  'given-back',
  'walk-ended',
];

/** Choices that nobody picked for so long were no help. */
const UNPICKED_MS = HOUR_MS;
/** Passes of these reasons are no lack of the graph: a danger is always people's, and so is another language. */
const NOT_GAPS = ['safety', 'language'];

/** A gap while its thread is still being read. */
type Open = { -readonly [Key in keyof Gap]: Gap[Key] };

/**
 * Reads the gaps out of what came about in the threads: every 'gap' event, choices that nobody picked from, and passes
 * that staff answered. Staff's words after a gap are kept with it.
 */
export function gapsOf(source: GapSource): readonly Gap[] {
  const byThread = new Map<string, ThreadEvent[]>();
  for (const each of source.events) {
    const list = byThread.get(each.threadId);
    if (list === undefined) byThread.set(each.threadId, [each]);
    else list.push(each);
  }
  return [...byThread.values()]
    .flatMap((events) => gapsOfThread(events, source))
    .filter((gap) => gap.text.trim() !== '')
    .sort((a, b) => a.id - b.id);
}

function gapsOfThread(events: readonly ThreadEvent[], source: GapSource): Gap[] {
  const gaps: Open[] = [];
  const threadId = events[0]?.threadId ?? '';
  const personal = source.personal(threadId);
  const add = (at: ThreadEvent, gap: Pick<Gap, 'text' | 'why' | 'van' | 'nearest'>): Open => {
    const open: Open = {
      ...gap,
      text: stripped(gap.text, personal),
      id: at.id,
      threadId,
      atMs: at.atMs,
      staffSaid: null,
      ended: 'open',
    };
    gaps.push(open);
    return open;
  };
  let current: Open | null = null;
  let pass: { readonly at: ThreadEvent; readonly event: Extract<Event, { kind: 'passed' }> } | null = null;
  for (const [i, at] of events.entries()) {
    const { event } = at;
    switch (event.kind) {
      case 'gap':
        if (current !== null && event.why === 'nothing-picked' && current.text === stripped(event.text, personal)) {
          // The bot was unsure, asked back, and nothing was picked: one question, not two.
          current.why = event.why;
          current.nearest = [...new Set([...event.topics, ...current.nearest])];
          break;
        }
        current = add(at, { text: event.text, why: event.why, van: event.van, nearest: event.topics });
        break;
      case 'offered': {
        if (isPicked(at, events[i + 1], source.nowMs)) break;
        const text = source.said(threadId, at.atMs);
        if (text !== null) current = add(at, { text, why: 'nothing-picked', van: null, nearest: event.topics });
        break;
      }
      case 'passed':
        pass = { at, event };
        break;
      case 'staff-said': {
        if (pass !== null && NOT_GAPS.includes(pass.event.reason)) break;
        if (current === null && pass !== null) {
          const { brief } = pass.event;
          const nearest = brief.understood.map((each) => each.topic);
          current = add(pass.at, { text: brief.question, why: 'staff-answered', van: null, nearest });
        }
        if (current === null) break;
        const words = stripped(event.text, personal);
        current.staffSaid = current.staffSaid === null ? words : `${current.staffSaid}\n${words}`;
        current.ended = 'staff';
        break;
      }
      case 'given-back':
        current = null;
        pass = null;
        break;
      case 'helped':
        if (event.yes && current !== null) current.ended = 'helped';
        break;
      default:
    }
  }
  return gaps;
}

/** A pick is answered at once; 'None of these' leaves a gap event of its own. */
function isPicked(offered: ThreadEvent, next: ThreadEvent | undefined, nowMs: number): boolean {
  if (next === undefined) return nowMs - offered.atMs < UNPICKED_MS;
  if (next.event.kind === 'passed' || next.event.kind === 'staff-said') return false;
  return next.atMs - offered.atMs < UNPICKED_MS;
}
