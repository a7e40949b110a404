import { ID_PATTERN } from '../basics/ids.ts';
import { never } from '../basics/never.ts';
import { plainly } from '../check/wordings.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import type { FieldPath, GraphFile } from '../knowledge/yaml-file.ts';
import type { FileEdit, GrowthDecision, NewTopic, Proposed } from './decisions.ts';
import { LONGEST_SAY, LONGEST_WORDING, textProblems, wordingProblems } from './wording-problems.ts';
import { kindAt, plainScalar, quoted, standsApart, withItems, withKey, withScalar } from './yaml-edits.ts';

/** Under whose name words from gaps stand. */
export const HIRERS = 'hirers';
/** Of a new topic's wordings so many are kept back as recorded questions, which are never trained on. */
export const KEPT_BACK = 2;

/** The new text of a file; or what stands in the way. */
type Written = string | { readonly problem: string };
type Rewrite = { readonly path: string; readonly write: (yaml: string) => Written };

/**
 * Turns a decision into edits of the graph's files. Nothing is written, and nothing is proved beyond the decision's own
 * words: {@link candidateOf} links the changed graph.
 */
export function propose(decision: GrowthDecision, files: readonly GraphFile[], knowledge: Knowledge): Proposed {
  const problems = problemsOf(decision, knowledge);
  if (problems.length > 0) return { kind: 'refused', problems };
  const edits: FileEdit[] = [];
  for (const { path, write } of rewritesOf(decision, knowledge)) {
    const before = files.find((file) => file.path === path)?.text;
    const after = before === undefined ? { problem: `there is no file ${path}` } : write(before);
    if (typeof after !== 'string') return { kind: 'refused', problems: [after.problem] };
    edits.push({ path, before: before ?? '', after });
  }
  return { kind: 'proposed', edits };
}

function problemsOf(decision: GrowthDecision, knowledge: Knowledge): string[] {
  const { topics, parts, vans, glossary } = knowledge;
  const noTopic = (id: string) => (topics.has(id) ? [] : [`there is no topic '${id}'`]);
  const noPart = (id: string) => (parts.has(id) ? [] : [`there is no part '${id}'`]);
  switch (decision.kind) {
    case 'add-wordings':
      return [...noTopic(decision.topic), ...wordingProblems(decision.wordings, decision.topic, knowledge)];
    case 'teach-word': {
      const known = glossary.words.find((word) => plainly(word.says) === plainly(decision.says));
      return [
        ...textProblems(decision.says, 'the word', LONGEST_WORDING),
        ...textProblems(decision.means, 'the meaning', LONGEST_WORDING),
        ...(known === undefined ? [] : [`'${decision.says}' stands in the glossary already, meaning '${known.means}'`]),
        ...(decision.part === null ? [] : noPart(decision.part)),
      ];
    }
    case 'new-topic':
      return newTopicProblems(decision.topic, knowledge);
    case 'improve-answer': {
      const forOneVan = decision.van !== null && decision.place !== 'facts';
      return [
        ...noTopic(decision.topic),
        ...textProblems(decision.say, 'the text', LONGEST_SAY),
        ...(topics.get(decision.topic)?.notice === true
          ? ['a notice is written in safety.yaml by hand, never from here']
          : []),
        ...(decision.van === null || vans.has(decision.van) ? [] : [`there is no van '${decision.van}'`]),
        ...(forOneVan ? ['only a fact can be added for one van'] : []),
      ];
    }
    case 'note-lack': {
      const van = vans.get(decision.van);
      return [
        ...(van === undefined ? [`there is no van '${decision.van}'`] : []),
        ...noPart(decision.part),
        ...(van?.parts.has(decision.part) === true
          ? [`${van.name} has '${decision.part}': take it out of its file first`]
          : []),
        ...(van?.data.lacks[decision.part] === undefined
          ? []
          : [`${van.name} says of '${decision.part}' already: ${van.data.lacks[decision.part]}`]),
        ...textProblems(decision.say, 'the text', LONGEST_SAY),
      ];
    }
    case 'set-aside':
      return wordingProblems(decision.wordings, null, knowledge);
    default:
      return never(decision);
  }
}

function newTopicProblems(topic: NewTopic, knowledge: Knowledge): string[] {
  const { topics, parts, systems } = knowledge;
  return [
    ...(ID_PATTERN.test(topic.id) ? [] : [`'${topic.id}' is no id: small letters, figures and single dashes`]),
    ...(topics.has(topic.id) ? [`the id '${topic.id}' is in use: ${topics.get(topic.id)?.title}`] : []),
    ...(systems.has(topic.system) ? [] : [`there is no system '${topic.system}'`]),
    ...topic.about.flatMap((part) => (parts.has(part) ? [] : [`there is no part '${part}'`])),
    ...(topic.kind === 'hazard' || topic.kind === 'calculation'
      ? [`a topic of kind ${topic.kind} is written by hand, with its notice or its sum`]
      : []),
    ...textProblems(topic.title, 'the title', LONGEST_WORDING),
    ...[topic.first, ...topic.steps, ...(topic.otherwise === null ? [] : [topic.otherwise])].flatMap((say) =>
      textProblems(say, 'the text', LONGEST_SAY),
    ),
    ...(topic.wordings.length <= KEPT_BACK
      ? [`a new topic needs at least ${KEPT_BACK + 1} ways of asking: ${KEPT_BACK} are kept back as recorded questions`]
      : []),
    ...wordingProblems(topic.wordings, topic.id, knowledge),
  ];
}

function rewritesOf(decision: GrowthDecision, knowledge: Knowledge): Rewrite[] {
  const systemFile = (topic: string) => `systems/${knowledge.topics.get(topic)?.system ?? ''}.yaml`;
  switch (decision.kind) {
    case 'add-wordings':
      return [
        {
          path: systemFile(decision.topic),
          write: (yaml) => withWordings(yaml, ['topics', decision.topic, 'wordings'], decision.wordings),
        },
      ];
    case 'set-aside':
      return [{ path: 'talk.yaml', write: (yaml) => withWordings(yaml, ['background'], decision.wordings) }];
    case 'teach-word': {
      const { says, means, part } = decision;
      const fields = [
        `says: ${plainScalar(says)}`,
        `means: ${plainScalar(means)}`,
        ...(part === null ? [] : [`part: ${part}`]),
      ];
      return [
        {
          path: 'glossary.yaml',
          // With spaces inside the braces where the file has them.
          write: (yaml) => {
            const item = fields.join(', ');
            const written = yaml.includes('- { ') ? `{ ${item} }` : `{${item}}`;
            return withItems(yaml, ['words'], [written]) ?? byHand('glossary.yaml');
          },
        },
      ];
    }
    case 'note-lack': {
      const path = `vans/${decision.van}.yaml`;
      const write = (yaml: string) =>
        withKey(yaml, ['lacks'], decision.part, plainScalar(decision.say)) ?? byHand(path);
      return [{ path, write }];
    }
    case 'improve-answer':
      return [{ path: systemFile(decision.topic), write: (yaml) => improved(yaml, decision) }];
    case 'new-topic':
      return newTopicRewrites(decision.topic);
    default:
      return never(decision);
  }
}

/** Under the hirers' name, which is added where it is missing. */
function withWordings(yaml: string, path: FieldPath, wordings: readonly string[]): Written {
  const items = wordings.map(plainScalar);
  const own = [...path, HIRERS];
  const above = path.slice(0, -1);
  const lines = items.map((item) => `- ${item}`);
  const written =
    kindAt(yaml, own) === 'list'
      ? withItems(yaml, own, items)
      : kindAt(yaml, path) === 'mapping'
        ? withKey(yaml, path, HIRERS, lines)
        : withKey(yaml, above, String(path.at(-1)), [`${HIRERS}:`, ...lines.map((line) => `  ${line}`)]);
  return written ?? byHand(path.join('.'));
}

function improved(
  yaml: string,
  { topic, place, say, van }: Extract<GrowthDecision, { kind: 'improve-answer' }>,
): Written {
  const answer = ['topics', topic, 'answer'];
  const path = [...answer, place];
  const item = van === null ? quoted(say) : [`when: van:${van}`, `say: ${quoted(say)}`];
  const written = (() => {
    switch (kindAt(yaml, path)) {
      case 'nothing': {
        const lines = (typeof item === 'string' ? [item] : item).map((line, i) =>
          i === 0 ? `- ${line}` : `  ${line}`,
        );
        return withKey(yaml, answer, place, place === 'facts' ? lines : quoted(say));
      }
      case 'list':
        return place === 'facts' ? withItems(yaml, path, [item]) : null;
      case 'text':
        return withScalar(yaml, path, quoted(say));
      default:
        return null;
    }
  })();
  return written ?? { problem: `'${place}' of ${topic} differs from van to van: change it in the file by hand` };
}

function newTopicRewrites(topic: NewTopic): Rewrite[] {
  const trained = topic.wordings.slice(0, -KEPT_BACK);
  const questions = topic.wordings.slice(-KEPT_BACK);
  const answer = [
    `first: ${quoted(topic.first)}`,
    ...(topic.steps.length === 0 ? [] : ['steps:', ...topic.steps.map((step) => `  - ${quoted(step)}`)]),
    ...(topic.otherwise === null ? [] : [`otherwise: ${quoted(topic.otherwise)}`]),
  ];
  const lines = [
    `kind: ${topic.kind}`,
    `title: ${quoted(topic.title)}`,
    ...(topic.about.length === 0 ? [] : [`about: [${topic.about.join(', ')}]`]),
    'caution: none',
    `pass: ${topic.kind === 'symptom' ? 'if-not-fixed' : 'never'}`,
    'answer:',
    ...answer.map((line) => `  ${line}`),
    'wordings:',
    `  ${HIRERS}:`,
    ...trained.map((wording) => `    - ${plainScalar(wording)}`),
  ];
  const asked = questions.map((text) => [`topic: ${topic.id}`, `text: ${quoted(text)}`, `writer: ${HIRERS}`]);
  const path = `systems/${topic.system}.yaml`;
  // The topic first: a question that names a topic which is not there yet would be a slip.
  return [
    {
      path,
      write: (yaml) =>
        withKey(yaml, ['topics'], topic.id, lines, { blankBefore: standsApart(yaml, ['topics']) }) ?? byHand(path),
    },
    {
      path: 'questions.yaml',
      write: (yaml) => withItems(yaml, ['questions'], asked) ?? byHand('questions.yaml'),
    },
  ];
}

function byHand(where: string): { readonly problem: string } {
  return { problem: `${where} is laid out in a way that no line can be added to: change it by hand` };
}
