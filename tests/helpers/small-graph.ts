import { readFileSync } from 'node:fs';
import { buildKnowledge } from '../../src/knowledge/build.ts';
import type { Knowledge } from '../../src/knowledge/knowledge.ts';
import { readGraph } from '../../src/knowledge/raw-graph.ts';
import type { GraphFile } from '../../src/knowledge/yaml-file.ts';

/** Two vans and a handful of topics: small enough to hold in one's head while reading a test. */
const SMALL: Readonly<Record<string, string>> = {
  'systems/fridge.yaml': `
system: fridge
title: Fridge
parts:
  fridge:
    name: fridge
  fridge-dial:
    name: fridge with a dial
    is: fridge
    controls:
      dial: { name: dial }
  fridge-buttons:
    name: fridge with buttons
    is: fridge
  fridge-light:
    name: light inside
    of: fridge-buttons
  oven:
    name: oven
topics:
  fridge-modes:
    kind: how-to
    title: How do I set the fridge?
    about: [fridge]
    caution: none
    pass: never
    kin: [fridge-light-dead]
    answer:
      first: Set the fridge at {fridge.where}.
      steps:
        - when: fridge-dial
          say: Turn the dial.
        - when: fridge-buttons
          say: Press MAINS.
        - Wait six hours.
    wordings:
      ann: [how do I get the fridge cold, fridge settings please]
      bob: [what do i press on the fridge]
  fridge-light-dead:
    kind: symptom
    title: The light in the fridge is dead
    about: [fridge-light]
    caution: none
    pass: if-not-fixed
    answer:
      first: The light may need its fuse, {fridge.fuse}.
    causes:
      - id: fuse
        say: Its fuse has blown
        of: fridge-light
        prior: 0.7
        check: { ask: "Is fuse {fridge.fuse} broken?", minutes: 2 }
        fix: { do: "Fit a new one.", minutes: 3, who: hirer, success: 0.9, fuse: true }
      - id: lamp
        say: The lamp is worn out
        prior: { buttercup: 0.3 }
        fix: { do: "We bring one.", minutes: 30, who: staff, success: 0.95 }
    wordings:
      ann: [no light in the fridge]
      bob: [dark when i open the fridge door]
  oven-use:
    kind: how-to
    title: How do I light the oven?
    about: [oven]
    caution: caution
    pass: never
    answer: { first: Light it at the knob. }
    wordings:
      ann: [how does the oven light]
      bob: [want to bake a pie]
  hours-contact:
    kind: fact
    title: When are you open?
    caution: none
    pass: never
    answer: { first: "Ring {firm.phone}." }
    wordings:
      ann: [when are you open]
      bob: [what time do you close]
`,
  'glossary.yaml': 'words:\n  - { says: cooler, means: fridge, part: fridge }\n',
  'places.yaml': `
sites:
  long-meadow:
    name: Long Meadow
    country: GB
    amps: 10
    places:
      - { kind: shop, name: Meadow shop, metres: 150, hours: "09:00-17:00 daily" }
`,
  'questions.yaml': `
questions:
  - { topic: fridge-modes, van: buttercup, text: setting for the fridge on the pitch }
  - { topic: fridge-modes, van: daisy, text: which way does the fridge go }
  - { topic: fridge-light-dead, van: buttercup, text: fridge lamp gone }
  - { topic: fridge-light-dead, van: buttercup, text: cannot see my milk in there }
  - { topic: oven-use, van: daisy, text: oven on how }
  - { topic: oven-use, van: daisy, text: roast potatoes please }
  - { topic: hours-contact, text: are you there on sunday }
  - { topic: hours-contact, text: opening times }
`,
  'talk.yaml': `
chat:
  greeting: { reply: Hello., wordings: { ann: [hello, good morning] } }
  thanks: { reply: You are welcome., wordings: { ann: [thank you, cheers] } }
person:
  ann: [let me talk to a person, can somebody ring me]
background:
  ann: [who won the football, what is the weather tomorrow]
languages:
  de: { name: German, willRead: Ein Mensch wird es lesen. }
`,
};

/** The small graph's files with the firm's own firm.yaml and safety files, few of the examples; `changed` replaces or adds files. */
export function smallGraphFiles(changed: Readonly<Record<string, string>> = {}): GraphFile[] {
  const figures = readFileSync('graph/vans/wren.yaml', 'utf8').match(/^figures:\n(?:(?: .*)?\n)+/m)?.[0] ?? '';
  const aVan = (van: string, name: string, has: string, lacks: string): string => `
van: ${van}
name: ${name}
kind: tourer
body: caravan
built: 2020
berths: 2
asked: [fridge-modes, oven-use, hours-contact]
values: { length: 5.4 }
has:
${has}
lacks:
${lacks}
${figures}
out: []
`;
  const vans = {
    'vans/buttercup.yaml': aVan(
      'buttercup',
      'Buttercup',
      '  fridge-buttons: { where: the kitchen, fuse: F6 }',
      '  oven: Buttercup has no oven. It has a grill.',
    ),
    'vans/daisy.yaml': aVan(
      'daisy',
      'Daisy',
      '  fridge-dial: { where: the wardrobe }\n  oven: {}',
      '  fridge-light: Daisy has no light in the fridge.',
    ),
  };
  const own = Object.fromEntries(
    ['firm.yaml', 'safety.yaml', 'safety-senses.yaml'].map((file) => [file, readFileSync(`graph/${file}`, 'utf8')]),
  );
  const examples = { 'safety-examples.yaml': fewExamples(readFileSync('graph/safety-examples.yaml', 'utf8')) };
  return Object.entries({ ...SMALL, ...vans, ...own, ...examples, ...changed }).map(([path, text]) => ({ path, text }));
}

const EXAMPLE = /^ +- /;
const ONE_OF = 20;

/** The firm's safety examples, a few of each hazard and of none: all of them take most of a minute to learn. */
function fewExamples(yaml: string): string {
  let nth = 0;
  return yaml
    .split('\n')
    .filter((line) => !EXAMPLE.test(line) || nth++ % ONE_OF === 0)
    .join('\n');
}

/** The small graph, linked. Its notices name topics it has not, so the notices are left out. */
export function smallKnowledge(changed: Readonly<Record<string, string>> = {}): Knowledge {
  const { raw, slips, slipAt } = readGraph(smallGraphFiles(changed));
  if (raw === null) throw new Error(JSON.stringify(slips));
  const built = buildKnowledge({ ...raw, safety: { ...raw.safety, notices: {} } }, slipAt);
  if (built.knowledge === null) throw new Error(JSON.stringify(built.slips));
  return built.knowledge;
}
