import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { trial } from '../../../adapters/cli/trial.ts';
import { databaseFile } from '../../../adapters/cli/with-data.ts';
import { openSqlite } from '../../../adapters/sqlite/sqlite-store.ts';
import { newThread } from '../../../src/index.ts';
import { aBooking } from '../../helpers/pages-world.ts';
import { type SmallDesk, smallDesk } from '../../helpers/small-desk.ts';
import { aTerminal } from '../../helpers/terminal.ts';

const AT_MS = Date.parse('2027-07-20T18:00:00Z');

describe('pitchhand trial', () => {
  let small: SmallDesk;
  let data = '';
  beforeEach(() => {
    small = smallDesk();
    data = mkdtempSync(join(tmpdir(), 'pitchhand-trial-'));
  });
  afterEach(() => {
    small.remove();
    rmSync(data, { recursive: true, force: true });
  });

  async function run(...args: string[]) {
    const terminal = aTerminal({ PITCHHAND_GRAPH: small.folder, PITCHHAND_DATA: data });
    const code = await trial.run(args, terminal.terminal);
    return { code, out: terminal.out() };
  }

  /** A hirer whom the answer on the oven helped. */
  async function helped(text: string): Promise<void> {
    const { store } = await openSqlite(databaseFile(data));
    await store.putBookings([aBooking({ van: 'daisy' })]);
    const message = {
      channel: 'web',
      address: 'a',
      key: 'k',
      atMs: AT_MS,
      text,
      choice: null,
      attachments: [],
      edit: false,
      from: null,
      startToken: null,
    };
    const thread = newThread({ id: 't', channel: 'web', address: 'a', booking: 'BR-2702', van: 'daisy' }, AT_MS);
    await store.receive(message, () => thread);
    const [waiting] = await store.nextMessages(1, new Set());
    await store.saveTurn({
      seq: waiting?.seq ?? null,
      thread: { ...thread, version: 1 },
      replies: [],
      events: [
        { kind: 'answered', topic: 'oven-use', probability: 1 },
        { kind: 'helped', topic: 'oven-use', yes: true },
      ],
      atMs: AT_MS + 1,
    });
    await store.close();
  }

  it('replays the recorded questions where nobody has asked yet', async () => {
    const { code, out } = await run('--jsonl');
    expect(out.trim().split('\n')).toHaveLength(8);
    expect(code).toBe(0);
  });

  it('replays what hirers asked as well, without their names', async () => {
    await helped('how does the oven light, Ngozi here');
    const { out } = await run('--jsonl');
    expect(out).toContain('{"text":"how does the oven light, [name] here","van":"daisy","expected":"oven-use"');
  });

  it('ends with 1 and the words when something got worse', async () => {
    await helped('want to bake a pie today');
    expect((await run()).code).toBe(0);
    const file = join(small.folder, 'systems/fridge.yaml');
    writeFileSync(
      file,
      readFileSync(file, 'utf8')
        .replace('[want to bake a pie]', '[roast a joint]')
        .replace('[what time do you close]', '[want to bake a pie, bake a pie today]'),
    );
    const { code, out } = await run();
    expect(code).toBe(1);
    expect(out).toMatch(/Worse:\n.* 'want to bake a pie today' \(daisy\): right: oven-use -> /);
  });

  it('names what was missed before as known, and ends with 1 only where a danger is newly missed', async () => {
    const file = join(small.folder, 'questions.yaml');
    const asked = (text: string) =>
      writeFileSync(file, `${readFileSync(file, 'utf8').trimEnd()}\n  - { outcome: safety, text: ${text} }\n`);
    asked('the sky has turned green');
    for (let time = 0; time < 2; time++) {
      const { code, out } = await run();
      expect(code).toBe(0);
      expect(out).toContain("1 danger missed:\n  'the sky has turned green'");
    }
    asked('the lake has turned red');
    const { code, out } = await run();
    expect(code).toBe(1);
    expect(out).toContain("Dangers newly missed:\n  'the lake has turned red'");
  });
});
