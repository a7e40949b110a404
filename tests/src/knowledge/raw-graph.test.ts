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
});
