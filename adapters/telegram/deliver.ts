import { createHash } from 'node:crypto';
import type { Address, Receipt, Reply, Store } from '../../src/index.ts';
import { receiptOf, toChannelError } from './errors.ts';
import { partsOf } from './parts.ts';
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

  return async function deliver(reply: Reply, to: Address): Promise<Receipt> {
    const chat = Number(to.address);
    if (!Number.isSafeInteger(chat)) return { kind: 'gone', why: `no chat has the address '${to.address}'` };
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
