import { describe, expect, it } from 'vitest';
import { UsageError } from '../../../adapters/cli/command.ts';
import { simulate } from '../../../adapters/cli/simulate.ts';
import { aTerminal } from '../../helpers/terminal.ts';

async function run(...args: string[]) {
  const { terminal, out, err } = aTerminal({ PITCHHAND_GRAPH: 'graph' });
  return { code: await simulate.run(args, terminal), out: out(), err: err() };
}

describe('pitchhand simulate', () => {
  it('prints the figures of one symptom in one van as JSON, the bar apart', async () => {
    const { code, out, err } = await run('--symptom', 'water-none', '--van', 'Dunlin', '--n', '200', '--json');
    const { summary, rows } = JSON.parse(out);
    expect(code).toBe(0);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ symptom: 'water-none', van: 'dunlin', hirers: 200 });
    expect(summary).toMatchObject({ rows: 1, hirers: 200, hours: 'open', seed: 1 });
    expect(summary.overOptimum).toBeGreaterThanOrEqual(0);
    expect(err).toMatch(/\[#+\] 1\/1/);
  });

  it('prints a table with the price of a pass', async () => {
    const { out } = await run('--symptom', 'water-none', '--n', '50', '--hours', 'closed');
    expect(out).toMatch(/^water-none dunlin/m);
    expect(out).toMatch(/^all, pooled/m);
    expect(out).toMatch(/A pass costs \(closed, \d+ minutes\)/);
  });

  it('gives the same for the same seed and another for another', async () => {
    const args = ['--symptom', 'water-none', '--van', 'wren', '--n', '100', '--json'];
    const first = await run(...args);
    expect((await run(...args)).out).toBe(first.out);
    expect((await run(...args, '--seed', '2')).out).not.toBe(first.out);
  });

  it.each([
    [['--van', 'nobody'], /no van 'nobody', expected one of/],
    [['--symptom', 'water-fill'], /no symptom 'water-fill'/],
    [['--n', '0'], /--n is '0', expected a whole number from 1/],
    [['--error', '0.9'], /--error is '0.9'/],
    [['--hours', 'noon'], /no hours 'noon', expected one of open, on-call, closed/],
    [['--symptom', 'water-none', '--van', 'dunlin', '--seed', 'x'], /--seed is 'x'/],
  ])('%j is used wrongly', async (args, words) => {
    await expect(run(...args)).rejects.toThrow(words);
    await expect(run(...args)).rejects.toThrow(UsageError);
  });
});
