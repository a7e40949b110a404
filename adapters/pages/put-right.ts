import type { Line } from '../../src/index.ts';

/** A line as it reads now: what was put right stands in the place of what was said first. */
export type StandingLine = Line & { readonly putRightMs?: number };

/** The lines as they read now, in the order in which they were first said. */
export function asTheyStand(lines: readonly Line[]): readonly StandingLine[] {
  const newest = new Map<number, Line>();
  for (const line of lines) if (line.reply?.putsRight !== undefined) newest.set(line.reply.putsRight, line);
  return lines.flatMap((line): StandingLine[] => {
    if (line.reply?.putsRight !== undefined) return [];
    const right = newest.get(line.id);
    if (right === undefined) return [line];
    return [{ ...line, text: right.text, reply: right.reply, sent: right.sent, putRightMs: right.atMs }];
  });
}
