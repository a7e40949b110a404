import { createHash } from 'node:crypto';
import {
  codeNameOf,
  type Knowledge,
  learnSafety,
  type SafetyLine,
  type SecondNet,
  safetyLines,
} from '../../src/index.ts';
import { readKept, writeKept } from './kept-files.ts';

/** All that the safety reading's second net is learnt from. */
export type NetInput = {
  readonly safety: Knowledge['safety'];
  readonly lines: readonly SafetyLine[];
  readonly hash: string;
};

export function netInput({ safety, topics, talk }: Knowledge, code = codeNameOf('safety')): NetInput {
  const lines = safetyLines(safety, topics.entries(), talk);
  const hash = createHash('sha256')
    .update(JSON.stringify([code, safety.reading, lines]))
    .digest('hex')
    .slice(0, 16);
  return { safety, lines, hash };
}

/** The net kept for exactly this input; null when there is none: then the rules stand alone. */
export function readNet(folder: string, { hash }: Pick<NetInput, 'hash'>): SecondNet | null {
  return readKept<SecondNet>(folder, `${hash}.net`);
}

export function learnAndKeepNet(folder: string, { safety, lines, hash }: NetInput): SecondNet {
  const net = learnSafety(safety, lines);
  writeKept(folder, `${hash}.net`, net);
  return net;
}
