import { type Knowledge, ringOf, svgElements } from '../../src/index.ts';
import type { Pictures } from './pictures.ts';
import type { Theme } from './touched.ts';

/** One drawing on the contact sheet: bare, then once for each part that some answer or step touches, or could. */
export type SheetRow = {
  readonly name: string;
  /** `alts` are the words that go with it where it is used; none: nothing uses it so. */
  readonly cells: readonly { readonly touch: string | null; readonly alts: readonly string[] }[];
};

/** Every drawing with all the ways it is used, by name. */
export function contactSheet(knowledge: Knowledge): readonly SheetRow[] {
  const alts = usesByTouch(knowledge);
  return [...knowledge.pictures.values()]
    .sort((a, b) => a.name.localeCompare(b.name))
    .map(({ name, svg }) => {
      const uses = alts.get(name) ?? new Map<string | null, string[]>();
      const unused = svgElements(svg).flatMap(({ id, ...part }) =>
        id !== null &&
        ringOf({ id, ...part }) !== null &&
        ![...uses.keys()].some((touch) => touch?.split(' ').includes(id))
          ? [id]
          : [],
      );
      const touches = new Set([null, ...uses.keys(), ...unused]);
      return { name, cells: [...touches].map((touch) => ({ touch, alts: uses.get(touch) ?? [] })) };
    });
}

/** The rows as HTML without a page round it: drawings 360 pixels wide, each with its name, its part and its words. */
export function contactSheetHtml(rows: readonly SheetRow[], pictures: Pick<Pictures, 'svg'>, theme: Theme): string {
  return rows
    .map(({ name, cells }) => {
      const figures = cells.map(({ touch, alts }) => {
        const svg = pictures.svg({ picture: name, touch }, theme) ?? '';
        return `<figure>${svg.replace('<svg ', '<svg width="360" height="270" aria-hidden="true" ')}<figcaption>${escaped([touch ?? 'bare', ...alts].join(' · '))}</figcaption></figure>`;
      });
      return `<section><h2>${escaped(name)}</h2>${figures.join('')}</section>`;
    })
    .join('\n');
}

function usesByTouch({ topics }: Knowledge): Map<string, Map<string | null, string[]>> {
  const found = new Map<string, Map<string | null, string[]>>();
  for (const { answer, causes } of topics.values()) {
    const uses = [
      ...(answer?.pictures ?? []),
      ...causes.flatMap(({ check, fix }) => [...(check?.pictures ?? []), ...fix.pictures]),
    ];
    for (const { picture, touch, alt } of uses) {
      const byTouch = found.get(picture) ?? new Map<string | null, string[]>();
      const alts = byTouch.get(touch ?? null) ?? [];
      found.set(picture, byTouch.set(touch ?? null, alts.includes(alt) ? alts : [...alts, alt]));
    }
  }
  return found;
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}
