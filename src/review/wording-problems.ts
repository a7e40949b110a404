import type { TopicId } from '../basics/ids.ts';
import { plainly } from '../check/wordings.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

export const LONGEST_WORDING = 200;
export const LONGEST_SAY = 600;

const MARKUP = /<\/?[a-z!][^>]*>|\[[^\]]*\]\([^)]*\)|&[a-z]+;|&#\d+;/i;
const LINK = /https?:|www\.|\b[\w-]+\.(?:com|org|net|uk|eu|io)\b/i;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\u202a-\u202e\u2066-\u2069]/;

/** What is wrong with words that are to stand in the graph; empty when nothing is. */
export function textProblems(text: string, what: string, longest: number): string[] {
  const short = text.length > 60 ? `${text.slice(0, 60)}...` : text;
  const problems: string[] = [];
  if (!/\p{L}/u.test(text)) problems.push(`${what} '${short}' has no words in it`);
  if (text.length > longest) problems.push(`${what} '${short}' has ${text.length} characters; at most ${longest}`);
  if (MARKUP.test(text)) problems.push(`${what} '${short}' has markup in it; write plain words`);
  if (LINK.test(text)) problems.push(`${what} '${short}' has a link in it; leave it out`);
  if (CONTROL.test(text)) problems.push(`${what} '${short}' has characters that cannot be seen; type it anew`);
  return problems;
}

/** What stands in the way of these wordings going under a topic; null: under none. */
export function wordingProblems(wordings: readonly string[], topic: TopicId | null, knowledge: Knowledge): string[] {
  if (wordings.length === 0) return ['no wording was given'];
  const owners = wordingOwners(knowledge);
  const seen = new Set<string>();
  return wordings.flatMap((wording) => {
    const problems = textProblems(wording, 'the wording', LONGEST_WORDING);
    const plain = plainly(wording);
    const owner = owners.get(plain);
    if (owner !== undefined)
      problems.push(
        owner === topic
          ? `'${wording}' stands under ${topic} already`
          : `'${wording}' stands under ${owner} already; a wording belongs to one topic`,
      );
    if (seen.has(plain)) problems.push(`'${wording}' is given twice`);
    seen.add(plain);
    return problems;
  });
}

/** Where each wording and each recorded question stands. */
function wordingOwners({ topics, talk, questions }: Knowledge): Map<string, string> {
  const owners = new Map<string, string>();
  for (const { text } of questions.questions) owners.set(plainly(text), 'the recorded questions');
  for (const lines of Object.values(talk.background))
    for (const line of lines) owners.set(plainly(line), 'what is none of ours');
  for (const topic of topics.values())
    for (const wordings of Object.values(topic.wordings))
      for (const wording of wordings) owners.set(plainly(wording), topic.id);
  return owners;
}
