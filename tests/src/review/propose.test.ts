import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readGraph } from '../../../src/knowledge/raw-graph.ts';
import { candidateOf } from '../../../src/review/candidate.ts';
import type { GrowthDecision, NewTopic } from '../../../src/review/decisions.ts';
import { lineDiff } from '../../../src/review/line-diff.ts';
import { propose } from '../../../src/review/propose.ts';
import { smallGraphFiles, smallKnowledge } from '../../helpers/small-graph.ts';

const files = smallGraphFiles();
const knowledge = smallKnowledge();

function editsOf(decision: GrowthDecision) {
  const proposed = propose(decision, files, knowledge);
  if (proposed.kind === 'refused') throw new Error(proposed.problems.join('; '));
  return proposed.edits;
}
function problemsOf(decision: GrowthDecision): string {
  const proposed = propose(decision, files, knowledge);
  return proposed.kind === 'refused' ? proposed.problems.join('; ') : '';
}
const adds = (wordings: readonly string[], topic = 'oven-use'): GrowthDecision => ({
  kind: 'add-wordings',
  topic,
  wordings,
});
const aTopic = (change: Partial<NewTopic> = {}): GrowthDecision => ({
  kind: 'new-topic',
  topic: {
    system: 'fridge',
    id: 'fridge-smell',
    kind: 'how-to',
    title: 'The fridge smells',
    about: ['fridge'],
    first: 'Wipe it out with bicarbonate.',
    steps: ['Leave the door open.'],
    otherwise: null,
    wordings: ['fridge smells', 'stink in the fridge', 'the fridge is whiffy'],
    ...change,
  },
});

describe('a proposal', () => {
  it('adds wordings as a person would, and changes nothing else', () => {
    const [edit] = editsOf(adds(['light the oven please', 'oven: how?']));
    if (edit === undefined) throw new Error('no edit');
    expect(lineDiff(edit)).toContain(
      [
        '       bob: [want to bake a pie]',
        '+      hirers:',
        '+        - light the oven please',
        '+        - "oven: how?"',
      ].join('\n'),
    );
    const topics = parse(edit.after).topics as Record<string, { wordings: unknown }>;
    expect(topics['oven-use']?.wordings).toEqual({
      ann: ['how does the oven light'],
      bob: ['want to bake a pie'],
      hirers: ['light the oven please', 'oven: how?'],
    });
  });

  it('adds to the hirers’ own list where there is one', () => {
    const once = editsOf(adds(['light the oven please']))[0]?.after ?? '';
    const changed = files.map((file) => (file.path === 'systems/fridge.yaml' ? { ...file, text: once } : file));
    const again = propose(adds(['gas oven lighting']), changed, knowledge);
    expect(again).toMatchObject({ kind: 'proposed' });
    if (again.kind === 'proposed')
      expect(lineDiff(again.edits[0] ?? { path: '', before: '', after: '' })).toContain(
        '         - light the oven please\n+        - gas oven lighting\n',
      );
  });

  it('teaches a word, written as its neighbours are', () => {
    const [edit] = editsOf({ kind: 'teach-word', says: 'icebox', means: 'fridge', part: 'fridge' });
    expect(edit?.after).toBe(`${edit?.before}  - { says: icebox, means: fridge, part: fridge }\n`);
  });

  it('makes a topic from staff’s answer, with two questions kept back', () => {
    const [system, questions] = editsOf(aTopic());
    const made = (parse(system?.after ?? '').topics as Record<string, unknown>)['fridge-smell'];
    expect(made).toMatchObject({
      title: 'The fridge smells',
      answer: { first: 'Wipe it out with bicarbonate.', steps: ['Leave the door open.'] },
      wordings: { hirers: ['fridge smells'] },
    });
    expect(questions?.after.slice(questions.before.length)).toBe(
      [
        '  - topic: fridge-smell',
        '    text: "stink in the fridge"',
        '    writer: hirers',
        '  - topic: fridge-smell',
        '    text: "the fridge is whiffy"',
        '    writer: hirers',
        '',
      ].join('\n'),
    );
  });

  it('improves an answer: anew, as a fact, or as a fact of one van', () => {
    const improve = (place: 'first' | 'facts', van: string | null): GrowthDecision => ({
      kind: 'improve-answer',
      topic: 'fridge-modes',
      place,
      say: 'It hums: all is well.',
      van,
    });
    expect(editsOf(improve('first', null))[0]?.after).toContain('      first: "It hums: all is well."\n      steps:');
    expect(editsOf(improve('facts', null))[0]?.after).toContain(
      '        - Wait six hours.\n      facts:\n        - "It hums: all is well."\n',
    );
    expect(editsOf(improve('facts', 'daisy'))[0]?.after).toContain(
      '      facts:\n        - when: van:daisy\n          say: "It hums: all is well."\n',
    );
  });

  it('notes what a van lacks, and sets aside what is none of ours', () => {
    const lack = editsOf({
      kind: 'note-lack',
      van: 'buttercup',
      part: 'fridge-dial',
      say: 'Buttercup has buttons: no dial.',
    });
    expect(lack[0]?.after).toContain(
      '  oven: Buttercup has no oven. It has a grill.\n  fridge-dial: "Buttercup has buttons: no dial."\n',
    );
    const aside = editsOf({ kind: 'set-aside', wordings: ['rugby score'] });
    expect(aside[0]?.after).toContain('tomorrow]\n  hirers:\n    - rugby score\nlanguages:');
  });

  it.each([
    ['a wording that stands elsewhere', adds(['No light in the fridge!']), /stands under fridge-light-dead already/],
    ['a recorded question', adds(['oven on how']), /stands under the recorded questions already/],
    ['the same wording twice', adds(['pie', 'Pie?']), /given twice/],
    ['markup', adds(['<b>oven</b> on']), /markup/],
    ['a link', adds(['see www.ovens.example/on']), /link/],
    ['5,000 characters', adds(['oven '.repeat(1000)]), /5000 characters; at most 200/],
    ['hidden characters', adds(['oven \u202eno']), /cannot be seen/],
    ['no words', adds(['???']), /no words/],
    ['nothing', adds([]), /no wording was given/],
    ['a topic that is not there', adds(['hob'], 'hob-use'), /no topic 'hob-use'/],
    ['a topic id in use', aTopic({ id: 'oven-use' }), /the id 'oven-use' is in use/],
    ['an id that is none', aTopic({ id: 'Fridge smell' }), /is no id/],
    ['a system that is not there', aTopic({ system: 'attic' }), /no system 'attic'/],
    ['a hazard made from here', aTopic({ kind: 'hazard' }), /written by hand/],
    ['too few ways of asking', aTopic({ wordings: ['stink'] }), /at least 3 ways/],
    [
      'a word that is in the glossary',
      { kind: 'teach-word', says: 'Cooler', means: 'oven', part: null },
      /meaning 'fridge'/,
    ],
    ['a lack of what the van has', { kind: 'note-lack', van: 'daisy', part: 'oven', say: 'None.' }, /Daisy has 'oven'/],
    [
      'a text for one van that is said first',
      { kind: 'improve-answer', topic: 'oven-use', place: 'first', say: 'No.', van: 'daisy' },
      /only a fact/,
    ],
  ] satisfies [string, GrowthDecision, RegExp][])('refuses %s', (_, decision, problem) => {
    expect(problemsOf(decision)).toMatch(problem);
  });
});

describe('a candidate', () => {
  const { raw } = readGraph(files);
  if (raw === null) throw new Error('the small graph does not read');
  const base = { ...raw, safety: { ...raw.safety, notices: {} } };

  it('is the changed graph, linked', () => {
    const candidate = candidateOf(base, editsOf(aTopic()));
    expect(candidate).toMatchObject({ kind: 'linked' });
    if (candidate.kind === 'linked')
      expect([...(candidate.knowledge.vans.get('daisy')?.topics ?? [])]).toContain('fridge-smell');
  });

  it('is refused with the slips that the change brings, and only those', () => {
    const candidate = candidateOf(base, editsOf(aTopic({ first: 'Look at {fridge.nowhere}.' })));
    expect(candidate).toMatchObject({ kind: 'refused' });
    if (candidate.kind === 'refused') {
      expect(candidate.problems.length).toBeGreaterThan(0);
      for (const problem of candidate.problems)
        expect(problem).toMatch(/^systems\/fridge\.yaml:\d+:\d+ .*fridge\.nowhere/);
    }
  });
});
