import { describe, expect, it } from 'vitest';
import { safety } from '../../../src/knowledge/safety-schema.ts';
import { builtInSafety } from '../../../src/safety/built-in.ts';
import { HAZARDS } from '../../../src/safety/hazards.ts';
import { noticeOf } from '../../../src/safety/notice.ts';
import { createSafetyReader } from '../../../src/safety/reader.ts';
import { ALONE } from './small-reading.ts';

const read = createSafetyReader(builtInSafety);

describe('the built-in minimum', () => {
  it('has the shape of graph/safety.yaml', () => {
    expect(safety.parse(builtInSafety)).toEqual(builtInSafety);
  });

  it.each(Object.keys(HAZARDS))('has a notice and a reading of %s', (hazard) => {
    const notice = noticeOf(hazard, {
      safety: builtInSafety,
      firm: null,
      language: 'de',
      country: null,
      vanName: null,
      answers: { kind: 'office' },
    });
    expect(notice).toMatchObject({ hazard, language: 'en', calls: [{ number: '999 or 112' }] });
    const name = builtInSafety.reading.tongues['en']?.groups[hazard]?.split(',')[0] ?? '';
    expect(read(`Please help, ${name} here`, ALONE).danger?.hazard).toBe(hazard);
  });

  it('is not set off by its absence or by a supposition', () => {
    expect(
      ['no smell of gas', 'what if there is a fire', 'the kettle boils'].map((text) => read(text, ALONE).danger),
    ).toEqual([null, null, null]);
  });
});
