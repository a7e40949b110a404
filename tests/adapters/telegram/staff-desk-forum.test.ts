import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { until } from '../../contracts/channel.ts';
import { aBooking, aYard, type Yard } from '../../helpers/telegram-yard.ts';

const TITLE = 'Dunlin, Ada';

describe('the staff desk in a group with forum topics', () => {
  let yard: Yard;
  beforeEach(async () => {
    yard = await aYard({
      forum: true,
      telegram: { openForeign: async ({ kind }) => ({ bytes: new Uint8Array([7, 7]), name: `sent.${kind}` }) },
    });
  });
  afterEach(() => yard.close());

  const topicId = () => yard.group.topic(TITLE)?.id ?? null;
  const inTopic = () => yard.group.screen(topicId());
  const told = (text: string) =>
    until(() => yard.group.screen().some((seen) => seen.text.includes(text)), `the group to be told '${text}'`);
  const answered = (query: string) =>
    until(() => yard.standIn.world.queries.get(query)?.answered === true, 'the press to be answered').then(
      () => yard.standIn.world.queries.get(query)?.text,
    );
  /** Ada's thread has been passed, and the group has its brief; Margaret is one of the staff. */
  const adaWaits = async () => {
    const ada = await yard.hirer('Ada', aBooking());
    await yard.pass(ada.threadId);
    await told('fridge');
    return { ...ada, meg: yard.standIn.person('Margaret') };
  };
  const hirerReads = (person: { screen: () => { text: string }[] }, text: string) =>
    until(() => person.screen().some((seen) => seen.text.includes(text)), `the hirer to read '${text}'`);

  it('opens a forum topic named by van and first name, with the brief and its presses', async () => {
    const { threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await told('the fridge clicks & goes <out>');
    expect(yard.group.topics()).toEqual([TITLE]);
    const [brief] = inTopic();
    expect(brief?.text).toContain('Ada · Dunlin · Sandwick Head, pitch 14 · 3 nights left · 10 A hook-up · BR-2702');
    expect(brief?.text).toContain('01632 960111');
    expect(brief?.choices).toEqual(['I have it', 'Back to the bot', 'The whole talk']);
  });

  it('takes a thread by a press: the hirer is told, the brief says who has it', async () => {
    const { person, threadId, meg } = await adaWaits();
    expect(await answered(meg.presses('I have it', yard.group.place))).toContain('You have it.');
    expect(await yard.keeper(threadId)).toBe('staff');
    await told('Margaret has it.');
    expect(inTopic()[0]?.choices).toEqual(['Keep in the yard', 'Back to the bot', 'The whole talk']);
    await until(() => person.screen().length > 0, 'the hirer to be told');
    expect(
      person
        .screen()
        .map((seen) => seen.text)
        .join(),
    ).not.toContain('Margaret');
  });

  it('lets one of two win who press at once, and tells the other who has it', async () => {
    const { threadId } = await yard.hirer('Ada', aBooking());
    yard.links.set('link-meg', 'Nessa').set('link-tom', 'Gethin');
    const meg = yard.standIn.person('Margaret');
    const tom = yard.standIn.person('Thomas');
    meg.says('/start link-meg');
    tom.says('/start link-tom');
    await until(() => meg.screen().length + tom.screen().length === 2, 'both to be welcomed');
    await yard.pass(threadId);
    await told('fridge');
    const [first, second] = [meg.presses('I have it', yard.group.place), tom.presses('I have it', yard.group.place)];
    expect(await answered(first)).toBe('You have it.');
    expect(await answered(second)).toBe('Nessa has it already.');
    await told('Nessa has it.');
  });

  it('tells two people without a rota name apart', async () => {
    const { threadId } = await yard.hirer('Ada', aBooking());
    const meg = yard.standIn.person('Margaret');
    const tom = yard.standIn.person('Thomas');
    await yard.pass(threadId);
    await told('fridge');
    const [first, second] = [meg.presses('I have it', yard.group.place), tom.presses('I have it', yard.group.place)];
    expect(await answered(first)).toContain('You have it.');
    expect(await answered(second)).toBe('Margaret has it already.');
  });

  it('takes the rota name from the Telegram account of somebody who is shut out', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    yard.links.set('link-meg', 'Nessa');
    const meg = yard.standIn.person('Margaret');
    meg.says('/start link-meg');
    await until(() => meg.screen().length === 1, 'the welcome');
    await yard.channel.desk?.forget('Nessa');
    await yard.pass(threadId);
    await told('fridge');
    meg.saysIn(yard.group.place, 'It is me', { topic: topicId() });
    await hirerReads(person, 'Somebody\nIt is me');
  });

  it('carries words both ways and marks what has arrived', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    yard.links.set('link-meg', 'Nessa');
    const meg = yard.standIn.person('Margaret');
    meg.says('/start link-meg');
    await until(() => meg.screen().length === 1, 'the welcome');
    await yard.pass(threadId);
    await told('fridge');
    const said = meg.saysIn(yard.group.place, 'Try <the> other cylinder & tell me', { topic: topicId() });
    await hirerReads(person, 'Nessa\nTry <the> other cylinder & tell me');
    await until(() => yard.group.reactionsOn(said).includes('👍'), 'the mark');
    await yard.hirerSays(threadId, 'It lights now!');
    await told('Ada\nIt lights now!');
    expect(inTopic().at(-1)?.text).toBe('Ada\nIt lights now!');
  });

  it('does not repeat in the forum topic what staff said there, but shows what was said from elsewhere', async () => {
    const { person, threadId, meg } = await adaWaits();
    meg.saysIn(yard.group.place, 'from the group', { topic: topicId() });
    await hirerReads(person, 'from the group');
    await yard.shell.say(threadId, 'Somebody', 'from the page');
    await told('Somebody to Ada\nfrom the page');
    expect(inTopic().filter((seen) => seen.text.includes('from the group'))).toEqual([]);
  });

  for (const media of ['photo', 'voice', 'video', 'document', 'location', 'video_note', 'animation', 'audio'] as const)
    it(`carries a ${media} from staff to the hirer`, async () => {
      const { person, threadId } = await yard.hirer('Ada', aBooking());
      const meg = yard.standIn.person('Margaret');
      await yard.pass(threadId);
      await told('fridge');
      meg.sends(media, {
        place: yard.group.place,
        topic: topicId(),
        ...(media === 'photo' ? { caption: 'like this' } : {}),
      });
      await until(() => person.screen().some((seen) => seen.media === media), `the ${media} to arrive`);
      if (media === 'photo') await hirerReads(person, 'like this');
    });

  for (const [kind, media] of [
    ['photo', 'photo'],
    ['voice', 'voice'],
    ['video', 'video'],
    ['file', 'document'],
  ] as const)
    it(`shows in the forum topic a ${kind} that staff send from the yard page, and brings it to the hirer`, async () => {
      const { person, threadId } = await yard.hirer('Ada', aBooking());
      await yard.pass(threadId);
      await told('fridge');
      await yard.shell.say(threadId, 'Nessa', 'like this', [{ kind, file: `0123.${kind}` }]);
      const both = () => [...inTopic(), ...person.screen()].filter((seen) => seen.media === media);
      await until(() => both().length === 2, `the ${media} in the forum topic and with the hirer`);
      expect(both().map((seen) => seen.text)).toEqual(['Nessa to Ada\nlike this', 'Nessa\nlike this']);
      await yard.shell.say(threadId, 'Nessa', '', [{ kind, file: `4567.${kind}` }]);
      await until(() => both().length === 4, `the ${media} without words`);
    });

  it('brings as a file what Telegram will not take as a photo', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    yard.standIn.trouble('sendPhoto', { kind: 'refuse', code: 400, description: 'Bad Request: IMAGE_PROCESS_FAILED' });
    await yard.shell.say(threadId, 'Nessa', 'like this', [{ kind: 'photo', file: '0123.avif' }]);
    await until(() => person.screen().some((seen) => seen.media === 'document'), 'the photo as a file');
    expect(person.screen().map((seen) => seen.text)).toEqual(['Nessa\nlike this']);
  });

  it('carries a photo from the hirer, in the brief and afterwards', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    const file = yard.standIn.world.addFile(new Uint8Array([1]), 'p.jpg', 'photo');
    const attachments = [{ kind: 'photo' as const, file: `tg:photo:${file.id}` }];
    await yard.pass(threadId, { attachments });
    await until(() => inTopic().some((seen) => seen.media === 'photo'), 'the photo of the brief');
    await yard.hirerSays(threadId, 'and this one', attachments);
    await until(
      () => inTopic().some((seen) => seen.media === 'photo' && seen.text.includes('and this one')),
      'the second photo',
    );
    expect(person.screen()).toEqual([]);
  });

  it('copies what has no file of its own, such as a poll', async () => {
    const { person, threadId } = await adaWaits();
    const poll = person.sends('poll');
    await yard.hirerSays(threadId, '', [{ kind: 'file', file: `tg:copy:${person.user.id}:${poll.message_id}` }]);
    await until(() => inTopic().some((seen) => seen.media === 'poll'), 'the poll');
  });

  it('changes the hirer’s copy when staff edit their message, and nothing for a repeat of the same text', async () => {
    const { person, meg } = await adaWaits();
    const said = meg.saysIn(yard.group.place, 'The red tap', { topic: topicId() });
    await hirerReads(person, 'The red tap');
    meg.edits(said, 'The red tap');
    meg.edits(said, 'The blue tap');
    await hirerReads(person, 'The blue tap');
    meg.edits(said, 'The blue tap, on the left');
    await hirerReads(person, 'The blue tap, on the left');
    expect(person.screen().map((seen) => seen.text)).toEqual(['Somebody\nThe blue tap, on the left']);
    expect(
      yard.standIn.callsOf('editMessageText').filter((call) => call.payload.chat_id === person.user.id),
    ).toHaveLength(2);
    expect(inTopic().some((seen) => seen.text.includes('tap'))).toBe(false);
  });

  it('changes the words under a photo', async () => {
    const { person, meg } = await adaWaits();
    const sent = meg.sends('photo', { place: yard.group.place, topic: topicId(), caption: 'the red one' });
    await hirerReads(person, 'the red one');
    meg.edits(sent, 'the blue one');
    await hirerReads(person, 'the blue one');
    expect(person.screen().map((seen) => [seen.media, seen.text])).toEqual([['photo', 'Somebody\nthe blue one']]);
  });

  it('sends what was put right anew, and says so, when the hirer has deleted the first', async () => {
    const { person, meg } = await adaWaits();
    const said = meg.saysIn(yard.group.place, 'The red tap', { topic: topicId() });
    await hirerReads(person, 'The red tap');
    person.deletes(person.screen().at(-1)?.id ?? 0);
    meg.edits(said, 'The blue tap');
    await hirerReads(person, 'Somebody\n(Put right) The blue tap');
    await until(() => yard.group.reactionsOn(said).includes('👍'), 'the mark');
    meg.edits(said, 'The green tap');
    await hirerReads(person, 'The green tap');
    expect(person.screen().filter((seen) => seen.text.includes('tap'))).toHaveLength(1);
  });

  it('changes what staff said before they gave the thread back, without taking it again', async () => {
    const { person, threadId, meg } = await adaWaits();
    const said = meg.saysIn(yard.group.place, 'Ring 0163 first', { topic: topicId() });
    await hirerReads(person, 'Ring 0163 first');
    await yard.shell.giveBack(threadId, 'Somebody');
    meg.edits(said, 'Ring 01632 960147 first');
    await hirerReads(person, 'Ring 01632 960147 first');
    expect(await yard.keeper(threadId)).toBe('bot');
  });

  it('shows in the forum topic what staff put right on the yard page, and lets nobody put right another’s words', async () => {
    const { person, threadId } = await adaWaits();
    await yard.shell.say(threadId, 'Nessa', 'At ten');
    await told('Nessa to Ada\nAt ten');
    const line = (await yard.store.lines(threadId)).findLast(({ who }) => who === 'Nessa')?.id ?? 0;
    expect(await yard.shell.putRight(threadId, 'Gethin', line, 'Never')).toEqual({ kind: 'no-such-thread' });
    expect(await yard.shell.putRight(threadId, 'Nessa', line, 'At eleven')).toEqual({ kind: 'done' });
    await told('Nessa to Ada, put right\nAt eleven');
    await hirerReads(person, 'Nessa\nAt eleven');
    expect(person.screen().some((seen) => seen.text.includes('ten'))).toBe(false);
  });

  it('keeps what a hirer said and then deleted, edited before or not', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    const meg = yard.standIn.person('Margaret');
    await yard.pass(threadId);
    await yard.hirerSays(threadId, 'pitch 14');
    await yard.hirerSays(threadId, 'pitch 15, not 14', [], true);
    await told('Ada changed that to\npitch 15, not 14');
    const poll = person.sends('poll');
    person.deletes(poll.message_id);
    await yard.hirerSays(threadId, '', [{ kind: 'file', file: `tg:copy:${person.user.id}:${poll.message_id}` }]);
    await told('[file could not be sent here]');
    const changed = inTopic().find((seen) => seen.text.includes('not 14'));
    meg.saysIn(yard.group.place, 'Seen', { topic: topicId(), replyTo: changed?.id ?? null });
    await hirerReads(person, '“pitch 15, not 14”\nSeen');
  });

  it('shows a hirer’s edit as such', async () => {
    const { threadId } = await yard.hirer('Ada', aBooking());
    await yard.pass(threadId);
    await yard.hirerSays(threadId, 'pitch 15, not 14', [], true);
    await told('Ada changed that to\npitch 15, not 14');
  });

  it('keeps in the yard what begins with yard:, its edits too', async () => {
    const { person, threadId, meg } = await adaWaits();
    const note = meg.saysIn(yard.group.place, 'yard: third time this week', { topic: topicId() });
    meg.edits(note, 'fourth time this week');
    meg.saysIn(yard.group.place, 'A person is on the way', { topic: topicId() });
    await hirerReads(person, 'A person is on the way');
    const noted = await yard.store.events({ threadId, kinds: ['staff-noted'] });
    expect(noted.map(({ event }) => (event.kind === 'staff-noted' ? event.text : ''))).toEqual([
      'third time this week',
      'fourth time this week',
    ]);
    expect(person.screen().some((seen) => seen.text.includes('time this week'))).toBe(false);
  });

  it('keeps the next message in the yard after the press, and only that one', async () => {
    const { person, meg } = await adaWaits();
    await answered(meg.presses('I have it', yard.group.place));
    await told('Margaret has it.');
    expect(await answered(meg.presses('Keep in the yard', yard.group.place))).toBe(
      'Your next message here stays in the yard.',
    );
    meg.saysIn(yard.group.place, 'they were rude', { topic: topicId() });
    meg.saysIn(yard.group.place, 'We are coming', { topic: topicId() });
    await hirerReads(person, 'We are coming');
    expect(person.screen().some((seen) => seen.text.includes('rude'))).toBe(false);
  });

  it('sends the answer at hand by a press and shows it in the forum topic', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    const meg = yard.standIn.person('Margaret');
    await yard.pass(threadId, { suggested: 'Turn the dial to gas.' });
    await told('Answer at hand: Turn the dial to gas.');
    expect(await answered(meg.presses('Send the answer at hand', yard.group.place))).toBe('Sent.');
    await hirerReads(person, 'Turn the dial to gas.');
    await told('Somebody to Ada\nTurn the dial to gas.');
  });

  it('shows the whole talk at a press, from before the pass on', async () => {
    const { meg } = await adaWaits();
    expect(await answered(meg.presses('The whole talk', yard.group.place))).toBe('The talk so far stands below.');
    await told('Ada: ');
  });

  it('closes the forum topic when the thread is given back and reopens it at the next pass', async () => {
    const { person, threadId, meg } = await adaWaits();
    await answered(meg.presses('I have it', yard.group.place));
    await told('Margaret has it.');
    expect(await answered(meg.presses('Back to the bot', yard.group.place))).toBe('Back with the bot.');
    await until(() => yard.group.topic(TITLE)?.closed === true, 'the forum topic to be closed');
    expect(await yard.keeper(threadId)).toBe('bot');
    await hirerReads(person, 'back to the bot');
    const before = topicId();
    await yard.pass(threadId, { question: 'and now the heater' });
    await told('and now the heater');
    expect(yard.group.topic(TITLE)).toMatchObject({ id: before, closed: false });
    expect(yard.group.topics()).toEqual([TITLE]);
  });

  it('keeps one forum topic for all threads of a booking, open while one of them is with people', async () => {
    const ada = await yard.hirer('Ada', aBooking());
    const ben = await yard.hirer('Ben', aBooking());
    const meg = yard.standIn.person('Margaret');
    await yard.pass(ada.threadId, { question: 'first question' });
    await yard.pass(ben.threadId, { question: 'second question' });
    await told('first question');
    await told('second question');
    expect(yard.group.topics()).toEqual([TITLE]);
    const firstBrief = inTopic().find((seen) => seen.text.includes('first question'));
    meg.saysIn(yard.group.place, 'to the last to speak', { topic: topicId() });
    await hirerReads(ben.person, 'to the last to speak');
    meg.saysIn(yard.group.place, 'to the first', { topic: topicId(), replyTo: firstBrief?.id ?? null });
    await hirerReads(ada.person, 'to the first');
    await yard.shell.giveBack(ada.threadId, 'Somebody');
    await told('Back with the bot');
    await yard.hirerSays(ben.threadId, 'and I?');
    await told('and I?');
    expect(yard.group.topic(TITLE)?.closed).toBe(false);
    expect(yard.standIn.callsOf('closeForumTopic')).toEqual([]);
    await yard.shell.giveBack(ben.threadId, 'Somebody');
    await until(() => yard.group.topic(TITLE)?.closed === true, 'the forum topic to be closed');
  });

  it('makes a new forum topic with the brief when somebody deleted it', async () => {
    const { threadId } = await adaWaits();
    yard.group.deletesTopic(TITLE);
    await yard.hirerSays(threadId, 'anybody there?');
    await until(() => inTopic().some((seen) => seen.text.includes('anybody there?')), 'the line in a new forum topic');
    expect(inTopic().map((seen) => seen.text.split('\n').at(-1))).toEqual([
      expect.stringContaining('01632 960111'),
      'anybody there?',
    ]);
  });

  it('puts a danger into the forum topic and into the common room, before all that waits', async () => {
    const ada = await yard.hirer('Ada', aBooking());
    const ben = await yard.hirer('Ben', aBooking({ ref: 'BR-2703', firstName: 'Ben', van: 'wren' }));
    yard.standIn.trouble('createForumTopic', {
      kind: 'refuse',
      code: 429,
      description: 'Too Many Requests: retry after 1',
      retryAfterS: 1,
    });
    await yard.pass(ada.threadId);
    for (let i = 0; i < 5; i++) await yard.hirerSays(ada.threadId, `line ${i}`);
    await yard.pass(
      ben.threadId,
      {
        booking: 'BR-2703',
        firstName: 'Ben',
        van: 'Wren',
        reason: 'safety',
        hazard: 'safety-gas-smell',
        question: 'I smell gas',
      },
      'danger',
    );
    await told('line 4');
    const texts = yard.group.screen().map((seen) => seen.text);
    expect(texts[0]).toContain('⛔ DANGER: gas smell');
    expect(yard.group.screen(null).map((seen) => seen.text)).toEqual([
      '⛔ DANGER: gas smell\nWren, Ben: see the forum topic of that name.',
    ]);
    expect(texts.findIndex((text) => text.includes('line 0'))).toBeGreaterThan(1);
  });

  it('tells of a notice shown while people have the thread', async () => {
    const { threadId } = await adaWaits();
    await yard.shell.take(threadId, 'Nessa');
    await new Promise((resolve) => setTimeout(resolve, 5));
    await yard.notice(threadId, 'safety-gas-smell');
    await told('The bot has shown Ada the notice: gas smell.');
  });

  it('leaves the staff’s own talk in General alone', async () => {
    const { person, meg } = await adaWaits();
    meg.saysIn(yard.group.place, 'who wants tea?');
    meg.saysIn(yard.group.place, 'Hello Ada', { topic: topicId() });
    await hirerReads(person, 'Hello Ada');
    expect(person.screen().some((seen) => seen.text.includes('tea'))).toBe(false);
  });

  it('says so when a colleague has the hirer and the words were not sent', async () => {
    const { person, threadId } = await adaWaits();
    await yard.shell.take(threadId, 'Gethin');
    const meg = yard.standIn.person('Margaret');
    meg.saysIn(yard.group.place, 'Have you tried the fuse?', { topic: topicId() });
    await told('Gethin has this hirer: your words were not sent.');
    expect(person.screen().some((seen) => seen.text.includes('fuse'))).toBe(false);
  });

  it('lets staff begin with /to and a booking', async () => {
    const { person } = await yard.hirer('Ada', aBooking());
    const meg = yard.standIn.person('Margaret');
    meg.saysIn(yard.group.place, '/to br-2702');
    await told('Write here and it goes to Ada.');
    meg.saysIn(yard.group.place, 'Your awning is ready', { topic: topicId() });
    await hirerReads(person, 'Your awning is ready');
    await yard.store.putBookings([aBooking({ ref: 'BR-2709' })]);
    meg.saysIn(yard.group.place, '/to BR-2709');
    await told('Nobody of BR-2709 has opened the chat yet. Ring 01632 960111.');
    meg.saysIn(yard.group.place, '/to BR-9');
    await told('There is no booking BR-9.');
  });

  it('carries the line that staff reply to, so that the hirer knows what is meant', async () => {
    const { person, threadId } = await yard.hirer('Ada', aBooking());
    const meg = yard.standIn.person('Margaret');
    await yard.pass(threadId);
    await yard.hirerSays(threadId, 'Is the red lamp normal?');
    await yard.hirerSays(threadId, 'And where is the step?');
    await told('And where is the step?');
    const lamp = inTopic().find((seen) => seen.text.includes('red lamp'));
    meg.saysIn(yard.group.place, 'Yes', { topic: topicId(), replyTo: lamp?.id ?? null });
    await hirerReads(person, '“Is the red lamp normal?”\nYes');
    const brief = inTopic()[0];
    meg.saysIn(yard.group.place, 'Under the bed', { topic: topicId(), replyTo: brief?.id ?? null });
    await hirerReads(person, 'Somebody\nUnder the bed');
  });

  it('takes an administrator who stays anonymous for one of the staff, and no other bot', async () => {
    const { person } = await adaWaits();
    yard.group.botSays('from a bot', topicId(), 'another bot');
    yard.group.botSays('from the yard', topicId(), 'the group itself');
    await hirerReads(person, 'Somebody\nfrom the yard');
    expect(person.screen().some((seen) => seen.text.includes('from a bot'))).toBe(false);
  });

  it('puts a reminder into the forum topic', async () => {
    const { threadId } = await adaWaits();
    await yard.channel.desk?.remind(threadId, 'Ada has waited for 20 minutes.', true);
    await told('Ada has waited for 20 minutes.');
    expect(inTopic().at(-1)?.text).toBe('Ada has waited for 20 minutes.');
  });

  it('has the app tell whom a reminder names, or everybody it can', async () => {
    const { threadId, meg } = await adaWaits();
    yard.links.set('link-meg', 'Nessa').set('link-tom', 'Gethin');
    const tom = yard.standIn.person('Thomas');
    meg.says('/start link-meg');
    tom.says('/start link-tom');
    await until(() => meg.screen().length + tom.screen().length === 2, 'both to be welcomed');
    const lastSent = () => yard.standIn.callsOf('sendMessage').at(-1)?.payload.text;
    await yard.channel.desk?.remind(threadId, 'Gethin: waiting 30 min, nobody has it yet.', false);
    await told('waiting 30 min');
    expect(lastSent()).toBe(`<a href="tg://user?id=${tom.user.id}">Gethin</a>: waiting 30 min, nobody has it yet.`);
    await yard.channel.desk?.remind(threadId, 'DANGER: Everyone: waiting 8 min, nobody has it yet.', true);
    await told('DANGER: Everyone (Nessa, Gethin): waiting 8 min');
    expect(lastSent()).toContain(`<a href="tg://user?id=${meg.user.id}">Nessa</a>`);
    await yard.channel.desk?.remind(threadId, 'Dilys: waiting 40 min, nobody has it yet.', false);
    await told('Dilys: waiting 40 min');
    expect(lastSent()).not.toContain('<a');
  });

  it('says when a shift ends with a hirer unanswered, and offers them to the next', async () => {
    const { threadId } = await adaWaits();
    await yard.shell.take(threadId, 'Nessa');
    await told('Nessa has it.');
    await yard.shiftEnds(threadId, 'Nessa');
    await told("Nessa's shift has ended: Ada waits for somebody to press 'I have it'.");
    expect(inTopic()[0]?.choices).toEqual(['I have it', 'Back to the bot', 'The whole talk']);
    expect(inTopic()[0]?.text).not.toContain('has it.');
  });

  it('works on by reply when the bot may not manage forum topics', async () => {
    yard.group.place.mayManageTopics = false;
    const { person } = await adaWaits();
    const brief = yard.group.screen(null)[0];
    const meg = yard.standIn.person('Margaret');
    meg.saysIn(yard.group.place, 'still here', { replyTo: brief?.id ?? null });
    await hirerReads(person, 'still here');
  });

  it('answers an unknown button without doing anything', async () => {
    const { threadId } = await adaWaits();
    const meg = yard.standIn.person('Margaret');
    const kept = yard.group.place.messages.at(-1);
    if (kept === undefined) throw new Error('no message');
    expect(await answered(meg.pressesData('have:no-such-thread', kept))).toBe('This conversation is no longer kept.');
    expect(await answered(meg.pressesData('format c:', kept))).toBe('This conversation is no longer kept.');
    expect(await yard.keeper(threadId)).toBe('waiting');
  });
});
