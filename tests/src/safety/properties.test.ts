import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rightWords } from '../../../src/language/right-words.ts';
import { learnSafety, safetyLines } from '../../../src/safety/learn-safety.ts';
import { createSafetyReader } from '../../../src/safety/reader.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

/** One message for each hazard, as somebody would type it, and the words in it that say what is wrong. */
const DANGERS: readonly (readonly [hazard: string, text: string, words: readonly string[]])[] = [
  ['safety-gas-smell', 'there is a strong smell of gas in the kitchen', ['smell']],
  ['safety-gas-alarm', 'the gas alarm near the floor is beeping and it will not stop', ['alarm', 'floor', 'beeping']],
  ['safety-co-alarm', 'our carbon monoxide alarm is sounding on the wall', ['carbon', 'monoxide', 'alarm', 'sounding']],
  ['safety-co-symptoms', 'we all have headaches and feel sick since the heater has been on', ['headaches', 'heater']],
  ['safety-smoke-alarm', 'the smoke alarm on the ceiling is screaming', ['smoke', 'alarm', 'ceiling', 'screaming']],
  ['safety-fire', 'the curtains caught fire and there are flames up the wall', ['caught', 'flames', 'curtains']],
  [
    'safety-electric-shock',
    'I got an electric shock when I touched the metal step',
    ['electric', 'shock', 'touched', 'metal'],
  ],
  ['safety-burning-smell', 'there is a smell of burning plastic behind the fuse box', ['smell', 'burning', 'plastic']],
  ['safety-sparks', 'sparks are coming out of the socket and it crackles', ['sparks', 'socket', 'crackles']],
  ['safety-water-electrics', 'water is dripping onto the plug sockets from the roof', ['water', 'dripping', 'sockets']],
  ['safety-burn-injury', 'my son scalded his hand badly with boiling water', ['scalded', 'boiling']],
  ['safety-child-locked-in', 'our baby is locked inside the van with the keys', ['locked', 'inside']],
  [
    'safety-storm',
    'the storm is lifting our awning and the poles have snapped',
    ['storm', 'lifting', 'awning', 'snapped'],
  ],
  [
    'safety-battery-hot',
    'the leisure battery is swollen and hissing and smells of eggs',
    ['battery', 'swollen', 'hissing'],
  ],
  [
    'gas-hiss-on-connecting',
    'it is hissing at the regulator since I changed the gas bottle',
    ['hissing', 'regulator', 'changed', 'bottle'],
  ],
  [
    'cooking-yellow-flame',
    'the flame on the cooker is yellow and leaves soot on the pans',
    ['flame', 'yellow', 'cooker'],
  ],
  ['towing-snaking', 'the caravan is snaking badly behind us on the motorway', ['caravan', 'snaking', 'motorway']],
  ['towing-puncture', 'we have a puncture and the tyre is flat', ['puncture']],
  ['hire-accident', 'we have had an accident, a lorry crashed into the caravan', ['accident', 'crashed']],
  ['hire-barbecue', 'the barbecue is lit inside the awning because it is raining', ['barbecue', 'inside', 'awning']],
];

/** Whole sentences that say nothing of danger. */
const CHAT = [
  'We are having a lovely time here.',
  'The children liked the beach.',
  'Thank you for the nice welcome.',
  'We came on Saturday.',
  'It is our first trip.',
];

const { safety, topics, talk } = realKnowledge();
const read = createSafetyReader(safety, learnSafety(safety, safetyLines(safety, topics.entries(), talk)));
const hazardOf = (text: string, before = '') => read(text, { before, vanHas: () => true }).danger?.hazard ?? null;
const danger = fc.constantFrom(...DANGERS);

/** Right words that the dictionary lacks. */
const MEANT = new Set(safety.reading.alike.split(/\s+/));

/** One letter left out, added, changed, or two neighbours swapped. */
function edits(word: string): readonly string[] {
  const letters = 'abcdefghijklmnopqrstuvwxyz';
  const found = new Set<string>();
  for (let i = 0; i <= word.length; i++) {
    for (const letter of letters) found.add(word.slice(0, i) + letter + word.slice(i));
    if (i === word.length) continue;
    found.add(word.slice(0, i) + word.slice(i + 1));
    for (const letter of letters) found.add(word.slice(0, i) + letter + word.slice(i + 1));
    if (i + 1 < word.length) found.add(word.slice(0, i) + word[i + 1] + word[i] + word.slice(i + 2));
  }
  found.delete(word);
  return [...found].filter((each) => !rightWords().has(each) && !MEANT.has(each));
}

describe('the notice is never lost', () => {
  it.each(DANGERS)('%s: %s', (hazard, text) => {
    expect(hazardOf(text)).toBe(hazard);
  });

  it('by one slip in a word of five letters or more, where the result is no English word', () => {
    for (const [, text, words] of DANGERS) {
      for (const word of words) {
        const lost = edits(word).filter((slip) => hazardOf(text.replace(word, slip)) === null);
        expect({ word, lost }).toEqual({ word, lost: [] });
      }
    }
  });

  it('by neutral whole sentences around it', () => {
    const chat = fc.array(fc.constantFrom(...CHAT), { maxLength: 4 });
    fc.assert(
      fc.property(danger, chat, chat, ([, text], before, after) => {
        expect(hazardOf([...before, `${text}.`, ...after].join(' '))).not.toBeNull();
      }),
    );
  });

  it('by capitals', () => {
    fc.assert(
      fc.property(danger, fc.array(fc.boolean(), { minLength: 120, maxLength: 120 }), ([hazard, text], upper) => {
        const cased = [...text].map((letter, i) => (upper[i] === true ? letter.toUpperCase() : letter)).join('');
        expect(hazardOf(cased)).toBe(hazard);
      }),
    );
  });

  it('by picture signs or signs of no width anywhere', () => {
    const unseen = fc.constantFrom('\u200b', '\u200d', '\u2060', '\u00ad', '\ufeff');
    const smile = fc.constantFrom(' 🙂', ' 😱', ' 🙏', ' 🚐');
    fc.assert(
      fc.property(danger, fc.nat(), unseen, smile, ([, text], seed, sign, face) => {
        const at = seed % text.length;
        const gap = text.indexOf(' ', at);
        const withSign = text.slice(0, at) + sign + text.slice(at);
        expect(hazardOf(withSign)).not.toBeNull();
        expect(hazardOf(gap === -1 ? text + face : text.slice(0, gap) + face + text.slice(gap))).not.toBeNull();
      }),
    );
  });

  it('by being split over two messages', () => {
    fc.assert(
      fc.property(danger, fc.nat(), ([, text], seed) => {
        const words = text.split(' ');
        const cut = 1 + (seed % (words.length - 1));
        const [first, second] = [words.slice(0, cut).join(' '), words.slice(cut).join(' ')];
        expect(hazardOf(first) ?? hazardOf(second, first)).not.toBeNull();
      }),
    );
  });

  it('by look-alike letters', () => {
    const cyrillic: Readonly<Record<string, string>> = { a: 'а', e: 'е', o: 'о', p: 'р', c: 'с', s: 'ѕ', i: 'і' };
    for (const [hazard, text] of DANGERS)
      expect(hazardOf([...text].map((letter) => cyrillic[letter] ?? letter).join(''))).toBe(hazard);
  });
});
