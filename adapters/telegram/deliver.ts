import { createHash } from 'node:crypto';
import type { Address, Arrived, Receipt, Reply, Store } from '../../src/index.ts';
import { receiptOf, toChannelError } from './errors.ts';
import { type Part, partsOf } from './parts.ts';
import type { Sender } from './send.ts';

/** How far a reply of several messages has come, so that a later try goes on and does not begin again. */
type Progress = { readonly reply: string; readonly sent: number; readonly hidden: boolean };

const AGAIN_MS = 3_000;

/**
 * Delivers replies to hirers. A message whose outcome the network hid is not sent again (it would be there twice), with
 * one exception: a notice, which is better read twice than not at all.
 */
export function createDelivery(sender: Sender, notes: Pick<Store, 'note' | 'putNote'>) {
  const noteOf = (to: Address) => `telegram:part:${to.address}`;

  async function progressOf(to: Address, digest: string): Promise<Progress> {
    const kept = (await notes.note(noteOf(to))) || null;
    const progress = kept === null ? null : (JSON.parse(kept) as Progress);
    return progress?.reply === digest ? progress : { reply: digest, sent: 0, hidden: false };
  }

  /** Changes the message that stands there; null when that cannot be done and the words must be sent anew. */
  async function inPlace(reply: Reply, arrived: Arrived | null, chat: number): Promise<Receipt | null> {
    const after = onlyPart(reply);
    const before = arrived === null ? null : onlyPart(arrived.reply);
    if (arrived === null || before === null || after === null || !differsInWordsAlone(before, after)) return null;
    try {
      await sender.change(Number(arrived.id), after, chat);
      return { kind: 'delivered', id: arrived.id };
    } catch (thrown) {
      const error = toChannelError(thrown);
      if (/message is not modified/i.test(error.message)) return { kind: 'delivered', id: arrived.id };
      // Deleted by the hirer, or too old to be changed.
      if (error.failure === 'refused') return null;
      // Changing twice to the same words does no harm.
      if (error.failure === 'hidden') return { kind: 'later', afterMs: AGAIN_MS, why: error.message };
      return receiptOf(error);
    }
  }

  return async function deliver(reply: Reply, to: Address, arrived: Arrived | null = null): Promise<Receipt> {
    const chat = Number(to.address);
    if (!Number.isSafeInteger(chat)) return { kind: 'gone', why: `no chat has the address '${to.address}'` };
    if (reply.putsRight !== undefined) return (await inPlace(reply, arrived, chat)) ?? deliver(withMark(reply), to);
    const parts = partsOf(reply);
    const urgent = reply.kind === 'notice';
    const several = parts.length > 1;
    let progress: Progress = {
      reply: createHash('sha256').update(JSON.stringify(reply)).digest('hex'),
      sent: 0,
      hidden: false,
    };
    if (several) progress = await progressOf(to, progress.reply);
    let lastId = '';
    for (const part of parts.slice(progress.sent)) {
      let hidden = progress.hidden;
      try {
        lastId = String(await sender.part(part, { chat, urgent }));
      } catch (thrown) {
        const error = toChannelError(thrown);
        if (error.failure !== 'hidden') return receiptOf(error);
        if (urgent) return { kind: 'later', afterMs: AGAIN_MS, why: error.message };
        hidden = true;
      }
      progress = { reply: progress.reply, sent: progress.sent + 1, hidden };
      if (several) await notes.putNote(noteOf(to), progress.sent === parts.length ? '' : JSON.stringify(progress));
    }
    return progress.hidden
      ? { kind: 'unknown', why: 'the connection broke before Telegram answered' }
      : { kind: 'delivered', id: lastId };
  };
}

function onlyPart(reply: Reply): Part | null {
  const [part, second] = partsOf(reply);
  return part === undefined || second !== undefined ? null : part;
}

function differsInWordsAlone(before: Part, after: Part): boolean {
  if (before.kind === 'text') return after.kind === 'text';
  return (
    before.kind === 'attachment' &&
    after.kind === 'attachment' &&
    JSON.stringify(before.attachment) === JSON.stringify(after.attachment)
  );
}

/** Sent anew: says that it takes the place of what stands above. */
function withMark({ putsRight: _, ...reply }: Reply): Reply {
  const [first, ...rest] = reply.blocks;
  return first?.kind === 'line'
    ? { ...reply, blocks: [{ kind: 'line', text: `(Put right) ${first.text}` }, ...rest] }
    : reply;
}
