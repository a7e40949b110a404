import { isMap, isNode, isPair, isScalar, LineCounter, parseDocument } from 'yaml';
import type { z } from 'zod';
import type { Slip } from './slip.ts';

export type GraphFile = { readonly path: string; readonly text: string };
export type FieldPath = readonly (string | number)[];

/** Makes slips for one file; parses positions only when there is something to report. */
export type Locate = (field: FieldPath, problem: string, expected: string) => Slip;

/**
 * Reads one YAML file against its schema.
 *
 * @returns The data, or null with at least one slip: every problem of the file at once, each at its line.
 */
export function readYaml<T>(file: GraphFile, schema: z.ZodType<T>): { data: T | null; slips: Slip[]; locate: Locate } {
  const locate = locator(file);
  const document = parseDocument(file.text, { uniqueKeys: true });
  if (document.errors.length > 0) {
    const counter = lines(file.text);
    const slips = document.errors.map((error): Slip => {
      const { line, col } = counter.linePos(error.pos[0]);
      return {
        file: file.path,
        line,
        column: col,
        field: '',
        problem: firstLine(error.message),
        expected: 'well-formed YAML',
      };
    });
    return { data: null, slips, locate };
  }
  const read = schema.safeParse(document.toJS() ?? {});
  if (read.success) return { data: read.data, slips: [], locate };
  return { data: null, slips: read.error.issues.flatMap((issue) => issueSlips(issue, [], locate)), locate };
}

type Issue = z.core.$ZodIssue;

function issueSlips(issue: Issue, above: FieldPath, locate: Locate): Slip[] {
  const path = [...above, ...issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key))];
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => locate([...path, key], `unknown key '${key}'`, 'one of the keys of this place'));
    case 'invalid_union': {
      // The branch that got furthest says most; without one, only that nothing fitted.
      const deepest = [...issue.errors].sort((a, b) => depth(b) - depth(a))[0] ?? [];
      const inner = deepest.flatMap((each) => issueSlips(each, path, locate));
      return inner.length > 0 ? inner : [locate(path, issue.message, 'one of the forms this place allows')];
    }
    case 'invalid_type':
      return [locate(path, issue.message.replace(/^Invalid input: /, ''), issue.expected)];
    case 'invalid_value':
      return [locate(path, 'not one of the allowed values', issue.values.map(String).join(', '))];
    case 'invalid_key':
      return [locate(path, 'a key that is not allowed here', issue.issues[0]?.message ?? 'a kebab-case id')];
    default:
      return [locate(path, issue.message, expectedOf(issue))];
  }
}

function depth(issues: readonly Issue[]): number {
  return Math.max(0, ...issues.map((issue) => issue.path.length));
}

function expectedOf(issue: Issue): string {
  if (issue.code === 'too_small') return `at least ${String(issue.minimum)}`;
  if (issue.code === 'too_big') return `at most ${String(issue.maximum)}`;
  return 'as graph/ describes it in DEVELOPERS.md';
}

/** Parsed for positions once, and only when there is something to report. */
export function locator(file: GraphFile): Locate {
  let parsed: { readonly contents: unknown; readonly counter: LineCounter } | null = null;
  return (field, problem, expected) => {
    parsed ??= { contents: parseDocument(file.text, { uniqueKeys: false }).contents, counter: lines(file.text) };
    const { line, col } = parsed.counter.linePos(offsetOf(parsed.contents, field));
    return { file: file.path, line, column: col, field: field.join('.'), problem, expected };
  };
}

/** Where the field stands: its key if it has one, else the nearest thing above it that exists. */
function offsetOf(contents: unknown, field: FieldPath): number {
  let node = contents;
  let at = isNode(node) ? (node.range?.[0] ?? 0) : 0;
  for (const key of field) {
    if (isMap(node)) {
      const pair = node.items.find(
        (each) => isPair(each) && (isScalar(each.key) ? String(each.key.value) : '') === String(key),
      );
      if (pair === undefined) return at;
      if (isNode(pair.key)) at = pair.key.range?.[0] ?? at;
      node = pair.value;
    } else if (typeof node === 'object' && node !== null && 'items' in node && Array.isArray(node.items)) {
      node = node.items[Number(key)];
      if (isNode(node)) at = node.range?.[0] ?? at;
    } else return at;
  }
  return at;
}

function lines(text: string): LineCounter {
  const counter = new LineCounter();
  counter.addNewLine(0);
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) counter.addNewLine(i + 1);
  return counter;
}

function firstLine(text: string): string {
  return text.split('\n')[0] ?? text;
}
