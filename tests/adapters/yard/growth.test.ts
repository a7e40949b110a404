import { afterEach, describe, expect, it } from 'vitest';
import { createGrowth } from '../../../adapters/cli/growth-trials.ts';
import type { YardWorld } from '../../../adapters/yard/world.ts';
import { chatWorld, type PagesWorld } from '../../helpers/pages-world.ts';
import { aGap, type SmallDesk, smallDesk } from '../../helpers/small-desk.ts';
import { type YardPerson, yardPerson } from '../../helpers/yard-person.ts';

const PIES = [
  'what temperature for a pie in the oven',
  'oven temperature for a pie',
  'pie in the oven, which temperature',
];
const made: { readonly world: PagesWorld; readonly small: SmallDesk }[] = [];
afterEach(async () => {
  for (const { world, small } of made.splice(0)) {
    await world.stop();
    small.remove();
  }
});

async function aYard(texts: readonly string[] = PIES, yard: Partial<YardWorld> = {}) {
  const small = smallDesk();
  for (const text of texts) await small.came([aGap(text)]);
  const world = await chatWorld({ yard: { growth: createGrowth(small.desk, () => {}), ...yard } });
  made.push({ world, small });
  return { world, small, nessa: await yardPerson(world, 'Nessa', 'operator') };
}

/** Presses the first button of a group's page and waits until the trial is over; its path. */
async function tried(nessa: YardPerson, fields: Readonly<Record<string, string>> = {}, group = 1): Promise<string> {
  const answer = await nessa.press(`/yard/growth/group/${group}`, `/yard/growth/group/${group}/try`, fields);
  const path = answer.headers.get('location') ?? '';
  for (let i = 0; i < 200; i++) {
    const html = await (await nessa.get(path)).text();
    if (html.includes('class="verdict')) return path;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('the trial did not end');
}

describe('teaching on the yard’s pages', () => {
  it('is for operators alone', async () => {
    const { world } = await aYard();
    const gethin = await yardPerson(world, 'Gethin', 'staff');
    for (const path of [
      '',
      '/group/1',
      '/changes',
      '/figures',
      '/figures.csv',
      '/thin',
      '/drawings',
      '/drawings/hob',
      '/faults',
      '/graph',
      '/graph/data',
      '/graph/part/oven',
    ])
      expect((await gethin.get(`/yard/growth${path}`)).status).toBe(403);
    expect(await (await gethin.get('/yard')).text()).not.toContain('/yard/growth');
  });

  it('shows every drawing with each of its parts ringed, by day and by night', async () => {
    const drawings = [
      {
        name: 'hob',
        cells: [
          { touch: null, alts: [] },
          { touch: 'knob', alts: ['The knob of the hob.', 'Push it.'] },
        ],
      },
    ];
    const { nessa } = await aYard(PIES, { drawings: () => drawings });
    for (const [query, look] of [
      ['', 'light'],
      ['?look=dark', 'dark'],
    ]) {
      const bare = `src="/yard/-/picture/hob/.${look}.svg"`;
      const all = await (await nessa.get(`/yard/growth/drawings${query}`)).text();
      expect(all).toContain(bare);
      expect(all).toContain(`href="/yard/growth/drawings/hob${query}"`);
      expect(all).toContain('hob: ringed in 1 way<');
      const one = await (await nessa.get(`/yard/growth/drawings/hob${query}`)).text();
      expect(one).toContain(bare);
      expect(one).toContain(`src="/yard/-/picture/hob/knob.${look}.svg"`);
      expect(one).toContain('The knob of the hob. / Push it.');
    }
    expect((await nessa.get('/yard/growth/drawings/kettle')).status).toBe(404);
  });

  it('takes proposed chances of a fault at a press, and says what stands in the way', async () => {
    const row = { cause: 'fuse', say: 'Its fuse has blown', believed: 0, proposed: 0.4, parts: true };
    const counts = {
      symptom: 'fridge-light',
      van: 'daisy',
      walks: 30,
      fixed: 28,
      passed: 2,
      left: 0,
      unresolved: 1,
      parts: true,
      causes: [{ ...row, prior: 0.7, cured: 9, share: 0.3, interval: [0.17, 0.48] as const }],
    };
    const taken: string[] = [];
    const priors = {
      report: async () => [counts],
      accept: async (symptom: string, van: string, by: string) => {
        taken.push(`${symptom} ${van} ${by}`);
        return taken.length > 1 ? 'the graph was changed meanwhile' : null;
      },
    };
    const { nessa } = await aYard(PIES, { priors });
    const html = await (await nessa.get('/yard/growth/faults')).text();
    expect(html).toMatch(/Its fuse has blown.*70 %.*30 % \(17 % to 48 %\).*9.*40 %/s);
    const accept = '/yard/growth/faults/fridge-light/daisy/accept';
    expect((await nessa.press('/yard/growth/faults', accept)).headers.get('location')).toBe('/yard/growth/faults');
    const again = await nessa.press('/yard/growth/faults', accept);
    expect(again.status).toBe(409);
    expect(await again.text()).toContain('the graph was changed meanwhile');
    expect(taken).toEqual(['fridge-light daisy Nessa', 'fridge-light daisy Nessa']);
  });

  it('goes from a group to a published wording in two presses, and back in one', async () => {
    const { nessa, small } = await aYard();
    const before = small.texts();
    expect(await (await nessa.get('/yard/growth')).text()).toContain('/yard/growth/group/1');
    const trial = await tried(nessa);
    expect(await (await nessa.get(trial)).text()).toContain('Nothing gets worse');
    expect((await nessa.press(trial, `${trial}/publish`)).headers.get('location')).toBe('/yard/growth/changes');
    expect(small.texts()['systems/fridge.yaml']).toContain(PIES[1]);
    expect(await (await nessa.get('/yard/growth')).text()).toContain('Nothing is waiting');
    await nessa.press('/yard/growth/changes', '/yard/growth/changes/1/undo');
    expect(small.texts()).toEqual(before);
  });

  it('does not publish what gets worse unless that is ticked', async () => {
    const { nessa, small } = await aYard();
    const before = small.texts();
    const stolen = ['fridge on the pitch', 'which way the fridge goes', 'setting the fridge on the pitch'].join('\n');
    const trial = await tried(nessa, { topic: 'hours-contact', wordings: stolen });
    expect(await (await nessa.get(trial)).text()).toContain('would go elsewhere');
    expect((await nessa.press(trial, `${trial}/publish`)).status).toBe(409);
    expect(small.texts()).toEqual(before);
  });

  it('says what is wrong with a decision and keeps the page', async () => {
    const { nessa } = await aYard();
    const answer = await nessa.press('/yard/growth/group/1', '/yard/growth/group/1/try', { wordings: '<b>pie</b>' });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('has markup in it');
  });

  it('keeps what was edited, through a refusal and through a trial', async () => {
    const { nessa } = await aYard();
    const edited = {
      decision: 'new-topic',
      title: 'How hot for a pie?',
      system: 'fridge',
      kind: 'how-to',
      first: 'Gas mark 6.',
    };
    const fields = { ...edited, steps: 'Light it.\nWait.', otherwise: 'Ring us.', wordings: 'pie heat\noven pie heat' };
    const refused = await nessa.press('/yard/growth/group/1', '/yard/growth/group/1/try', fields);
    expect(refused.status).toBe(422);
    const trial = await tried(nessa, { ...fields, wordings: `${fields.wordings}\nhot enough for a pie` });
    const back = /href="([^"]*)">\s*Change it/.exec(await (await nessa.get(trial)).text())?.[1] ?? '';
    for (const html of [await refused.text(), await (await nessa.get(back)).text()]) {
      expect(html).toMatch(/<details open[^>]*>\s*<summary>Write an answer/);
      for (const words of [
        'value="How hot for a pie?"',
        '>Gas mark 6.<',
        'Light it.\nWait.',
        'value="Ring us."',
        'oven pie heat',
      ])
        expect(html).toContain(words);
    }
  });

  it('tells the second of two operators who was first, and publishes once', async () => {
    const { world, nessa, small } = await aYard();
    const gethin = await yardPerson(world, 'Gethin', 'operator');
    const aside = { decision: 'set-aside' };
    const [mine, theirs] = [await tried(nessa), await tried(gethin, aside)];
    expect((await nessa.press(mine, `${mine}/publish`)).status).toBe(303);
    const before = small.texts();
    const answer = await gethin.press(theirs, `${theirs}/publish`, { 'even-if-worse': 'yes' });
    expect(answer.status).toBe(409);
    expect(await answer.text()).toContain('Nessa has decided on these questions meanwhile');
    const group = await gethin.get('/yard/growth/group/1');
    expect(group.status).toBe(409);
    expect(await group.text()).toContain('Nessa decided on these questions');
    expect(small.texts()).toEqual(before);
    expect(await small.desk.changes()).toHaveLength(1);
  });

  it('says what two operators changed in one file, and lets the second try again with the same words', async () => {
    const { world, nessa } = await aYard([...PIES, 'is there a pool near here']);
    const gethin = await yardPerson(world, 'Gethin', 'operator');
    const theirs = await tried(gethin, { topic: 'fridge-modes', wordings: 'pool fridge' }, 4);
    const mine = await tried(nessa);
    await nessa.press(mine, `${mine}/publish`);
    const answer = await gethin.press(theirs, `${theirs}/publish`);
    const html = await answer.text();
    expect(answer.status).toBe(409);
    expect(html).toContain('graph/systems/fridge.yaml has been changed by somebody else meanwhile');
    expect(html).toContain('+        - pool fridge');
    const back = /href="([^"]*group[^"]*)"/.exec(html)?.[1] ?? '';
    expect(await (await gethin.get(back)).text()).toContain('pool fridge');
  });

  it('takes a form that is sent twice once', async () => {
    const { nessa, small } = await aYard();
    const trial = await tried(nessa);
    const html = await (await nessa.get(trial)).text();
    const hidden = [...html.matchAll(/<input type="hidden" name="([^"]*)" value="([^"]*)"/g)];
    const form = Object.fromEntries(hidden.map(([, name = '', value = '']) => [name, value]));
    expect(form['key']).not.toBe('');
    for (let i = 0; i < 2; i++)
      expect((await nessa.post(form, `${trial}/publish`)).headers.get('location')).toBe('/yard/growth/changes');
    expect(await small.desk.changes()).toHaveLength(1);
  });

  it('shows what hirers wrote as words, whatever they wrote', async () => {
    const { nessa } = await aYard(['<script>alert(1)</script> pie']);
    const html = await (await nessa.get('/yard/growth/group/1')).text();
    expect(html).not.toContain('<script>alert');
    expect(html).toContain('&lt;script&gt;');
  });

  it('refuses forms that are not from the operator’s own page', async () => {
    const { nessa, small } = await aYard();
    expect((await nessa.post({ decision: 'set-aside' }, '/yard/growth/group/1/try')).status).toBe(403);
    expect(await small.desk.changes()).toEqual([]);
  });

  it('gives the figures as counts, and as a file', async () => {
    const { nessa } = await aYard();
    expect(await (await nessa.get('/yard/growth/figures')).text()).toContain('By system');
    const csv = await nessa.get('/yard/growth/figures.csv');
    expect(csv.headers.get('content-type')).toContain('text/csv');
    expect(await csv.text()).toMatch(/^week,van,system,answered,.*\r\n2027-07-19,daisy,fridge,0,0,0,0,0,0,3,0,0\r\n$/s);
    expect(await (await nessa.get('/yard/growth/thin')).text()).toContain('Answers with few ways of asking');
  });
});
