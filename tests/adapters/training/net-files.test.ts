import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serialize } from 'node:v8';
import { afterAll, describe, expect, it } from 'vitest';
import { learnAndKeepNet, netInput, readNet } from '../../../adapters/training/net-files.ts';
import { codeNameOf } from '../../../src/index.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const folder = mkdtempSync(join(tmpdir(), 'pitchhand-nets-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a kept second net', () => {
  it('comes back for the same input', () => {
    const input = netInput(smallKnowledge());
    expect(readNet(folder, input)).toBeNull();
    const net = learnAndKeepNet(folder, input);
    const again = readNet(folder, netInput(smallKnowledge()));
    expect(serialize(again?.weights).equals(serialize(net.weights))).toBe(true);
  });

  it('is not used when its examples have changed', () => {
    const knowledge = smallKnowledge();
    const { reading } = knowledge.safety;
    const examples = { ...reading.examples, plain: [...reading.examples.plain, 'one more'] };
    const changed = { ...knowledge, safety: { ...knowledge.safety, reading: { ...reading, examples } } };
    expect(readNet(folder, netInput(changed))).toBeNull();
  });

  it('is not used when other code learnt it', () => {
    const { hash } = netInput(smallKnowledge());
    expect(netInput(smallKnowledge(), codeNameOf('safety')).hash).toBe(hash);
    expect(netInput(smallKnowledge(), 'older code').hash).not.toBe(hash);
  });
});
