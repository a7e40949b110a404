import { describe, expect, it } from 'vitest';
import { createMatcher } from '../../../src/match/matcher.ts';
import type { UnderstandContext } from '../../../src/match/types.ts';
import { realKnowledge, realServed } from '../../helpers/real-graph.ts';

const { matcher } = realServed();
const inVan = (van: string, last?: { topic: string; text: string }): UnderstandContext => ({
  van,
  lastTopic: last?.topic ?? null,
  lastText: last?.text ?? '',
});
const decide = (text: string, context = inVan('dunlin')) =>
  matcher.understand(text, context).map((one) => one.decision);

describe('understanding a message', () => {
  it('answers a plain question with its topic', () => {
    expect(decide('how do I empty the toilet cassette')).toMatchObject([{ kind: 'answer', topic: 'toilet-empty' }]);
  });

  it('finds the same topic through slips of the thumb', () => {
    expect(decide('hwo do i empyt the toliet casette')[0]).toMatchObject({ kind: 'answer', topic: 'toilet-empty' });
  });

  it('gives the same result every time', () => {
    const text = 'the thing over the door went blank';
    expect(matcher.understand(text, inVan('wren'))).toEqual(matcher.understand(text, inVan('wren')));
  });

  it('never ranks a topic that the van has not', () => {
    const { vans } = realKnowledge();
    for (const van of vans.values()) {
      for (const text of ['how does the mover work', 'roof will not come down', 'where is the microwave']) {
        for (const { ranked } of matcher.understand(text, inVan(van.id))) {
          expect(ranked.filter(({ topic }) => !van.topics.has(topic))).toEqual([]);
        }
      }
    }
  });

  it('says that a van lacks what is asked about', () => {
    expect(decide('how do I use the microwave', inVan('godwit'))).toMatchObject([
      { kind: 'lacks', topic: 'cooking-microwave' },
    ]);
  });

  it('answers two questions in the order asked', () => {
    expect(decide("where's the corkscrew, and how do i get the telly on", inVan('wren'))).toMatchObject([
      { kind: 'answer', topic: 'kit-corkscrew' },
      { kind: 'answer', topic: 'media-tv' },
    ]);
  });

  it('says what the van lacks beside the answer to another question', () => {
    expect(decide('where is the first aid kit and how do I use the microwave', inVan('godwit'))).toMatchObject([
      { kind: 'answer', topic: 'kit-first-aid' },
      { kind: 'lacks', topic: 'cooking-microwave' },
    ]);
  });

  it('takes a complaint for the kind of thing the van has, unless the words name another', () => {
    expect(decide('fridge on but milk is warm', inVan('wren'))[0]?.kind).toBe('choose');
    expect(decide('fridge isnt getting cold on gas', inVan('curlew'))).toMatchObject([
      { kind: 'lacks', topic: 'fridge-gas-not-cooling' },
    ]);
  });

  it('takes a message that refers back for what was talked about', () => {
    const last = { topic: 'fridge-modes', text: 'how do i set the fridge on hook up' };
    const named = ([decision]: ReturnType<typeof decide>) =>
      decision?.kind === 'answer'
        ? [decision.topic]
        : decision?.kind === 'choose'
          ? decision.topics.map(({ topic }) => topic)
          : [];
    expect(named(decide('and on gas?', inVan('godwit', last)))).toContain('fridge-light-on-gas');
    expect(named(decide('and on gas?', inVan('godwit')))).not.toContain('fridge-light-on-gas');
  });

  it('leaves a message that stands on its own alone, whatever went before', () => {
    const text = 'how do I empty the toilet cassette';
    const last = { topic: 'fridge-modes', text: 'how do i set the fridge on hook up' };
    expect(decide(text, inVan('dunlin', last))).toEqual(decide(text));
  });

  it('hears the wish for a person and small talk', () => {
    expect(decide('can I talk to a real person please')).toMatchObject([{ kind: 'person' }]);
    expect(decide('thank you so much')).toMatchObject([{ kind: 'chat', chat: 'thanks' }]);
  });

  it('names the language of a question in another one', () => {
    expect(decide('Wo finde ich bitte den Schlüssel für die Toilette?')).toEqual([
      { kind: 'language', language: 'de' },
    ]);
  });

  it('does not answer what is none of ours', () => {
    for (const text of ['who won the football last night', 'asdf qwer zxcv', '', '?', 'x'.repeat(5000)]) {
      expect(decide(text).map(({ kind }) => kind)).not.toContain('answer');
    }
  });

  it('explains itself: words as read, parts named, features, minutes', () => {
    const [understood] = matcher.understand('the watr pump wont stop', inVan('curlew'));
    expect(understood?.why.tokens[1]).toEqual({ said: 'watr', read: 'water' });
    expect(understood?.why.linked.length).toBeGreaterThan(0);
    expect(understood?.why.features.length).toBeGreaterThan(6);
    expect(understood?.why.features.every(({ weight }) => Number.isFinite(weight))).toBe(true);
    expect(understood?.why.costs.map(({ decision }) => decision)).toEqual(['answer', 'choose', 'pass']);
  });

  it('names the nearest topics for a last try', () => {
    const nearest = matcher.nearest('something is up with the toilet', inVan('dunlin'), 3);
    expect(nearest).toHaveLength(3);
    expect(nearest.some(({ topic }) => topic.startsWith('toilet-'))).toBe(true);
  });
});

describe('without trained weights', () => {
  it('understands by naive Bayes alone', () => {
    const simple = createMatcher(realKnowledge(), null);
    const [understood] = simple.understand('how do I empty the toilet cassette', inVan('dunlin'));
    expect(understood?.ranked[0]?.topic).toBe('toilet-empty');
    expect(understood?.decision.kind).not.toBe('pass');
  });
});
