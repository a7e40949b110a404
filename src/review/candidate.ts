import { checkGraph } from '../check/check-graph.ts';
import { buildKnowledge } from '../knowledge/build.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import type { RawGraph, SlipAt } from '../knowledge/raw-graph.ts';
import { glossary, questions, system, talk, van } from '../knowledge/schema.ts';
import { type Slip, slipText } from '../knowledge/slip.ts';
import { type Locate, readYaml } from '../knowledge/yaml-file.ts';
import type { FileEdit } from './decisions.ts';

export type Candidate =
  | { readonly kind: 'linked'; readonly raw: RawGraph; readonly knowledge: Knowledge }
  | { readonly kind: 'refused'; readonly problems: readonly string[] };

/**
 * The graph as it would be. Only the changed files are read again; slips that the graph had before are not this
 * change's.
 */
export function candidateOf(base: RawGraph, edits: readonly FileEdit[]): Candidate {
  const slips: Slip[] = [];
  const locates = new Map<string, Locate>();
  let raw: RawGraph = base;
  for (const { path, after } of edits) {
    const file = { path, text: after };
    const read = <T>(of: { data: T | null; slips: Slip[]; locate: Locate }): T | null => {
      locates.set(path, of.locate);
      slips.push(...of.slips);
      return of.data;
    };
    if (path.startsWith('systems/')) {
      const data = read(readYaml(file, system));
      if (data !== null)
        raw = { ...raw, systems: raw.systems.map((each) => (each.file === path ? { file: path, data } : each)) };
    } else if (path.startsWith('vans/')) {
      const data = read(readYaml(file, van));
      if (data !== null)
        raw = { ...raw, vans: raw.vans.map((each) => (each.file === path ? { file: path, data } : each)) };
    } else if (path === 'glossary.yaml') raw = { ...raw, glossary: read(readYaml(file, glossary)) ?? raw.glossary };
    else if (path === 'questions.yaml') raw = { ...raw, questions: read(readYaml(file, questions)) ?? raw.questions };
    else if (path === 'talk.yaml') raw = { ...raw, talk: read(readYaml(file, talk)) ?? raw.talk };
    else throw new Error(`changes of ${path} are not made from here`);
  }
  if (slips.length > 0) return { kind: 'refused', problems: slips.map(slipText) };
  const slipAt: SlipAt = (path, field, problem, expected) =>
    locates.get(path)?.(field, problem, expected) ?? nowhere(path, field, problem, expected);
  const { knowledge, slips: unlinked } = buildKnowledge(raw, slipAt);
  if (knowledge === null) return { kind: 'refused', problems: unlinked.map(slipText) };
  const known = new Set(slipsOf(base));
  const fresh = checkGraph(knowledge, slipAt).filter((slip) => !known.has(keyOf(slip)));
  return fresh.length > 0 ? { kind: 'refused', problems: fresh.map(slipText) } : { kind: 'linked', raw, knowledge };
}

function slipsOf(raw: RawGraph): string[] {
  const { knowledge } = buildKnowledge(raw, nowhere);
  return knowledge === null ? [] : checkGraph(knowledge, nowhere).map(keyOf);
}

const nowhere: SlipAt = (file, field, problem, expected) => ({
  file,
  line: 1,
  column: 1,
  field: field.join('.'),
  problem,
  expected,
});

function keyOf({ file, field, problem }: Slip): string {
  return `${file}\t${field}\t${problem}`;
}
