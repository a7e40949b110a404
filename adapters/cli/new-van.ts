import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { stringify } from 'yaml';
import { draftVan, type Fitting, fittingsToAsk, type Knowledge, type NewVan, vanId } from '../../src/index.ts';
import { command, type Terminal, UsageError, WorkError } from './command.ts';
import { graphFolder } from './graph-folder.ts';
import { servedGraph } from './served-graph.ts';

export const newVan = command({
  name: 'new-van',
  does: 'Asks what is fitted in a new van and writes its file, which passes the check.',
  usage: 'NAME [--like wren] [--print]',
  help: [
    '--like VAN  the van of the fleet it is most like; asked when left out',
    '--print     prints the file instead of writing it',
    'Answers may come from standard input, one a line; an empty line takes what stands in brackets.',
  ],
  options: { like: { type: 'string' }, print: { type: 'boolean' } },
  run: async (values, [name], terminal) => {
    if (name === undefined) throw new UsageError('expected a NAME');
    const { knowledge } = servedGraph(terminal);
    const file = join(graphFolder(terminal.env), 'vans', `${vanId(name)}.yaml`);
    if (values.print !== true && existsSync(file)) throw new WorkError(`${file} is there already`);
    const answers = createAnswers(terminal);
    const chosen = await ask(name, values.like, knowledge, answers, terminal);
    const { van, look } = draftVan(knowledge, chosen);
    const text = `# ${name}, drafted from ${knowledge.vans.get(chosen.like)?.name ?? chosen.like}. Put right with the van at hand: ${look.length} places below were taken over.\n${stringify(van, { lineWidth: 118 })}`;
    if (values.print === true) terminal.out(text);
    else {
      writeFileSync(file, text, { flag: 'wx' });
      terminal.out(`${file}\n`);
    }
    terminal.err(
      `Look at these with the van at hand:\n${look.map(({ field, from }) => `  ${field} (as in ${from})`).join('\n')}\n`,
    );
    return 0;
  },
});

type Answers = { readonly next: (question: string) => Promise<string> };

function createAnswers(terminal: Terminal): Answers {
  if (terminal.isTty) {
    const lines = createInterface({ input: process.stdin, output: process.stderr });
    return { next: (question) => lines.question(question) };
  }
  const lines = terminal.readIn()[Symbol.asyncIterator]();
  return {
    next: async (question) => {
      terminal.err(question);
      const { value, done } = await lines.next();
      return done === true ? '' : value;
    },
  };
}

async function ask(
  name: string,
  like: string | undefined,
  knowledge: Knowledge,
  answers: Answers,
  terminal: Terminal,
): Promise<NewVan> {
  const vans = [...knowledge.vans.keys()];
  const first = vans[0] ?? '';
  const template =
    like ??
    ((await answers.next(`Which van is it most like? ${vans.join(', ')} [${first}] `)).trim().toLowerCase() || first);
  const scope = knowledge.vans.get(template);
  if (scope === undefined)
    throw new UsageError(`no van '${template}' in the fleet, expected one of ${vans.join(', ')}`);
  const fitted = new Map<string, string | null>();
  for (const fitting of fittingsToAsk(knowledge, scope))
    fitted.set(fitting.role, await askFitting(fitting, answers, terminal));
  return { name, like: template, fitted };
}

/** Asks until the answer is one of the numbers or ids offered. */
async function askFitting(
  { name, options, usual }: Fitting,
  answers: Answers,
  terminal: Terminal,
): Promise<string | null> {
  const list = options.map((option, i) => `${i + 1} ${option.name}`).join(', ');
  const usualAt = options.findIndex((option) => option.part === usual) + 1;
  for (;;) {
    const said = (await answers.next(`${name}: ${list} [${usualAt}] `)).trim();
    const picked =
      said === ''
        ? options[usualAt - 1]
        : options.find((option, i) => said === String(i + 1) || said === option.part || said === option.name);
    if (picked !== undefined) return picked.part;
    terminal.err(`'${said}' is none of them: a number from 1 to ${options.length}\n`);
  }
}
