import { calibrate, type Knowledge, trainingInput } from '../../src/index.ts';
import { SEED } from '../training/seed.ts';

/** A wording that would go to another topic if its writer had never written. */
export type ConfusionLine = {
  readonly text: string;
  readonly topic: string;
  readonly goesTo: string;
  readonly probability: number;
};

/** Trains without one writer at a time, so it takes about a minute; surest mistakes first. */
export function confusionsOf(knowledge: Knowledge): readonly ConfusionLine[] {
  const { confusions } = calibrate(trainingInput(knowledge), SEED);
  return [...confusions]
    .sort((a, b) => b.probability - a.probability)
    .map(({ text, key, goesTo, probability }) => ({ text, topic: bare(key), goesTo: bare(goesTo), probability }));
}

function bare(key: string): string {
  return key.replace(/^topic\//, '');
}
