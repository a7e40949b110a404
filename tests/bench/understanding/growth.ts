import { seeded } from '../../../src/basics/seeded.ts';
import { bayesMethod } from './matchers.ts';
import type { Example } from './open-data.ts';

/** Milliseconds at the middle and at the 99th percentile. */
export function spread(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) =>
    (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0).toFixed(3);
  return `${at(0.5)} / ${at(0.99)}`;
}

export function timed(texts: readonly string[], run: (text: string) => void): readonly number[] {
  for (const text of texts) run(text);
  return texts.map((text) => {
    const from = performance.now();
    run(text);
    return performance.now() - from;
  });
}

/**
 * Naive Bayes with more and more wordings: the open data's lines, then seeded splices of two of them, over at most
 * 5,000 topics. It is what answers while weights are fitted, and at sizes where fitting takes too long.
 */
export function growth(all: readonly Example[], sizes: readonly number[]): readonly string[] {
  const random = seeded(5);
  const pick = () => all[Math.floor(random() * all.length)] as Example;
  return sizes.map((size) => {
    const topics = Math.min(5000, Math.max(20, Math.round(size / 20)));
    const lines = Array.from({ length: size }, (_, i) => {
      const [a, b] = [pick(), pick()];
      const text = i < all.length ? (all[i] as Example).text : `${half(a.text, 0)} ${half(b.text, 1)}`;
      return { text, label: `t${Math.floor(random() * topics)}` };
    });
    const from = performance.now();
    const guess = bayesMethod.build(lines);
    const built = performance.now() - from;
    const times = timed(
      Array.from({ length: 500 }, () => pick().text),
      guess,
    );
    return `| ${size.toLocaleString('en')} | ${topics.toLocaleString('en')} | ${spread(times)} | ${(built / 1000).toFixed(1)} s |`;
  });
}

function half(text: string, which: 0 | 1): string {
  const words = text.split(' ');
  const middle = Math.ceil(words.length / 2);
  return (which === 0 ? words.slice(0, middle) : words.slice(middle)).join(' ');
}
