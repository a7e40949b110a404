import type { Attachment, Event, StoredEvent } from '../../src/index.ts';

export type StaffEvent = Extract<Event, { kind: 'staff-said' | 'staff-noted' | 'staff-put-right' }>;

export type OwnWords = {
  /**
   * Staff say this in the group now; to be called before the action that stores the event.
   *
   * @returns Takes it back: the action stored nothing.
   */
  readonly expect: (threadId: string, words: StaffEvent) => () => void;
  readonly has: (stored: StoredEvent) => boolean;
  /** True once for each that was expected. */
  readonly spend: (stored: StoredEvent) => boolean;
};

export function isStaffEvent(event: Event): event is StaffEvent {
  return event.kind === 'staff-said' || event.kind === 'staff-noted' || event.kind === 'staff-put-right';
}

/** What was sent along with it; a note has nothing. */
export function sentWith(event: StaffEvent): readonly Attachment[] {
  return event.kind === 'staff-said' ? (event.attachments ?? []) : [];
}

/** What staff say in the group themselves, which is not repeated there. In memory only: after a crash it may be, once. */
export function createOwnWords(): OwnWords {
  const expected = new Map<string, number>();
  const keyOf = (threadId: string, event: StaffEvent) =>
    JSON.stringify([threadId, event.kind, event.by, event.text, sentWith(event)]);

  function keyIn({ threadId, event }: StoredEvent): string | null {
    return isStaffEvent(event) ? keyOf(threadId, event) : null;
  }

  function forget(key: string): void {
    const left = (expected.get(key) ?? 1) - 1;
    if (left === 0) expected.delete(key);
    else expected.set(key, left);
  }

  const has: OwnWords['has'] = (stored) => expected.has(keyIn(stored) ?? '');

  return {
    expect: (threadId, words) => {
      const key = keyOf(threadId, words);
      expected.set(key, (expected.get(key) ?? 0) + 1);
      return () => forget(key);
    },
    has,
    spend: (stored) => {
      const known = has(stored);
      if (known) forget(keyIn(stored) ?? '');
      return known;
    },
  };
}
