import { afterEach, describe, expect, it } from 'vitest';
import { memoryStore } from '../../../adapters/memory/memory-store.ts';
import { TELEGRAM_RATES } from '../../../adapters/telegram/limits.ts';
import { until } from '../../contracts/channel.ts';
import { TelegramStandIn } from '../../helpers/telegram-stand-in.ts';
import { aBooking, aClock, aYard, briefly, type Yard } from '../../helpers/telegram-yard.ts';

const PORT_OF = (root: string) => Number(new URL(root).port);

describe('the staff desk when things go wrong', () => {
  let yard: Yard | null = null;
  afterEach(async () => {
    await yard?.close();
    yard = null;
  });

  const told = (at: Yard, text: string) =>
    until(() => at.group.screen().some((seen) => seen.text.includes(text)), `the group to be told '${text}'`);
  const times = (at: Yard, text: string) => at.group.screen().filter((seen) => seen.text.includes(text)).length;
  const hirerReads = (person: { screen: () => { text: string }[] }, text: string) =>
    until(() => person.screen().some((seen) => seen.text.includes(text)), `the hirer to read '${text}'`);

  it('tells a pass after Telegram was down, and nobody twice', async () => {
    yard = await aYard({ forum: true, telegram: { wait: briefly } });
    const { threadId } = await yard.hirer('Ada', aBooking());
    const port = PORT_OF(yard.standIn.root);
    await yard.standIn.close();
    await yard.pass(threadId);
    await yard.hirerSays(threadId, 'hello?');
    await new Promise((resolve) => setTimeout(resolve, 50));
    await yard.standIn.start(port);
    await told(yard, 'hello?');
    expect(times(yard, 'the fridge clicks')).toBe(1);
  });

  it('waits as long as Telegram asks (429) and then tells everything in order', async () => {
    const { waits, clock, wait } = aClock();
    yard = await aYard({ forum: true, telegram: { clock, wait } });
    const { threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await told(yard, 'fridge');
    yard.standIn.trouble('sendMessage', {
      kind: 'refuse',
      code: 429,
      description: 'Too Many Requests: retry after 7',
      retryAfterS: 7,
    });
    for (const text of ['one', 'two', 'three']) await yard.hirerSays(threadId, text);
    await told(yard, 'three');
    expect(
      yard.group
        .screen()
        .slice(1)
        .map((seen) => seen.text.replace('Ada\n', '')),
    ).toEqual(['one', 'two', 'three']);
    expect(Math.max(...waits)).toBeGreaterThanOrEqual(6_900);
  });

  it('repeats a brief rather than losing it when the network hid the outcome', async () => {
    yard = await aYard({ forum: true, telegram: { wait: briefly } });
    const { threadId } = await yard.hirer('Ada', aBooking());
    yard.standIn.trouble('sendMessage', { kind: 'drop', when: 'before' });
    await yard.pass(threadId);
    await told(yard, 'fridge');
  });

  it('goes on with the next when Telegram refuses a message for good', async () => {
    yard = await aYard({ forum: true });
    const { threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await told(yard, 'fridge');
    yard.standIn.trouble('sendMessage', { kind: 'refuse', code: 400, description: 'Bad Request: something odd' });
    await yard.hirerSays(threadId, 'lost words');
    await yard.hirerSays(threadId, 'next words');
    await told(yard, 'next words');
  });

  it('tells the yard page when the bot is thrown out of the group, and all that waited when it is back', async () => {
    yard = await aYard({ forum: true, telegram: { wait: briefly } });
    const { threadId } = await yard.hirer('Ada', aBooking());
    const meg = yard.standIn.person('Margaret');
    yard.group.throwsOutBot(meg);
    await until(() => yard?.troubles.at(-1) !== undefined && yard.troubles.at(-1) !== null, 'the trouble to be told');
    await yard.pass(threadId);
    expect(yard.troubles[0]).toContain('no longer in the staff group');
    yard.group.place.reachable = true;
    yard.group.bringsInBot(meg);
    await told(yard, 'fridge');
    expect(yard.troubles.at(-1)).toBeNull();
  });

  it('follows the group when it becomes a supergroup with another number', async () => {
    yard = await aYard({ forum: false, telegram: { wait: briefly } });
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await told(yard, 'fridge');
    const moved = yard.standIn.group({ forum: true });
    yard.group.place.movedTo = moved.id;
    await yard.hirerSays(threadId, 'still there?');
    await until(() => moved.screen().some((seen) => seen.text.includes('still there?')), 'the line in the new group');
    expect(moved.topics()).toEqual(['Dunlin, Ada']);
    const meg = yard.standIn.person('Margaret');
    meg.saysIn(moved.place, 'here we are', { topic: moved.topic('Dunlin, Ada')?.id ?? null });
    await hirerReads(person, 'here we are');
  });

  it('says a staff message once although the update comes again after a crash before it was noted', async () => {
    const store = memoryStore();
    let crash = true;
    yard = await aYard({
      forum: true,
      store,
      actions: (real) => ({
        ...real,
        say: async (...given) => {
          const outcome = await real.say(...given);
          if (!crash) return outcome;
          crash = false;
          throw new Error('the power went');
        },
      }),
    });
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await told(yard, 'fridge');
    const meg = yard.standIn.person('Margaret');
    meg.saysIn(yard.group.place, 'only once', { topic: yard.group.topic('Dunlin, Ada')?.id ?? null });
    await hirerReads(person, 'only once');
    await until(() => yard?.standIn.world.pending.length === 0, 'the update to be confirmed');
    expect(person.screen().filter((seen) => seen.text.includes('only once'))).toHaveLength(1);
  });

  it('says each of several staff messages once when all their updates come again after a crash', async () => {
    const store = memoryStore();
    const first = await aYard({ forum: true, store });
    const { person, threadId } = await first.hirer('Ada', aBooking());
    await first.pass(threadId);
    await told(first, 'fridge');
    const where = { topic: first.group.topic('Dunlin, Ada')?.id ?? null };
    const meg = first.standIn.person('Margaret');
    for (const text of ['one', 'two', 'yard: three']) meg.saysIn(first.group.place, text, where);
    const unconfirmed = [...first.standIn.world.pending];
    await hirerReads(person, 'two');
    await first.halt();
    first.standIn.world.pending = unconfirmed;
    yard = await aYard({ forum: true, store, standIn: first.standIn, group: first.group });
    meg.saysIn(yard.group.place, 'four', where);
    await hirerReads(person, 'four');
    const relayed = person.screen().map((seen) => seen.text);
    expect(relayed.filter((text) => text.startsWith('Somebody\n'))).toEqual([
      'Somebody\none',
      'Somebody\ntwo',
      'Somebody\nfour',
    ]);
    expect(await store.events({ threadId, kinds: ['staff-noted'] })).toHaveLength(1);
  });

  it('never sends to the hirer what was to stay in the yard, even when keeping it fails at first', async () => {
    let fails = 1;
    yard = await aYard({
      forum: true,
      telegram: { wait: briefly },
      actions: (real) => ({
        ...real,
        note: async (...given) => {
          if (fails-- > 0) throw new Error('disk full');
          return real.note(...given);
        },
      }),
    });
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await told(yard, 'fridge');
    const topic = yard.group.topic('Dunlin, Ada')?.id ?? null;
    const meg = yard.standIn.person('Margaret');
    meg.presses('I have it', yard.group.place);
    await told(yard, 'Margaret has it.');
    meg.presses('Keep in the yard', yard.group.place);
    meg.saysIn(yard.group.place, 'a rude lot', { topic });
    meg.saysIn(yard.group.place, 'On our way', { topic });
    await hirerReads(person, 'On our way');
    expect(person.screen().some((seen) => seen.text.includes('rude'))).toBe(false);
    expect(await yard.store.events({ threadId, kinds: ['staff-noted'] })).toHaveLength(1);
  });

  it('tells after a restart what happened meanwhile, and nothing it told before', async () => {
    const store = memoryStore();
    const first = await aYard({ forum: true, store });
    const { threadId } = await first.hirer('Ada', aBooking());
    await first.pass(threadId);
    await told(first, 'fridge');
    await first.halt();
    await first.hirerSays(threadId, 'while you were away');
    yard = await aYard({ forum: true, store, standIn: first.standIn, group: first.group });
    await told(yard, 'while you were away');
    expect(times(yard, 'the fridge clicks')).toBe(1);
  });

  it('forgets no reminder while Telegram is down, nor over a restart', async () => {
    const store = memoryStore();
    const first = await aYard({ forum: true, store, telegram: { wait: briefly } });
    const { threadId } = await first.hirer('Ada', aBooking());
    await first.pass(threadId);
    await told(first, 'fridge');
    const port = PORT_OF(first.standIn.root);
    await first.standIn.close();
    await first.channel.desk?.remind(threadId, 'Ada has waited for 20 minutes.', false);
    await first.channel.desk?.remind(threadId, 'Ada smells gas and nobody has her.', true);
    await first.halt();
    await first.standIn.start(port);
    yard = await aYard({ forum: true, store, standIn: first.standIn, group: first.group });
    await told(yard, '20 minutes');
    const texts = yard.group.screen().map((seen) => seen.text);
    expect(texts.slice(-2)).toEqual(['Ada smells gas and nobody has her.', 'Ada has waited for 20 minutes.']);
  });

  it('tells a desk that is new of those who wait, but of no older times', async () => {
    const store = memoryStore();
    const standIn = await new TelegramStandIn().start();
    const other = await aYard({ forum: true, store, standIn });
    const waiting = await other.hirer('Ada', aBooking());
    const done = await other.hirer('Ben', aBooking({ ref: 'BR-2703', firstName: 'Ben', van: 'wren' }));
    await other.halt();
    await other.pass(waiting.threadId);
    await other.pass(done.threadId, { booking: 'BR-2703', firstName: 'Ben', van: 'Wren', question: 'long ago' });
    await other.shell.giveBack(done.threadId, 'Nessa');
    yard = await aYard({ forum: true, store, standIn });
    await told(yard, 'fridge');
    expect(yard.group.topics()).toEqual(['Dunlin, Ada']);
    expect(times(yard, 'long ago')).toBe(0);
  });

  it('splits what is too long for one message', async () => {
    yard = await aYard({ forum: true });
    const { threadId } = await yard.hirer('Ada', aBooking());
    const long = Array.from({ length: 600 }, (_, i) => `Sentence ${i}.`).join(' ');
    await yard.pass(threadId, { question: long, tried: [long], suggested: long });
    await yard.hirerSays(threadId, long);
    await told(yard, 'Sentence 599.');
    expect(yard.group.screen()[0]?.choices).toContain('I have it');
  });

  it('keeps to twenty messages a minute in the group and lets a danger pass nonetheless', async () => {
    const { clock, wait } = aClock();
    const at: number[] = [];
    yard = await aYard({
      forum: false,
      telegram: { rates: TELEGRAM_RATES, clock, wait },
    });
    const ada = await yard.hirer('Ada', aBooking());
    const ben = await yard.hirer('Ben', aBooking({ ref: 'BR-2703', firstName: 'Ben' }));
    const calls = yard.standIn.calls;
    const push = calls.push.bind(calls);
    calls.push = (...given) => {
      if (given.some((call) => call.method === 'sendMessage')) at.push(clock.nowMs());
      return push(...given);
    };
    await yard.pass(ada.threadId);
    for (let i = 0; i < 40; i++) await yard.hirerSays(ada.threadId, `line ${i}.`);
    await told(yard, 'line 16.');
    await yard.pass(
      ben.threadId,
      { booking: 'BR-2703', firstName: 'Ben', reason: 'safety', hazard: 'safety-fire' },
      'danger',
    );
    await told(yard, 'line 39.');
    for (const end of at)
      expect(at.filter((each) => each > end - 60_000 && each <= end).length).toBeLessThanOrEqual(20);
    const texts = yard.group.screen().map((seen) => seen.text);
    expect(texts.findIndex((text) => text.includes('DANGER'))).toBeLessThan(
      texts.findIndex((text) => text.includes('line 25.')),
    );
  });
});
