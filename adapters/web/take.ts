import type { Attachment, Message } from '../../src/index.ts';
import type { Form } from '../http/forms.ts';
import { freshKey } from '../http/fresh-key.ts';
import { storedKey } from './keys.ts';
import { untilAnswered } from './until-answered.ts';
import { CHANNEL, type Visitor } from './visitor.ts';
import type { WebWorld } from './world.ts';

/** As long as a text may be: four times what any channel's message holds. */
export const LONGEST = 16_384;
const KEY = /^[A-Za-z0-9_-]{8,64}$/;
const MOST_CHOICE_BYTES = 64;
/** How long a first message waits for the greeting to be written. */
const START_MS = 800;

export type Taken =
  | { readonly kind: 'taken'; readonly refused: string | null }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'refused'; readonly says: string; readonly text: string };

/**
 * Stores what a form holds, the start of the thread first if there is none. A photo that cannot be kept never costs
 * the words that came with it: they are taken, and `refused` says what was not.
 */
export async function takeForm(world: WebWorld, visitor: Visitor, form: Form): Promise<Taken> {
  const text = cleaned(form.text('text'));
  const choice = form.text('choice') === '' ? null : form.text('choice');
  if (text.length > LONGEST) {
    return { kind: 'refused', says: 'That is longer than we can take at once. Send it in two or three parts.', text };
  }
  if (choice !== null && Buffer.byteLength(choice) > MOST_CHOICE_BYTES) {
    return { kind: 'refused', says: 'That button is not one of ours. Type what you want instead.', text };
  }
  const photo = await photoOf(world, form.file('photo'));
  if (text === '' && choice === null && photo.attachment === null) {
    return photo.says === null ? { kind: 'nothing' } : { kind: 'refused', says: photo.says, text };
  }

  const sent = form.text('key');
  const key = KEY.test(sent) ? sent : freshKey();
  const nowMs = world.clock.nowMs();
  const base = { channel: CHANNEL, address: visitor.address, edit: false, from: null, atMs: nowMs };
  if (visitor.thread === null && visitor.token !== null) {
    await world.receive({
      ...base,
      key: storedKey('start', null, visitor.address),
      text: '',
      choice: null,
      attachments: [],
      startToken: visitor.token,
    });
    // The welcome then stands before the question, as it did on the page.
    await untilAnswered(world, visitor.address, START_MS);
  }
  await world.receive({
    ...base,
    key: storedKey(key, choice, visitor.address),
    text: choice === null || text !== '' ? text : await labelOf(world, visitor, choice),
    choice,
    attachments: photo.attachment === null ? [] : [photo.attachment],
    startToken: null,
  } satisfies Message);
  world.wakes.wake(visitor.address);
  return { kind: 'taken', refused: photo.says };
}

async function photoOf(
  world: WebWorld,
  file: File | null,
): Promise<{ readonly attachment: Attachment | null; readonly says: string | null }> {
  if (file === null) return { attachment: null, says: null };
  const kept = await world.uploads.keep(new Uint8Array(await file.arrayBuffer()));
  switch (kept.kind) {
    case 'kept':
      return { attachment: { kind: kept.attachment, file: kept.file }, says: null };
    case 'too-big':
      return {
        attachment: null,
        says: `That is larger than ${Math.floor(kept.mostBytes / 1_048_576)} MB and was not sent. Take it smaller, or say in words what it shows.`,
      };
    case 'not-ours-to-open':
      return {
        attachment: null,
        says: 'That is of a kind we cannot open and was not sent. Send a photo, or say in words what it shows.',
      };
    case 'empty':
      return { attachment: null, says: null };
  }
}

/** What stood on the button, so that the thread reads as it was. */
async function labelOf(world: WebWorld, visitor: Visitor, choice: string): Promise<string> {
  const replies =
    visitor.thread === null ? [world.welcome(visitor.booking)] : await repliesOf(world, visitor.thread.id);
  for (const reply of replies.reverse()) {
    const found = reply.choices.find((one) => one.id === choice);
    if (found !== undefined) return found.label;
  }
  return '';
}

async function repliesOf(world: WebWorld, threadId: string) {
  return (await world.store.lines(threadId)).flatMap((line) => (line.reply === null ? [] : [line.reply]));
}

/** Control characters say nothing and some stores choke on them; tabs and line ends stay. */
function cleaned(text: string): string {
  const kept = [...text.replace(/\r\n?/g, '\n')].filter(
    (letter) => letter >= ' ' || letter === '\n' || letter === '\t',
  );
  return kept.join('').replaceAll('\u007f', '').trim();
}
