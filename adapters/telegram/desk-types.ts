import type { Attachment, Store } from '../../src/index.ts';

/** How a staff member's action ended. `taken-by`: a colleague has the thread; nothing was done. */
export type StaffOutcome =
  | { readonly kind: 'done' }
  | { readonly kind: 'taken-by'; readonly name: string }
  | { readonly kind: 'no-such-thread' };

/**
 * What the desk asks for when staff press or write. Each resolves when it is stored; it rejects only when storing failed,
 * and is then asked for again. `by` is a rota name, never a name from Telegram.
 */
export type StaffActions = {
  readonly take: (threadId: string, by: string) => Promise<StaffOutcome>;
  readonly giveBack: (threadId: string, by: string) => Promise<StaffOutcome>;
  readonly say: (
    threadId: string,
    by: string,
    text: string,
    attachments: readonly Attachment[],
  ) => Promise<StaffOutcome>;
  /** Changes what `by` said in that line of the thread. */
  readonly putRight: (
    threadId: string,
    by: string,
    line: number,
    text: string,
    attachments: readonly Attachment[],
  ) => Promise<StaffOutcome>;
  /** A line that stays with staff. */
  readonly note: (threadId: string, by: string, text: string) => Promise<StaffOutcome>;
};

/** Where the desk reads what there is to tell, and keeps what it must not forget. */
export type DeskStore = Pick<
  Store,
  'note' | 'putNote' | 'putNoteSoon' | 'notes' | 'events' | 'thread' | 'threads' | 'lines' | 'booking'
>;
