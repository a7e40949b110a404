import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { askedOf, messageOf } from '../../adapters/console/ask-lines.ts';
import {
  type ActionResult,
  type Booking,
  briefLines,
  endShift,
  giveBack,
  handOver,
  instantOn,
  newThread,
  plainText,
  staffNotes,
  staffSays,
  type Thread,
  takeThread,
  turn,
} from '../../src/index.ts';
import { realServed } from '../helpers/real-graph.ts';

/*
 * Whole talks as data that a caravan fitter could check: given a booking and an hour, when this is said, then that comes
 * back. `then` names only what matters to the talk.
 */

const outcome = z.enum(['answer', 'choose', 'check', 'calculate', 'pass', 'safety', 'chat']);
const then = z.strictObject({
  outcome: outcome.optional(),
  topic: z.string().optional(),
  hazard: z.string().optional(),
  lacks: z.string().optional(),
  reason: z.string().optional(),
  keeper: z.enum(['bot', 'waiting', 'staff']).optional(),
  /** Nothing at all is said. */
  silent: z.boolean().optional(),
  says: z.union([z.string(), z.array(z.string())]).optional(),
  never: z.union([z.string(), z.array(z.string())]).optional(),
  /** Buttons offered, by their labels. */
  offers: z.array(z.string()).optional(),
  /** Stands in the brief that people get. */
  brief: z.union([z.string(), z.array(z.string())]).optional(),
});
const step = z.strictObject({
  says: z.string().optional(),
  /** The label of a button that stands under the last replies. */
  presses: z.string().optional(),
  sends: z.enum(['photo', 'voice', 'video', 'location']).optional(),
  edits: z.string().optional(),
  /** Staff: their name, and what they do. */
  staff: z
    .strictObject({
      who: z.string(),
      does: z.enum(['take', 'give back', 'say', 'note', 'hand over', 'go off duty']),
      text: z.string().optional(),
      to: z.string().optional(),
    })
    .optional(),
  after: z
    .string()
    .regex(/^\d+ (?:seconds|minutes|hours|days)$/)
    .optional(),
  moves: z.string().optional(),
  then: then.default({}),
});
const talk = z.strictObject({
  name: z.string(),
  van: z.string().optional(),
  site: z.string().optional(),
  pitch: z.string().optional(),
  amps: z.number().optional(),
  people: z.number().optional(),
  at: z.string().default('2027-07-15 12:00'),
  talk: z.array(step).min(1),
});
type Talk = z.infer<typeof talk>;

const MS = { seconds: 1000, minutes: 60_000, hours: 3_600_000, days: 86_400_000 };
const served = realServed();

for (const file of readdirSync('tests/conversations').filter((name) => name.endsWith('.yaml'))) {
  describe(file.replace('.yaml', ''), () => {
    const talks = z.array(talk).parse(parse(readFileSync(`tests/conversations/${file}`, 'utf8')));
    it.each(talks.map((each) => [each.name, each] as const))('%s', (_, each) => play(each));
  });
}

function play(given: Talk): void {
  const [day = '', clock = ''] = given.at.split(' ');
  let nowMs = instantOn(day, clock, served.knowledge.firm.timeZone);
  let booking = bookingOf(given);
  let thread: Thread = newThread(
    { id: 'talk', channel: 'test', address: 'a', booking: booking?.ref ?? null, van: booking?.van ?? null },
    nowMs,
  );
  let offered: { id: string; label: string }[] = [];
  given.talk.forEach((each, i) => {
    const [count, unit] = (each.after ?? '10 seconds').split(' ');
    nowMs += Number(count) * MS[unit as keyof typeof MS];
    if (each.moves !== undefined && booking !== null) booking = { ...booking, van: each.moves };
    if (each.staff !== undefined) {
      const result = staffActs(thread, each.staff, nowMs);
      const replies = result.kind === 'done' ? result.replies : [];
      if (result.kind === 'done') thread = result.thread;
      offered = replies.flatMap((reply) => [...reply.choices]);
      expect(thread.keeper, where(given, i)).toBe(each.then.keeper ?? thread.keeper);
      expectWords(each.then, replies.map(plainText).join('\n'), offered, where(given, i));
      if (each.then.silent === true) expect(replies, where(given, i)).toEqual([]);
      return;
    }
    const choice =
      each.presses === undefined
        ? null
        : (offered.find((one) => one.label === each.presses)?.id ?? `no button '${each.presses}'`);
    if (each.presses !== undefined)
      expect(
        offered.map((one) => one.label),
        where(given, i),
      ).toContain(each.presses);
    const base = messageOf(each.says ?? each.edits ?? '', i, nowMs, choice);
    const attachments = each.sends === undefined ? [] : [attachmentOf(each.sends)];
    const turned = turn(
      thread,
      { ...base, attachments, edit: each.edits !== undefined },
      served,
      { booking, code: 'none' },
      nowMs,
    );
    thread = turned.thread;
    offered = turned.replies.flatMap((reply) => [...reply.choices]);
    const asked = askedOf(turned);
    const { says: _says, never: _never, offers: _offers, silent, keeper, brief, ...rest } = each.then;
    expect(asked, where(given, i)).toMatchObject(rest);
    if (keeper !== undefined) expect(thread.keeper, where(given, i)).toBe(keeper);
    if (silent === true) expect(turned.replies, where(given, i)).toEqual([]);
    expectWords(each.then, asked.reply, offered, where(given, i));
    const passed = turned.events.find((event) => event.kind === 'passed');
    const lines = passed === undefined ? [] : briefLines(passed.brief, passed.urgency).map((line) => line.text);
    for (const text of [brief ?? []].flat()) expect(lines.join('\n'), where(given, i)).toContain(text);
  });
}

function expectWords(
  { says, never, offers }: z.infer<typeof then>,
  reply: string,
  offered: readonly { label: string }[],
  where: string,
): void {
  for (const text of [says ?? []].flat()) expect(reply, where).toContain(text);
  for (const text of [never ?? []].flat()) expect(reply, where).not.toContain(text);
  const labels = offered.map((one) => one.label);
  for (const label of offers ?? []) expect(labels, where).toContain(label);
}

function where(given: Talk, i: number): string {
  return `${given.name}, step ${i + 1}: ${JSON.stringify(given.talk[i])}`;
}

function staffActs(
  thread: Thread,
  { who, does, text, to }: NonNullable<Talk['talk'][number]['staff']>,
  nowMs: number,
): ActionResult {
  switch (does) {
    case 'take':
      return takeThread(thread, who, nowMs);
    case 'give back':
      return giveBack(thread, who, nowMs);
    case 'say':
      return staffSays(thread, who, text ?? '', [], nowMs);
    case 'note':
      return staffNotes(thread, who, text ?? '');
    case 'hand over':
      return handOver(thread, who, to ?? '', nowMs);
    case 'go off duty':
      return endShift(thread, served.knowledge.firm, nowMs);
  }
}

function attachmentOf(kind: 'photo' | 'voice' | 'video' | 'location') {
  return kind === 'location' ? { kind, latitude: 54.1, longitude: -2.2 } : { kind, file: 'f1' };
}

function bookingOf({ van, site, pitch, amps, people }: Talk): Booking | null {
  if (van === undefined) return null;
  return {
    ref: 'BR-1',
    hirer: 'The Testers',
    firstName: 'Tess',
    van,
    site: site ?? null,
    pitch: pitch ?? null,
    amps: amps ?? null,
    people: people === undefined ? null : { adults: people, children: [], dogs: 0 },
    from: '2027-07-10',
    to: '2027-07-20',
    phone: '07700 900001',
    note: '',
  };
}
