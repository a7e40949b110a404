import type { Knowledge, Picture } from '../knowledge/knowledge.ts';
import type { Slip } from '../knowledge/slip.ts';
import { type InkName, inkContrast, inkNamed } from './inks.ts';
import { ringOf, type SvgElement, svgElements } from './svg-elements.ts';

export const LARGEST_DRAWING_BYTES = 20 * 1024;
/** WCAG 2.2, 1.4.11: shapes that carry meaning. */
export const LEAST_CONTRAST = 3;

const SHAPES = ['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon'];
const TAGS = ['svg', 'g', 'text', ...SHAPES];
/** What a line may run across. */
const GROUNDS: readonly InkName[] = ['paper', 'tone', 'part'];

/** What is wrong with the drawings themselves, whoever uses them. */
export function drawingSlips(knowledge: Knowledge): Slip[] {
  const labels = labelWords(knowledge);
  return [...knowledge.pictures.values()].flatMap((picture) => slipsOf(picture, labels));
}

function slipsOf({ name, svg }: Picture, labels: ReadonlySet<string>): Slip[] {
  const slips: Slip[] = [];
  const add = (start: number, field: string, problem: string, expected: string): void => {
    const before = svg.slice(0, start);
    const column = start - before.lastIndexOf('\n');
    slips.push({ file: `pictures/${name}.svg`, line: before.split('\n').length, column, field, problem, expected });
  };
  const bytes = bytesOf(svg);
  if (bytes > LARGEST_DRAWING_BYTES) add(0, '', `the drawing has ${bytes} bytes`, `at most ${LARGEST_DRAWING_BYTES}`);
  const seen = new Set<string>();
  const elements = svgElements(svg);
  elements.forEach((element, i) => {
    const { tag, id, text, start, attributes } = element;
    if (!TAGS.includes(tag)) add(start, tag, `a drawing has no <${tag}>`, TAGS.join(', '));
    if (id !== null && seen.has(id)) add(start, `#${id}`, 'another part has this id', 'an id of its own');
    if (id !== null) seen.add(id);
    if (attributes.has('data-ring') && (ringOf(element) === null || id === null || element.moved))
      add(
        start,
        id ?? tag,
        'the ring cannot be placed',
        'an id, data-ring="cx cy r" or "x y width height", and no transform round it',
      );
    const stray = wordsOf(text).filter((word) => !labels.has(word));
    if (stray.length > 0)
      add(start, id ?? tag, `'${stray.join(' ')}' is no label of a van`, 'numerals and label words');
    const strange = ['fill', 'stroke', 'style', 'class'].filter((key) => !inkedWell(key, attributes.get(key)));
    if (strange.length > 0)
      add(start, id ?? tag, `${strange.join(', ')} names no ink`, 'var(--ink) and the like, or none');
    else if (!standsOut(element, elements[i - 1]))
      add(
        start,
        id ?? tag,
        `its contrast is under ${LEAST_CONTRAST} in light or dark`,
        'an outline or a fill that stands out',
      );
  });
  return slips;
}

function inkedWell(key: string, value: string | undefined): boolean {
  if (value === undefined) return true;
  return (key === 'fill' || key === 'stroke') && (value === 'none' || inkNamed(value) !== null);
}

/**
 * Whether a shape or a text can be seen on whatever it stands on. The light core of a hose may follow the wider dark
 * stroke of the same path that edges it.
 */
function standsOut(element: SvgElement, before: SvgElement | undefined): boolean {
  const { tag, attributes } = element;
  const fill = inkNamed(attributes.get('fill') ?? '');
  if (tag === 'text') return fill === 'paper' || isSeen(fill);
  if (!SHAPES.includes(tag) || isSeen(fill)) return true;
  const stroke = inkNamed(attributes.get('stroke') ?? '');
  // Paper alone wipes out what is under it, such as a wall where a door is.
  if (stroke === null) return fill === 'paper';
  if (stroke === 'paper') return fill === null || fill === 'paper';
  if (isSeen(stroke)) return true;
  return before !== undefined && attributes.has('d') && before.attributes.get('d') === attributes.get('d');
}

function isSeen(ink: InkName | null): boolean {
  return ink !== null && GROUNDS.every((ground) => inkContrast(ink, ground) >= LEAST_CONTRAST);
}

/** The words of a text, without its numerals, fuse numbers such as F10, and degree signs. */
function wordsOf(text: string): string[] {
  return text.split(/\s+/).filter((word) => word !== '' && !/^F?\d+(\.\d+)?°?$/.test(word));
}

/** Every word written in capitals in a van's values or on a control: what stands on the vans themselves. */
function labelWords({ vans, parts, topics }: Knowledge): ReadonlySet<string> {
  const texts = [
    ...[...vans.values()].flatMap(({ data }) => Object.values(data.has).flatMap((values) => Object.values(values))),
    ...[...parts.values()].flatMap(({ controls }) => Object.values(controls).map(({ name }) => name)),
    ...[...topics.values()].flatMap(({ answer }) =>
      (answer?.steps ?? []).map((step) => (typeof step === 'string' ? step : step.say)),
    ),
  ];
  return new Set(texts.flatMap((text) => String(text).match(/\b(?=\d*[A-Z])[A-Z\d]{2,}\b/g) ?? []));
}

function bytesOf(text: string): number {
  let bytes = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}
