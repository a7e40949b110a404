import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Booking,
  type Comparison,
  choiceId,
  compareTrials,
  instantOn,
  type Misses,
  missesOf,
  newThread,
  type RecordedQuestion,
  type Served,
  summaryOf,
  type Trialled,
  type TrialSummary,
  tryQuestion,
  turn,
} from '../../src/index.ts';
import { readConfig } from '../config.ts';
import { type Asked, askedOf, converse, messageOf } from '../console/ask-lines.ts';
import { counted } from '../pages/counted.ts';
import { openSqlite } from '../sqlite/sqlite-store.ts';
import { command, type Terminal } from './command.ts';
import { createGapRecords } from './gap-records.ts';
import { progressBar } from './progress-bar.ts';
import { servedGraph } from './served-graph.ts';
import { vanBooking } from './van-booking.ts';
import { databaseFile } from './with-data.ts';

const USUAL_DAY = '2027-07-15';

export const trial = command({
  name: 'trial',
  does: 'Replays recorded and recent real questions against the graph and says what got better and what got worse.',
  usage: '[--accept] [--json] [--jsonl]',
  help: [
    'Compared with the last trial that was accepted (kept in the data folder); the first one is accepted as it is.',
    '--accept  takes these results as what later trials are compared with',
    '--json    one object with the numbers and the changes',
    '--jsonl   one object a question',
    'What was wrong then and still is counts as known: it is named, and is no regression.',
    'Exit 1: something got worse, or a danger is missed that was not missed then.',
  ],
  options: { accept: { type: 'boolean' }, json: { type: 'boolean' }, jsonl: { type: 'boolean' } },
  run: async ({ accept, json, jsonl }, _words, terminal) => {
    const served = servedGraph(terminal);
    const config = readConfig(terminal.env);
    const file = join(config.dataFolder, 'trial.json');
    const real = await realQuestions(config.dataFolder, served);
    const trialled = runTrial(served, real, terminal);
    const before = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Trialled[]) : null;
    const summary = summaryOf(trialled);
    const comparison = compareTrials(before ?? trialled, trialled);
    const misses = missesOf(before ?? trialled, trialled);
    if (before === null || accept === true) keep(file, config.dataFolder, trialled);
    if (jsonl === true) for (const each of trialled) terminal.out(`${JSON.stringify(each)}\n`);
    else if (json === true) terminal.out(`${JSON.stringify({ summary, ...comparison, misses })}\n`);
    else terminal.out(trialText(summary, comparison, misses));
    return comparison.worse.length > 0 || misses.fresh.length > 0 ? 1 : 0;
  },
});

/** The latest that hirers asked, stripped of personal details; none where nobody has asked yet. */
async function realQuestions(dataFolder: string, served: Served): Promise<readonly RecordedQuestion[]> {
  const database = databaseFile(dataFolder);
  if (!existsSync(database)) return [];
  const { store } = await openSqlite(database);
  try {
    return await createGapRecords(store, Date.now).realQuestions(served.knowledge);
  } finally {
    await store.close();
  }
}

/** Asks every recorded question, and those given, in a fresh thread, at noon of a summer day. */
export function runTrial(
  served: Served,
  real: readonly RecordedQuestion[],
  terminal: Pick<Terminal, 'err' | 'isTty'>,
): readonly Trialled[] {
  const questions = [...served.knowledge.questions.questions, ...real];
  const bar = progressBar(questions.length, terminal.err, terminal.isTty);
  const tryOne = trier(served);
  return questions.map((question) => {
    bar(question.topic ?? question.outcome ?? '');
    return tryOne(question);
  });
}

/** Replays one question at a time, for those who must not hold up others. */
export function trier(served: Served): (question: RecordedQuestion) => Trialled {
  const { knowledge } = served;
  const isNotice = (topic: string): boolean => knowledge.topics.get(topic)?.notice === true;
  return (question) =>
    tryQuestion(question, isNotice, (text, van) => {
      const { outcome, topic, options, hazard, lacks } = askedOnce(text, van, served);
      return { outcome, topic, offered: options.map((option) => option.topic), hazard, lacks };
    });
}

/** What one text comes to in a fresh thread of a van's booking. */
export function askedOnce(text: string, van: string | null, served: Served): Asked {
  const startMs = instantOn(USUAL_DAY, '12:00', served.knowledge.firm.timeZone);
  const [asked] = converse([text], van === null ? null : trialBooking(van), startMs, served);
  if (asked === undefined) throw new Error('one text gives one answer');
  return asked;
}

/** A topic's answer as a hirer of this van reads it. */
export function topicAsked(topic: string, van: string, served: Served): string {
  const startMs = instantOn(USUAL_DAY, '12:00', served.knowledge.firm.timeZone);
  const thread = newThread({ id: 'trial', channel: 'console', address: 'trial', booking: 'TRIAL', van }, startMs);
  const message = messageOf('', 0, startMs, choiceId({ kind: 'topic', topic }));
  return askedOf(turn(thread, message, served, { booking: trialBooking(van), code: 'none' }, startMs)).reply;
}

function trialBooking(van: string): Booking {
  return vanBooking({ ref: 'TRIAL', hirer: '', van, from: USUAL_DAY, to: null });
}

function keep(file: string, folder: string, trialled: readonly Trialled[]): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${file}.aside`, JSON.stringify(trialled));
  renameSync(`${file}.aside`, file);
}

function asked({ text, van }: Pick<Trialled, 'text' | 'van'>): string {
  return `'${text}'${van === null ? '' : ` (${van})`}`;
}

function trialText(summary: TrialSummary, { better, worse, changed }: Comparison, { known, fresh }: Misses): string {
  const share = (count: number): string =>
    `${count} (${((100 * count) / Math.max(1, summary.questions)).toFixed(1)} %)`;
  const list = (title: string, changes: Comparison['better']): string[] =>
    changes.length === 0
      ? []
      : [`${title}:`, ...changes.map((each) => `  ${asked(each)}: ${each.before} -> ${each.after}`)];
  const missed = (title: string, trialled: readonly Trialled[]): string[] =>
    trialled.length === 0
      ? []
      : [`${title}:`, ...trialled.map((each) => `  ${asked(each)}: ${each.got} instead of ${each.expected}`)];
  return [
    `${counted(summary.questions, 'question')}: right ${share(summary.right)}, offered ${share(summary.offered)}, passed ${share(summary.passed)}, wrong ${share(summary.wrong)}; dangers missed ${summary.safetyMissed}`,
    ...list('Better', better),
    ...list('Worse', worse),
    ...list('Changed', changed),
    ...missed('Dangers newly missed', fresh),
    ...missed(
      `Known, as when last accepted: ${counted(known.filter(({ safety }) => safety).length, 'danger')} missed`,
      known.filter(({ safety }) => safety),
    ),
    ...missed(
      `Known, as when last accepted: ${known.filter(({ safety }) => !safety).length} wrong`,
      known.filter(({ safety }) => !safety),
    ),
    '',
  ].join('\n');
}
