import { describe, expect, it } from 'vitest';
import { checkGraph } from '../../../src/check/check-graph.ts';
import { buildKnowledge } from '../../../src/knowledge/build.ts';
import { readGraph } from '../../../src/knowledge/raw-graph.ts';
import { smallGraphFiles } from '../../helpers/small-graph.ts';

/** The slips of the small graph with its fridge file changed. */
function slipsWith(change: (fridge: string) => string, more: Readonly<Record<string, string>> = {}) {
  const fridge = smallGraphFiles().find((file) => file.path === 'systems/fridge.yaml')?.text ?? '';
  const { raw, slips, slipAt } = readGraph(smallGraphFiles({ 'systems/fridge.yaml': change(fridge), ...more }));
  if (raw === null) throw new Error(JSON.stringify(slips));
  const { knowledge } = buildKnowledge({ ...raw, safety: { ...raw.safety, notices: {} } }, slipAt);
  if (knowledge === null) throw new Error('not linked');
  return checkGraph(knowledge, slipAt).filter((slip) => slip.file !== 'safety.yaml');
}

describe('check', () => {
  it('finds nothing in a graph that holds together', () => {
    expect(slipsWith((text) => text)).toEqual([]);
  });

  it.each<[string, (text: string) => string, RegExp]>([
    [
      'a slot that a van does not fill',
      (text) => text.replace('Turn the dial.', 'Turn the dial at {fridge.fuse}.'),
      /fridge\.fuse.* is not filled for Daisy/,
    ],
    [
      'a condition that names nothing',
      (text) => text.replace('when: fridge-dial', 'when: fridge-lever'),
      /'fridge-lever' names nothing/,
    ],
    ['an answer that is too long', (text) => text.replace('Wait six hours.', 'x'.repeat(950)), /characters/],
    [
      'more than seven steps',
      (text) =>
        text.replace(
          '        - Wait six hours.',
          Array.from({ length: 8 }, (_, i) => `        - Step ${i}.`).join('\n'),
        ),
      /steps for/,
    ],
    [
      'a topic without an answer',
      (text) => text.replace('    answer: { first: Light it at the knob. }\n', ''),
      /has no answer/,
    ],
    [
      'priors that do not sum to 1',
      (text) => text.replace('prior: 0.7', 'prior: 0.5'),
      /priors for Buttercup sum to 0.800/,
    ],
    [
      'a part that no van has',
      (text) => text.replace('  oven:\n    name: oven', '  oven:\n    name: oven\n  samovar:\n    name: samovar'),
      /no van has this part/,
    ],
    [
      'a wording under two topics',
      (text) => text.replace('ann: [when are you open]', 'ann: [how does the oven light]'),
      /stands under oven-use as well/,
    ],
    [
      'a wording that is a recorded question',
      (text) => text.replace('bob: [want to bake a pie]', 'bob: [roast potatoes please]'),
      /is a wording as well/,
    ],
    [
      'a slot in the words of a picture of a check',
      (text) => text.replace('minutes: 2 }', 'minutes: 2, pictures: [{ picture: box, alt: "Fuse {fridge.fuze}" }] }'),
      /fridge\.fuze.* is not filled for Buttercup/,
    ],
    [
      'a condition of a picture of a fix',
      (text) =>
        text.replace('fuse: true }', 'fuse: true, pictures: [{ picture: box, alt: Fuse, when: fridge-lever }] }'),
      /'fridge-lever' names nothing/,
    ],
    ['a cause that stands twice', (text) => text.replace('- id: lamp', '- id: fuse'), /the cause 'fuse' stands twice/],
  ])('finds %s, at its place', (_, change, problem) => {
    const slips = slipsWith(change);
    expect(slips.map((slip) => slip.problem)).toEqual(expect.arrayContaining([expect.stringMatching(problem)]));
    for (const slip of slips) expect(slip.line).toBeGreaterThan(0);
  });

  it('finds a van that does not say what it has instead', () => {
    const daisy = smallGraphFiles().find((file) => file.path === 'vans/daisy.yaml')?.text ?? '';
    const slips = slipsWith((text) => text, {
      'vans/daisy.yaml': daisy.replace('  fridge-light: Daisy has no light in the fridge.', '  fridge: Daisy.'),
    });
    expect(slips).toEqual([
      expect.objectContaining({ file: 'vans/daisy.yaml', problem: expect.stringContaining("no 'fridge-light'") }),
    ]);
  });

  it('finds a topic with too few recorded questions', () => {
    const slips = slipsWith((text) => text, { 'questions.yaml': 'questions: []\n' });
    expect(slips).toHaveLength(4);
    expect(slips[0]?.problem).toBe('0 recorded questions in questions.yaml');
  });

  it('finds a drawing that no answer uses', () => {
    expect(slipsWith((text) => text, { 'pictures/teapot.svg': '<svg viewBox="0 0 1 1"/>' })).toEqual(
      expect.arrayContaining([expect.objectContaining({ file: 'pictures/teapot.svg' })]),
    );
  });
});
