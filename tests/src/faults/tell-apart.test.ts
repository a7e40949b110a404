import { describe, expect, it } from 'vitest';
import { tellApart } from '../../../src/faults/tell-apart.ts';
import { aCause } from './a-cause.ts';

const onGas = { symptom: 'fridge-gas', causes: [aCause('flame', 0.6), aCause('level', 0.4, { fix: { minutes: 20 } })] };
const onMains = { symptom: 'fridge-mains', causes: [aCause('source', 0.5), aCause('breaker', 0.5)] };
const options = { passMinutes: 60 };

describe('tellApart', () => {
  it('asks which symptom it is when two are about as likely', () => {
    const apart = tellApart(
      [
        { ...onGas, probability: 0.3 },
        { ...onMains, probability: 0.4 },
      ],
      options,
    );
    expect(apart).toEqual({ kind: 'which', symptoms: ['fridge-mains', 'fridge-gas'] });
  });

  it('walks the likely one when asking would cost more than a wrong start', () => {
    const apart = tellApart(
      [
        { ...onGas, probability: 0.005 },
        { ...onMains, probability: 0.9 },
      ],
      options,
    );
    expect(apart).toEqual({ kind: 'walk', symptom: 'fridge-mains' });
  });

  it('counts the wait for people among the minutes a wrong start costs', () => {
    const entries = (passMinutes: number) =>
      tellApart(
        [
          { ...onGas, probability: 0.02 },
          { ...onMains, probability: 0.9 },
        ],
        { passMinutes },
      ).kind;
    expect(entries(10)).toBe('walk');
    expect(entries(300)).toBe('which');
  });

  it('walks the only one', () => {
    expect(tellApart([{ ...onGas, probability: 0.2 }], options)).toEqual({ kind: 'walk', symptom: 'fridge-gas' });
  });

  it('names three at most', () => {
    const four = [0.3, 0.25, 0.25, 0.2].map((probability, i) => ({ ...onGas, symptom: `s${i}`, probability }));
    const [first, ...rest] = four;
    if (first === undefined) throw new Error('four entries have a first');
    expect(tellApart([first, ...rest], options)).toEqual({ kind: 'which', symptoms: ['s0', 's1', 's2'] });
  });
});
