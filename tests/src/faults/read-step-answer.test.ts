import { describe, expect, it } from 'vitest';
import { readStepAnswer, type StepAnswer } from '../../../src/faults/read-step-answer.ts';
import { A_VAN, aCause } from './a-cause.ts';

/** An answer in one word, as the tables below expect it. */
function inShort(answer: StepAnswer): string {
  if (answer.kind !== 'told') return answer.kind;
  const { told } = answer;
  if (told.kind === 'observed') return told.answer;
  return told.kind === 'tried' ? (told.worked ? 'worked' : 'failed') : told.kind;
}

const toCheck = (ask: string, text: string, stop?: string) =>
  inShort(
    readStepAnswer(
      text,
      'check',
      aCause('it', 0.5, { check: { ask }, ...(stop === undefined ? {} : { stop }) }),
      A_VAN,
    ),
  );
const toFix = (text: string, stop?: string) =>
  inShort(
    readStepAnswer(
      text,
      'fix',
      aCause('it', 0.5, {
        fix: { do: 'Turn the pump switch on, then open a tap.' },
        ...(stop === undefined ? {} : { stop }),
      }),
      A_VAN,
    ),
  );

const CHECKS: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  'Is the large switch in the consumer unit down?': [
    ['yes', 'yes'],
    ['Yep', 'yes'],
    ['yeah it is', 'yes'],
    ['yes its down', 'yes'],
    ['it is', 'yes'],
    ['aye', 'yes'],
    ['👍', 'yes'],
    ['I think so', 'yes'],
    ['looks like it', 'yes'],
    ["it's down", 'yes'],
    ['it has tripped', 'yes'],
    ['nope', 'no'],
    ['nah', 'no'],
    ["no it's up", 'no'],
    ['its up', 'no'],
    ['all of them are up', 'no'],
    ['they are all up', 'no'],
    ['not down no', 'no'],
    ["it isn't", 'no'],
    ["don't think so", 'no'],
    ['not that I can see', 'no'],
    ['not sure', 'cannot-tell'],
    ['dunno', 'cannot-tell'],
    ['no idea', 'cannot-tell'],
    ["I can't see it", 'cannot-tell'],
    ['cant see it', 'cannot-tell'],
    ['too dark to see', 'cannot-tell'],
    ["can't get to it, the bed's in the way", 'cannot-tell'],
    ['hard to say', 'cannot-tell'],
    ['maybe', 'cannot-tell'],
    ['how do I see that?', 'how'],
    ['where is it', 'how'],
    ['where is the consumer unit', 'how'],
    ['which switch?', 'how'],
    ['what do you mean', 'how'],
    ["I don't understand", 'how'],
    ['not sure where that is', 'how'],
    ['show me', 'how'],
    ['skip', 'skip'],
    ['skip this one', 'skip'],
    ['next', 'skip'],
    ['can we try something else', 'skip'],
    ['go back', 'back'],
    ['back', 'back'],
    ['oops wrong button', 'back'],
    ['I meant no', 'back'],
    ['what have we tried', 'record'],
    ['what have we tried so far?', 'record'],
    ['where were we', 'record'],
    ['it just came back on', 'works'],
    ["it's working now", 'works'],
    ['how do I empty the toilet?', 'other'],
    ['where is the nearest shop?', 'other'],
    ['what time do we have to leave?', 'other'],
    ['can we bring a dog?', 'other'],
    ['the toilet is full', 'other'],
  ],
  'Is the pump switch off?': [
    ['yep its on', 'no'],
    ["yes it's on", 'no'],
    ['its on', 'no'],
    ['on', 'no'],
    ['off', 'yes'],
    ["it's not on", 'yes'],
    ['it is switched on', 'no'],
    ["no it's off", 'yes'],
    ['it was off', 'yes'],
    ['there are two switches', 'unclear'],
    ['hang on', 'how'],
    ['ok let me look', 'how'],
    ['ok', 'other'],
    ['it was off but I put it on and still nothing', 'yes'],
    ["I'd rather not touch it", 'skip'],
    ["there isn't one", 'cannot-tell'],
    ['nooo', 'no'],
  ],
  "Is the switch or breaker at the post off, or is the post's lamp out?": [
    ['there is no light', 'yes'],
    ['no light on it', 'yes'],
    ['theres a light', 'no'],
    ['the lamp is lit', 'no'],
    ["lamp's out", 'yes'],
    ['everything is on', 'no'],
    ['its glowing', 'no'],
  ],
  'Is the pump silent when a tap is open?': [
    ['I can hear it humming', 'no'],
    ['its humming', 'no'],
    ['it runs', 'no'],
    ['not a sound', 'yes'],
    ["can't hear anything", 'yes'],
    ['no noise at all', 'yes'],
    ['dead silent', 'yes'],
    ['nothing', 'yes'],
    ['completely quiet', 'yes'],
  ],
  'Can you hear it run but no water?': [
    ["I can't hear it", 'no'],
    ['yes', 'yes'],
    ['yes I can hear it', 'yes'],
    ['its silent', 'no'],
    ['nothing', 'no'],
  ],
  'Is fuse {fridge.fuse} broken?': [
    ['nothing broken', 'no'],
    ['nothing is broken there', 'no'],
    ['wire is in one piece', 'no'],
    ['the wee wire has snapped', 'yes'],
    ['its burnt out', 'yes'],
  ],
  'Is HOT WATER set to off?': [
    ['hot water is on', 'no'],
    ['hot water is off', 'yes'],
    ['its set to on', 'no'],
    ['no its on hot', 'no'],
  ],
  'Does the controller say LOW?': [
    ['reads low', 'yes'],
    ['no it says ok', 'no'],
  ],
  'Is the gas tap closed, across the pipe?': [
    ['gas is on', 'no'],
    ['gas is off', 'yes'],
    ['its inline with the pipe', 'no'],
    ['nothing shut', 'no'],
  ],
  'Is the cylinder empty?': [
    ['ran out i think', 'yes'],
    ['nearly full', 'no'],
  ],
  'Is there ice or frost on the pipes?': [
    ['nothing frozen', 'no'],
    ['its all iced up', 'yes'],
  ],
  'Is the needle below 11.8?': [
    ['12.4', 'no'],
    ["it's at 11.2", 'yes'],
    ['about 12', 'no'],
    ['11,5 v', 'yes'],
  ],
  'Has it been on under 4 hours?': [
    ['about 2 hours', 'yes'],
    ['since yesterday', 'no'],
    ['since this morning', 'other'],
    ['half an hour', 'yes'],
    ['40 minutes', 'yes'],
    ['6 hours', 'no'],
    ['an hour', 'yes'],
  ],
  'Does VIEW show under 15 %?': [
    ['80%', 'no'],
    ['9 per cent', 'yes'],
    ['it says 12', 'yes'],
  ],
  'Does it show one bar or less?': [
    ['three bars', 'no'],
    ['1 bar', 'yes'],
    ['no bars', 'yes'],
  ],
  'Is the selector on CAR or OFF?': [
    ['it says VAN', 'no'],
    ['its on van', 'no'],
    ['its on car', 'yes'],
    ['off', 'yes'],
    ['yes', 'yes'],
  ],
  'Is the barrel low, or the pump lying on its side?': [
    ["it's full", 'no'],
    ['nearly empty', 'yes'],
    ['barrel is full', 'no'],
    ['we just filled it', 'no'],
    ['its a bit low', 'yes'],
  ],
  'Was the cylinder changed today?': [
    ['we changed the cylinder this morning', 'yes'],
    ['we did', 'yes'],
    ["no we haven't touched it", 'no'],
    ["we didn't change it", 'no'],
    ['never', 'no'],
  ],
  'Is the blade anything but fully shut?': [
    ['its shut', 'no'],
    ['slightly open', 'yes'],
  ],
  'Is the fuse broken?': [
    ['it looks fine', 'no'],
    ['its ok', 'no'],
    ['looks blown', 'yes'],
    ['the wire is intact', 'no'],
    ['the fuse is good', 'no'],
    ['fuse not broken', 'no'],
  ],
  'Is one burner only affected?': [
    ['all of them', 'no'],
    ['only one', 'yes'],
    ['just the one', 'yes'],
    ['both', 'no'],
  ],
  'Can you see leaf or grit round the edge from inside?': [
    ["can't see any", 'no'],
    ["I can't see anything", 'no'],
    ['there is some grit', 'yes'],
    ['yes loads of leaves', 'yes'],
  ],
  'Is the cable cut or dragged?': [
    ['the cable is not cut', 'no'],
    ['looks fine', 'no'],
    ['yes it has been dragged', 'yes'],
  ],
};

const FIXES: readonly (readonly [string, string])[] = [
  ['that worked', 'worked'],
  ['That worked!', 'worked'],
  ['yes', 'worked'],
  ['yes it did', 'worked'],
  ['fixed', 'worked'],
  ['sorted, thanks', 'worked'],
  ['brilliant thank you', 'worked'],
  ["it's working now", 'worked'],
  ['works', 'worked'],
  ['its back on', 'worked'],
  ['did the trick', 'worked'],
  ['water is running again', 'worked'],
  ['all good now', 'worked'],
  ['👍', 'worked'],
  ['still nothing', 'failed'],
  ['no', 'failed'],
  ['nope', 'failed'],
  ['nothing', 'failed'],
  ["didn't work", 'failed'],
  ["that didn't help", 'failed'],
  ['no change', 'failed'],
  ['no joy', 'failed'],
  ['same', 'failed'],
  ['same as before', 'failed'],
  ['still not working', 'failed'],
  ["it's still dead", 'failed'],
  ["it isn't working", 'failed'],
  ['tried that already', 'failed'],
  ['no it still does not work', 'failed'],
  ["I can't reach it", 'skip'],
  ["haven't got a spare fuse", 'skip'],
  ["I'd rather not", 'skip'],
  ['too stiff', 'skip'],
  ['skip', 'skip'],
  ['how do I do that', 'how'],
  ['where is the pump switch?', 'how'],
  ['where is it?', 'how'],
  ['go back', 'back'],
  ['what have we tried', 'record'],
  ['how does the heating work?', 'other'],
  ['when does the shop shut?', 'other'],
];

describe('readStepAnswer', () => {
  for (const [ask, answers] of Object.entries(CHECKS)) {
    describe(ask, () => {
      it.each(answers)('%s: %s', (text, expected) => {
        expect(toCheck(ask, text)).toBe(expected);
      });
    });
  }

  describe('a fix', () => {
    it.each(FIXES)('%s: %s', (text, expected) => {
      expect(toFix(text)).toBe(expected);
    });
  });

  it.each([
    ['it blew again', 'It blows again', 'stop'],
    ['it has blown again', 'It blows again', 'stop'],
    ['it dropped again', 'It drops again', 'stop'],
    ['theres a burning smell', 'Any smell or heat', 'stop'],
    ['the plug is hot', 'The plug is hot, brown or melted', 'stop'],
    ['no smell', 'Any smell or heat', 'failed'],
    ['still nothing', 'No change', 'failed'],
    ['no change', 'No change', 'failed'],
    ['that worked', 'It drops again', 'worked'],
  ])('%s where the stop is %s: %s', (text, stop, expected) => {
    expect(toFix(text, stop)).toBe(expected);
  });

  it('keeps the words of a stop', () => {
    const cause = aCause('fuse', 1, { stop: 'It blows again' });
    expect(readStepAnswer(' It blew again! ', 'fix', cause, A_VAN)).toEqual({
      kind: 'told',
      told: { kind: 'stop', said: 'It blew again!' },
    });
  });

  it('reads an empty message as nothing about the step', () => {
    expect(toCheck('Is it on?', ' ')).toBe('other');
  });
});
