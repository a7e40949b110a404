import { createHash } from 'node:crypto';
import {
  codeNameOf,
  type Knowledge,
  type LearntNet,
  learnSafetyPaced,
  type SafetyLine,
  type SecondNet,
  safetyLines,
} from '../../src/index.ts';
import { readKept, writeKept } from './kept-files.ts';

/** All that the safety reading's second net is learnt from. */
export type NetInput = {
  readonly safety: Knowledge['safety'];
  /** A name for the words it reads with, the code's included: only nets that read alike can be learnt on from each other. */
  readonly reading: string;
  readonly lines: readonly SafetyLine[];
  readonly hash: string;
};

export function netInput({ safety, topics, talk }: Knowledge, code = codeNameOf('safety')): NetInput {
  const lines = safetyLines(safety, topics.entries(), talk);
  const { examples: _, ...words } = safety.reading;
  const reading = nameOf([code, words]);
  return { safety, reading, lines, hash: nameOf([reading, lines]) };
}

function nameOf(what: unknown): string {
  return createHash('sha256').update(JSON.stringify(what)).digest('hex').slice(0, 16);
}

/** The net kept for exactly this input; null when there is none: then the rules stand alone. */
export function readNet(folder: string, { hash }: Pick<NetInput, 'hash'>): SecondNet | null {
  return readKept<SecondNet>(folder, `${hash}.net`);
}

/** The net with what is needed to learn on from it. */
export function readLearntNet(folder: string, { hash }: Pick<NetInput, 'hash'>): LearntNet | null {
  const net = readNet(folder, { hash });
  const pace = readKept<LearntNet['pace']>(folder, `${hash}.pace`);
  return net === null || pace === null ? null : { net, pace };
}

export function learnAndKeepNet(folder: string, { safety, lines, hash }: NetInput): SecondNet {
  const { net, pace } = learnSafetyPaced(safety, lines);
  // What only a trial reads is kept by itself, so that a start need not.
  writeKept(folder, `${hash}.pace`, pace);
  writeKept(folder, `${hash}.net`, net);
  return net;
}

/** A net that was learnt on from another graph's. */
export function readQuickNet(folder: string, { hash }: Pick<NetInput, 'hash'>): SecondNet | null {
  return readKept<SecondNet>(folder, `${hash}.quicknet`);
}

export function writeQuickNet(folder: string, { hash }: Pick<NetInput, 'hash'>, net: SecondNet): void {
  writeKept(folder, `${hash}.quicknet`, net, 1);
}
