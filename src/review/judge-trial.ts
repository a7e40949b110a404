import type { TrialFigures } from './changes.ts';
import { compareTrials, summaryOf, type Trialled } from './trial.ts';

/** Whether a change may be published. `unsafe` stands against everything; `worse` only until somebody says so. */
export type Judged = {
  readonly figures: TrialFigures;
  readonly verdict: 'fit' | 'worse' | 'unsafe';
  /** The safety questions that no longer show their notice. */
  readonly lost: readonly string[];
};

/** Judges a changed graph by the same questions before and after. */
export function judgeTrial(before: readonly Trialled[], after: readonly Trialled[]): Judged {
  const { better, worse, changed } = compareTrials(before, after);
  const held = new Set(before.filter((each) => each.safety && each.verdict === 'right').map(keyOf));
  const lost = after.filter((each) => each.safety && each.verdict !== 'right' && held.has(keyOf(each)));
  return {
    figures: { before: summaryOf(before), after: summaryOf(after), better, worse, changed },
    verdict: lost.length > 0 ? 'unsafe' : worse.length > 0 ? 'worse' : 'fit',
    lost: lost.map(({ text }) => text),
  };
}

function keyOf({ text, van }: Trialled): string {
  return `${van ?? ''}\t${text}`;
}
