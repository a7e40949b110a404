import { spawn } from 'node:child_process';
import { closeSync, fsyncSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { parse } from 'yaml';
import { messageOf } from '../../adapters/console/ask-lines.ts';
import { createShell } from '../../adapters/shell.ts';
import { openSqlite } from '../../adapters/sqlite/sqlite-store.ts';
import { type Booking, type Channel, type Message, newThread, turn } from '../../src/index.ts';
import { realServed } from '../helpers/real-graph.ts';
import type { PersonOnTelegram } from '../helpers/telegram-people.ts';
import { aYard, type Yard } from '../helpers/telegram-yard.ts';

/*
 * The numbers of design.md section 10 that are no single function's: run by `npm run bench`. Timings are printed, never
 * tested: they depend on the machine, which is printed first.
 */

const folder = mkdtempSync(join(tmpdir(), 'pitchhand-figures-'));
const loadsFrom = performance.now();
const served = realServed();
const loadedMs = performance.now() - loadsFrom;
const texts = (parse(readFileSync('tests/questions/topics.yaml', 'utf8')) as { text: string; van: string }[]).map(
  (one) => one,
);
const say = (what: string, figure: string): void => console.log(`${what.padEnd(62)} ${figure}`);

function at(share: number, values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
}
const ms = (value: number): string => `${value.toFixed(value < 10 ? 3 : 1)} ms`;
const spread = (values: readonly number[]): string =>
  `p50 ${ms(at(0.5, values))}, p99 ${ms(at(0.99, values))}, of ${values.length}`;

function fsyncMs(): number {
  const file = openSync(join(folder, 'fsync'), 'w');
  const times = Array.from({ length: 50 }, () => {
    writeSync(file, 'x');
    const from = performance.now();
    fsyncSync(file);
    return performance.now() - from;
  });
  closeSync(file);
  return at(0.5, times);
}

function bookingOf(van: string): Booking {
  return {
    ref: `BR-${van}`,
    hirer: 'Bench',
    firstName: 'Bench',
    people: { adults: 2, children: [], dogs: 0 },
    van,
    site: 'gullstone-sands',
    pitch: '1',
    amps: 10,
    from: '2027-07-10',
    to: '2027-07-20',
    phone: null,
    note: '',
  };
}

function oneMessage(): void {
  const NOW = Date.parse('2027-07-15T11:00:00Z');
  const reading: number[] = [];
  const matching: number[] = [];
  const whole: number[] = [];
  const thread = (van: string) => newThread({ id: 'b', channel: 'b', address: 'b', booking: `BR-${van}`, van }, NOW);
  for (let round = 0; round < 4; round++) {
    for (const { text, van } of texts) {
      let from = performance.now();
      served.readDanger(text, { before: '', vanHas: () => true });
      const read = performance.now();
      served.matcher.understand(text, { van, lastTopic: null, lastText: '' });
      const matched = performance.now();
      // The first round warms up.
      if (round > 0) {
        reading.push(read - from);
        matching.push(matched - read);
      }
      from = performance.now();
      turn(thread(van), messageOf(text, 1, NOW), served, { booking: bookingOf(van), code: 'none' }, NOW);
      if (round > 0) whole.push(performance.now() - from);
    }
  }
  say('one message judged for safety', spread(reading));
  say('one message read, matched and decided', spread(matching));
  say('one whole turn, with its reply in words', spread(whole));
}

async function house(): Promise<void> {
  const { store } = await openSqlite(join(folder, 'bench.sqlite'));
  await store.putBookings([...served.knowledge.vans.keys()].map(bookingOf));
  const sentAt = new Map<string, number>();
  const waits: number[] = [];
  let delivered = 0;
  const channel: Channel = {
    name: 'bench',
    abilities: { buttons: true, pictures: true, edits: true, media: true, longest: 4096 },
    start: async () => undefined,
    stop: async () => undefined,
    deliver: async (_reply, to) => {
      const from = sentAt.get(to.address);
      if (from !== undefined) waits.push(performance.now() - from);
      sentAt.delete(to.address);
      delivered++;
      return { kind: 'delivered', id: String(delivered) };
    },
  };
  const shell = createShell({
    store,
    served: () => served,
    clock: { nowMs: Date.now },
    channels: [channel],
    log: pino({ level: 'silent' }),
  });
  shell.start();
  const send = (i: number): Promise<void> => {
    const address = `a${i}`;
    sentAt.set(address, performance.now());
    return shell.receive({
      ...messageOf(texts[i % texts.length]?.text ?? '', i, Date.now()),
      channel: 'bench',
      address,
      key: `k${i}`,
    });
  };
  const SECONDS = 15;
  const PER_SECOND = 100;
  const begun = performance.now();
  for (let i = 0; i < SECONDS * PER_SECOND; i++) {
    const due = begun + (i * 1000) / PER_SECOND;
    const early = due - performance.now();
    if (early > 0) await new Promise((resolve) => setTimeout(resolve, early));
    void send(i);
  }
  await settled(() => sentAt.size === 0);
  say(`received to handed to the channel, ${PER_SECOND} a second, SQLite`, spread(waits));

  const MANY = 5_000;
  const from = performance.now();
  await Promise.all(Array.from({ length: MANY }, (_, i) => send(100_000 + i)));
  await settled(() => sentAt.size === 0);
  say(
    'messages a second, received, answered and delivered, durable',
    `${Math.round((MANY * 1000) / (performance.now() - from))}`,
  );
  await shell.stop();
  await store.close();
}

/**
 * The way between a hirer and the staff's forum topic, both ways, with 50 threads held by staff: from the update that waits at
 * Telegram to the call that carries the words on. The stand-in for Telegram works in this very process, so its own time counts.
 */
async function relay(): Promise<void> {
  const THREADS = 50;
  const PER_SECOND = 20;
  const SECONDS = 20;
  const { store } = await openSqlite(join(folder, 'relay.sqlite'));
  const late: { yard: Yard | null } = { yard: null };
  const receive = (message: Message): Promise<void> =>
    late.yard === null ? Promise.reject(new Error('not started')) : late.yard.shell.receive(message);
  const yard = await aYard({ forum: true, store, served: () => served, telegram: { receive } });
  late.yard = yard;
  const people: { person: PersonOnTelegram; title: string }[] = [];
  for (let i = 0; i < THREADS; i++) {
    const firstName = `Hirer${i}`;
    const booking = { ...bookingOf('dunlin'), ref: `BR-${3000 + i}`, firstName };
    const { person, threadId } = await yard.hirer(firstName, booking);
    await yard.pass(threadId, { booking: booking.ref, firstName, van: 'Dunlin' });
    await yard.shell.take(threadId, 'Somebody');
    people.push({ person, title: `Dunlin, ${firstName}` });
  }
  await settled(() => yard.group.topics().length === THREADS);
  await new Promise((resolve) => setTimeout(resolve, 3_000));

  const sentAt = new Map<string, number>();
  const waits: Record<'hirer' | 'staff', number[]> = { hirer: [], staff: [] };
  const push = yard.standIn.calls.push.bind(yard.standIn.calls);
  yard.standIn.calls.push = (...calls) => {
    for (const { method, payload } of calls) {
      const key = method === 'sendMessage' ? (/(hirer|staff) word \d+/.exec(String(payload.text))?.[0] ?? '') : '';
      const from = sentAt.get(key);
      if (from !== undefined) waits[key.startsWith('hirer') ? 'hirer' : 'staff'].push(performance.now() - from);
      sentAt.delete(key);
    }
    return push(...calls);
  };
  const staff = yard.standIn.person('Margaret');
  for (let i = 0; i < PER_SECOND * SECONDS; i++) {
    const who = i % 2 === 0 ? 'hirer' : 'staff';
    const { person, title } = people[(i * 7) % THREADS] ?? { person: staff, title: '' };
    const words = `${who} word ${i}`;
    sentAt.set(words, performance.now());
    if (who === 'hirer') person.says(words);
    else staff.saysIn(yard.group.place, words, { topic: yard.group.topic(title)?.id ?? null });
    await new Promise((resolve) => setTimeout(resolve, 1000 / PER_SECOND));
  }
  await settled(() => sentAt.size === 0);
  say(`hirer's message to the forum topic, ${THREADS} threads, ${PER_SECOND} a second`, spread(waits.hirer));
  say(`staff's reply to the hirer, ${THREADS} threads, ${PER_SECOND} a second`, spread(waits.staff));
  await yard.close();
  await store.close();
}

async function settled(done: () => boolean): Promise<void> {
  for (let i = 0; i < 6000 && !done(); i++) await new Promise((resolve) => setTimeout(resolve, 10));
}

async function startUp(): Promise<void> {
  const times: number[] = [];
  let memoryMb = 0;
  for (let i = 0; i < 3; i++) {
    const from = performance.now();
    const env = { ...process.env, PORT: '0', PITCHHAND_DATA: join(folder, `data${i}`), LOG_LEVEL: 'info' };
    const child = spawn(process.execPath, ['dist/pitchhand.mjs', 'serve'], {
      env,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    await new Promise<void>((resolve) =>
      child.stderr.on('data', (data: Buffer) => data.includes('"msg":"serving"') && resolve()),
    );
    times.push(performance.now() - from);
    await new Promise((resolve) => setTimeout(resolve, 1500));
    const status = readFileSync(`/proc/${child.pid}/status`, 'utf8');
    memoryMb = Math.max(memoryMb, Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024);
    child.kill('SIGTERM');
    await new Promise((resolve) => child.on('exit', resolve));
  }
  say('from start to ready, demo graph', times.map(ms).join(', '));
  say('resident memory, demo', `${memoryMb.toFixed(0)} MB`);
}

say('machine', `${cpus().length} cores, ${cpus()[0]?.model ?? ''}, Node ${process.version}, fsync ${ms(fsyncMs())}`);
oneMessage();
say('loading and indexing the graph as prepared, cold (to hold: 600 ms)', ms(loadedMs));
await house();
await relay();
await startUp();
rmSync(folder, { recursive: true, force: true });
