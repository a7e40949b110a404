import { textSeed } from '../basics/seeded.ts';
import { type Model, packWeights } from './model.ts';
import { mixIn, naiveBayes } from './naive-bayes.ts';
import { prepare } from './prepare.ts';
import { fitRidge } from './ridge.ts';
import { fitSoftmax } from './softmax.ts';
import { optionsFor, TRAIN, type TrainOptions } from './train-options.ts';
import { inputHash, type TrainingInput } from './training-input.ts';
import { packWarm, type Warm } from './warm.ts';

/**
 * Fits in steps, so that a worker can stop in between: `step` does one epoch and says whether there are more. `warm` is for
 * learning on from the model.
 */
export type Training = { readonly step: () => boolean; readonly model: () => Model; readonly warm: () => Warm };

/** Fits the weights. Deterministic: input, seed and options give the same model to the bit. */
export function startTraining(input: TrainingInput, seed: number, given: TrainOptions = TRAIN): Training {
  const options = optionsFor(input.lines.length, given);
  const prepared = prepare(input, options.fewestLines);
  const { vectors, labels, keys, space, vocabulary } = prepared;
  const bayes = naiveBayes(vectors, labels, keys.length, space.names.length);
  const lineSeeds = Int32Array.from(input.lines, ({ text, key }) => textSeed(`${key}\t${text}`));
  const featureSeeds = Int32Array.from(space.names, textSeed);
  const task = { ...prepared, lineSeeds, featureSeeds, classes: keys.length, featureCount: space.names.length };
  const fit = fitSoftmax(task, options, seed);
  const hash = inputHash(input);
  let done = 0;
  return {
    step: () => {
      if (done < options.epochs) fit.epoch();
      done++;
      return done < options.epochs;
    },
    model: () => {
      const weights = fit.weights();
      mixIn(weights.rows, bayes, options.bayes);
      if (options.ridge > 0) {
        const ridge = fitRidge(vectors, labels, keys.length, space.names.length);
        const share = (options.ridge * labels.length) / keys.length;
        for (let i = 0; i < ridge.length; i++) {
          weights.rows[i] = (weights.rows[i] as number) + share * (ridge[i] as number);
        }
      }
      return { hash, keys, space, vocabulary, weights: packWeights(weights), calibration: null };
    },
    warm: () => packWarm(hash, fit.state, { groupCount: prepared.groupCount, offsets: bayes.offset }),
  };
}

/** All steps at once. */
export function train(input: TrainingInput, seed: number, options: TrainOptions = TRAIN): Model {
  const training = startTraining(input, seed, options);
  while (training.step());
  return training.model();
}
