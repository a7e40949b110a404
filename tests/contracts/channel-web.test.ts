import type { Attachment, Channel } from '../../src/index.ts';
import { chatWorld, NOW_MS } from '../helpers/pages-world.ts';
import { aFile, aPhoto } from '../helpers/photos.ts';
import { webPerson } from '../helpers/web-person.ts';
import { type ChannelRig, channelContract, type FarEnd, type OnScreen } from './channel.ts';

const OPENING = '(opens the page)';
const PICTURE = '<svg xmlns="http://www.w3.org/2000/svg"/>';

/** The chat page with people at its far end whose browsers run no scripts. */
async function webRig(): Promise<ChannelRig> {
  const world = await chatWorld({ answer: () => [], web: { patienceMs: 0, pictureSvg: () => PICTURE } });
  /** The page shows what the store holds, so the line is written before it is delivered, as the shell does it. */
  const channel: Channel = {
    ...world.channel,
    deliver: async (reply, to) => {
      const thread = await world.store.threadAt(to);
      if (thread === null) return world.channel.deliver(reply, to);
      await world.store.post(thread.id, reply, NOW_MS);
      const receipt = await world.channel.deliver(reply, to);
      const line = (await world.store.lines(thread.id)).at(-1)?.id;
      return receipt.kind === 'delivered' ? { ...receipt, id: String(line) } : receipt;
    },
  };

  /** Everyone opens the page with a word first, so that there is a thread to deliver to. */
  const person = async (): Promise<FarEnd> => {
    const browser = webPerson(world);
    await browser.post({ text: OPENING });
    const address = world.received.at(-1)?.address ?? '';
    const send = async (fields: Record<string, string | File>, path?: string) => {
      await browser.post(fields, path);
    };
    return {
      address: { channel: 'web', address },
      says: (text) => send({ text }),
      sends: (kind, caption = '') =>
        send(kind === 'location' || kind === 'contact' ? {} : { text: caption, photo: new File([aFile(kind)], kind) }),
      edits: async () => undefined,
      presses: async (label) => {
        const choice = (await browser.screen()).flatMap((line) => line.choices).find((one) => one.label === label);
        await send({ choice: choice?.id ?? '' });
      },
      opens: async (token) => {
        await world.link(undefined, token);
        await send({ text: 'hello' }, `/chat/${token}`);
      },
      screen: async (): Promise<readonly OnScreen[]> =>
        (await browser.screen())
          .filter((line) => !line.text.startsWith('\u2018'))
          .map(({ text, choices, media }) => ({ text, choices: choices.map((choice) => choice.label), media })),
      leaves: async () => undefined,
    };
  };

  return {
    channel,
    person,
    received: () => world.received.filter((message) => message.text !== OPENING),
    spoil: async () => undefined,
    photo: async (): Promise<Attachment> => {
      const kept = await world.uploads.keep(aPhoto());
      return { kind: 'photo', file: kept.kind === 'kept' ? kept.file : '' };
    },
    close: world.stop,
  };
}

const ALWAYS = 'delivering is waking pages that read the store, which cannot fail or be refused';

channelContract('the chat page', webRig, {
  location:
    'a browser may say where it is only over https and after asking; the hirer types it or sends it on a messenger',
  edits: 'what was sent from a page is sent; a hirer writes again instead',
  later: ALWAYS,
  unknown: ALWAYS,
  gone: ALWAYS,
});
