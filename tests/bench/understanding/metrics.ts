/** One test question: how sure the matcher was of its first topic, and whether that was right. */
export type Judged = {
  readonly confidence: number;
  readonly right: boolean;
  /** False for questions that no topic covers: any answer to them is wrong. */
  readonly covered: boolean;
};

/** Share of the covered questions whose first topic is right, nothing refused. */
export function accuracy(all: readonly Judged[]): number {
  const covered = all.filter((one) => one.covered);
  return covered.filter((one) => one.right).length / covered.length;
}

/**
 * Answering the surest first, the share of covered questions answered rightly by the time wrong answers pass `limit` of
 * all questions. Equally sure ones stand or fall together.
 */
export function coverageAt(all: readonly Judged[], limit: number): number {
  const covered = all.filter((one) => one.covered).length;
  const sorted = [...all].sort((a, b) => b.confidence - a.confidence);
  let right = 0;
  let wrong = 0;
  let best = 0;
  for (let i = 0; i < sorted.length; ) {
    const level = sorted[i]?.confidence;
    for (; i < sorted.length && sorted[i]?.confidence === level; i++) {
      if (sorted[i]?.right) right++;
      else wrong++;
    }
    if (wrong > limit * all.length) break;
    best = right;
  }
  return best / covered;
}

/** The chance that a right answer is surer than a wrong one; ties count half. */
export function auroc(all: readonly Judged[]): number {
  const sorted = [...all].sort((a, b) => a.confidence - b.confidence);
  const right = all.filter((one) => one.right).length;
  const wrong = all.length - right;
  let ranks = 0;
  for (let i = 0; i < sorted.length; ) {
    let end = i;
    while (end < sorted.length && sorted[end]?.confidence === sorted[i]?.confidence) end++;
    const rank = (i + end + 1) / 2;
    for (; i < end; i++) if (sorted[i]?.right) ranks += rank;
  }
  return (ranks - (right * (right + 1)) / 2) / (right * wrong);
}

/** Expected calibration error over ten bins of equal width: how far confidence is from being right, on average. */
export function calibrationError(all: readonly Judged[]): number {
  const bins = Array.from({ length: 10 }, () => ({ count: 0, confidence: 0, right: 0 }));
  for (const { confidence, right } of all) {
    const bin = bins[Math.min(9, Math.floor(confidence * 10))] as (typeof bins)[number];
    bin.count++;
    bin.confidence += confidence;
    bin.right += right ? 1 : 0;
  }
  return bins.reduce((sum, { confidence, right }) => sum + Math.abs(confidence - right), 0) / all.length;
}

/** Mean squared distance of the confidence from what came true. */
export function brier(all: readonly Judged[]): number {
  return all.reduce((sum, { confidence, right }) => sum + (confidence - (right ? 1 : 0)) ** 2, 0) / all.length;
}
