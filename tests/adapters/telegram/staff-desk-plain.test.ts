import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { until } from '../../contracts/channel.ts';
import { NOBODY } from '../../helpers/a-brief.ts';
import { aBooking, aYard, type Yard } from '../../helpers/telegram-yard.ts';

describe('the staff desk in a plain group', () => {
  let yard: Yard;
  beforeEach(async () => {
    yard = await aYard({ forum: false });
  });
  afterEach(() => yard.close());

  const told = (text: string) =>
    until(() => yard.group.screen().some((seen) => seen.text.includes(text)), `the group to be told '${text}'`);
  const messageWith = (text: string) => yard.group.screen().find((seen) => seen.text.includes(text))?.id ?? null;
  const hirerReads = (person: { screen: () => { text: string }[] }, text: string) =>
    until(() => person.screen().some((seen) => seen.text.includes(text)), `the hirer to read '${text}'`);

  it('hangs everything a hirer says on the brief', async () => {
    const { threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await yard.hirerSays(threadId, 'are you there?');
    await told('are you there?');
    const line = yard.group.screen().find((seen) => seen.text.includes('are you there?'));
    expect(line).toMatchObject({ topic: null, replyTo: messageWith('the fridge clicks') });
  });

  it('sends to a hirer what staff reply to the brief or to any of their lines, and nothing else', async () => {
    const ada = await yard.hirer('Ada', aBooking());
    const ben = await yard.hirer('Ben', aBooking({ ref: 'BR-2703', firstName: 'Ben' }));
    await yard.pass(ada.threadId, { question: 'about the fridge' });
    await yard.pass(ben.threadId, { question: 'about the heater', firstName: 'Ben', booking: 'BR-2703' });
    await yard.hirerSays(ben.threadId, 'it is cold');
    await told('it is cold');
    const meg = yard.standIn.person('Margaret');
    meg.saysIn(yard.group.place, 'who has the keys?');
    meg.saysIn(yard.group.place, 'for Ada', { replyTo: messageWith('about the fridge') });
    meg.saysIn(yard.group.place, 'for Ben', { replyTo: messageWith('it is cold') });
    await hirerReads(ada.person, 'for Ada');
    await hirerReads(ben.person, 'for Ben');
    const read = [...ada.person.screen(), ...ben.person.screen()].map((seen) => seen.text).join('\n');
    expect(read).not.toContain('keys');
    expect(
      ada.person
        .screen()
        .map((seen) => seen.text)
        .join(),
    ).not.toContain('for Ben');
  });

  it('goes on when a reply hangs on a colleague’s reply', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    const meg = yard.standIn.person('Margaret');
    await yard.pass(threadId);
    await told('fridge');
    const first = meg.saysIn(yard.group.place, 'look at the fuse', { replyTo: messageWith('fridge') });
    await hirerReads(person, 'look at the fuse');
    meg.saysIn(yard.group.place, 'the 15 A one', { replyTo: first.message_id });
    await hirerReads(person, 'the 15 A one');
  });

  it('keeps a note in the yard and takes and gives back by presses', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    const meg = yard.standIn.person('Margaret');
    await yard.pass(threadId);
    await told('fridge');
    meg.saysIn(yard.group.place, 'yard: ring her first', { replyTo: messageWith('fridge') });
    meg.presses('I have it', yard.group.place);
    await told('Margaret has it.');
    meg.presses('Back to the bot', yard.group.place);
    await told('Back with the bot (Somebody).');
    expect(await yard.keeper(threadId)).toBe('bot');
    expect(person.screen().some((seen) => seen.text.includes('ring her first'))).toBe(false);
    expect(yard.standIn.callsOf('createForumTopic')).toEqual([]);
  });

  it('answers a hirer who has no booking', async () => {
    const { person, threadId } = await yard.hirer('Zed', null);
    await yard.pass(threadId, { ...NOBODY, reason: 'asked' });
    await told('No booking yet');
    const meg = yard.standIn.person('Margaret');
    meg.saysIn(yard.group.place, 'Who are you with?', { replyTo: messageWith('No booking yet') });
    await hirerReads(person, 'Who are you with?');
  });

  it('uses forum topics from the next pass on when the group becomes a forum', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await told('fridge');
    yard.group.place.type = 'supergroup';
    yard.group.place.forum = true;
    const meg = yard.standIn.person('Margaret');
    meg.saysIn(yard.group.place, 'still by reply', { replyTo: messageWith('fridge') });
    await hirerReads(person, 'still by reply');
    await yard.pass(threadId, { question: 'and the heater' });
    await told('and the heater');
    expect(yard.group.topics()).toEqual(['Dunlin, Ada']);
  });
});
