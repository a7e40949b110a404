import { checkGraph, inReadingOrder, type Knowledge, type Slip, slipText } from '../../src/index.ts';
import { loadGraph } from '../files/served.ts';
import { counted } from '../pages/counted.ts';
import { command } from './command.ts';
import { confusionsOf } from './confusions.ts';
import { graphFolder } from './graph-folder.ts';

export const check = command({
  name: 'check',
  does: 'Proves the graph: every slip at once, each at its place.',
  usage: '[--counts] [--confusions] [--json]',
  help: [
    '--counts      what is in the graph: vans, topics, wordings, symptoms, causes, pictures, questions',
    '--confusions  wordings that would go to another topic if they were left out of the training',
    '--json        one JSON object a line',
  ],
  options: { counts: { type: 'boolean' }, confusions: { type: 'boolean' }, json: { type: 'boolean' } },
  run: async ({ counts, confusions, json }, _, terminal) => {
    const loaded = loadGraph(graphFolder(terminal.env), null);
    const print = (line: string): void => terminal.out(`${line}\n`);
    const slips = inReadingOrder(
      loaded.knowledge === null ? loaded.slips : checkGraph(loaded.knowledge, loaded.slipAt),
    );
    if (counts === true && loaded.knowledge !== null) printCounts(countsOf(loaded.knowledge), json === true, print);
    if (confusions === true && loaded.knowledge !== null) printConfusions(loaded.knowledge, json === true, print);
    if (counts !== true && confusions !== true) printSlips(slips, json === true, print);
    else for (const slip of slips) terminal.err(`${slipText(slip)}\n`);
    return slips.length === 0 ? 0 : 1;
  },
});

function printSlips(slips: readonly Slip[], json: boolean, print: (line: string) => void): void {
  for (const slip of slips) print(json ? JSON.stringify(slip) : slipText(slip));
  if (!json) print(slips.length === 0 ? 'The graph is clean.' : `${counted(slips.length, 'slip')}.`);
}

type Counts = Readonly<
  Record<'vans' | 'topics' | 'wordings' | 'symptoms' | 'causes' | 'pictures' | 'questions', number>
>;

export function countsOf(knowledge: Knowledge): Counts {
  const topics = [...knowledge.topics.values()];
  return {
    vans: knowledge.vans.size,
    topics: topics.length,
    wordings: topics.reduce((sum, topic) => sum + Object.values(topic.wordings).flat().length, 0),
    symptoms: topics.filter((topic) => topic.kind === 'symptom').length,
    causes: topics.reduce((sum, topic) => sum + topic.causes.length, 0),
    pictures: knowledge.pictures.size,
    questions: knowledge.questions.questions.length,
  };
}

function printCounts(counts: Counts, json: boolean, print: (line: string) => void): void {
  if (json) print(JSON.stringify(counts));
  else for (const [what, count] of Object.entries(counts)) print(`${what.padEnd(10)} ${String(count).padStart(6)}`);
}

function printConfusions(knowledge: Knowledge, json: boolean, print: (line: string) => void): void {
  for (const line of confusionsOf(knowledge)) {
    const { text, topic, goesTo, probability } = line;
    print(json ? JSON.stringify(line) : `${probability.toFixed(2)}  ${topic} -> ${goesTo}  '${text}'`);
  }
}
