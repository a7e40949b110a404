import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { pino } from 'pino';
import { loadGraph } from '../../../adapters/files/served.ts';
import { createLiveGraph } from '../../../adapters/live-graph.ts';
import { createLearn, createModels } from '../../../adapters/training/models.ts';

/** Files that are edited, one after the other. */
const FILES = ['water', 'gas', 'dc', 'toilet', 'fridge'].map((system) => `systems/${system}.yaml`);
const TEXT = 'zarquon thingummy keeps grumbling';

/** For each of some edits the milliseconds until a message was answered from the edited graph. */
export type AfterEdits = { readonly byHand: readonly number[]; readonly published: readonly number[] };

/**
 * Writes a wording more into a copy of the graph, again and again, on the path that a server takes: `byHand` from the writing,
 * the folder being watched and the training worker of the edit before still at work; `published` from the writing of what a trial
 * learnt, read at once.
 */
export async function afterEdits(count: number): Promise<AfterEdits> {
  const build = /'\.\/([0-9a-f]+)\//.exec(readFileSync('dist/pitchhand.mjs', 'utf8'))?.[1] ?? '';
  const worker = join(process.cwd(), 'dist', build, 'training-worker.mjs');
  const folder = mkdtempSync(join(tmpdir(), 'pitchhand-edits-'));
  const [graph, kept] = [join(folder, 'graph'), join(folder, 'kept')];
  cpSync('graph', graph, { recursive: true });
  cpSync('dist/graphs', kept, { recursive: true });
  const log = pino({ level: 'silent' });
  const learntFor = createModels(kept, log, worker);
  const live = createLiveGraph({
    folder: graph,
    cacheFolder: kept,
    log,
    learntFor,
    lastGood: join(folder, 'last.json'),
  });
  const ask = () => live.served().matcher.understand(TEXT, { van: 'dunlin', lastTopic: null, lastText: '' });
  const whole = live.served().knowledge;
  let lines = 0;
  const edited = (i: number): readonly [string, string] => {
    const file = join(graph, FILES[i % FILES.length] ?? '');
    return [file, readFileSync(file, 'utf8').replace(/wordings:\n {6}\w+:\n/, `$&        - ${TEXT} no ${lines++}\n`)];
  };
  const answered = async (write: () => void): Promise<number> => {
    const before = live.hash();
    const from = performance.now();
    write();
    while (live.hash() === before) await wait(1);
    ask();
    return performance.now() - from;
  };
  ask();
  const byHand: number[] = [];
  for (let i = 0; i < count; i++) {
    byHand.push(await answered(() => writeFileSync(...edited(i))));
    await wait(1500);
  }
  const published: number[] = [];
  const learn = createLearn(kept, worker);
  for (let i = 0; i < count; i++) {
    const [file, text] = edited(i);
    const tried = join(folder, 'tried');
    cpSync(graph, tried, { recursive: true });
    writeFileSync(join(tried, FILES[i % FILES.length] ?? ''), text);
    const { knowledge } = loadGraph(tried, kept);
    if (knowledge !== null) await learn(knowledge, { from: whole });
    published.push(
      await answered(() => {
        writeFileSync(file, text);
        void live.reload();
      }),
    );
    await wait(500);
  }
  live.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
  return { byHand, published };
}
