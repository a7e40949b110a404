import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { parseDocument } from 'yaml';
import { createGrowthDesk } from '../../adapters/cli/growth-desk.ts';
import type { GrowthDesk } from '../../adapters/cli/growth-types.ts';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { type Event, newThread, type Store, train, trainingInput } from '../../src/index.ts';
import { smallGraphFiles } from './small-graph.ts';

export type SmallDesk = {
  readonly desk: GrowthDesk;
  readonly store: Store;
  readonly folder: string;
  /** All files of the graph as they are on disk, by path. */
  readonly texts: () => Readonly<Record<string, string>>;
  /** A thread in which these events came about: at an instant, or a minute after the last thread's. */
  readonly came: (events: readonly Event[], atMs?: number) => Promise<void>;
  readonly remove: () => void;
};

export const ASKED_MS = Date.parse('2027-07-20T18:00:00Z');

export function aGap(text: string, change: Partial<Extract<Event, { kind: 'gap' }>> = {}): Event {
  return { kind: 'gap', text, why: 'no-such-topic', van: 'daisy', topics: ['oven-use'], ...change };
}

/** The small graph on disk with a desk over it. */
export function smallDesk(): SmallDesk {
  const folder = mkdtempSync(join(tmpdir(), 'pitchhand-desk-'));
  const cacheFolder = mkdtempSync(join(tmpdir(), 'pitchhand-desk-cache-'));
  const files = smallGraphFiles().map(({ path, text }) => ({
    path,
    text: path === 'safety.yaml' ? withoutNotices(text) : text,
  }));
  for (const { path, text } of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const store = memoryStore();
  let threads = 0;
  const desk = createGrowthDesk({
    store,
    folder,
    cacheFolder,
    learn: async (knowledge) => ({ model: train(trainingInput(knowledge), 1), net: null }),
    reload: async () => {},
    nowMs: () => ASKED_MS + 3_600_000,
  });
  return {
    desk,
    store,
    folder,
    texts: () => Object.fromEntries(files.map(({ path }) => [path, readFileSync(join(folder, path), 'utf8')])),
    came: async (events, given) => {
      const id = `t${++threads}`;
      const atMs = given ?? ASKED_MS + threads * 60_000;
      const thread = newThread({ id, channel: 'console', address: id, booking: null, van: 'daisy' }, atMs);
      await store.saveTurn({ seq: null, thread, replies: [], events, atMs });
    },
    remove: () => {
      for (const each of [folder, cacheFolder]) rmSync(each, { recursive: true, force: true });
    },
  };
}

/** The firm's notices name topics that the small graph has not. */
export function withoutNotices(yaml: string): string {
  const document = parseDocument(yaml);
  document.set('notices', document.createNode({}));
  return document.toString({ lineWidth: 0 });
}
