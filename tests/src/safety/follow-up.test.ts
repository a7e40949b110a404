import { describe, expect, it } from 'vitest';
import { followUps, followUpText, readFollowUp } from '../../../src/safety/follow-up.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const { safety } = realKnowledge();

describe('what is asked after a notice', () => {
  it('is only what changes the action, and first whether it is that when it could be harmless', () => {
    expect(followUps('safety-co-alarm', 'danger', safety)).toEqual(['everyone-out', 'anyone-ill', 'where']);
    expect(followUps('safety-smoke-alarm', 'ask', safety)[0]).toBe('is-it');
    expect(followUps('no-such-hazard', 'danger', safety)).toEqual([]);
  });

  it('is asked in the language of the message, or in English', () => {
    expect(followUpText('everyone-out', 'safety-fire', 'cy', safety)).toBe('Ydi pawb allan?');
    expect(followUpText('everyone-out', 'safety-fire', 'fi', safety)).toBe('Is everyone out?');
    expect(followUpText('is-it', 'safety-smoke-alarm', 'en', safety)).toMatch(/^Is it loud and going on/);
    expect(followUpText('is-it', 'towing-puncture', 'en', safety)).toBe('');
  });
});

describe('reading the answers', () => {
  it.each(['yes', 'Yes, all out', 'aye', "we're out", 'Everyone is out.', 'ja', 'oui', 'tak', 'sí', 'ydyn'])(
    'yes: %s',
    (text) => {
      expect(readFollowUp(text, safety)).toBe('yes');
    },
  );

  it.each(['no', 'No!', 'not yet', 'still inside', 'nein', 'non', 'nie', 'não', 'false alarm'])('no: %s', (text) => {
    expect(readFollowUp(text, safety)).toBe('no');
  });

  it.each(['', 'what', 'yes but not all of us', 'not everyone is out', 'pitch 12'])(
    'unclear, which never ends a danger: %s',
    (text) => {
      expect(readFollowUp(text, safety)).toBe('unclear');
    },
  );
});
