import {
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  type Pair,
  parseDocument,
  type Scalar,
  stringify,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { FieldPath } from '../knowledge/yaml-file.ts';

/*
 * Edits of one YAML file as a person would make them: yaml's Document says where things stand, and only what is changed
 * is written. Every comment, blank line, quote and order of the rest stays as it is.
 */

/** A short text on one line: plain where that is safe, else in double quotes. */
export function plainScalar(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  // Flow lists end at these; a wording may stand in one.
  if (/[,[\]{}]/.test(line)) return JSON.stringify(line);
  return stringify(line, { lineWidth: 0 }).trimEnd();
}

/** What is said to hirers stands in double quotes throughout the graph. */
export function quoted(text: string): string {
  return JSON.stringify(text.replace(/\s+/g, ' ').trim());
}

/**
 * Adds items at the end of a list.
 *
 * @param items Each as {@link plainScalar} writes it, or the lines of a mapping.
 * @returns     Null when there is no list at that place that a line can be added to.
 */
export function withItems(
  yaml: string,
  path: FieldPath,
  items: readonly (string | readonly string[])[],
): string | null {
  const list = nodeAt(yaml, path);
  if (!isSeq(list)) return null;
  if (list.flow === true) {
    const entries = items.filter((item) => typeof item === 'string');
    return entries.length < items.length ? null : intoFlow(yaml, list, entries.join(', '));
  }
  const last = list.items.at(-1);
  if (!isNode(last)) return null;
  const indent = ' '.repeat(columnOf(yaml, yaml.lastIndexOf('-', startOf(last) - 1)));
  const lines = items.flatMap((item) => {
    const [first = '', ...rest] = typeof item === 'string' ? [item] : item;
    return [`${indent}- ${first}`, ...rest.map((line) => `${indent}  ${line}`)];
  });
  return insertedLines(yaml, endOf(last), lines);
}

/**
 * Adds a key at the end of a mapping.
 *
 * @param value A scalar as it is written, or the lines beneath the key.
 * @returns     Null when there is no mapping at that place, or the key is in it already.
 */
export function withKey(
  yaml: string,
  path: FieldPath,
  key: string,
  value: string | readonly string[],
  options: { readonly blankBefore?: boolean } = {},
): string | null {
  const map = nodeAt(yaml, path);
  if (!isMap(map) || map.has(key)) return null;
  if (map.flow === true) {
    if (typeof value !== 'string') return null;
    return intoFlow(yaml, map, `${key}: ${value}`);
  }
  const last = map.items.at(-1);
  if (last === undefined || !isNode(last.key)) return null;
  const indent = ' '.repeat(columnOf(yaml, startOf(last.key)));
  const lines =
    typeof value === 'string'
      ? [`${indent}${key}: ${value}`]
      : [`${indent}${key}:`, ...value.map((line) => (line === '' ? '' : `${indent}  ${line}`))];
  return insertedLines(yaml, endOfPair(last), options.blankBefore === true ? ['', ...lines] : lines);
}

/** Whether the last two keys of a mapping stand apart by an empty line. */
export function standsApart(yaml: string, path: FieldPath): boolean {
  const map = nodeAt(yaml, path);
  const last = isMap(map) ? map.items.at(-1) : undefined;
  return last !== undefined && isNode(last.key) && /\n[ \t]*\n[ \t]*$/.test(yaml.slice(0, startOf(last.key)));
}

/** Another text in the place of one that stands there alone; null when something else does. */
export function withScalar(yaml: string, path: FieldPath, written: string): string | null {
  const node = nodeAt(yaml, path);
  if (!isScalar(node) || typeof node.value !== 'string' || node.range == null || isBlockScalar(node)) return null;
  return yaml.slice(0, node.range[0]) + written + yaml.slice(node.range[1]);
}

/** What stands at a place: nothing, one text, a list, a mapping, or something else. */
export function kindAt(yaml: string, path: FieldPath): 'nothing' | 'text' | 'list' | 'mapping' | 'other' {
  const node = nodeAt(yaml, path);
  if (node === undefined) return 'nothing';
  if (isSeq(node)) return node.items.length === 0 ? 'other' : 'list';
  if (isMap(node)) return 'mapping';
  return isScalar(node) && typeof node.value === 'string' ? 'text' : 'other';
}

function nodeAt(yaml: string, path: FieldPath): unknown {
  const document = parseDocument(yaml);
  return path.length === 0 ? document.contents : document.getIn(path, true);
}

function intoFlow(yaml: string, collection: YAMLSeq | YAMLMap, entry: string): string | null {
  const { range } = collection;
  if (range == null) return null;
  const close = range[1] - 1;
  const before = yaml.slice(0, close).trimEnd();
  const space = yaml.slice(before.length, close);
  // One that spans lines is a person's layout that a line added at its end would spoil.
  if (yaml.slice(range[0], range[1]).includes('\n')) return null;
  const comma = collection.items.length === 0 || before.endsWith(',') ? '' : ', ';
  return `${before}${comma}${entry}${space}${yaml.slice(close)}`;
}

/** Puts whole lines after the line on which `end` lies. */
function insertedLines(yaml: string, end: number, lines: readonly string[]): string {
  const ended = end > 0 && yaml[end - 1] === '\n' ? end : yaml.indexOf('\n', end) + 1;
  const newline = yaml.includes('\r\n') ? '\r\n' : '\n';
  const text = lines.map((line) => line + newline).join('');
  if (ended > 0) return yaml.slice(0, ended) + text + yaml.slice(ended);
  return yaml + newline + text.slice(0, -newline.length);
}

function startOf(node: { readonly range?: readonly [number, number, number] | null }): number {
  return node.range?.[0] ?? 0;
}

function columnOf(yaml: string, at: number): number {
  return at - (yaml.lastIndexOf('\n', at - 1) + 1);
}

/** Where the last value within a node ends: the range of a block collection runs on over blank lines and comments. */
function endOf(node: unknown): number {
  if (isMap(node) && node.flow !== true && node.items.length > 0) return endOfPair(node.items.at(-1) as Pair);
  if (isSeq(node) && node.flow !== true && node.items.length > 0) return endOf(node.items.at(-1));
  return isNode(node) ? (node.range?.[1] ?? 0) : 0;
}

function endOfPair(pair: Pair): number {
  if (!isPair(pair)) return 0;
  const value = endOf(pair.value);
  return value > 0 ? value : endOf(pair.key);
}

function isBlockScalar(node: Scalar): boolean {
  return node.type === 'BLOCK_FOLDED' || node.type === 'BLOCK_LITERAL';
}
