import { seeded } from '../../../src/basics/seeded.ts';
import type { Guesser, Method } from './matchers.ts';
import { accuracy, auroc, coverageAt, type Judged } from './metrics.ts';
import { type DataSet, withTypos } from './open-data.ts';

/** Judges every question of a set; `most` of them, evenly picked, for matchers that take tens of milliseconds each. */
export function judged(guess: Guesser, { test }: DataSet, typos: boolean, most = Infinity): readonly Judged[] {
  const random = seeded(7);
  const every = Math.max(1, Math.ceil(test.length / most));
  return test
    .filter((_, i) => i % every === 0)
    .map(({ text, label }) => {
      const { label: found, confidence } = guess(typos ? withTypos(text, random) : text);
      return { confidence, right: label !== null && found === label, covered: label !== null };
    });
}

/** 'acc/c5/auroc' of a method on a set, and the accuracy under typo stress. */
export function cell(
  method: Method,
  set: DataSet,
  most = Infinity,
): { readonly plain: string; readonly typos: string } {
  const guess = method.build(set.train);
  const plain = judged(guess, set, false, most);
  const stressed = judged(guess, set, true, most);
  const percent = (share: number) => (100 * share).toFixed(0);
  const area = auroc(plain).toFixed(2).replace('0.', '.');
  return {
    plain: `${percent(accuracy(plain))}/${percent(coverageAt(plain, 0.05))}/${area}`,
    typos: percent(accuracy(stressed)),
  };
}
