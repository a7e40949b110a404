import { buildKnowledge } from '../knowledge/build.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { type FirmData, system, type TopicData } from '../knowledge/schema.ts';
import { builtInSafety } from './built-in.ts';
import { HAZARDS } from './hazards.ts';

const FILE = 'built in';

/**
 * What is served when graph/ has never been readable: the built-in notices and the firm's hours and numbers. It knows no van
 * and no topic but the hazards, so that everything else goes to people.
 */
export function builtInKnowledge(firm: FirmData): Knowledge {
  const hazard = ([id, { pass }]: [string, { readonly pass: TopicData['pass'] }]) =>
    [id, { kind: 'hazard', title: title(id), caution: 'hazard', pass, notice: true }] as const;
  const { knowledge, slips } = buildKnowledge(
    {
      systems: [
        {
          file: FILE,
          data: system.parse({
            system: 'safety',
            title: 'Safety',
            parts: {},
            topics: Object.fromEntries(Object.entries(HAZARDS).map(hazard)),
          }),
        },
      ],
      vans: [],
      firm,
      safety: builtInSafety,
      glossary: { words: [] },
      places: { sites: {} },
      questions: { questions: [] },
      talk: { chat: {}, person: {}, background: {}, languages: {} },
      pictures: [],
    },
    (file, field, problem, expected) => ({ file, line: 1, column: 1, field: field.join('.'), problem, expected }),
  );
  if (knowledge === null)
    throw new Error(`the built-in minimum is wrong: ${slips.map((slip) => slip.problem).join(', ')}`);
  return knowledge;
}

/** What people read in the brief: 'gas smell' of 'safety-gas-smell'. */
function title(hazard: string): string {
  return hazard.replace(/^(?:safety|hire)-/, '').replaceAll('-', ' ');
}
