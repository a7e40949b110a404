import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createLearn, learntFor } from '../../../adapters/training/models.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

/** The worker as the last build left it: `npm test` builds first. */
const build = /'\.\/([0-9a-f]+)\//.exec(readFileSync('dist/pitchhand.mjs', 'utf8'))?.[1] ?? '';
const WORKER = join(process.cwd(), 'dist', build, 'training-worker.mjs');

describe('learning a graph that is only tried', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pitchhand-learn-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('learns the weights and the second net, and leaves the confidence to the graph that is served', async () => {
    const { model, net } = await createLearn(folder, WORKER)(smallKnowledge());
    expect(net).not.toBeNull();
    expect(model?.calibration).toBeNull();
    expect(model?.keys).toContain('topic/oven-use');
  });

  it('finds what it learnt before', async () => {
    const learn = createLearn(folder, WORKER);
    const first = await learn(smallKnowledge());
    const nothingToDo = createLearn(folder, 'no-such-worker.mjs');
    expect((await nothingToDo(smallKnowledge())).model?.hash).toBe(first.model?.hash);
  });

  it('ends at once when the trial is discarded, and keeps nothing', async () => {
    const trial = new AbortController();
    const learning = createLearn(folder, WORKER)(realKnowledge(), { signal: trial.signal });
    setTimeout(() => trial.abort(new Error('discarded')), 150);
    await expect(learning).rejects.toThrow('discarded');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('gives up when it takes too long', async () => {
    await expect(createLearn(folder, WORKER, 100)(realKnowledge())).rejects.toThrow(/time/i);
  });

  describe('that differs little from one wholly learnt', () => {
    const base = realKnowledge();
    const rocks = base.topics.get('setup-van-rocks');
    if (rocks === undefined) throw new Error('the topic of the sample is gone');
    const topics = new Map(base.topics).set(rocks.id, {
      ...rocks,
      wordings: { ...rocks.wordings, hirers: ['it wobbles like a boat', 'wobbling whenever the dog jumps'] },
    });
    const changed = { ...base, topics };

    it('learns what differs alone, with the other’s confidence, and does so once', async () => {
      for (const name of learntFor('dist/graphs', base).files ?? [])
        if (readdirSync('dist/graphs').includes(name)) copyFileSync(join('dist/graphs', name), join(folder, name));
      const { model, net, isWhole } = await createLearn(folder, WORKER)(changed, { from: base });
      expect(model?.calibration).toEqual(learntFor(folder, base).model?.calibration);
      expect(net).not.toBeNull();
      expect(isWhole).toBe(false);
      const kinds = readdirSync(folder).map((name) => name.slice(name.indexOf('.')));
      expect(kinds.sort()).toEqual(['.model', '.net', '.pace', '.quick', '.quicknet', '.warm']);
      expect((await createLearn(folder, 'no-such-worker.mjs')(changed, { from: base })).model?.hash).toBe(model?.hash);
    });

    it('is learnt in full where nothing of the other is kept', async () => {
      const { model, net } = await createLearn(folder, WORKER)(smallKnowledge(), { from: base });
      expect([model?.calibration, net === null]).toEqual([null, false]);
    });
  });
});
