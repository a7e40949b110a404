import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Logger } from 'pino';
import {
  type Calibration,
  createMatcher,
  createSafetyReader,
  inputHash,
  type Knowledge,
  type Model,
  type SecondNet,
  type Served,
  takeOver,
  trainingInput,
} from '../../src/index.ts';
import type { Lesson } from './learning.ts';
import { readModelNamed } from './model-files.ts';
import { netInput, readNet, readQuickNet } from './net-files.ts';
import type { Work } from './worker.ts';

/** What has been learnt from a graph. Null: not yet; naive Bayes and the rules alone serve meanwhile. */
export type Learnt = {
  readonly model: Model | null;
  readonly net: SecondNet | null;
  /** Whether all of it, its confidence too, comes of the whole learning of this very graph. */
  readonly isWhole?: boolean;
  /** The names of the files that it is kept in, or will be. */
  readonly files?: readonly string[];
};

/** A graph ready to answer with what has been learnt from it. */
export function servedWith(knowledge: Knowledge, { model, net }: Learnt): Served {
  return { knowledge, matcher: createMatcher(knowledge, model), readDanger: readerOf(knowledge.safety, net) };
}

type ReadDanger = Served['readDanger'];

const readers = new WeakMap<Knowledge['safety'], { readonly net: SecondNet | null; readonly read: ReadDanger }>();

/** An edit elsewhere in the graph leaves the safety data the very object it was: its rules need not be compiled again. */
function readerOf(safety: Knowledge['safety'], net: SecondNet | null): ReadDanger {
  const found = readers.get(safety);
  if (found?.net === net) return found.read;
  const read = createSafetyReader(safety, net);
  readers.set(safety, { net, read });
  return read;
}

/** A graph that is being served, and what its messages are read with. */
export type Serving = { readonly knowledge: Knowledge } & Pick<Learnt, 'model' | 'net'>;

/**
 * Where nothing has been learnt of an edited graph yet, the model that served before is taken over to it: better than naive
 * Bayes for all that the edit does not touch, and ready sooner. The second net stays as well, unless the edit is of the safety
 * data: it might doubt a rule that was just written.
 */
export function takenOver(learnt: Learnt, knowledge: Knowledge, { knowledge: last, model, net }: Serving): Learnt {
  const kept = { ...learnt, net: learnt.net ?? (knowledge.safety === last.safety ? net : null) };
  if (learnt.model !== null || model === null) return kept;
  const [before, after] = [trainingInput(last), trainingInput(knowledge)];
  return { ...kept, model: takeOver({ model, before, after, hash: inputHash(after) }) };
}

/**
 * What was learnt, with the confidence fitted on another graph where it has none of its own: fitting it takes five times as
 * long as the weights.
 */
export function calibratedAs(learnt: Learnt, calibration: Calibration | null): Learnt {
  const { model } = learnt;
  return { ...learnt, model: model === null ? null : { ...model, calibration: model.calibration ?? calibration } };
}

/**
 * What is at hand for a graph; `onBetter` is called for each better one that is learnt beside the server.
 *
 * @param from A graph served before that was wholly learnt: what differs is learnt on from there first.
 */
export type Models = (knowledge: Knowledge, from: Knowledge | null, onBetter: (learnt: Learnt) => void) => Learnt;

/** Where something good is served, the whole learning waits so long: the operator may be at the next change. */
const SETTLE_MS = 30_000;
/** Where better is missing it waits only for the messages that came while the graph was read: a worker takes time to start. */
const SOON_MS = 150;

/** Stands by itself: made beside the learning it would hold on to the whole graph as it was read. */
const NOTHING_LEARNS = (): void => {};

/**
 * Finds what was learnt before, and learns in a worker what is missing. One graph at a time: a later one ends the other's.
 *
 * @param file     The worker's built file; null, the one beside this program.
 * @param settleMs How long the whole learning of a change that was tried waits.
 */
export function createModels(folder: string, log: Logger, file: string | null = null, settleMs = SETTLE_MS): Models {
  let end = NOTHING_LEARNS;
  return (knowledge, from, onBetter) => {
    const lesson = lessonOf(knowledge);
    const learnt = learntOf(folder, lesson);
    const begin = (): void => {
      const workerData: Work = {
        folder,
        lesson,
        wanted: ['net', 'weights', 'calibration'],
        from: from === null ? null : lessonOf(from),
        whole: true,
      };
      const worker = new Worker(file ?? workerFile(), { workerData });
      end = () => void worker.terminate();
      worker.unref();
      worker.on('message', (what: unknown) => {
        log.info({ what }, 'learnt from the graph');
        onBetter(learntOf(folder, lesson));
      });
      worker.on('error', (error) => log.warn({ err: error }, 'learning failed; the simpler reading goes on'));
    };
    end();
    end = NOTHING_LEARNS;
    if (learnt.isWhole !== true) {
      const timer = setTimeout(
        begin,
        learnt.model !== null && learnt.net !== null ? settleMs : Math.min(settleMs, SOON_MS),
      );
      timer.unref();
      end = () => clearTimeout(timer);
    }
    return learnt;
  };
}

export type LearnOptions = {
  /** A graph that differs little, wholly learnt: only what differs is learnt, on from there. */
  readonly from?: Knowledge;
  /** Ends it: its workers end at once, and it rejects. */
  readonly signal?: AbortSignal | undefined;
};

/** Learns the weights and the second net of a graph that may never be served, and nothing more. */
export type Learn = (knowledge: Knowledge, how?: LearnOptions) => Promise<Learnt>;

const PATIENCE_MS = 180_000;

/**
 * @param worker     The worker's built file; null, the one beside this program.
 * @param patienceMs After so long it rejects.
 */
export function createLearn(folder: string, worker: string | null = null, patienceMs = PATIENCE_MS): Learn {
  return async (knowledge, { from, signal } = {}) => {
    const lesson = lessonOf(knowledge);
    const learnt = learntOf(folder, lesson);
    const missing = [
      ...(learnt.net === null ? ['net' as const] : []),
      ...(learnt.model === null ? ['weights' as const] : []),
    ];
    if (missing.length === 0) return learnt;
    const file = worker ?? workerFile();
    const patience = AbortSignal.timeout(patienceMs);
    const end = signal === undefined ? patience : AbortSignal.any([patience, signal]);
    const work = { folder, lesson, from: from === undefined ? null : lessonOf(from), whole: false };
    // Side by side: neither needs the other.
    await Promise.all(missing.map((piece) => workOut(file, { ...work, wanted: [piece] }, end)));
    return learntOf(folder, lesson);
  };
}

/** Resolves when the worker has ended, for whatever reason but a failure of its own. */
function workOut(file: string, work: Work, end: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    if (end.aborted) {
      reject(end.reason);
      return;
    }
    const worker = new Worker(file, { workerData: work });
    const stop = (): void => void worker.terminate();
    end.addEventListener('abort', stop, { once: true });
    worker.on('error', reject);
    worker.on('exit', () => {
      end.removeEventListener('abort', stop);
      if (end.aborted) reject(end.reason);
      else resolve();
    });
  });
}

/** What is at hand, without learning anything: for commands. */
export function learntFor(folder: string, knowledge: Knowledge): Learnt {
  return learntOf(folder, lessonOf(knowledge));
}

function lessonOf(knowledge: Knowledge): Lesson {
  const input = trainingInput(knowledge);
  return { input, hash: inputHash(input), net: netInput(knowledge) };
}

function learntOf(folder: string, { hash, net }: Lesson): Learnt {
  const [model, secondNet] = [readModelNamed(folder, hash), readNet(folder, net)];
  return {
    model: model ?? readModelNamed(folder, hash, 'quick'),
    net: secondNet ?? readQuickNet(folder, net),
    isWhole: model !== null && model.calibration !== null && secondNet !== null,
    files: [
      ...['model', 'quick', 'warm'].map((kind) => `${hash}.${kind}`),
      ...['net', 'pace', 'quicknet'].map((kind) => `${net.hash}.${kind}`),
    ],
  };
}

function workerFile(): string {
  const built = join(dirname(fileURLToPath(import.meta.url)), 'training-worker.mjs');
  if (!existsSync(built)) throw new Error(`the training worker is not built: ${built}`);
  return built;
}
