import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Booking,
  type Comparison,
  compareTrials,
  instantOn,
  type Served,
  summaryOf,
  type Trialled,
  type TrialSummary,
  tryQuestion,
} from '../../src/index.ts';
import { readConfig } from '../config.ts';
import { converse } from '../console/ask-lines.ts';
import { command, type Terminal } from './command.ts';
import { progressBar } from './progress-bar.ts';
import { servedGraph } from './served-graph.ts';

const USUAL_DAY = '2027-07-15';

export const trial = command({
  name: 'trial',
  does: 'Replays the firm’s recorded questions against the graph and says what got better and what got worse.',
  usage: '[--accept] [--json] [--jsonl]',
  help: [
    'Compared with the last trial that was accepted (kept in the data folder); the first one is accepted as it is.',
    '--accept  takes these results as what later trials are compared with',
    '--json    one object with the numbers and the changes',
    '--jsonl   one object a question',
    'Exit 1: something got worse, or a danger was missed.',
  ],
  options: { accept: { type: 'boolean' }, json: { type: 'boolean' }, jsonl: { type: 'boolean' } },
  run: async ({ accept, json, jsonl }, _words, terminal) => {
    const served = servedGraph(terminal);
    const config = readConfig(terminal.env);
    const file = join(config.dataFolder, 'trial.json');
    const trialled = runTrial(served, terminal);
    const before = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Trialled[]) : null;
    const summary = summaryOf(trialled);
    const comparison = compareTrials(before ?? trialled, trialled);
    if (before === null || accept === true) keep(file, config.dataFolder, trialled);
    if (jsonl === true) for (const each of trialled) terminal.out(`${JSON.stringify(each)}\n`);
    else if (json === true) terminal.out(`${JSON.stringify({ summary, ...comparison })}\n`);
    else terminal.out(trialText(summary, comparison));
    return comparison.worse.length > 0 || summary.safetyMissed > 0 ? 1 : 0;
  },
});

/** Asks every recorded question in a fresh thread, at noon of a summer day. */
export function runTrial(served: Served, terminal: Pick<Terminal, 'err' | 'isTty'>): readonly Trialled[] {
  const { knowledge } = served;
  const { questions } = knowledge.questions;
  const startMs = instantOn(USUAL_DAY, '12:00', knowledge.firm.timeZone);
  const isNotice = (topic: string): boolean => knowledge.topics.get(topic)?.notice === true;
  const bar = progressBar(questions.length, terminal.err, terminal.isTty);
  return questions.map((question) => {
    bar(question.topic ?? question.outcome ?? '');
    return tryQuestion(question, isNotice, (text, van) => {
      const [asked] = converse([text], van === null ? null : bookingOf(van), startMs, served);
      if (asked === undefined) throw new Error('one text gives one answer');
      const { outcome, topic, options, hazard, lacks } = asked;
      return { outcome, topic, offered: options.map((option) => option.topic), hazard, lacks };
    });
  });
}

function bookingOf(van: string): Booking {
  return {
    ref: 'TRIAL',
    hirer: '',
    firstName: '',
    people: null,
    van,
    site: null,
    pitch: null,
    amps: null,
    from: USUAL_DAY,
    to: null,
    phone: null,
    note: '',
  };
}

function keep(file: string, folder: string, trialled: readonly Trialled[]): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${file}.aside`, JSON.stringify(trialled));
  renameSync(`${file}.aside`, file);
}

function trialText(summary: TrialSummary, { better, worse, changed }: Comparison): string {
  const share = (count: number): string =>
    `${count} (${((100 * count) / Math.max(1, summary.questions)).toFixed(1)} %)`;
  const list = (title: string, changes: Comparison['better']): string[] =>
    changes.length === 0
      ? []
      : [
          `${title}:`,
          ...changes.map(
            (each) => `  '${each.text}'${each.van === null ? '' : ` (${each.van})`}: ${each.before} -> ${each.after}`,
          ),
        ];
  return [
    `${summary.questions} questions: right ${share(summary.right)}, offered ${share(summary.offered)}, passed ${share(summary.passed)}, wrong ${share(summary.wrong)}; dangers missed ${summary.safetyMissed}`,
    ...list('Better', better),
    ...list('Worse', worse),
    ...list('Changed', changed),
    '',
  ].join('\n');
}
