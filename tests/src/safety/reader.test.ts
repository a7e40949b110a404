import { describe, expect, it } from 'vitest';
import { createSafetyReader } from '../../../src/safety/reader.ts';
import { type Example, learn, type SecondNet } from '../../../src/safety/second-net.ts';
import { ALONE, aSafety, rule } from './small-reading.ts';

const read = createSafetyReader(aSafety());
const hazard = (text: string, before = '') => read(text, { ...ALONE, before }).danger?.hazard ?? null;

/** A net with one opinion on everything: the biases of its views. */
function aNet(bias: number): SecondNet {
  const { weights, biases, ...hazards } = learn([example('safety-gas-alarm', 1), example('safety-gas-smell', 2)]);
  return { ...hazards, weights: weights.map(() => 0), biases: biases.map(() => bias) };
}

function example(hazard: string, word: number): Example {
  const features = { words: [word], apart: [], letters: [], rules: [], senses: [] };
  return { text: hazard, features, hazard, weight: 1 };
}

const SURE = aNet(50);
const UNSURE = aNet(-50);

describe('reading whether somebody is in danger', () => {
  it('says which hazard, how grave, in which language, and why', () => {
    expect(read('I can smell gas', ALONE).danger).toEqual({
      hazard: 'safety-gas-smell',
      level: 'danger',
      language: 'en',
      why: ["safety-gas-smell: 'smell ... gas' (smell + gas)"],
    });
  });

  it('takes the level of the notice, or the rule’s own', () => {
    expect(read('a shock', ALONE).danger?.level).toBe('urgent');
    const asks = createSafetyReader(aSafety({ hazards: { 'safety-gas-smell': [rule(['smell'], { level: 'ask' })] } }));
    expect(asks('a smell', ALONE).danger?.level).toBe('ask');
  });

  it('says what was seen and set aside when there is no danger', () => {
    expect(read('no smell of gas', ALONE)).toMatchObject({
      danger: null,
      why: ["safety-gas-smell: 'smell ... gas' (smell + gas): it says that there is none"],
    });
  });

  it('reads other languages by the same rules', () => {
    expect(read('es riecht hier ganz stark nach Gas', ALONE).danger).toMatchObject({
      hazard: 'safety-gas-smell',
      language: 'de',
    });
    expect(read('hier riecht es nicht nach Gas', ALONE).danger).toBeNull();
  });

  it('reads a danger whatever chat stands around it', () => {
    expect(hazard('Lovely pitch, thanks. I can smell gas. See you on Friday. Bye!')).toBe('safety-gas-smell');
  });

  it('reads a danger that was split over two messages', () => {
    expect(hazard('of gas in here', 'there is a smell')).toBe('safety-gas-smell');
    expect(hazard('is going off', 'hi, the alarm')).toBe('safety-gas-alarm');
  });

  it('does not raise again what the message before said by itself', () => {
    expect(hazard('ok thanks', 'I can smell gas')).toBeNull();
  });
});

describe('reading with a second net', () => {
  const withNet = (net: SecondNet) => createSafetyReader(aSafety(), net);

  it('believes a firm rule although the net doubts it', () => {
    expect(withNet(UNSURE)('I can smell gas', ALONE).danger?.hazard).toBe('safety-gas-smell');
  });

  it('sets a firm rule aside where the net is surer against it than the graph lets it be', () => {
    const unlikely = createSafetyReader(aSafety({ sure: { alone: 0.9, rule: 0.3, firm: 0.05 } }), UNSURE);
    expect(unlikely('I can smell gas', ALONE).danger).toBeNull();
  });

  it('believes another rule only where the net half believes it', () => {
    expect(withNet(SURE)('the alarm is going off', ALONE).danger?.hazard).toBe('safety-gas-alarm');
    const doubted = withNet(UNSURE)('the alarm is going off', ALONE);
    expect(doubted.danger).toBeNull();
    expect(doubted.why).toContainEqual(expect.stringContaining('the second net doubts it'));
  });

  it('shows a notice where no rule was met and the net is sure', () => {
    expect(withNet(SURE)('something or other', ALONE).danger?.why).toEqual([
      expect.stringContaining('second net: 100 % danger'),
    ]);
    expect(withNet(UNSURE)('something or other', ALONE).danger).toBeNull();
  });

  it('never lets the net alone where it is switched off', () => {
    const off = createSafetyReader(aSafety({ sure: { alone: 1, rule: 0.3, firm: 0 } }), SURE);
    expect(off('something or other', ALONE).danger).toBeNull();
  });
});
