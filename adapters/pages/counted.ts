/** '1 question', '1,200 questions': a count with its noun, whose plural ends in s. */
export function counted(count: number, what: string): string {
  return `${count.toLocaleString('en-GB')} ${what}${count === 1 ? '' : 's'}`;
}
