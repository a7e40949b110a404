import {
  figuresCsv,
  type GapGroup,
  type GrowthDecision,
  idFor,
  KINDS,
  type Knowledge,
  type TopicKind,
  thinIn,
  topicDraft,
  withoutBrackets,
  wordingsOf,
} from '../../src/index.ts';
import { createLearn } from '../training/models.ts';
import { command, type ExitCode, type Terminal, UsageError, WorkError } from './command.ts';
import { changeLine, groupLine, groupText, thinText, triedText, unwrittenText } from './gap-texts.ts';
import { createGrowthDesk } from './growth-desk.ts';
import type { GrowthDesk } from './growth-types.ts';
import { progressBar } from './progress-bar.ts';
import { preparedFolder } from './served-graph.ts';
import { withData } from './with-data.ts';

const DECIDING = ['add-wording', 'teach-word', 'new-topic', 'improve', 'lack', 'set-aside'] as const;
type Deciding = (typeof DECIDING)[number];

const OPTIONS = {
  topic: { type: 'string' },
  wording: { type: 'string', multiple: true },
  id: { type: 'string' },
  title: { type: 'string' },
  system: { type: 'string' },
  kind: { type: 'string' },
  about: { type: 'string', multiple: true },
  say: { type: 'string' },
  step: { type: 'string', multiple: true },
  otherwise: { type: 'string' },
  place: { type: 'string' },
  van: { type: 'string' },
  part: { type: 'string' },
  says: { type: 'string' },
  means: { type: 'string' },
  by: { type: 'string' },
  why: { type: 'string' },
  'dry-run': { type: 'boolean' },
  'even-if-worse': { type: 'boolean' },
  'tell-hirers': { type: 'boolean' },
  csv: { type: 'boolean' },
  json: { type: 'boolean' },
} as const;
type Given = {
  readonly [Key in keyof typeof OPTIONS]?: (typeof OPTIONS)[Key] extends { multiple: true }
    ? string[]
    : (typeof OPTIONS)[Key]['type'] extends 'boolean'
      ? boolean
      : string;
};

export const gaps = command({
  name: 'gaps',
  does: 'What the bot could not answer, in groups; teaching it, with a trial before anything is published.',
  usage:
    'list | show N | add-wording N | teach-word N | new-topic N | improve N | lack N | set-aside N | changes | undo ID | figures | thin',
  help: [
    'list              the groups that nobody has decided on, the largest first',
    'show N            group N: its words, what the bot thought, what staff wrote',
    'add-wording N     puts its words under --topic ID (left out: the nearest); --wording TEXT, repeated, instead of all its words',
    'teach-word N      --says WORD --means WORDS [--part ID] for the glossary',
    'new-topic N       [--id ID] [--title TEXT] [--system ID] [--kind KIND] [--about PART]... [--say TEXT] [--step TEXT]... [--otherwise TEXT]',
    '                  what is left out is drafted from the words; --say: what staff wrote back',
    'improve N         --topic ID --place first|facts|otherwise --say TEXT [--van NAME]',
    'lack N            --van NAME --part ID --say TEXT: what the van has instead',
    'set-aside N       none of ours: passed to people without a guess',
    'changes           what was published, the latest first',
    'undo ID           takes a change back out of the graph',
    'figures [--csv]   answered, offered, passed, helped by week, van and system',
    'thin              topics with few wordings, symptoms without causes, parts nobody describes',
    '--by NAME         who decides; needed to publish',
    '--why TEXT        kept with the change',
    '--dry-run         the trial and the diff, nothing published',
    '--even-if-worse   publishes although something got worse; never when a notice would be lost',
    '--tell-hirers     those still on hire who asked get the answer, from the running service',
    '--json            one JSON object a line',
    'Exit 1: refused, by the trial or by the graph.',
  ],
  options: OPTIONS,
  run: async (values, [action, number], terminal) =>
    withData(terminal, async ({ store, config, now }) => {
      const desk = createGrowthDesk({
        store,
        folder: config.graphFolder,
        cacheFolder: preparedFolder(),
        learn: createLearn(preparedFolder()),
        reload: async () => {},
        nowMs: now,
      });
      return runGaps(desk, action, number, values as Given, terminal);
    }),
});

/** One line of the command, on a desk. */
export async function runGaps(
  desk: GrowthDesk,
  action: string | undefined,
  number: string | undefined,
  given: Given,
  terminal: Terminal,
): Promise<ExitCode> {
  const zone = desk.knowledge().firm.timeZone;
  const print = (text: string, item: unknown): void =>
    terminal.out(`${given.json === true ? JSON.stringify(item) : text}\n`);
  switch (action) {
    case 'list':
      for (const group of await desk.groups()) print(groupLine(group, zone), group);
      return 0;
    case 'show': {
      const group = await groupNamed(desk, number);
      print(groupText(group, zone), group);
      return 0;
    }
    case 'changes':
      for (const change of await desk.changes()) print(changeLine(change, zone), change);
      return 0;
    case 'undo': {
      const undone = await desk.undo(numberIn(number), nameOf(given));
      if (undone.kind === 'refused') throw new WorkError(undone.problems.join('\n'));
      if (undone.kind !== 'undone') throw new WorkError(unwrittenText(undone));
      print(`change ${number} is undone`, { undone: numberIn(number) });
      return 0;
    }
    case 'figures': {
      const rows = await desk.figures();
      if (given.json === true) for (const row of rows) print('', row);
      else terminal.out(figuresCsv(rows));
      return 0;
    }
    case 'thin':
      for (const thin of thinIn(desk.knowledge())) print(thinText(thin), thin);
      return 0;
    default: {
      const deciding = DECIDING.find((each) => each === action);
      if (deciding === undefined)
        throw new UsageError('expected list, show, changes, undo, figures, thin or a decision');
      const group = await groupNamed(desk, number);
      return decide(desk, group, decisionOf(deciding, group, given, desk.knowledge()), given, terminal);
    }
  }
}

async function decide(
  desk: GrowthDesk,
  group: GapGroup,
  decision: GrowthDecision,
  given: Given,
  terminal: Terminal,
): Promise<ExitCode> {
  const dry = given['dry-run'] === true;
  const by = dry ? '' : nameOf(given);
  const drafted = desk.draft(decision, group);
  if (drafted.kind === 'refused') throw new WorkError(drafted.problems.join('\n'));
  terminal.err('learning the changed graph, then replaying the questions\n');
  let bar: ((what: string) => void) | null = null;
  const tried = await desk.trial(drafted.draft, {
    onStep: (_done, total) => {
      bar ??= progressBar(total, terminal.err, terminal.isTty);
      bar('');
    },
  });
  const { figures, words, verdict, lost } = tried;
  if (given.json !== true) terminal.out(`${triedText(tried)}\n`);
  const report = { verdict, lost, figures, words, edits: drafted.draft.edits.map(({ path }) => path) };
  const tell = (text: string, more: object): void =>
    terminal.out(`${given.json === true ? JSON.stringify({ ...report, ...more }) : text}\n`);
  if (dry) {
    tell(`Nothing was published (${verdict}).`, { published: null });
    return verdict === 'fit' ? 0 : 1;
  }
  const evenIfWorse = given['even-if-worse'] === true;
  const published = await desk.publish(tried, {
    by,
    why: given.why ?? '',
    evenIfWorse,
    tell: given['tell-hirers'] === true,
  });
  switch (published.kind) {
    case 'published':
      tell(`Published as change ${published.change.id}. The running service takes it up.`, {
        published: published.change.id,
      });
      return 0;
    case 'refused':
      tell(`Refused by the trial, nothing was published:\n  ${published.problems.join('\n  ')}`, { published: null });
      return 1;
    default:
      throw new WorkError(unwrittenText(published));
  }
}

function decisionOf(action: Deciding, group: GapGroup, given: Given, knowledge: Knowledge): GrowthDecision {
  const need = (option: keyof Given): string => {
    const value = given[option];
    if (typeof value !== 'string' || value.trim() === '') throw new UsageError(`${action} needs --${option}`);
    return value;
  };
  const wordings = given.wording ?? wordingsOf(group);
  switch (action) {
    case 'add-wording': {
      const topic = given.topic ?? group.nearest[0];
      if (topic === undefined) throw new UsageError('the bot thought of no topic: name one with --topic');
      return { kind: 'add-wordings', topic, wordings };
    }
    case 'set-aside':
      return { kind: 'set-aside', wordings };
    case 'teach-word':
      return { kind: 'teach-word', says: need('says'), means: need('means'), part: given.part ?? null };
    case 'lack':
      return { kind: 'note-lack', van: need('van').toLowerCase(), part: need('part'), say: need('say') };
    case 'improve': {
      const place = need('place');
      if (place !== 'first' && place !== 'facts' && place !== 'otherwise')
        throw new UsageError(`no place '${place}', expected first, facts or otherwise`);
      return {
        kind: 'improve-answer',
        topic: need('topic'),
        place,
        say: need('say'),
        van: given.van?.toLowerCase() ?? null,
      };
    }
    case 'new-topic': {
      const draft = topicDraft(group, knowledge);
      const kind = given.kind === undefined ? draft.kind : KINDS.find((each): each is TopicKind => each === given.kind);
      if (kind === undefined) throw new UsageError(`no kind '${given.kind}', expected one of ${KINDS.join(', ')}`);
      const system = given.system ?? draft.system;
      const title = given.title ?? draft.title;
      const first = given.say ?? group.staffSaid;
      if (first === null) throw new UsageError('staff wrote nothing back: give the answer with --say');
      return {
        kind: 'new-topic',
        topic: {
          system,
          id: given.id ?? idFor(system, title),
          kind,
          title,
          about: given.about ?? draft.about,
          first: withoutBrackets(first),
          steps: given.step ?? [],
          otherwise: given.otherwise ?? null,
          wordings,
        },
      };
    }
  }
}

async function groupNamed(desk: GrowthDesk, number: string | undefined): Promise<GapGroup> {
  const group = await desk.group(numberIn(number));
  if (group === null) throw new UsageError(`no group ${number} in 'pitchhand gaps list'`);
  return group;
}

function numberIn(text: string | undefined): number {
  if (text === undefined || !/^\d+$/.test(text)) throw new UsageError('expected a number, as the list gives it');
  return Number(text);
}

function nameOf({ by }: Given): string {
  if (by === undefined || by.trim() === '') throw new UsageError('expected --by NAME: who decides');
  return by.trim();
}
