import { afterEach, describe, expect, it } from 'vitest';
import { runGaps } from '../../../adapters/cli/gaps.ts';
import type { Event } from '../../../src/index.ts';
import { aGap, type SmallDesk, smallDesk } from '../../helpers/small-desk.ts';
import { aTerminal } from '../../helpers/terminal.ts';

/** Thirty messages that went unanswered on one evening, six to a thing. */
const ASKED: Readonly<Record<string, readonly string[]>> = {
  pie: [
    'what temperature for a pie',
    'which temperature does a pie want',
    'pie temperature?',
    'temperature for my pie please',
    'pie at what temperature',
    'pie: temperature',
  ],
  drone: [
    'may we fly a drone',
    'drone flying allowed?',
    'is flying a drone allowed',
    'fly my drone here ok',
    'can the kids fly a drone',
    'where may I fly the drone',
  ],
  eskie: [
    'eskie is warm',
    'the eskie is too warm',
    'warm eskie',
    'why is the eskie warm',
    'eskie warm again',
    'our eskie is warm today',
  ],
  cricket: [
    'cricket score please',
    'what was the cricket score',
    'score in the cricket?',
    'the cricket score today',
    'any cricket score yet',
    'cricket score',
  ],
  setting: [
    'which way does the knob go',
    'does the knob go which way',
    'knob, which way does it go',
    'which way should the knob go',
    'the knob: which way',
    'which way do I turn the knob',
  ],
};
const SAID = 'No drones on any of our sites.';

describe('an evening of teaching', () => {
  let small: SmallDesk | null = null;
  afterEach(() => small?.remove());

  async function evening() {
    small = smallDesk();
    const { came, desk } = small;
    for (const texts of Object.values(ASKED))
      for (const [i, text] of texts.entries()) {
        const topics = text.includes('pie') ? ['oven-use'] : [];
        const said: readonly Event[] =
          text.includes('drone') && i === 1 ? [{ kind: 'staff-said', by: 'Nessa', text: SAID }] : [];
        await came([aGap(text, { topics }), ...said]);
      }
    const groups = await desk.groups();
    const number = (word: string): string => String(groups.find(({ words }) => words.includes(word))?.id);
    const gaps = async (args: readonly string[], given: Parameters<typeof runGaps>[3]) => {
      const terminal = aTerminal();
      const code = await runGaps(desk, args[0], args[1], { by: 'Nessa', ...given }, terminal.terminal);
      return { code, out: terminal.out() };
    };
    return { small, desk, groups, number, gaps };
  }

  it('makes five groups of thirty messages', async () => {
    const { groups } = await evening();
    const sorted = (texts: readonly string[]) => [...texts].sort();
    expect(groups.map(({ gaps }) => sorted(gaps.map(({ text }) => text)))).toEqual(Object.values(ASKED).map(sorted));
  });

  it('publishes four changes, refuses one that would steal, and goes back to the byte', async () => {
    const { small, desk, number, gaps } = await evening();
    const before = small.texts();
    const published = [
      await gaps(['add-wording', number('pie')], {}),
      await gaps(['new-topic', number('drone')], {
        id: 'fridge-drone',
        title: 'May we fly a drone?',
        system: 'fridge',
        kind: 'fact',
      }),
      await gaps(['teach-word', number('eskie')], { says: 'eskie', means: 'fridge', part: 'fridge' }),
      await gaps(['set-aside', number('cricket')], {}),
    ];
    expect(published.map(({ code }) => code)).toEqual([0, 0, 0, 0]);

    const refused = await gaps(['add-wording', number('knob')], {
      topic: 'hours-contact',
      wording: [
        'which way does the fridge go then',
        'fridge: which way',
        'which way for the fridge',
        'way the fridge goes',
      ],
    });
    expect(refused.code).toBe(1);
    expect(refused.out).toMatch(/Refused by the trial.*'which way does the fridge go': .* -> wrong: hours-contact/s);
    expect((await desk.groups()).map(({ words }) => words)).toEqual([expect.stringContaining('knob')]);

    const diffs = published.map(({ out }) => out.slice(out.indexOf('\n--- ') + 1, out.lastIndexOf('\nPublished')));
    expect(diffs.join('')).toMatchInlineSnapshot(`
      "--- graph/systems/fridge.yaml
      +++ graph/systems/fridge.yaml
      @@ -68,6 +68,12 @@
           wordings:
             ann: [how does the oven light]
             bob: [want to bake a pie]
      +      hirers:
      +        - what temperature for a pie
      +        - which temperature does a pie want
      +        - "pie: temperature"
      +        - temperature for my pie please
      +        - pie at what temperature
         hours-contact:
           kind: fact
           title: When are you open?
      --- graph/systems/fridge.yaml
      +++ graph/systems/fridge.yaml
      @@ -83,3 +83,16 @@
           wordings:
             ann: [when are you open]
             bob: [what time do you close]
      +  fridge-drone:
      +    kind: fact
      +    title: "May we fly a drone?"
      +    caution: none
      +    pass: never
      +    answer:
      +      first: "No drones on any of our sites."
      +    wordings:
      +      hirers:
      +        - may we fly a drone
      +        - drone flying allowed?
      +        - is flying a drone allowed
      +        - fly my drone here ok

      --- graph/questions.yaml
      +++ graph/questions.yaml
      @@ -8,3 +8,9 @@
         - { topic: oven-use, van: daisy, text: roast potatoes please }
         - { topic: hours-contact, text: are you there on sunday }
         - { topic: hours-contact, text: opening times }
      +  - topic: fridge-drone
      +    text: "can the kids fly a drone"
      +    writer: hirers
      +  - topic: fridge-drone
      +    text: "where may I fly the drone"
      +    writer: hirers
      --- graph/glossary.yaml
      +++ graph/glossary.yaml
      @@ -1,2 +1,3 @@
       words:
         - { says: cooler, means: fridge, part: fridge }
      +  - { says: eskie, means: fridge, part: fridge }
      --- graph/talk.yaml
      +++ graph/talk.yaml
      @@ -6,5 +6,12 @@
         ann: [let me talk to a person, can somebody ring me]
       background:
         ann: [who won the football, what is the weather tomorrow]
      +  hirers:
      +    - cricket score please
      +    - what was the cricket score
      +    - score in the cricket?
      +    - the cricket score today
      +    - any cricket score yet
      +    - cricket score
       languages:
         de: { name: German, willRead: Ein Mensch wird es lesen. }
      "
    `);

    for (const id of ['2', '4', '1', '3']) await gaps(['undo', id], {});
    expect(small.texts()).toEqual(before);
    expect(await desk.groups()).toHaveLength(5);
  });
});
