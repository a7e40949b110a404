import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import {
  acceptedPriors,
  acceptPriors,
  faultReport,
  lookAt,
  undoPriors,
  vanFaultsDue,
} from '../../../adapters/cli/fault-records.ts';
import { dueText, reportText } from '../../../adapters/cli/fault-texts.ts';
import { loadGraph } from '../../../adapters/files/served.ts';
import { memoryStore } from '../../../adapters/memory/memory-store.ts';
import { type Event, newThread, type Store } from '../../../src/index.ts';
import { demoKnowledge, GRAPH_FOLDER } from './a-graph.ts';

const knowledge = demoKnowledge();
const causes = knowledge.vans.get('dunlin')?.causes('water-none') ?? [];
const [first, second] = causes;
const staffs = causes.find(({ fix }) => fix.who === 'staff');

function anEnd(end: 'fixed' | 'passed', cause: string | null): Event {
  return {
    kind: 'walk-ended',
    symptom: 'water-none',
    van: 'dunlin',
    end,
    cause,
    tried: [{ did: 'Is the barrel low?', answered: 'no' }],
  };
}

/** A store in which one thread has brought these events about. */
async function storeWith(events: readonly Event[]): Promise<Store> {
  const store = memoryStore();
  const thread = newThread({ id: 't1', channel: 'console', address: 'a' }, 1000);
  const { threadId } = await store.receive(
    {
      channel: 'console',
      address: 'a',
      key: 'k',
      atMs: 1000,
      text: 'no water',
      choice: null,
      attachments: [],
      edit: false,
      from: null,
      startToken: null,
    },
    () => thread,
  );
  const loaded = await store.thread(threadId);
  if (loaded === null) throw new Error('the thread was just made');
  await store.saveTurn({ seq: null, thread: loaded, replies: [], events, atMs: 2000 });
  return store;
}

describe('pitchhand faults report', () => {
  it('sets what was found beside the priors', async () => {
    const store = await storeWith([
      ...Array.from({ length: 12 }, () => anEnd('fixed', second?.id ?? '')),
      anEnd('passed', staffs?.id ?? null),
    ]);
    const [counts] = await faultReport(store, knowledge, null, null);
    expect(counts).toMatchObject({ symptom: 'water-none', van: 'dunlin', walks: 13, parts: true });
    const text = reportText(counts ?? (await Promise.reject(new Error('no counts'))));
    expect(text).toContain('12 cured');
    expect(text).toContain('1 believed');
    expect(text).toContain('consider');
  });

  it('keeps to the symptom and van asked for', async () => {
    const store = await storeWith([anEnd('fixed', first?.id ?? '')]);
    expect(await faultReport(store, knowledge, 'gas-none-anywhere', null)).toEqual([]);
    expect(await faultReport(store, knowledge, null, 'wren')).toEqual([]);
  });
});

describe('pitchhand faults due', () => {
  it('lists what was passed until the yard has looked at it', async () => {
    const store = await storeWith([anEnd('passed', staffs?.id ?? null)]);
    const [due] = await vanFaultsDue(store, knowledge, 'dunlin');
    expect(due).toMatchObject({ van: 'dunlin', why: 'passed', tried: [{ did: 'Is the barrel low?', answered: 'no' }] });
    if (due === undefined) throw new Error('nothing is due');
    expect(dueText(due, 'Europe/London')).toMatch(
      /dunlin, 1970-01-01: .* - passed to staff; .*\n {3}Is the barrel low\? - no/,
    );
    await expect(lookAt('999', 'Gethin', knowledge, store)).rejects.toThrow(/no entry '999'/);
    await expect(lookAt(String(due.id), undefined, knowledge, store)).rejects.toThrow(/who looked/);
    await lookAt(String(due.id), 'Gethin', knowledge, store);
    expect(await vanFaultsDue(store, knowledge, 'dunlin')).toEqual([]);
  });
});

describe('pitchhand faults accept', () => {
  const folder = mkdtempSync(join(tmpdir(), 'pitchhand-graph-'));
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('writes the proposed priors into the graph, and nothing else', async () => {
    cpSync(GRAPH_FOLDER, folder, { recursive: true });
    const store = await storeWith(Array.from({ length: 30 }, () => anEnd('fixed', second?.id ?? '')));
    const [counts] = await faultReport(store, knowledge, 'water-none', 'dunlin');
    const accepting = { folder, store, by: 'Gethin', nowMs: 0 };
    const accepted = await acceptPriors(counts ?? (await Promise.reject(new Error('no counts'))), knowledge, accepting);
    const file = accepted.splice.path;
    const after = loadGraph(folder, null).knowledge;
    const priors = (van: string) =>
      after?.vans
        .get(van)
        ?.causes('water-none')
        .map(({ prior }) => prior);
    expect(priors('dunlin')).toEqual(counts?.causes.map(({ proposed }) => proposed));
    expect(priors('wren')).toEqual(
      knowledge.vans
        .get('wren')
        ?.causes('water-none')
        .map(({ prior }) => prior),
    );
    const lines = (folderOf: string) => readFileSync(join(folderOf, file), 'utf8').split('\n');
    const changed = lines(folder).filter((line, i) => line !== lines(GRAPH_FOLDER)[i]);
    expect(changed.every((line) => line.includes('prior:') || line.includes('dunlin:'))).toBe(true);

    await undoPriors(accepted.id, accepting);
    expect(lines(folder)).toEqual(lines(GRAPH_FOLDER));
    await expect(undoPriors(accepted.id, accepting)).rejects.toThrow(/undone already, by Gethin/);
    await expect(undoPriors(99, accepting)).rejects.toThrow(/no priors 99/);
  });

  it('writes nothing while somebody else is publishing', async () => {
    cpSync(GRAPH_FOLDER, folder, { recursive: true });
    const store = await storeWith(Array.from({ length: 30 }, () => anEnd('fixed', second?.id ?? '')));
    const [counts] = await faultReport(store, knowledge, 'water-none', 'dunlin');
    if (counts === undefined) throw new Error('no counts');
    writeFileSync(join(folder, '.publishing'), '');
    const accepting = { folder, store, by: 'Gethin', nowMs: 0 };
    await expect(acceptPriors(counts, knowledge, accepting)).rejects.toThrow(/somebody else is publishing/);
    expect(await acceptedPriors(store)).toEqual([]);
  });
});
