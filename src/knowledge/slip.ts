/** An error in the graph's files, with its place. Lines and columns count from 1. */
export type Slip = {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly field: string;
  readonly problem: string;
  readonly expected: string;
};

/** graph/vans/wren.yaml:12:3 has.fridge-rotary: no such part (expected a part of some system file) */
export function slipText(slip: Slip): string {
  const expected = slip.expected === '' ? '' : ` (expected ${slip.expected})`;
  return `${slip.file}:${slip.line}:${slip.column} ${slip.field}: ${slip.problem}${expected}`;
}

/** By file, then place: the order in which a person mends them. */
export function inReadingOrder(slips: readonly Slip[]): Slip[] {
  return [...slips].sort(
    (a, b) =>
      a.file.localeCompare(b.file) || a.line - b.line || a.column - b.column || a.problem.localeCompare(b.problem),
  );
}
