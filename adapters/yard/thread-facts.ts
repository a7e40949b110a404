import type { Booking, Brief, Event, Thread } from '../../src/index.ts';
import { asTheyStand, type StandingLine } from '../pages/put-right.ts';
import { isSaid } from '../pages/said.tsx';
import type { YardWorld } from './world.ts';

/** Something in a thread's history that is no line of the conversation. */
export type Mark =
  | { readonly kind: 'passed'; readonly atMs: number; readonly brief: Brief }
  | { readonly kind: 'taken' | 'given-back'; readonly atMs: number; readonly by: string }
  | { readonly kind: 'note'; readonly atMs: number; readonly by: string; readonly text: string };

export type Entry =
  | { readonly kind: 'line'; readonly line: StandingLine }
  | { readonly kind: 'mark'; readonly mark: Mark };

/** Everything a thread's page shows. */
export type ThreadFacts = {
  readonly thread: Thread;
  readonly booking: Booking | null;
  /** The other threads of the same booking. */
  readonly others: readonly Thread[];
  /** Of the last pass. */
  readonly brief: Brief | null;
  readonly history: readonly Entry[];
};

export async function threadFacts(world: YardWorld, id: string): Promise<ThreadFacts | null> {
  const { store } = world;
  const thread = await store.thread(id);
  if (thread === null) return null;
  const [booking, together, lines, events] = await Promise.all([
    thread.booking === null ? null : store.booking(thread.booking),
    thread.booking === null ? [] : store.threads({ booking: thread.booking }),
    store.lines(id),
    store.events({ threadId: id, kinds: ['passed', 'taken', 'given-back', 'staff-noted'] }),
  ]);
  const marks = events.flatMap(({ event, atMs }) => markOf(event, atMs));
  const passes = marks.flatMap((mark) => (mark.kind === 'passed' ? [mark.brief] : []));
  return {
    thread,
    booking,
    others: together.filter((one) => one.id !== id),
    brief: passes.at(-1) ?? null,
    history: inOrder(asTheyStand(lines).filter(isSaid), marks),
  };
}

function markOf(event: Event, atMs: number): Mark[] {
  switch (event.kind) {
    case 'passed':
      return [{ kind: 'passed', atMs, brief: event.brief }];
    case 'taken':
    case 'given-back':
      return [{ kind: event.kind, atMs, by: event.by }];
    case 'staff-noted':
      return [{ kind: 'note', atMs, by: event.by, text: event.text }];
    default:
      return [];
  }
}

/** Both lists are in order of time; of the same instant, what was said comes before what it brought about. */
function inOrder(lines: readonly StandingLine[], marks: readonly Mark[]): readonly Entry[] {
  const entries: Entry[] = [];
  let next = 0;
  for (const line of lines) {
    for (let mark = marks[next]; mark !== undefined && mark.atMs < line.atMs; mark = marks[next]) {
      entries.push({ kind: 'mark', mark });
      next += 1;
    }
    entries.push({ kind: 'line', line });
  }
  return [...entries, ...marks.slice(next).map((mark): Entry => ({ kind: 'mark', mark }))];
}
