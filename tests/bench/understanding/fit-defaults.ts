import { calibrate } from '../../../src/match/calibrate.ts';
import type { Calibration } from '../../../src/match/calibration.ts';
import { BAYES_TEMPERATURE } from '../../../src/match/ready.ts';
import { TRAIN } from '../../../src/match/train-options.ts';
import { trainingInput } from '../../../src/match/training-input.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

/*
 * Fits the calibrations that serve a graph until its own are fitted: prints the numbers of
 * src/match/default-calibration.ts. Takes a minute or two.
 */

const input = trainingInput(realKnowledge());

function show(name: string, { best, among, lacks }: Calibration): void {
  const row = (weights: readonly number[]) => `[${weights.map((each) => Number(each.toFixed(3))).join(', ')}]`;
  console.log(`${name}\n  best: ${row(best)},\n  among: ${row(among)},\n  lacks: ${row(lacks)},`);
}

show('fitted weights', calibrate(input, 1).calibration);
// At a rate of nothing only what naive Bayes adds is left of the weights.
const bayesAlone = { ...TRAIN, rate: 0, bayes: 1 / BAYES_TEMPERATURE };
show('naive Bayes', calibrate(input, 1, bayesAlone).calibration);
