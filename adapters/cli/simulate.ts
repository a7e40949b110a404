import {
  createSimulator,
  FEW_STEPS,
  type Knowledge,
  overOptimum,
  type Rival,
  type Row,
  type Score,
  type Summary,
  slipText,
  summarise,
  type TopicId,
  type VanId,
} from '../../src/index.ts';
import { loadGraph } from '../files/served.ts';
import { command, type Terminal, UsageError, WorkError } from './command.ts';
import { graphFolder } from './graph-folder.ts';
import { progressBar } from './progress-bar.ts';

const HOURS = ['open', 'on-call', 'closed'] as const;
type Hours = (typeof HOURS)[number];

export type SimulationRequest = {
  readonly symptom: TopicId | null;
  readonly van: VanId | null;
  readonly hirers: number;
  readonly seed: number;
  readonly hours: Hours;
  readonly error: number | null;
};

export const simulate = command({
  name: 'simulate',
  does: 'Plays simulated hirers through the fault finding and compares it with the best of all walks.',
  usage: '[--symptom water-none] [--van dunlin] [--n 1000] [--seed 1] [--hours open] [--error 0.05] [--json]',
  help: [
    '--symptom ID  one symptom; left out: every symptom that has causes',
    '--van NAME    one van; left out: all',
    '--n N         hirers for each symptom and van (1000)',
    '--seed N      the same seed gives the same hirers (1)',
    '--hours H     what a pass costs: open, on-call or closed, as in firm.yaml (open)',
    '--error E     the chance that an answer is mistaken, 0 to 0.5; left out: as each check says of itself',
    '--json        {"summary":{...},"rows":[...]}',
  ],
  options: {
    symptom: { type: 'string' },
    van: { type: 'string' },
    n: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
    hours: { type: 'string', default: 'open' },
    error: { type: 'string' },
    json: { type: 'boolean' },
  },
  run: async (values, _, terminal) => {
    const { knowledge, slips } = loadGraph(graphFolder(terminal.env), null);
    if (knowledge === null) throw new WorkError(`the graph cannot be read:\n${slips.map(slipText).join('\n')}`);
    const request = requestOf(values, knowledge);
    const rows = runSimulation(knowledge, request, terminal);
    const summary = summarise(rows);
    const passMinutes = passMinutesAt(knowledge, request.hours);
    const { hours, seed } = request;
    if (values.json === true) {
      terminal.out(
        `${JSON.stringify({ summary: { ...summary, hours, passMinutes, seed }, rows: rows.map(rowForJson) })}\n`,
      );
    } else terminal.out(tableOf(rows, summary, `${hours}, ${passMinutes} minutes`));
    return 0;
  },
});

/** Plays every symptom and van asked for, in the graph's order, with a bar on standard error. */
export function runSimulation(
  knowledge: Knowledge,
  request: SimulationRequest,
  { err, isTty }: Pick<Terminal, 'err' | 'isTty'>,
): readonly Row[] {
  const vans = [...knowledge.vans.values()].filter(({ id }) => request.van === null || id === request.van);
  const symptoms = [...knowledge.topics.keys()].filter((id) => request.symptom === null || id === request.symptom);
  const wanted = symptoms.flatMap((symptom) =>
    vans.flatMap((van) => {
      const causes = van.topics.has(symptom) ? van.causes(symptom) : [];
      return causes.length > 0 ? [{ symptom, van: van.id, causes }] : [];
    }),
  );
  if (wanted.length === 0) throw new UsageError('there is no walk for this symptom in this van');
  const play = createSimulator({
    hirers: request.hirers,
    seed: request.seed,
    passMinutes: passMinutesAt(knowledge, request.hours),
    ...(request.error === null ? {} : { error: request.error }),
  });
  const bar = progressBar(wanted.length, err, isTty);
  return wanted.map(({ symptom, van, causes }) => {
    const row = play(symptom, van, causes);
    bar(`${symptom} ${van}`);
    return row;
  });
}

type Values = {
  readonly symptom?: string | undefined;
  readonly van?: string | undefined;
  readonly n: string;
  readonly seed: string;
  readonly hours: string;
  readonly error?: string | undefined;
};

function requestOf(values: Values, { topics, vans }: Knowledge): SimulationRequest {
  const van = values.van?.toLowerCase() ?? null;
  const symptom = values.symptom ?? null;
  if (van !== null && !vans.has(van))
    throw new UsageError(`no van '${van}', expected one of ${[...vans.keys()].join(', ')}`);
  if (symptom !== null && topics.get(symptom)?.kind !== 'symptom') {
    throw new UsageError(`no symptom '${symptom}', expected the id of a symptom, such as water-none`);
  }
  const hours = HOURS.find((each) => each === values.hours);
  if (hours === undefined) throw new UsageError(`no hours '${values.hours}', expected one of ${HOURS.join(', ')}`);
  return {
    symptom,
    van,
    hirers: numberIn('--n', values.n, 1, 1_000_000),
    seed: numberIn('--seed', values.seed, 0, 2 ** 32 - 1),
    hours,
    error: values.error === undefined ? null : numberIn('--error', values.error, 0, 0.5, false),
  };
}

function numberIn(name: string, text: string, least: number, most: number, whole = true): number {
  const value = Number(text);
  const fits = text.trim() !== '' && value >= least && value <= most && (!whole || Number.isInteger(value));
  if (!fits)
    throw new UsageError(
      `${name} is '${text}', expected ${whole ? 'a whole number' : 'a number'} from ${least} to ${most}`,
    );
  return value;
}

function passMinutesAt({ firm }: Knowledge, hours: Hours): number {
  return firm.passMinutes[hours === 'on-call' ? 'onCall' : hours];
}

function rowForJson(row: Row) {
  return { ...row, overOptimum: overOptimum(row) };
}

const COLUMNS: readonly (readonly [string, Rival])[] = [
  ['ours', 'ours'],
  ['best', 'optimum'],
  ['fixes', 'fixesOnly'],
  ['check+fix', 'checkThenFix'],
  ['listed', 'listed'],
  ['random', 'random'],
];

/** Mean minutes to cure of ours, the best of all walks and the four rivals; then our steps and shares. */
export function tableOf(rows: readonly Row[], summary: Summary, pass: string): string {
  const name = Math.max(...rows.map(({ symptom, van }) => symptom.length + van.length + 1), 'all, pooled'.length);
  const heads = [...COLUMNS.map(([head]) => head), 'over', 'steps', 'cured', `in ${FEW_STEPS}`];
  const line = (first: string, cells: readonly string[]) =>
    `${first.padEnd(name)} ${cells.map((cell) => cell.padStart(9)).join(' ')}\n`;
  const cellsOf = (scores: Readonly<Record<Rival, Score>>, over: number) => [
    ...COLUMNS.map(([, rival]) => scores[rival].minutes.toFixed(1)),
    percent(over),
    scores.ours.steps.toFixed(1),
    percent(scores.ours.cured),
    percent(scores.ours.inFewSteps),
  ];
  const { offByTwo } = summary;
  return [
    line('mean minutes to cure', heads),
    ...rows.map((row) => line(`${row.symptom} ${row.van}`, cellsOf(row.scores, overOptimum(row)))),
    line('all, pooled', cellsOf(summary.means, summary.overOptimum)),
    `\n${summary.rows} walks, ${summary.hirers} hirers. A pass costs (${pass}); a fix that takes the hirer as long or longer costs its own minutes as well.\n`,
    `Over the best of all walks: ${percent(summary.overOptimum)}, at most ${percent(summary.overOptimumAtMost)} on one walk.\n`,
    `Under likeliest-first, fixes only: ${percent(summary.underFixesOnly)}; check then fix: ${percent(summary.underCheckThenFix)}.\n`,
    `The best of all walks: ${percent(summary.best.underFixesOnly)} and ${percent(summary.best.underCheckThenFix)} under.\n`,
    `With every prior off by two: ${percent(offByTwo.underFixesOnly)} and ${percent(offByTwo.underCheckThenFix)} under in the mean of all combinations;\n`,
    `  better than fixes only in ${percent(offByTwo.betterThanFixesOnly)} and than check then fix in ${percent(offByTwo.betterThanCheckThenFix)} of them;\n`,
    `  with each walk's worst combination ${percent(offByTwo.worstUnderCheckThenFix)} under check then fix.\n`,
    `Ended in at most ${FEW_STEPS} steps: ${percent(summary.inFewSteps)} of hirers.\n`,
  ].join('');
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}
