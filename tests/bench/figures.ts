import { spawn } from 'node:child_process';
import { closeSync, fsyncSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { parse } from 'yaml';
import { messageOf } from '../../adapters/console/ask-lines.ts';
import { createShell } from '../../adapters/shell.ts';
import { openSqlite } from '../../adapters/sqlite/sqlite-store.ts';
import { type Booking, type Channel, newThread, turn } from '../../src/index.ts';
import { realServed } from '../helpers/real-graph.ts';

/*
 * The numbers of design.md section 10 that are no single function's: run by `npm run bench`. Timings are printed, never
 * tested: they depend on the machine, which is printed first.
 */

const folder = mkdtempSync(join(tmpdir(), 'pitchhand-figures-'));
const served = realServed();
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
await house();
await startUp();
rmSync(folder, { recursive: true, force: true });
