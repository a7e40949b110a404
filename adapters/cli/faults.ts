import type { Knowledge, VanId } from '../../src/index.ts';
import { command, UsageError, WorkError } from './command.ts';
import { type Accepting, acceptPriors, faultReport, lookAt, undoPriors, vanFaultsDue } from './fault-records.ts';
import { dueText, reportText } from './fault-texts.ts';
import { withData } from './with-data.ts';

export { vanFaultsDue };

export const faults = command({
  name: 'faults',
  does: 'What fault finding has taught: counts against priors, and what to look at before the next hire.',
  usage:
    'report [--symptom ID] [--van NAME] | due [--van NAME] [--looked-at N --by NAME] | accept --symptom ID --van NAME --by NAME | undo N --by NAME [--json]',
  help: [
    'report           how often each cause was found, beside its prior, with 95 % intervals and priors to consider',
    'due              faults that were passed or fixed by a trick, with who said what',
    'accept           writes the priors that report proposes for one symptom and van into the graph',
    'undo N           puts back the priors that stood before accept number N',
    '--symptom ID     one symptom',
    '--van NAME       one van; left out: all',
    '--looked-at N    ticks off entry N of due',
    '--by NAME        who looked, accepted or undid',
    '--json           one JSON object a line',
  ],
  options: {
    symptom: { type: 'string' },
    van: { type: 'string' },
    'looked-at': { type: 'string' },
    by: { type: 'string' },
    json: { type: 'boolean' },
  },
  run: async (values, [action, number], terminal) => {
    if (action !== 'report' && action !== 'due' && action !== 'accept' && action !== 'undo') {
      throw new UsageError('expected report, due, accept or undo');
    }
    if (action !== 'due' && values['looked-at'] !== undefined) throw new UsageError('--looked-at belongs to due');
    return withData(terminal, async ({ store, served, config, now }) => {
      const { knowledge } = served();
      const van = vanNamed(values.van, knowledge);
      const symptom = values.symptom ?? null;
      const accepting = (): Accepting => {
        const { by } = values;
        if (by === undefined || by.trim() === '') throw new UsageError(`expected --by NAME: who wants to ${action}`);
        return { folder: config.graphFolder, store, by, nowMs: now() };
      };
      const print = (line: string, item: unknown): void =>
        terminal.out(`${values.json === true ? JSON.stringify(item) : line}\n`);
      switch (action) {
        case 'report': {
          const report = await faultReport(store, knowledge, symptom, van);
          for (const counts of report) print(reportText(counts), counts);
          if (report.length === 0) terminal.err('No walk has ended yet.\n');
          return 0;
        }
        case 'due': {
          const looked = values['looked-at'];
          if (looked !== undefined) await lookAt(looked, values.by, knowledge, store);
          const list = await vanFaultsDue(store, knowledge, van);
          for (const due of list) print(dueText(due, knowledge.firm.timeZone), due);
          if (list.length === 0) terminal.err('Nothing to look at.\n');
          return 0;
        }
        case 'accept': {
          if (symptom === null || van === null) throw new UsageError('accept needs --symptom and --van');
          const [counts] = await faultReport(store, knowledge, symptom, van);
          if (counts === undefined) throw new WorkError(`no walk of ${symptom} in ${van} has ended yet`);
          const { id, splice } = await acceptPriors(counts, knowledge, accepting());
          const undo = `'pitchhand faults undo ${id}' takes them back`;
          print(`${splice.path}: new priors for ${symptom} in ${van}. The running service takes them up; ${undo}.`, {
            id,
            file: splice.path,
          });
          return 0;
        }
        case 'undo': {
          const { id, splice } = await undoPriors(Number(number), accepting());
          print(`${splice.path}: the priors before ${id} stand again.`, { undone: id });
          return 0;
        }
      }
    });
  },
});

function vanNamed(said: string | undefined, { vans }: Knowledge): VanId | null {
  if (said === undefined) return null;
  const van = said.toLowerCase();
  if (!vans.has(van)) throw new UsageError(`no van '${said}', expected one of ${[...vans.keys()].join(', ')}`);
  return van;
}
