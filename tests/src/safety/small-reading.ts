import { type SafetyData, safety } from '../../../src/knowledge/safety-schema.ts';

type Reading = SafetyData['reading'];

/** A reading small enough to see through: gas, an alarm, a bonfire. */
export function aReading(over: Partial<Reading> = {}): Reading {
  return {
    tongues: {
      en: {
        fillers: 'the, a, my, of',
        groups: {
          smell: 'smell~, stink~, whiff',
          gas: 'gas, propane',
          alarm: 'alarm, detector, alarm thing',
          sounding: 'going off, beep~, will not stop',
          bottle: 'bottle, gas bottle',
          toilet: 'toilet, loo',
          shock: 'shock, shocks',
          price: 'price, bill',
        },
        guards: {
          negated: "no, not, can't",
          question: 'where is, how do i test',
          purpose: 'what is it for',
          supposed: 'if, ever',
          past: 'last year',
          elsewhere: 'in the film',
        },
        turns: 'but',
        starts: 'there is, it, smells',
        idioms: 'not sure, not sure if, shock + price, bonfire smell',
      },
      de: {
        groups: { smell: 'riecht', gas: 'gas', alarm: 'melder', sounding: 'piept' },
        guards: { negated: 'kein, nicht' },
      },
    },
    hazards: {
      'safety-gas-smell': [rule(['smell', 'gas'], { within: 6, unless: ['toilet'], firm: true })],
      'safety-gas-alarm': [rule(['alarm', 'sounding'], { across: true })],
      'safety-electric-shock': [rule(['shock'])],
    },
    alike: 'gras',
    signs: { '🔥': 'flames' },
    examples: { danger: {}, plain: [] },
    senses: {},
    sure: { alone: 0.9, rule: 0.3, firm: 0 },
    ...over,
  };
}

type Rule = Reading['hazards'][string][number];

export function rule(all: readonly string[], over: Partial<Rule> = {}): Rule {
  return { all: [...all], across: false, unless: [], firm: false, despite: [], ...over };
}

export function aSafety(over: Partial<Reading> = {}): Pick<SafetyData, 'notices' | 'reading'> {
  const text = { first: 'Out now.', steps: ['One.', 'Two.'], after: 'Until somebody competent has said so.' };
  const notice = { level: 'danger', calls: ['emergency'], asks: ['where'], texts: { en: text } };
  const { notices } = safety.pick({ notices: true }).parse({
    notices: {
      'safety-gas-smell': notice,
      'safety-gas-alarm': notice,
      'safety-electric-shock': { ...notice, level: 'urgent' },
    },
  });
  return { notices, reading: aReading(over) };
}

/** The context of a first message by somebody whose van has everything. */
export const ALONE = { before: '', vanHas: () => true };
