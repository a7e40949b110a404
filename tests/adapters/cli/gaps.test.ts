import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { runGaps } from '../../../adapters/cli/gaps.ts';
import { aGap, type SmallDesk, smallDesk } from '../../helpers/small-desk.ts';
import { aTerminal } from '../../helpers/terminal.ts';

const desks: SmallDesk[] = [];
afterEach(() => {
  for (const each of desks.splice(0)) each.remove();
});
const PIES = [
  'what temperature for a pie in the oven',
  'oven temperature for a pie',
  'pie in the oven, which temperature',
];

async function withGaps(texts: readonly string[] = [...PIES, 'is there a pool near here']): Promise<SmallDesk> {
  const made = smallDesk();
  desks.push(made);
  for (const text of texts) await made.came([aGap(text)]);
  return made;
}
async function run({ desk }: SmallDesk, args: readonly string[], given: Parameters<typeof runGaps>[3] = {}) {
  const terminal = aTerminal();
  const code = await runGaps(desk, args[0], args[1], given, terminal.terminal);
  return { code, out: terminal.out() };
}

describe('pitchhand gaps', () => {
  it('lists the groups, the largest first, and shows one', async () => {
    const made = await withGaps();
    const { out } = await run(made, ['list'], { json: true });
    const groups = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { id: number; gaps: unknown[] });
    expect(groups.map(({ gaps }) => gaps.length)).toEqual([3, 1]);
    const shown = await run(made, ['show', String(groups[0]?.id)]);
    for (const text of PIES) expect(shown.out).toContain(text);
    expect(shown.out).toContain('nearest: oven-use');
  });

  it('publishes the suggestion, settles the group, and undoes it to the byte', async () => {
    const made = await withGaps();
    const before = made.texts();
    const { code, out } = await run(made, ['add-wording', '1'], { by: 'Nessa', why: 'pies' });
    expect(out).toContain('Published as change 1');
    expect(code).toBe(0);
    expect(made.texts()['systems/fridge.yaml']).toContain(`        - ${PIES[0]}\n`);
    expect((await made.desk.groups()).map(({ gaps }) => gaps.length)).toEqual([1]);
    expect((await run(made, ['changes'])).out).toMatch(
      /^ {3}1 {2}2027-07-20 {2}Nessa: 3 wordings to oven-use \(better \d+, worse 0\): pies\n$/,
    );
    expect((await run(made, ['undo', '1'], { by: 'Gethin' })).code).toBe(0);
    expect(made.texts()).toEqual(before);
    expect((await made.desk.groups())[0]?.gaps).toHaveLength(3);
    await expect(run(made, ['undo', '1'], { by: 'Gethin' })).rejects.toThrow(/undone already, by Gethin/);
  });

  it('is refused by the trial when it would steal another topic’s questions, until somebody says so', async () => {
    const made = await withGaps();
    const before = made.texts();
    const stolen = [
      'fridge on the pitch',
      'which way the fridge goes',
      'setting the fridge on the pitch',
      'fridge which way on the pitch',
      'which setting for the pitch fridge',
    ];
    const given = { topic: 'hours-contact', wording: [...stolen], by: 'Nessa' };
    const refused = await run(made, ['add-wording', '1'], given);
    expect(refused.out).toContain('Refused by the trial, nothing was published');
    expect(refused.code).toBe(1);
    expect(made.texts()).toEqual(before);
    expect(await made.desk.changes()).toEqual([]);
    expect((await run(made, ['add-wording', '1'], { ...given, 'even-if-worse': true })).code).toBe(0);
  });

  it('publishes nothing on a dry run', async () => {
    const made = await withGaps();
    const before = made.texts();
    expect((await run(made, ['set-aside', '4'], { 'dry-run': true })).out).toContain(
      '+  hirers:\n+    - is there a pool near here',
    );
    expect(made.texts()).toEqual(before);
  });

  it('makes a topic from what staff wrote back', async () => {
    const made = await withGaps([]);
    for (const text of ['is there a pool', 'pool nearby?', 'where can we swim, a pool maybe'])
      await made.came([aGap(text, { topics: [] }), { kind: 'staff-said', by: 'Nessa', text: 'Yes, in the village.' }]);
    const given = {
      id: 'pool',
      title: 'Is there a pool?',
      system: 'fridge',
      kind: 'fact',
      wording: ['is there a pool', 'pool nearby', 'swim in a pool'],
      by: 'Nessa',
    };
    expect((await run(made, ['new-topic', '1'], given)).code).toBe(0);
    expect(made.texts()['systems/fridge.yaml']).toContain('      first: "Yes, in the village."\n');
    expect(made.desk.knowledge().topics.get('pool')?.title).toBe('Is there a pool?');
  });

  it('says what is wrong with a command', async () => {
    const made = await withGaps();
    await expect(run(made, ['add-wording', '1'])).rejects.toThrow(/expected --by NAME/);
    await expect(run(made, ['show', '99'])).rejects.toThrow(/no group 99/);
    await expect(run(made, ['show'])).rejects.toThrow(/expected a number/);
    await expect(run(made, ['burn', '1'])).rejects.toThrow(/expected list, show/);
    await expect(run(made, ['add-wording', '1'], { topic: 'no-such', by: 'N' })).rejects.toThrow(/no topic 'no-such'/);
  });
});

describe('a change in other hands', () => {
  const FILE = 'systems/fridge.yaml';

  async function triedOn(made: SmallDesk) {
    const group = await made.desk.group(1);
    if (group === null) throw new Error('no group');
    const drafted = made.desk.draft({ kind: 'add-wordings', topic: 'oven-use', wordings: PIES }, group);
    if (drafted.kind === 'refused') throw new Error(drafted.problems.join());
    return made.desk.trial(drafted.draft);
  }
  const how = { by: 'Nessa', why: '', evenIfWorse: true, tell: false };

  it('shows what hirers of each van will read', async () => {
    const { previews } = await triedOn(await withGaps());
    expect(previews.map(({ van }) => van)).toEqual(['Daisy']);
    expect(previews[0]?.text).toContain('Light it at the knob.');
  });

  it('is not published over an edit made meanwhile', async () => {
    const made = await withGaps();
    const tried = await triedOn(made);
    const file = join(made.folder, FILE);
    writeFileSync(file, `# by hand\n${readFileSync(file, 'utf8')}`);
    const before = made.texts();
    expect(await made.desk.publish(tried, how)).toMatchObject({ kind: 'conflict', theirs: { path: FILE } });
    expect(made.texts()).toEqual(before);
    expect(await made.desk.changes()).toEqual([]);
  });

  it('of two operators the second is told', async () => {
    const made = await withGaps();
    const [one, other] = [await triedOn(made), await triedOn(made)];
    expect(await made.desk.publish(one, how)).toMatchObject({ kind: 'published' });
    expect(await made.desk.publish(other, { ...how, by: 'Gethin' })).toMatchObject({ kind: 'conflict' });
    expect(await made.desk.changes()).toHaveLength(1);
  });

  it('is not published into a file that may not be written to', async () => {
    const made = await withGaps();
    const tried = await triedOn(made);
    chmodSync(join(made.folder, FILE), 0o444);
    expect(await made.desk.publish(tried, how)).toEqual({ kind: 'failed', why: `graph/${FILE} may not be written to` });
  });

  it('is undone where it stands, and what was edited by hand since stays', async () => {
    const made = await withGaps();
    const before = made.texts()[FILE];
    await made.desk.publish(await triedOn(made), how);
    const file = join(made.folder, FILE);
    writeFileSync(file, `# by hand\n${readFileSync(file, 'utf8')}`);
    expect(await made.desk.undo(1, 'Nessa')).toEqual({ kind: 'undone' });
    expect(readFileSync(file, 'utf8')).toBe(`# by hand\n${before}`);
  });

  it('is not undone when its own lines were edited since', async () => {
    const made = await withGaps();
    await made.desk.publish(await triedOn(made), how);
    const file = join(made.folder, FILE);
    writeFileSync(file, readFileSync(file, 'utf8').replace(PIES[0] ?? '', 'something else'));
    expect(await made.desk.undo(1, 'Nessa')).toMatchObject({ kind: 'conflict', ours: { path: FILE } });
  });

  it('goes on from the last good graph while the folder is broken, and writes nothing', async () => {
    const made = await withGaps();
    const tried = await triedOn(made);
    const file = join(made.folder, FILE);
    writeFileSync(file, 'topics: [broken');
    expect(await made.desk.groups()).toHaveLength(2);
    expect(await made.desk.publish(tried, how)).toMatchObject({ kind: 'conflict' });
    expect(readFileSync(file, 'utf8')).toBe('topics: [broken');
  });
});
