import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { learnAndKeepNet, netInput, readNet } from '../../../adapters/training/net-files.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const folder = mkdtempSync(join(tmpdir(), 'pitchhand-nets-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a kept second net', () => {
  beforeEach(() => void vi.resetModules());

  it('comes back for the same input', () => {
    const input = netInput(smallKnowledge());
    expect(readNet(folder, input)).toBeNull();
    const net = learnAndKeepNet(folder, input);
    expect(readNet(folder, netInput(smallKnowledge()))?.weights).toEqual(net.weights);
  });

  it('is not used when its examples have changed', () => {
    const knowledge = smallKnowledge();
    const { reading } = knowledge.safety;
    const examples = { ...reading.examples, plain: [...reading.examples.plain, 'one more'] };
    const changed = { ...knowledge, safety: { ...knowledge.safety, reading: { ...reading, examples } } };
    expect(readNet(folder, netInput(changed))).toBeNull();
  });

  it('is not used when texts are read otherwise than before', async () => {
    vi.doMock('../../../src/index.ts', async (original) => ({
      ...(await original<typeof import('../../../src/index.ts')>()),
      SAFETY_READING: -1,
    }));
    const { netInput: later } = await import('../../../adapters/training/net-files.ts');
    expect(later(smallKnowledge()).hash).not.toBe(netInput(smallKnowledge()).hash);
  });
});
