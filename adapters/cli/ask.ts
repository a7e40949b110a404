import { createInterface } from 'node:readline/promises';
import {
  addDays,
  type Booking,
  dayOf,
  newThread,
  pickTyped,
  plainText,
  type Served,
  type Thread,
  turn,
} from '../../src/index.ts';
import { answerLine, messageOf } from '../console/ask-lines.ts';
import { whyText } from '../console/why-text.ts';
import { command, type Terminal, UsageError } from './command.ts';
import { servedGraph } from './served-graph.ts';
import { vanBooking } from './van-booking.ts';

export const ask = command({
  name: 'ask',
  does: 'Asks the bot and prints what the hirer would see.',
  usage: '[--van dunlin] [--why] [TEXT] | --jsonl < lines',
  help: [
    '--van NAME  the van that is booked; left out: no booking',
    '--why       how the answer came about',
    '--jsonl     reads {"id","van","text"} or {"id","van","turns":[...]} a line and prints one line for each',
    'Without TEXT the talk goes on until the end of input.',
  ],
  options: { van: { type: 'string' }, why: { type: 'boolean' }, jsonl: { type: 'boolean' }, json: { type: 'boolean' } },
  run: async ({ van, why, jsonl, json }, words, terminal) => {
    const served = servedGraph(terminal);
    if (jsonl === true || json === true) {
      for await (const line of terminal.readIn()) {
        if (line.trim() !== '') terminal.out(`${JSON.stringify(answerLine(line, served))}\n`);
      }
      return 0;
    }
    const booking = van === undefined ? null : bookingOf(van, served);
    const talk = createTalk(booking, served, why === true, terminal);
    if (words.length > 0) talk(words.join(' '));
    else await converse(talk, terminal);
    return 0;
  },
});

function bookingOf(name: string, { knowledge }: Served): Booking {
  const van = name.toLowerCase();
  if (!knowledge.vans.has(van)) {
    throw new UsageError(`no van '${name}' in the fleet, expected one of ${[...knowledge.vans.keys()].join(', ')}`);
  }
  const today = dayOf(Date.now(), knowledge.firm.timeZone);
  return vanBooking({ ref: 'ASK', hirer: 'you', van, from: today, to: addDays(today, 3) });
}

/** One talk on the terminal: a thread that lives as long as the command. */
function createTalk(booking: Booking | null, served: Served, why: boolean, terminal: Terminal): (text: string) => void {
  let thread: Thread = newThread(
    { id: 'ask', channel: 'console', address: 'ask', booking: booking?.ref ?? null, van: booking?.van ?? null },
    Date.now(),
  );
  let offered: readonly { readonly id: string; readonly label: string }[] = [];
  let key = 0;
  return (text) => {
    const nowMs = Date.now();
    const picked = pickTyped(
      text,
      offered.map((choice) => choice.label),
    );
    const choice = picked === null ? null : (offered[picked]?.id ?? null);
    const turned = turn(
      thread,
      messageOf(choice === null ? text : '', key++, nowMs, choice),
      served,
      { booking, code: 'none' },
      nowMs,
    );
    thread = turned.thread;
    offered = turned.replies.flatMap((reply) => reply.choices);
    for (const reply of turned.replies) terminal.out(`${plainText(reply)}\n\n`);
    if (why) terminal.out(`${whyText(text, turned, served)}\n`);
  };
}

async function converse(talk: (text: string) => void, terminal: Terminal): Promise<void> {
  if (!terminal.isTty) {
    for await (const line of terminal.readIn()) if (line.trim() !== '') talk(line);
    return;
  }
  const lines = createInterface({ input: process.stdin, output: process.stdout, prompt: '> ' });
  lines.prompt();
  for await (const line of lines) {
    if (line.trim() !== '') talk(line);
    lines.prompt();
  }
}
