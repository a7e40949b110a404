import { describe, expect, it } from 'vitest';
import type { SafetyData } from '../../../src/knowledge/safety-schema.ts';
import { HAZARDS } from '../../../src/safety/hazards.ts';
import { safetySlips } from '../../../src/safety/slips.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const { safety, topics } = realKnowledge();
const FIRE = 'safety-fire';

function edited(edit: (copy: SafetyData) => void): string[] {
  const copy = structuredClone(safety);
  edit(copy);
  return safetySlips(copy, topics).map(({ problem }) => problem);
}

describe('what a graph may not lose', () => {
  it('the graph of the firm has no slips', () => {
    expect(safetySlips(safety, topics)).toEqual([]);
  });

  it.each(Object.keys(HAZARDS))('refuses to lose the notice of %s', (hazard) => {
    expect(edited((copy) => delete copy.notices[hazard])).toContain(`the notice of ${hazard} is lost`);
  });

  it.each(Object.keys(HAZARDS))('refuses to lose the topic %s, its notice or its pass', (hazard) => {
    const without = new Map([...topics].filter(([id]) => id !== hazard));
    expect(safetySlips(safety, without).map(({ problem }) => problem)).toContain(`the hazard ${hazard} is lost`);
    const topic = topics.get(hazard);
    if (topic === undefined) throw new Error(`${hazard} is a topic`);
    const silent = new Map([...topics, [hazard, { ...topic, notice: false }] as const]);
    expect(safetySlips(safety, silent).map(({ problem }) => problem)).toContain(`${hazard} no longer shows its notice`);
    const kept = new Map([...topics, [hazard, { ...topic, pass: 'never' as const }] as const]);
    const problems = safetySlips(safety, kept).map(({ problem }) => problem);
    if (HAZARDS[hazard]?.pass === 'never') expect(problems).toEqual([]);
    else expect(problems).toContainEqual(expect.stringContaining('never is weaker than'));
  });

  it('refuses a weaker level, and takes a stronger one', () => {
    expect(edited((copy) => Object.assign(copy.notices[FIRE] ?? {}, { level: 'urgent' }))).toEqual([
      'urgent is weaker than danger',
    ]);
    expect(edited((copy) => Object.assign(copy.notices['towing-snaking'] ?? {}, { level: 'danger' }))).toEqual([]);
  });

  it('refuses a hazard that nothing reads any more', () => {
    expect(edited((copy) => delete copy.reading.hazards[FIRE])).toEqual([`nothing reads ${FIRE} any more`]);
  });

  it('refuses a language that was lost', () => {
    expect(edited((copy) => delete copy.notices[FIRE]?.texts['cy'])).toEqual(['no text in cy']);
  });

  it.each(['Then it is safe to go back in.', 'Stay out until we say so.'])('refuses: %s', (after) => {
    expect(edited((copy) => Object.assign(copy.notices[FIRE]?.texts['en'] ?? {}, { after }))).toEqual([`'${after}'`]);
  });

  it('refuses a slot nobody fills', () => {
    expect(edited((copy) => Object.assign(copy.notices[FIRE]?.texts['en'] ?? {}, { first: 'Ring {boss}.' }))).toEqual([
      'no slot {boss}',
    ]);
  });

  it('refuses names of groups that are not there, and rules of a hazard without a notice', () => {
    const unknown = edited((copy) =>
      copy.reading.hazards[FIRE]?.push({ all: ['dragon'], across: false, unless: [], firm: false, despite: [] }),
    );
    expect(unknown).toEqual(["no group 'dragon'"]);
    expect(edited((copy) => Object.assign(copy.reading.tongues['en']?.groups ?? {}, { smoke: '<dragon>' }))).toEqual([
      'no group <dragon>',
    ]);
    const stray = edited((copy) =>
      Object.assign(copy.reading.hazards, { 'safety-dragon': copy.reading.hazards[FIRE] ?? [] }),
    );
    expect(stray).toEqual(['safety-dragon has no notice']);
  });

  it('takes a hazard that is added with its notice', () => {
    const added = edited((copy) => {
      const fire = copy.notices[FIRE];
      if (fire !== undefined) copy.notices['water-leak-inside'] = fire;
    });
    expect(added).toEqual([]);
  });
});
