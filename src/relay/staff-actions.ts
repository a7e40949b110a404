import { choiceId } from '../dialogue/choices.ts';
import type { Attachment } from '../message/message.ts';
import type { Block, Reply } from '../reply/reply.ts';
import type { Event, Thread } from '../thread/thread.ts';

/** As much of what staff said as the next brief has room for. */
const SAID_UNITS = 160;
const TRIED_LINES = 20;

/** What a staff member's action brings about; `taken-by` when a colleague has the thread already. */
export type ActionResult =
  | {
      readonly kind: 'done';
      readonly thread: Thread;
      readonly replies: readonly Reply[];
      readonly events: readonly Event[];
    }
  | { readonly kind: 'taken-by'; readonly name: string };

/** 'I have it': the thread is this person's, and the bot falls silent. */
export function takeThread(thread: Thread, by: string, nowMs: number): ActionResult {
  if (thread.keeper === 'staff' && thread.keeperName !== by)
    return { kind: 'taken-by', name: thread.keeperName ?? 'a colleague' };
  if (thread.keeper === 'staff') return { kind: 'done', thread, replies: [], events: [] };
  return {
    kind: 'done',
    thread: { ...thread, keeper: 'staff', keeperName: by, sinceMs: nowMs, open: null },
    replies: [relayed(null, `${by} from the yard is with you now. What you write goes to ${by}.`)],
    events: [{ kind: 'taken', by }],
  };
}

/** 'Back to the bot': the bot answers again, and asks once whether all is well. */
export function giveBack(thread: Thread, by: string, nowMs: number): ActionResult {
  if (thread.keeper === 'bot') return { kind: 'done', thread, replies: [], events: [] };
  return {
    kind: 'done',
    thread: {
      ...thread,
      keeper: 'bot',
      keeperName: null,
      reason: null,
      sinceMs: nowMs,
      open: { kind: 'all-well', by },
    },
    replies: [
      {
        ...relayed(null, `${by} has handed you back to the bot. Is all well now?`),
        choices: [
          { id: choiceId({ kind: 'all-well', yes: true }), label: 'Yes, all well', tone: 'quiet' },
          { id: choiceId({ kind: 'all-well', yes: false }), label: 'Not yet', tone: 'quiet' },
        ],
      },
    ],
    events: [{ kind: 'given-back', by }],
  };
}

/** Staff's words to the hirer, under the name on the rota. Speaking takes a thread that nobody has. */
export function staffSays(
  thread: Thread,
  by: string,
  text: string,
  attachments: readonly Attachment[],
  nowMs: number,
): ActionResult {
  if (thread.keeper === 'staff' && thread.keeperName !== by)
    return { kind: 'taken-by', name: thread.keeperName ?? 'a colleague' };
  const reply = personReply(by, text, attachments);
  // Whoever has it next, person or bot, knows what was said.
  const memory = text === '' ? thread.memory : { ...thread.memory, tried: withSaid(thread.memory.tried, by, text) };
  const taken =
    thread.keeper === 'staff'
      ? { ...thread, memory }
      : { ...thread, memory, keeper: 'staff' as const, keeperName: by, sinceMs: nowMs, open: null };
  const events: Event[] = thread.keeper === 'staff' ? [] : [{ kind: 'taken', by }];
  return { kind: 'done', thread: taken, replies: [reply], events: [...events, staffSaid(by, text, attachments)] };
}

/**
 * Staff change what they said: the hirer sees the new words in the place of the old, whoever has the thread by now.
 *
 * @param line The line as it was first said, and the reply that it holds.
 */
export function putRight(
  thread: Thread,
  by: string,
  line: { readonly id: number; readonly reply: Reply },
  text: string,
  attachments: readonly Attachment[],
): ActionResult {
  const { tried } = thread.memory;
  const before = saidWords(by, wordsOf(line.reply));
  const memory = { ...thread.memory, tried: tried.map((each) => (each === before ? saidWords(by, text) : each)) };
  return {
    kind: 'done',
    thread: { ...thread, memory },
    replies: [{ ...personReply(by, text, attachments), putsRight: line.id }],
    events: [{ kind: 'staff-put-right', by, text, line: line.id }],
  };
}

/** The words of what a person said, without what was sent along. */
export function wordsOf({ blocks }: Reply): string {
  return blocks.flatMap((block) => (block.kind === 'line' ? [block.text] : [])).join('\n');
}

/** What was sent along with a person's words. */
export function attachmentsOf({ blocks }: Reply): readonly Attachment[] {
  return blocks.flatMap((block) => (block.kind === 'attachment' ? [block.attachment] : []));
}

function personReply(by: string, text: string, attachments: readonly Attachment[]): Reply {
  const words: Block[] = text === '' ? [] : [{ kind: 'line', text }];
  const things = attachments.map((attachment): Block => ({ kind: 'attachment', attachment }));
  return { kind: 'relay', from: by, topic: null, blocks: [...words, ...things], choices: [] };
}

/** What staff said, as an event: the same whether it is about to be stored or looked for. */
export function staffSaid(
  by: string,
  text: string,
  attachments: readonly Attachment[],
): Extract<Event, { kind: 'staff-said' }> {
  return { kind: 'staff-said', by, text, ...(attachments.length === 0 ? {} : { attachments }) };
}

/** Hands the thread to a colleague: it is theirs at once, and the hirer is told who answers now. */
export function handOver(thread: Thread, by: string, to: string, nowMs: number): ActionResult {
  if (by === to) return takeThread(thread, by, nowMs);
  return {
    kind: 'done',
    thread: { ...thread, keeper: 'staff', keeperName: to, sinceMs: nowMs, open: null },
    replies: [relayed(null, `${to} from the yard takes over from here.`)],
    events: [
      { kind: 'staff-noted', by, text: `Handed to ${to}.` },
      { kind: 'taken', by: to },
    ],
  };
}

/** A note that stays with staff. */
export function staffNotes(thread: Thread, by: string, text: string): ActionResult {
  return { kind: 'done', thread, replies: [], events: [{ kind: 'staff-noted', by, text }] };
}

function withSaid(tried: readonly string[], by: string, text: string): readonly string[] {
  return [...tried, saidWords(by, text)].slice(-TRIED_LINES);
}

function saidWords(by: string, text: string): string {
  const words = text.length <= SAID_UNITS ? text : `${text.slice(0, SAID_UNITS).replace(/\s*\S*$/, '')} …`;
  return `${by} said: “${words}”`;
}

function relayed(from: string | null, text: string): Reply {
  return { kind: 'relay', from, topic: null, blocks: [{ kind: 'line', text }], choices: [] };
}
