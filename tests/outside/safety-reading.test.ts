import { describe, expect, it } from 'vitest';
import { learnSafety, safetyLines } from '../../src/safety/learn-safety.ts';
import { noticeOf } from '../../src/safety/notice.ts';
import { createSafetyReader } from '../../src/safety/reader.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

const { safety, topics, talk, firm } = realKnowledge();
const read = createSafetyReader(safety, learnSafety(safety, safetyLines(safety, topics.entries(), talk)));
const hazardOf = (text: string) => read(text, { before: '', vanHas: () => true }).danger?.hazard ?? null;
const notice = (hazard: string, country: string) =>
  noticeOf(hazard, {
    safety,
    firm,
    language: 'en',
    country,
    vanName: null,
    answers: { kind: 'office' },
  });

/** Rows of the reference's checks.csv that are the safety reading's to keep, each with the source it names. */
describe('the safety reading against the published rows', () => {
  it('CA14: one chirp every 40 s is a low battery, no emergency (alarm makers; from memory)', () => {
    expect(hazardOf('the carbon monoxide alarm gives one chirp every 40 seconds')).toBeNull();
  });

  it('CA15: a smell of gas is an emergency: valve if safe, no switches, out, call outside (gas emergency advice)', () => {
    const hazard = hazardOf('smell of gas, the cylinder is in the locker');
    expect(hazard).toBe('safety-gas-smell');
    const text = JSON.stringify(notice(hazard ?? '', 'GB'));
    for (const part of [/valve/i, /no switch|touch no switch/i, /everybody out/i, /from well away/i])
      expect(text).toMatch(part);
  });

  it('CA16: headache and an alarm sounding, no smell, is an emergency: out, medical advice or 999 (NHS)', () => {
    const hazard = hazardOf('we have a headache and the alarm is sounding, no smell of anything');
    expect(['safety-co-alarm', 'safety-co-symptoms']).toContain(hazard);
    const text = JSON.stringify(notice(hazard ?? '', 'GB'));
    for (const part of [/fresh air/i, /medical advice/i, /999/]) expect(text).toMatch(part);
  });

  it('CA17: elsewhere in Europe the number is 112', () => {
    for (const country of ['FR', 'DE', 'IE'])
      expect(notice('safety-fire', country)?.first).toMatch(/Call 112 from outside/);
  });
});
