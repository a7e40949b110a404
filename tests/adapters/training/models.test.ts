import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeModel } from '../../../adapters/training/model-files.ts';
import { createModels, type Learnt } from '../../../adapters/training/models.ts';
import { netInput, writeQuickNet } from '../../../adapters/training/net-files.ts';
import { learnSafetyPaced, train, trainingInput } from '../../../src/index.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

/** The worker as the last build left it: `npm test` builds first. */
const build = /'\.\/([0-9a-f]+)\//.exec(readFileSync('dist/pitchhand.mjs', 'utf8'))?.[1] ?? '';
const WORKER = join(process.cwd(), 'dist', build, 'training-worker.mjs');
const LOG = pino({ level: 'silent' });
const TRIED = { best: [1], among: [2], lacks: [3] };

describe('learning beside the server', () => {
  const knowledge = smallKnowledge();
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pitchhand-models-'));
  });
  // A worker may still be writing what it learnt.
  afterEach(() => rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 }));

  /** As a trial leaves it. */
  function tried(): void {
    writeModel(folder, { ...train(trainingInput(knowledge), 2), calibration: TRIED }, 'quick');
    const net = netInput(knowledge);
    writeQuickNet(folder, net, learnSafetyPaced(net.safety, net.lines, { passes: 1, step: 0.5, pull: 0 }).net);
  }
  const untilWhole = (settleMs: number): Promise<{ readonly first: Learnt; readonly all: readonly Learnt[] }> =>
    new Promise((resolve) => {
      const all: Learnt[] = [];
      const first = createModels(
        folder,
        LOG,
        WORKER,
        settleMs,
      )(knowledge, null, (learnt) => {
        all.push(learnt);
        if (learnt.isWhole === true) resolve({ first, all });
      });
    });

  it('serves what the trial learnt at once, then the whole, weights and net and confidence', async () => {
    tried();
    const { first, all } = await untilWhole(1);
    expect([first.isWhole, first.model?.calibration]).toEqual([false, TRIED]);
    expect(all.map(({ isWhole }) => isWhole)).toEqual([false, false, true]);
    expect(all.at(-1)?.model?.calibration).not.toEqual(TRIED);
    expect(readdirSync(folder).map((name) => name.slice(name.indexOf('.')))).toContain('.warm');
  });

  it('learns at once where nothing is at hand, however long a change would wait', async () => {
    const { first } = await untilWhole(3_600_000);
    expect(first.model).toBeNull();
  });

  it('lets what was to be learnt go when another graph is served', async () => {
    tried();
    const models = createModels(folder, LOG, WORKER, 50);
    const better: Learnt[] = [];
    models(knowledge, null, (learnt) => better.push(learnt));
    const [topic] = knowledge.topics.values();
    if (topic === undefined) throw new Error('the small graph has topics');
    const other = new Map(knowledge.topics).set(topic.id, { ...topic, title: 'Something else' });
    const served = new Promise((resolve) => models({ ...knowledge, topics: other }, null, resolve));
    await served;
    expect(better).toEqual([]);
  });
});
