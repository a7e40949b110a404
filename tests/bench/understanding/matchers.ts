import Fuse from 'fuse.js';
import MiniSearch from 'minisearch';
import { calibrate } from '../../../src/match/calibrate.ts';
import { type Calibration, chanceOf, signalsOf } from '../../../src/match/calibration.ts';
import { packedScorer } from '../../../src/match/model.ts';
import { naiveBayes } from '../../../src/match/naive-bayes.ts';
import { prepare } from '../../../src/match/prepare.ts';
import { createRanker, type Ranker, roleOf } from '../../../src/match/ranking.ts';
import { createSee, type See } from '../../../src/match/seen.ts';
import { train } from '../../../src/match/train.ts';
import { optionsFor, TRAIN, type TrainOptions } from '../../../src/match/train-options.ts';
import type { TrainingInput } from '../../../src/match/training-input.ts';
import { type Space, vectorOf } from '../../../src/match/vector.ts';
import type { Example } from './open-data.ts';

/** The likeliest topic of a text and how sure the matcher is of it. */
export type Guess = { readonly label: string | null; readonly confidence: number };
export type Guesser = (text: string) => Guess;
export type Method = { readonly name: string; readonly build: (lines: readonly Example[]) => Guesser };

/** Open data as the project's own training takes it: no glossary, no parts, no kin. */
export function inputOf(lines: readonly Example[]): TrainingInput {
  return {
    lines: lines.map(({ text, label }) => ({ text, key: `topic/${label}`, writer: 'data' })),
    glossary: [],
    namings: [],
    groups: {},
    vans: { all: { keys: [...new Set(lines.map(({ label }) => `topic/${label}`))], parts: [] } },
  };
}

function guesser(
  keys: readonly string[],
  see: See,
  space: Space,
  rank: Ranker,
  calibration: Calibration | null,
): Guesser {
  const inScope = keys.map(() => true);
  return (text) => {
    const seen = see(text);
    const ranking = rank(vectorOf(seen, space), inScope, null);
    const best = ranking.inScope[0];
    if (best === undefined) return { label: null, confidence: 0 };
    const chance =
      calibration === null ? best.probability : chanceOf(calibration.best, signalsOf(ranking, seen, new Set()));
    return { label: (keys[best.label] as string).slice('topic/'.length), confidence: chance };
  };
}

export function softmaxMethod(name: string, options: TrainOptions, calibrated: boolean): Method {
  return {
    name,
    build: (lines) => {
      const input = inputOf(lines);
      const { keys, space, vocabulary, weights } = train(input, 1, options);
      const rank = createRanker({ scorer: packedScorer(weights), roles: keys.map(roleOf), temperature: 1 });
      const calibration = calibrated ? calibrate(input, 1, options).calibration : null;
      return guesser(keys, createSee(input, vocabulary), space, rank, calibration);
    },
  };
}

export const bayesMethod: Method = {
  name: 'naive Bayes',
  build: (lines) => {
    const { keys, labels, vectors, space, see } = prepare(inputOf(lines), optionsFor(lines.length, TRAIN).fewestLines);
    const scorer = naiveBayes(vectors, labels, keys.length, space.names.length);
    return guesser(keys, see, space, createRanker({ scorer, roles: keys.map(roleOf), temperature: 0.5 }), null);
  },
};

function fuseMethod(name: string, options: object): Method {
  return {
    name,
    build: (lines) => {
      const fuse = new Fuse([...lines], { keys: ['text'], includeScore: true, ...options });
      return (text) => {
        const [hit] = fuse.search(text, { limit: 1 });
        return hit === undefined
          ? { label: null, confidence: 0 }
          : { label: hit.item.label, confidence: 1 - (hit.score ?? 1) };
      };
    },
  };
}

const miniSearch: Method = {
  name: 'MiniSearch fuzzy 0.2 + prefix',
  build: (lines) => {
    const search = new MiniSearch({ fields: ['text'], storeFields: ['label'] });
    search.addAll(lines.map((line, id) => ({ id, ...line })));
    return (text) => {
      const [hit] = search.search(text, { fuzzy: 0.2, prefix: (term) => term.length >= 4 });
      return hit === undefined
        ? { label: null, confidence: 0 }
        : { label: String(hit['label']), confidence: hit.score };
    };
  },
};

export const OURS = softmaxMethod('ours', TRAIN, true);
export const OTHERS: readonly Method[] = [
  bayesMethod,
  fuseMethod('fuse.js default', {}),
  fuseMethod('fuse.js token search', { useTokenSearch: true }),
  miniSearch,
];
