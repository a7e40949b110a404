import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pino } from 'pino';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createLiveGraph, GraphError, type LiveGraph } from '../../adapters/live-graph.ts';
import { createMatcher, learnSafetyPaced, type Model, type SecondNet, train, trainingInput } from '../../src/index.ts';
import { withoutNotices } from '../helpers/small-desk.ts';
import { smallGraphFiles, smallKnowledge } from '../helpers/small-graph.ts';

const NOTHING_BEFORE = { before: '', vanHas: () => true };

/** The graph folder as people edit it: by hand, and now and then with a slip. */
describe('the graph being served', () => {
  let folder = '';
  let live: LiveGraph | null = null;
  const graph = () => join(folder, 'graph');
  const start = (): LiveGraph => {
    live = createLiveGraph({
      folder: graph(),
      cacheFolder: join(folder, 'cache'),
      log: pino({ level: 'silent' }),
      learntFor: () => ({ model: null, net: null }),
      lastGood: join(folder, 'last-good.json'),
    });
    return live;
  };
  /** A small graph, of which something is learnt at the start and after each edit. */
  const startSmall = (learnt: Model[], nets: SecondNet[] = []): void => {
    for (const { path, text } of smallGraphFiles()) {
      const file = join(folder, 'small', path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, path === 'safety.yaml' ? withoutNotices(text) : text);
    }
    live = createLiveGraph({
      folder: join(folder, 'small'),
      cacheFolder: join(folder, 'cache'),
      log: pino({ level: 'silent' }),
      learntFor: () => ({ model: learnt.shift() ?? null, net: nets.shift() ?? null }),
    });
  };
  const edit = (file: string, change: (text: string) => string): void => {
    const path = join(graph(), file);
    writeFileSync(path, change(readFileSync(path, 'utf8')));
  };
  const break_ = () => edit('firm.yaml', (text) => text.replace('name:', 'nmae:'));

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pitchhand-live-'));
    cpSync('graph', graph(), { recursive: true });
  });
  afterEach(() => {
    live?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  it('takes a good edit without a restart', async () => {
    const served = start();
    edit('systems/kit.yaml', (text) =>
      text.replace('The corkscrew and the tin opener are', 'Corkscrew and tin opener:'),
    );
    expect(await served.reload()).toEqual([]);
    expect(JSON.stringify(served.served().knowledge.topics.get('kit-corkscrew')?.answer)).toContain(
      'Corkscrew and tin opener:',
    );
  });

  it('refuses a bad edit with its slips and goes on serving the last good graph', async () => {
    const served = start();
    const before = served.hash();
    break_();
    const slips = await served.reload();
    expect(slips.map((slip) => slip.file)).toContain('firm.yaml');
    expect(served.hash()).toBe(before);
    expect(served.slips()).toEqual(slips);
  });

  it('serves the last good graph when it starts on a broken folder, and says what is wrong', () => {
    const { hash } = start();
    const good = hash();
    live?.stop();
    break_();
    const again = start();
    expect(again.hash()).toBe(good);
    expect(again.slips().length).toBeGreaterThan(0);
    expect(again.served().readDanger('I smell gas', { before: '', vanHas: () => true }).danger?.hazard).toBe(
      'safety-gas-smell',
    );
  });

  it('serves an edited graph with the last confidence until it has its own', async () => {
    const knowledge = smallKnowledge();
    const model = train(trainingInput(knowledge), 1);
    const steep = {
      best: [9, 0, 0, 0, 0, 0, 0, 0, 0],
      among: [9, 0, 0, 0, 0, 0, 0, 0, 0],
      lacks: [-9, 0, 0, 0, 0, 0, 0, 0, 0],
    };
    const learnt = [{ ...model, calibration: steep }, model];
    startSmall(learnt);
    const context = { van: 'daisy', lastTopic: null, lastText: '' };
    const probability = () => live?.served().matcher.understand('bake a pie', context)[0]?.ranked[0]?.probability ?? 0;
    const before = probability();
    expect(before).not.toBeCloseTo(
      createMatcher(knowledge, model).understand('bake a pie', context)[0]?.ranked[0]?.probability ?? 0,
    );
    const file = join(folder, 'small', 'systems/fridge.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace('Light it at the knob', 'Light it there'));
    expect(await live?.reload()).toEqual([]);
    expect(probability()).toBe(before);
  });

  it('understands a wording that was just written, with the weights that served before, until it has been learnt', async () => {
    const learnt = [train(trainingInput(smallKnowledge()), 1)];
    startSmall(learnt);
    const context = { van: 'daisy', lastTopic: null, lastText: '' };
    const ranked = (text: string) => live?.served().matcher.understand(text, context)[0]?.ranked[0];
    const readDanger = live?.served().readDanger;
    const before = ranked('bake a pie')?.probability ?? 0;
    expect(ranked('zarquon grumbles')?.topic).not.toBe('hours-contact');
    const file = join(folder, 'small', 'systems/fridge.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace('you close]', 'you close, zarquon grumbles]'));
    expect(await live?.reload()).toEqual([]);
    expect(ranked('zarquon grumbles')?.topic).toBe('hours-contact');
    expect(ranked('bake a pie')?.probability).toBe(before);
    expect(live?.served().readDanger).toBe(readDanger);
  });

  it('reads dangers with the second net that served before, until an edit is of the safety data', async () => {
    const { safety } = smallKnowledge();
    const lines = [
      { text: 'the zarquon grumbles', hazard: 'safety-fire', weight: 1 },
      { text: 'where is the kettle', hazard: null, weight: 1 },
    ];
    startSmall([], [learnSafetyPaced(safety, lines).net]);
    const hazard = () => live?.served().readDanger('the zarquon grumbles', NOTHING_BEFORE).danger?.hazard ?? null;
    expect(hazard()).toBe('safety-fire');
    const change = async (file: string, from: string, to: string) => {
      const path = join(folder, 'small', file);
      writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
      expect(await live?.reload()).toEqual([]);
    };
    await change('systems/fridge.yaml', 'Light it at the knob', 'Light it there');
    expect(hazard()).toBe('safety-fire');
    await change('safety.yaml', 'firm: 0.03', 'firm: 0.02');
    expect(hazard()).toBeNull();
  });

  describe('with nothing good to serve', () => {
    it('serves the built-in notices with the hours and numbers of the firm, and says what is wrong', () => {
      edit('systems/gas.yaml', (text) => text.replace('system: gas', 'sistem: gas'));
      const again = start();
      expect(again.slips().map((slip) => slip.file)).toContain('systems/gas.yaml');
      const { knowledge, readDanger } = again.served();
      expect(readDanger('I smell gas', { before: '', vanHas: () => true }).danger?.hazard).toBe('safety-gas-smell');
      expect(knowledge.firm.name).toBe('Brackenfold Touring Hire');
    });

    it('serves the graph as soon as it is mended', async () => {
      edit('systems/gas.yaml', (text) => text.replace('system: gas', 'sistem: gas'));
      const again = start();
      edit('systems/gas.yaml', (text) => text.replace('sistem: gas', 'system: gas'));
      expect(await again.reload()).toEqual([]);
      expect(again.slips()).toEqual([]);
      expect(again.served().knowledge.topics.has('kit-corkscrew')).toBe(true);
    });

    it('names every slip where not even the file of the firm can be read', () => {
      break_();
      expect(start).toThrow(GraphError);
      expect(start).toThrow(/firm\.yaml:\d+:\d+ nmae: unknown key/);
    });
  });
});
