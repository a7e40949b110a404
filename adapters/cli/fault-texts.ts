import { type Due, dayOf, type FaultCounts, percent } from '../../src/index.ts';

/** One symptom of one van: its causes as a small table, and the priors to consider where they part. */
export function reportText(counts: FaultCounts): string {
  const { symptom, van, walks, fixed, passed, left, unresolved } = counts;
  const head = `${symptom} ${van}: ${walks} walks, ${fixed} fixed, ${passed} passed (${unresolved} without a likely cause), ${left} left`;
  const rows = counts.causes.map((row) => {
    const found = `${row.cured} cured${row.believed > 0 ? `, ${row.believed} believed` : ''}`;
    const [low, high] = row.interval;
    const range = `${row.cured + row.believed} of ${fixed + passed - unresolved} (${percent(low)} to ${percent(high)})`;
    const proposal = counts.parts ? `  consider ${row.proposed.toFixed(2)}` : '';
    return `  ${row.parts ? '*' : ' '} prior ${row.prior.toFixed(2)}  found ${range.padEnd(20)} ${found.padEnd(24)} ${row.say}${proposal}`;
  });
  return [head, ...rows].join('\n');
}

/** One entry of the list, with who said what. */
export function dueText(due: Due, zone: string): string {
  const why = due.why === 'trick' ? 'fixed, and worth a look' : 'passed to staff';
  const head = `${due.id}  ${due.van}, ${dayOf(due.atMs, zone)}: ${due.title} - ${why}${due.say === null ? '' : `; ${due.say}`}`;
  const who = due.who === null ? [] : [`   ${due.who} said:`];
  return [head, ...who, ...due.tried.map(({ did, answered }) => `   ${did} - ${answered}`)].join('\n');
}
