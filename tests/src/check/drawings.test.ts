import { describe, expect, it } from 'vitest';
import { drawingSlips, LARGEST_DRAWING_BYTES } from '../../../src/check/drawings.ts';
import type { Picture } from '../../../src/knowledge/knowledge.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const real = realKnowledge();

/** What is wrong with a drawing that has this inside its outlined group. */
function problemsOf(inside: string): string[] {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 300">
<rect width="400" height="300" fill="var(--paper)" stroke="none"/>
<g fill="var(--paper)" stroke="var(--ink)" stroke-width="2">
${inside}
</g>
</svg>`;
  const picture: Picture = { name: 'trial', svg, ids: new Set() };
  return drawingSlips({ ...real, pictures: new Map([['trial', picture]]) }).map(
    ({ file, line, problem }) => `${file}:${line} ${problem}`,
  );
}

describe('the check of drawings', () => {
  it('finds nothing wrong with the drawings of the firm', () => {
    expect(drawingSlips(real)).toEqual([]);
  });

  it('takes numerals, fuse numbers, degrees and the label words of the vans', () => {
    const texts = ['3', 'F10', '7.5', '20°', 'SITE AMPS', '6  10  16', '12V'];
    expect(problemsOf(texts.map((text) => `<text fill="var(--ink)" stroke="none">${text}</text>`).join('\n'))).toEqual(
      [],
    );
  });

  it.each([
    [
      'words that stand on no van',
      '<text fill="var(--ink)" stroke="none">PUSH HERE</text>',
      /4 'PUSH HERE' is no label/,
    ],
    ['a colour of its own', '<rect width="9" height="9" fill="#f00"/>', /4 fill names no ink/],
    ['an ink that there is not', '<rect width="9" height="9" stroke="var(--puce)"/>', /4 stroke names no ink/],
    ['a style', '<rect width="9" height="9" style="fill:red"/>', /4 style names no ink/],
    [
      'a shape in a pale tone without an outline',
      '<rect width="9" height="9" fill="var(--part)" stroke="none"/>',
      /contrast/,
    ],
    ['a line in a pale tone', '<path d="M0 0h9" fill="none" stroke="var(--tone)"/>', /contrast is under 3/],
    ['pale letters', '<text fill="var(--marigold)" stroke="none">3</text>', /contrast is under 3/],
    ['a ring that tells no size', '<g id="knob" data-ring="10 20"></g>', /ring cannot be placed/],
    ['a ring without a part to name', '<g data-ring="10 20 5"></g>', /ring cannot be placed/],
    [
      'a ring that a transform would move',
      '<g transform="scale(2)"><g id="a" data-ring="1 2 3"></g></g>',
      /ring cannot/,
    ],
    ['two parts of one name', '<g id="a"></g>\n<g id="a"></g>', /5 another part has this id/],
    ['what is no drawing', '<script>1</script>', /no <script>/],
    ['a picture inside the picture', '<image href="https://example.org/a.png"/>', /no <image>/],
  ])('refuses %s', (_what, inside, problem) => {
    expect(problemsOf(inside).join('\n')).toMatch(problem);
  });

  it('lets a light core follow the dark stroke that edges it', () => {
    const stroke = (ink: string, width: number) =>
      `<path d="M0 0h90" fill="none" stroke="var(--${ink})" stroke-width="${width}"/>`;
    expect(problemsOf(`${stroke('ink', 12)}\n${stroke('tone', 8)}`)).toEqual([]);
  });

  it('refuses a drawing over 20 KB, counting bytes and not letters', () => {
    const half = '°'.repeat(LARGEST_DRAWING_BYTES / 2);
    expect(problemsOf(`<g id="${half}"></g>`)[0]).toMatch(/bytes/);
  });
});
