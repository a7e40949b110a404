import { describe, expect, it } from 'vitest';
import { buildKnowledge } from '../../../src/knowledge/build.ts';
import { readGraph } from '../../../src/knowledge/raw-graph.ts';
import { smallGraphFiles } from '../../helpers/small-graph.ts';

const HOURS = `
system: extra
title: Extra
topics:
  extra-topic:
    kind: fact
    title: A fact
    caution: none
    pass: never
    answer: { first: So it is. }
`;

function slipsOf(file: string, text: string) {
  const { raw, slips, slipAt } = readGraph(smallGraphFiles({ [file]: text }));
  return raw === null ? slips : buildKnowledge({ ...raw, safety: { ...raw.safety, notices: {} } }, slipAt).slips;
}

describe('reading the files of graph/', () => {
  it('takes a well-formed file', () => {
    expect(slipsOf('systems/extra.yaml', HOURS)).toEqual([]);
  });

  it.each([
    [
      'an unknown key',
      HOURS.replace('caution: none', 'cautoin: none\n    caution: none'),
      { line: 8, problem: "unknown key 'cautoin'" },
    ],
    [
      'a value that is not allowed',
      HOURS.replace('kind: fact', 'kind: facts'),
      { line: 6, problem: 'not one of the allowed values' },
    ],
    [
      'a part that is not there',
      HOURS.replace('caution: none', 'about: [teapot]\n    caution: none'),
      { line: 8, problem: "no part 'teapot'" },
    ],
    [
      'a related topic that is not there',
      HOURS.replace('caution: none', 'kin: [nowhere]\n    caution: none'),
      { line: 8, problem: "no topic 'nowhere'" },
    ],
    ['a topic that stands twice', HOURS.replace('extra-topic', 'oven-use'), { problem: 'this topic stands twice' }],
    ['broken YAML', HOURS.replace('title: Extra', 'title: [Extra'), { expected: 'well-formed YAML' }],
  ])('names the place of %s', (_, text, expected) => {
    expect(slipsOf('systems/extra.yaml', text)).toEqual(
      expect.arrayContaining([expect.objectContaining({ file: expect.stringMatching(/^systems\//), ...expected })]),
    );
  });

  it('reports the slips of all files at once', () => {
    const { raw, slips } = readGraph(
      smallGraphFiles({
        'systems/extra.yaml': HOURS.replace('kind: fact', 'kind: x'),
        'glossary.yaml': 'words: 3\n',
        'odd.yaml': '',
      }),
    );
    expect(raw).toBeNull();
    expect(slips.map((slip) => slip.file).sort()).toEqual(['glossary.yaml', 'odd.yaml', 'systems/extra.yaml']);
  });

  it('says which of the needed files is missing', () => {
    const { slips } = readGraph(smallGraphFiles().filter((file) => file.path !== 'places.yaml'));
    expect(slips).toEqual([expect.objectContaining({ file: 'places.yaml', problem: 'the file is missing' })]);
  });

  describe('of a folder that was read before', () => {
    const read = (...[changed, same]: [Readonly<Record<string, string>>, readonly string[]]) => {
      const before = readGraph(smallGraphFiles({ 'systems/extra.yaml': HOURS })).raw;
      if (before === null) throw new Error('the small graph has slips');
      const files = smallGraphFiles({ 'systems/extra.yaml': HOURS, ...changed });
      return { before, files, ...readGraph(files, { raw: before, same: new Set(same) }) };
    };
    const others = smallGraphFiles().map(({ path }) => path);

    it('gives what reading all of it would, with the very objects of what is the same', () => {
      const edit = { 'systems/extra.yaml': HOURS.replace('So it is.', 'So it was.') };
      const { before, files, raw } = read(edit, others);
      expect(raw).toEqual(readGraph(files).raw);
      expect(raw?.safety).toBe(before.safety);
      expect(raw?.vans[0]?.data).toBe(before.vans[0]?.data);
    });

    it('reads the safety files together where one of them changed', () => {
      const same = [...others.filter((path) => path !== 'safety-senses.yaml'), 'systems/extra.yaml'];
      const { files, raw } = read({}, same);
      expect(raw).toEqual(readGraph(files).raw);
    });

    it('names the place of a slip that a change makes in a file that is the same', () => {
      const linked = HOURS.replace('caution: none', 'kin: [oven-use]\n    caution: none');
      const { raw, slipAt } = read({ 'systems/extra.yaml': linked }, [...others, 'systems/extra.yaml']);
      expect(raw).not.toBeNull();
      expect(slipAt('systems/extra.yaml', ['topics', 'extra-topic', 'kin', 0], 'no topic', 'a topic').line).toBe(8);
    });
  });
});
