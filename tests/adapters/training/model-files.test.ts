import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readModelNamed, writeModel } from '../../../adapters/training/model-files.ts';
import { train, trainingInput } from '../../../src/index.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const folder = mkdtempSync(join(tmpdir(), 'pitchhand-models-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const model = train(trainingInput(smallKnowledge()), 1);

describe('kept weights', () => {
  it('come back as they were', () => {
    writeModel(folder, model);
    const back = readModelNamed(folder, model.hash);
    expect(back?.keys).toEqual(model.keys);
    expect(back?.space.names).toEqual(model.space.names);
    expect(back?.weights).toEqual(model.weights);
    expect(back?.vocabulary).toEqual(model.vocabulary);
    expect([...(back?.space.letters('fridge').places ?? [])]).toEqual([...model.space.letters('fridge').places]);
  });

  it('are not found under another hash', () => {
    expect(readModelNamed(folder, 'other')).toBeNull();
  });

  it('are none when a crash cut their file short', () => {
    const file = join(folder, `${model.hash}.model`);
    writeFileSync(file, readFileSync(file).subarray(0, statSync(file).size / 2));
    expect(readModelNamed(folder, model.hash)).toBeNull();
  });

  it('leave nothing else behind', () => {
    expect(readdirSync(folder)).toEqual([`${model.hash}.model`]);
  });
});
