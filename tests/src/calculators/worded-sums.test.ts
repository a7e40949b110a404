import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { type Booked, talk, valuesOf } from './fleet.ts';

/* Sums as hirers word them: tests/questions/sums*.yaml, worked by hand from the firm's own sheet. */

const line = z.strictObject({
  van: z.string(),
  topic: z.string(),
  say: z.string().optional(),
  turns: z.array(z.string()).min(1).optional(),
  amps: z.number().optional(),
  people: z.number().optional(),
  children: z.number().optional(),
  nights: z.number().optional(),
  month: z.number().optional(),
  gives: z.record(z.string(), z.unknown()).optional(),
  asks: z.string().optional(),
  refused: z.string().optional(),
});
const sums = ['sums.yaml', 'sums-second.yaml', 'sums-others.yaml'].flatMap(
  (file) =>
    z
      .strictObject({ sums: z.array(line) })
      .parse(parse(readFileSync(new URL(`../../questions/${file}`, import.meta.url), 'utf8'))).sums,
);

/** The hand-worked figures are rounded to three places; what they leave is less than this share. */
const WITHIN = 0.02;

describe('sums as hirers word them', () => {
  for (const { van, topic, say, turns, gives, asks, refused, ...rest } of sums) {
    const said = turns ?? [say ?? ''];
    it(`${van}, ${topic}: ${said.join(' / ')} ${JSON.stringify(rest)}`, () => {
      const booked = Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined)) as Booked;
      const outcome = talk(van, topic, said, booked);
      if (asks !== undefined) expect(outcome).toMatchObject({ kind: 'asks', asks });
      if (refused !== undefined) expect(outcome).toMatchObject({ kind: 'refused', refused });
      for (const [key, wanted] of Object.entries(gives ?? {})) {
        const got = valuesOf(outcome)[key];
        if (typeof wanted === 'number' && wanted !== 0)
          expect(Math.abs((got as number) / wanted - 1), `${key}: ${got}`).toBeLessThan(WITHIN);
        else expect(got, key).toEqual(wanted);
      }
    });
  }

  it('are at least 120, of every calculation', () => {
    expect(sums.length).toBeGreaterThanOrEqual(120);
    expect(new Set(sums.map((sum) => sum.topic)).size).toBe(17);
  });
});
