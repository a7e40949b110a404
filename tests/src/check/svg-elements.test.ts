import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inkContrast, inkNamed } from '../../../src/check/inks.ts';
import { ringOf, svgElements } from '../../../src/check/svg-elements.ts';

type Tree = { readonly tag: string; readonly id: string; readonly children: readonly Tree[] };

const { tree } = fc.letrec<{ tree: Tree; children: readonly Tree[] }>((tie) => ({
  tree: fc.record({
    tag: fc.constantFrom('g', 'path', 'rect'),
    id: fc.stringMatching(/^[a-z]{1,6}$/),
    children: tie('children'),
  }),
  children: fc.oneof({ maxDepth: 4 }, fc.constant([]), fc.array(tie('tree'), { maxLength: 3 })),
}));

const written = ({ tag, id, children }: Tree): string =>
  children.length === 0
    ? `<${tag} id="${id}"/>`
    : `<${tag} id="${id}">\n${children.map(written).join('\n')}\n</${tag}>`;

const flat = (one: Tree): Tree[] => [one, ...one.children.flatMap(flat)];

describe('the elements of a drawing', () => {
  it('are found in order, each from its first sign to its last', () => {
    fc.assert(
      fc.property(tree, (root) => {
        const svg = `<svg>${written(root)}</svg>`;
        const found = svgElements(svg).slice(1);
        expect(found.map(({ start, end }) => svg.slice(start, end))).toEqual(flat(root).map(written));
      }),
    );
  });

  it('take fill and stroke from the groups round them, and no more', () => {
    const [, , path] = svgElements(
      '<svg id="a"><g fill="var(--ink)" stroke="none" opacity="1"><path stroke="var(--paper)"/></g></svg>',
    );
    expect([...(path?.attributes ?? [])]).toEqual([
      ['fill', 'var(--ink)'],
      ['stroke', 'var(--paper)'],
    ]);
    expect(path?.id).toBeNull();
  });

  it.each([
    ['10 20 5', { cx: 10, cy: 20, r: 5 }],
    ['10 20', null],
    ['10 20 0', null],
    ['10 20 x', null],
    ['1 2 30 40', { x: 1, y: 2, width: 30, height: 40 }],
    ['1 2 30 0', null],
    ['1 2 3 4 5', null],
  ])('ring %s', (ring, expected) => {
    const [part] = svgElements(`<g data-ring="${ring}"/>`);
    expect(part === undefined ? undefined : ringOf(part)).toEqual(expected);
  });
});

describe('the inks', () => {
  it('are named as custom properties', () => {
    expect(inkNamed('var(--ink)')).toBe('ink');
    expect(inkNamed('var(--toString)')).toBeNull();
    expect(inkNamed('ink')).toBeNull();
  });

  it('have the contrast of WCAG 2.2: 1 with themselves, 7 or more for ink on paper in both themes', () => {
    expect(inkContrast('tone', 'tone')).toBeCloseTo(1);
    expect(inkContrast('ink', 'paper')).toBeGreaterThan(7);
    expect(inkContrast('paper', 'ink')).toBe(inkContrast('ink', 'paper'));
  });
});
