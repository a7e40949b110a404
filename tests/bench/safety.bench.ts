import { readFileSync } from 'node:fs';
import { bench, describe } from 'vitest';
import { parse } from 'yaml';
import { learnSafety, safetyLines } from '../../src/safety/learn-safety.ts';
import { createSafetyReader } from '../../src/safety/reader.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

const { safety, topics, talk } = realKnowledge();
const lines = safetyLines(safety, topics.entries(), talk);
const net = learnSafety(safety, lines);
const withNet = createSafetyReader(safety, net);
const rulesOnly = createSafetyReader(safety);
const { messages } = parse(readFileSync('tests/questions/safety.yaml', 'utf8')) as {
  messages: { text: string; half: string }[];
};
const texts = messages.filter(({ half }) => half === 'tuning').map(({ text }) => text);
const long = texts.slice(0, 12).join('. ');
const context = { before: '', vanHas: () => true };
let next = 0;
const one = () => texts[next++ % texts.length] ?? '';

describe('the safety reading, one message (to hold: under 0.2 ms)', () => {
  bench('rules and second net', () => {
    withNet(one(), context);
  });
  bench('rules alone', () => {
    rulesOnly(one(), context);
  });
  bench('twelve messages in one, each sentence by itself as well', () => {
    withNet(long, context);
  });
});

describe('getting ready', () => {
  bench('compiling the reading with a net at hand', () => {
    createSafetyReader(safety, net);
  });
  bench('learning the second net, in a worker', () => void learnSafety(safety, lines), {
    iterations: 1,
    warmupIterations: 0,
    time: 0,
  });
});
