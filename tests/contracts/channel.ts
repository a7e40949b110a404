import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Address, Attachment, Block, Channel, Message, Reply } from '../../src/index.ts';

/** What a hirer has before their eyes, oldest first. */
export type OnScreen = { readonly text: string; readonly choices: readonly string[]; readonly media: string | null };

/** A hirer at the far end of the channel, doing what people do there. */
export type FarEnd = {
  readonly address: Address;
  readonly says: (text: string) => Promise<void>;
  readonly sends: (kind: Attachment['kind'], caption?: string) => Promise<void>;
  /** Changes the last thing they said. */
  readonly edits: (text: string) => Promise<void>;
  readonly presses: (label: string) => Promise<void>;
  readonly opens: (token: string) => Promise<void>;
  readonly screen: () => Promise<readonly OnScreen[]>;
  /** From now on nothing reaches them. */
  readonly leaves: () => Promise<void>;
};

export type ChannelRig = {
  readonly channel: Channel;
  readonly person: () => Promise<FarEnd>;
  /** Everything the channel handed to `receive`, in order. */
  readonly received: () => readonly Message[];
  /** Spoils the next delivery: the far side is busy, or the network hides the outcome. */
  readonly spoil: (how: 'later' | 'unknown') => Promise<void>;
  /** A photo that can be sent out over this channel. */
  readonly photo: () => Promise<Attachment>;
  readonly close: () => Promise<void>;
};

export type Point =
  | 'words'
  | 'media in'
  | 'media out'
  | 'location'
  | 'edits'
  | 'put right'
  | 'choices'
  | 'pictures'
  | 'start'
  | 'order'
  | 'long'
  | 'later'
  | 'unknown'
  | 'gone';

/** What a channel cannot do, with the reason: the point is left out and its name says why. */
export type CannotDo = Partial<Record<Point, string>>;

export const aReply = (blocks: readonly Block[], more: Partial<Reply> = {}): Reply => ({
  kind: 'answer',
  from: null,
  topic: null,
  blocks,
  choices: [],
  ...more,
});
export const aLine = (text: string): Block => ({ kind: 'line', text });

/**
 * What every channel must do, whatever it is built on: run on each of them.
 *
 * @param makeRig A started channel with nobody at its far end yet.
 */
export function channelContract(name: string, makeRig: () => Promise<ChannelRig>, cannot: CannotDo = {}): void {
  describe(`the channel contract: ${name}`, () => {
    let rig: ChannelRig;
    beforeEach(async () => {
      rig = await makeRig();
    });
    afterEach(async () => {
      await rig.close();
    });

    const point = (which: Point, title: string, body: () => Promise<void>) => {
      const reason = cannot[which];
      it.skipIf(reason !== undefined)(reason === undefined ? title : `${title} (left out: ${reason})`, body);
    };
    const receivedOf = async (count: number) => {
      await until(() => rig.received().length >= count, `${count} messages to be received`);
      return rig.received();
    };

    it('names itself in every address and message', async () => {
      const hirer = await rig.person();
      await hirer.says('hello');
      const [message] = await receivedOf(1);
      expect(hirer.address.channel).toBe(rig.channel.name);
      expect(message).toMatchObject(hirer.address);
    });

    point('words', 'hands on words exactly as they were typed', async () => {
      const hirer = await rig.person();
      const texts = [
        'Where is the step?',
        'fish & chips <b>1 < 2</b>',
        'zero\u200bwidth \u202eright to left',
        '🏕️👨‍👩‍👧‍👦 naïve café',
      ];
      for (const text of texts) await hirer.says(text);
      const messages = await receivedOf(texts.length);
      expect(messages.map((message) => message.text)).toEqual(texts);
      expect(
        messages.every((message) => message.choice === null && !message.edit && message.attachments.length === 0),
      ).toBe(true);
    });

    point('words', 'gives every message a key of its own', async () => {
      const hirer = await rig.person();
      const other = await rig.person();
      await hirer.says('one');
      await other.says('one');
      await hirer.says('one');
      const messages = await receivedOf(3);
      expect(new Set(messages.map((message) => message.key)).size).toBe(3);
      expect(new Set(messages.map((message) => message.address)).size).toBe(2);
    });

    for (const kind of ['photo', 'voice', 'video', 'file'] as const)
      point('media in', `takes a ${kind}`, async () => {
        const hirer = await rig.person();
        await hirer.sends(kind);
        const [message] = await receivedOf(1);
        expect(message?.attachments.map((attachment) => attachment.kind)).toEqual([kind]);
      });

    point('media in', 'takes a photo together with its words', async () => {
      const hirer = await rig.person();
      await hirer.sends('photo', 'what is this lamp?');
      const [message] = await receivedOf(1);
      expect(message).toMatchObject({ text: 'what is this lamp?', attachments: [{ kind: 'photo' }] });
    });

    point('location', 'takes a location', async () => {
      const hirer = await rig.person();
      await hirer.sends('location');
      const [message] = await receivedOf(1);
      expect(message?.attachments).toEqual([
        { kind: 'location', latitude: expect.any(Number), longitude: expect.any(Number) },
      ]);
    });

    point('edits', 'hands on an edit as the whole new text, with a key of its own', async () => {
      const hirer = await rig.person();
      await hirer.says('the frige is warm');
      await receivedOf(1);
      await hirer.edits('the fridge is warm');
      const [first, second] = await receivedOf(2);
      expect(second).toMatchObject({ text: 'the fridge is warm', edit: true });
      expect(second?.key).not.toBe(first?.key);
    });

    point('start', 'hands on the token of a link', async () => {
      const hirer = await rig.person();
      await hirer.opens('AbC-123_xyz');
      const [message] = await receivedOf(1);
      expect(message).toMatchObject({ startToken: 'AbC-123_xyz', choice: null });
    });

    point('words', 'shows every kind of block', async () => {
      const hirer = await rig.person();
      const blocks: Block[] = [
        aLine('Fish & chips <b>near</b> you'),
        { kind: 'steps', items: ['Open the locker', 'Turn the red valve'] },
        { kind: 'facts', items: ['Dial: 1 to 5'] },
        { kind: 'caution', text: 'Never with the stove lit' },
        {
          kind: 'bar',
          bar: { title: 'Hook-up', unit: 'W', limit: 1380, segments: [{ label: 'kettle', amount: 750 }] },
        },
        { kind: 'call', label: 'The office', number: '01632 960147' },
      ];
      expect(await rig.channel.deliver(aReply(blocks), hirer.address)).toMatchObject({ kind: 'delivered' });
      const text = (await hirer.screen()).map((seen) => seen.text).join('\n');
      for (const part of [
        'Fish & chips <b>near</b> you',
        'Open the locker',
        'Turn the red valve',
        'Dial: 1 to 5',
        'Never with the stove lit',
        'kettle',
        '01632 960147',
      ])
        expect(text).toContain(part);
    });

    point('words', 'shows who speaks when it is a person', async () => {
      const hirer = await rig.person();
      await rig.channel.deliver(aReply([aLine('I am on my way')], { kind: 'relay', from: 'Meg' }), hirer.address);
      expect((await hirer.screen()).map((seen) => seen.text).join('\n')).toContain('Meg');
    });

    point('choices', 'offers choices and hands on the one that was pressed', async () => {
      const hirer = await rig.person();
      const choices = [
        { id: 'topic:fridge-door', label: 'The door will not shut', tone: 'next' as const },
        { id: 'topic:fridge-warm', label: 'It is not cold', tone: 'quiet' as const },
      ];
      await rig.channel.deliver(aReply([aLine('Is it one of these?')], { kind: 'choose', choices }), hirer.address);
      await hirer.presses('It is not cold');
      const [message] = await receivedOf(1);
      expect(message).toMatchObject({ choice: 'topic:fridge-warm', edit: false });
    });

    point('choices', 'lets every choice be read whole, however long it is', async () => {
      const hirer = await rig.person();
      const label = 'The water pump runs on and on although every tap in the van is shut';
      await rig.channel.deliver(
        aReply([aLine('Is it this?')], { choices: [{ id: 'pump', label, tone: 'next' }] }),
        hirer.address,
      );
      const [seen] = await hirer.screen();
      expect(`${seen?.text}\n${seen?.choices.join('\n')}`).toContain(label);
      expect(seen?.choices).toHaveLength(1);
    });

    point('pictures', 'shows a picture, its words and its choices', async () => {
      const hirer = await rig.person();
      const reply = aReply(
        [
          aLine('The red valve is here'),
          { kind: 'picture', use: { picture: 'gas-locker', touch: 'valve', alt: 'The gas locker' } },
        ],
        { choices: [{ id: 'worked', label: 'That worked', tone: 'quiet' }] },
      );
      expect(await rig.channel.deliver(reply, hirer.address)).toMatchObject({ kind: 'delivered' });
      const screen = await hirer.screen();
      expect(screen.map((seen) => seen.text).join('\n')).toContain('The red valve is here');
      expect(screen.some((seen) => seen.media === 'photo')).toBe(true);
      expect(screen.at(-1)?.choices).toEqual(['That worked']);
    });

    point('media out', 'carries a photo from a person to the hirer', async () => {
      const hirer = await rig.person();
      const attachment = await rig.photo();
      const reply = aReply([aLine('Like this'), { kind: 'attachment', attachment }], { kind: 'relay', from: 'Tom' });
      expect(await rig.channel.deliver(reply, hirer.address)).toMatchObject({ kind: 'delivered' });
      const screen = await hirer.screen();
      expect(screen.some((seen) => seen.media === 'photo')).toBe(true);
      expect(screen.map((seen) => seen.text).join('\n')).toContain('Like this');
    });

    point('put right', 'puts new words in the place of those that a person said before', async () => {
      const hirer = await rig.person();
      const said = aReply([aLine('The red tap')], { kind: 'relay', from: 'Tom' });
      const first = await rig.channel.deliver(said, hirer.address);
      await rig.channel.deliver(aReply([aLine('And close the locker')], { kind: 'relay', from: 'Tom' }), hirer.address);
      const id = first.kind === 'delivered' ? first.id : '';
      const right = { ...said, blocks: [aLine('The blue tap')], putsRight: Number(id) };
      expect(await rig.channel.deliver(right, hirer.address, { id, reply: said })).toMatchObject({ kind: 'delivered' });
      const texts = (await hirer.screen()).map((seen) => seen.text);
      expect(texts).toHaveLength(2);
      expect(texts[0]).toContain('The blue tap');
      expect(texts[0]).not.toContain('red');
      expect(texts[1]).toContain('close the locker');
    });

    point('location', 'carries a location from a person to the hirer', async () => {
      const hirer = await rig.person();
      const attachment: Attachment = { kind: 'location', latitude: 54.1, longitude: -3.2 };
      await rig.channel.deliver(
        aReply([{ kind: 'attachment', attachment }], { kind: 'relay', from: 'Tom' }),
        hirer.address,
      );
      expect((await hirer.screen()).some((seen) => seen.media === 'location')).toBe(true);
    });

    point('order', 'keeps the order in both directions', async () => {
      const hirer = await rig.person();
      const numbers = Array.from({ length: 12 }, (_, i) => `number ${i}`);
      for (const text of numbers) await hirer.says(text);
      expect((await receivedOf(12)).map((message) => message.text)).toEqual(numbers);
      for (const text of numbers) await rig.channel.deliver(aReply([aLine(text)]), hirer.address);
      expect((await hirer.screen()).map((seen) => seen.text)).toEqual(numbers);
    });

    point('long', 'brings a text of any length whole and in order', async () => {
      const hirer = await rig.person();
      const sentences = Array.from({ length: 400 }, (_, i) => `Sentence ${i} says <something> & more.`);
      expect(await rig.channel.deliver(aReply([aLine(sentences.join(' '))]), hirer.address)).toMatchObject({
        kind: 'delivered',
      });
      const screen = await hirer.screen();
      expect(
        screen
          .map((seen) => seen.text.trim())
          .join(' ')
          .split(/(?<=\.) /),
      ).toEqual(sentences);
      for (const seen of screen) expect(seen.text.length).toBeLessThanOrEqual(rig.channel.abilities.longest);
    });

    point('later', 'asks for another try when the far side is busy, and then delivers once', async () => {
      const hirer = await rig.person();
      await rig.spoil('later');
      const receipt = await rig.channel.deliver(aReply([aLine('hello')]), hirer.address);
      expect(receipt).toMatchObject({ kind: 'later', afterMs: expect.any(Number) });
      expect(await rig.channel.deliver(aReply([aLine('hello')]), hirer.address)).toMatchObject({ kind: 'delivered' });
      expect((await hirer.screen()).map((seen) => seen.text)).toEqual(['hello']);
    });

    point('unknown', 'says so when the network hid the outcome', async () => {
      const hirer = await rig.person();
      await rig.spoil('unknown');
      expect(await rig.channel.deliver(aReply([aLine('hello')]), hirer.address)).toMatchObject({ kind: 'unknown' });
    });

    point('gone', 'says so when nothing will ever arrive there', async () => {
      const hirer = await rig.person();
      await hirer.leaves();
      expect(await rig.channel.deliver(aReply([aLine('hello')]), hirer.address)).toMatchObject({ kind: 'gone' });
    });

    it('never throws on delivery, whatever the address', async () => {
      const receipt = await rig.channel.deliver(aReply([aLine('hello')]), {
        channel: rig.channel.name,
        address: 'no such place',
      });
      expect(['gone', 'later', 'unknown', 'delivered']).toContain(receipt.kind);
    });

    it('ends while messages arrive and hands on all that it accepted', async () => {
      const hirer = await rig.person();
      for (let i = 0; i < 5; i++) await hirer.says(`number ${i}`);
      await receivedOf(1);
      await rig.channel.stop();
      const texts = rig.received().map((message) => message.text);
      expect(texts).toEqual(texts.map((_, i) => `number ${i}`));
    });
  });
}

/** Waits for something that happens on its own time; fails in words after ten seconds. */
export async function until(condition: () => boolean, what: string): Promise<void> {
  const end = Date.now() + 10_000;
  while (!condition()) {
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}
