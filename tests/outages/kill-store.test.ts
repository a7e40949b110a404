import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSqlite } from '../../adapters/sqlite/sqlite-store.ts';
import { seeded } from '../../src/basics/seeded.ts';
import { temporaryFolder } from '../adapters/sqlite/temporary.ts';

/** PITCHHAND_KILLS=200 for the number the design asks for; a seed can be given to repeat a run. */
const KILLS = Number(process.env.PITCHHAND_KILLS ?? 10);
const SEED = Number(process.env.PITCHHAND_SEED ?? 20_270_715);
const ADDRESSES = 8;
const SENT_AT_ONCE = 4;

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = temporaryFolder();
const program = join(folder.path, 'child.cjs');
const file = join(folder.path, 'data', 'pitchhand.db');
beforeAll(async () => {
  const entryPoints = [join(root, 'tests/outages/store-child.ts')];
  await build({
    entryPoints,
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    external: ['better-sqlite3'],
    logLevel: 'error',
  });
});
afterAll(() => folder.remove());

/** What the outside world knows: it confirms messages and counts what arrives. */
type World = { readonly confirmed: Set<string>; readonly arrived: string[] };

function startChild(world: World, onLine: () => void, at = file): ChildProcessWithoutNullStreams {
  const child = spawn(process.execPath, [program, at], {
    env: { ...process.env, NODE_PATH: join(root, 'node_modules') },
  });
  createInterface({ input: child.stdout }).on('line', (line) => {
    const [what = '', ...rest] = line.split(' ');
    if (what === 'stored') world.confirmed.add(rest.join(' '));
    if (what === 'sent') world.arrived.push(rest.join(' '));
    onLine();
  });
  child.stderr.pipe(process.stderr);
  // The pipe of a killed process breaks while we write to it.
  child.stdin.on('error', () => {});
  return child;
}

test(
  `loses nothing, and says twice only what was on its way, when killed ${KILLS} times under load`,
  async () => {
    const random = seeded(SEED);
    const world: World = { confirmed: new Set(), arrived: [] };
    const all: { key: string; address: string }[] = [];

    for (let kill = 0; kill < KILLS; kill++) {
      for (let i = 0; i < 60; i++) all.push({ key: `${kill}.${i}`, address: `a${Math.floor(random() * ADDRESSES)}` });
      const killAt = 2 + Math.floor(random() * 150);
      let lines = 0;
      const child = startChild(world, () => {
        lines += 1;
        if (lines === killAt) child.kill('SIGKILL');
      });
      // A channel sends again what was not confirmed, and now and then something recent that was.
      for (const [i, each] of all.entries()) {
        const again = i > all.length - 120 && random() < 0.05;
        if (!world.confirmed.has(each.key) || again) child.stdin.write(`${each.key} ${each.address}\n`);
      }
      // Whatever the machine's speed, every process is killed in the end.
      const late = setTimeout(() => child.kill('SIGKILL'), 1_500);
      await once(child, 'close');
      clearTimeout(late);
      expect(child.signalCode).toBe('SIGKILL');
    }

    const last = startChild(world, () => {});
    for (const each of all) if (!world.confirmed.has(each.key)) last.stdin.write(`${each.key} ${each.address}\n`);
    last.stdin.end();
    await once(last, 'close');
    expect(last.exitCode).toBe(0);

    const raw = new Database(file, { readonly: true });
    expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(raw.pragma('foreign_key_check')).toEqual([]);
    raw.close();

    const { store } = await openSqlite(file);
    expect(world.confirmed.size).toBe(all.length);
    let twice = 0;
    for (const thread of await store.threads({})) {
      const lines = await store.lines(thread.id);
      const asked = lines.filter((line) => line.who === 'hirer').map((line) => line.text);
      const answered = lines.filter((line) => line.who === 'bot');
      // Every message is there once, and answered once, whole and in the order received.
      expect([...asked].sort()).toEqual(
        all
          .filter((each) => each.address === thread.address)
          .map((each) => each.key)
          .sort(),
      );
      expect(answered.map((line) => line.text)).toEqual(asked.flatMap((key) => [`${key}/1`, `${key}/2`]));
      expect(thread.version).toBe(1 + asked.length);
      // All that the store holds has arrived, in order; what came twice came again before anything later.
      const arrived = world.arrived
        .filter((each) => each.startsWith(`${thread.address} `))
        .map((each) => each.split(' ')[1] ?? '');
      expect(answered.every((line) => line.sent === 'delivered')).toBe(true);
      expect(arrived.filter((text, i) => text !== arrived[i - 1])).toEqual(answered.map((line) => line.text));
      twice += arrived.length - answered.length;
    }
    // The honest exception: what was on its way at the kill, one for each address at most.
    expect(twice).toBeLessThanOrEqual(KILLS * SENT_AT_ONCE);
    expect((await store.events({})).length).toBe(all.length);
    console.log(`seed ${SEED}: ${all.length} messages, ${2 * all.length} replies, ${twice} of them came twice`);
    await store.close();
  },
  60_000 + KILLS * 2_000,
);

test('waits for another process that writes a file which is not a write-ahead database yet', async () => {
  const fresh = join(folder.path, 'held.db');
  const holder = spawn(
    process.execPath,
    [
      '-e',
      `const db = new (require('better-sqlite3'))(${JSON.stringify(fresh)});
       db.exec('begin immediate');
       console.log('held');
       setTimeout(() => db.exec('commit'), 300);`,
    ],
    { env: { ...process.env, NODE_PATH: join(root, 'node_modules') } },
  );
  await once(holder.stdout, 'data');
  const { store } = await openSqlite(fresh);
  await store.putNote('reached', 'yes');
  expect(await store.note('reached')).toBe('yes');
  await store.close();
  await once(holder, 'close');
});

test('lets several processes start at once on a file that is not there yet', async () => {
  for (let round = 0; round < 5; round++) {
    const fresh = join(folder.path, `fresh-${round}`, 'pitchhand.db');
    const children = [1, 2, 3, 4].map(() => startChild({ confirmed: new Set(), arrived: [] }, () => {}, fresh));
    for (const child of children) child.stdin.end();
    await Promise.all(children.map((child) => once(child, 'close')));
    expect(children.map((child) => child.exitCode)).toEqual([0, 0, 0, 0]);
  }
});
