import type { FileEdit } from './decisions.ts';

const CONTEXT = 3;

/**
 * A change of one file as a unified diff (POSIX diff -u). Lines are matched from both ends, which is exact for a change
 * in one place.
 */
export function lineDiff({ path, before, after }: FileEdit): string {
  if (before === after) return '';
  const [old, now] = [linesOf(before), linesOf(after)];
  let same = 0;
  while (same < old.length && same < now.length && old[same] === now[same]) same++;
  let tail = 0;
  while (
    tail < old.length - same &&
    tail < now.length - same &&
    old[old.length - 1 - tail] === now[now.length - 1 - tail]
  )
    tail++;
  const from = Math.max(0, same - CONTEXT);
  const until = Math.min(CONTEXT, tail);
  const removed = old.slice(same, old.length - tail);
  const added = now.slice(same, now.length - tail);
  const lead = old.slice(from, same);
  const rest = old.slice(old.length - tail, old.length - tail + until);
  const span = (lines: readonly string[]) => `${from + 1},${lead.length + lines.length + rest.length}`;
  return [
    `--- graph/${path}`,
    `+++ graph/${path}`,
    `@@ -${span(removed)} +${span(added)} @@`,
    ...lead.map((line) => ` ${line}`),
    ...removed.map((line) => `-${line}`),
    ...added.map((line) => `+${line}`),
    ...rest.map((line) => ` ${line}`),
    '',
  ].join('\n');
}

function linesOf(text: string): string[] {
  return (text.endsWith('\n') ? text.slice(0, -1) : text).split('\n');
}
