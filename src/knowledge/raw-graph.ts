import type { z } from 'zod';
import { type SafetyData, safetyExamples, safetyFile, safetySenses } from './safety-schema.ts';
import {
  type FirmData,
  firm,
  type GlossaryData,
  glossary,
  type PlacesData,
  places,
  type QuestionsData,
  questions,
  type SystemData,
  system,
  type TalkData,
  talk,
  type VanData,
  van,
} from './schema.ts';
import type { Slip } from './slip.ts';
import { type FieldPath, type GraphFile, type Locate, locator, readYaml } from './yaml-file.ts';

/** The files of graph/ as data, each checked against its schema but not yet linked to the others. */
export type RawGraph = {
  readonly systems: readonly { readonly file: string; readonly data: SystemData }[];
  readonly vans: readonly { readonly file: string; readonly data: VanData }[];
  readonly firm: FirmData;
  readonly safety: SafetyData;
  readonly glossary: GlossaryData;
  readonly places: PlacesData;
  readonly questions: QuestionsData;
  readonly talk: TalkData;
  readonly pictures: readonly { readonly name: string; readonly svg: string }[];
};

/** Makes a slip in a file that has been read. */
export type SlipAt = (file: string, field: FieldPath, problem: string, expected: string) => Slip;

const SINGLE = {
  firm,
  safety: safetyFile,
  'safety-examples': safetyExamples,
  'safety-senses': safetySenses,
  glossary,
  places,
  questions,
  talk,
} as const;
type SingleName = keyof typeof SINGLE;
type Single = { readonly [name in SingleName]: z.infer<(typeof SINGLE)[name]> };

/** `raw` is null when any file has a slip: a half-read graph is never served. `slips` holds all of them. */
export type ReadGraph = {
  readonly raw: RawGraph | null;
  /** The firm's own file, where that one at least can be read. */
  readonly firm: FirmData | null;
  readonly slips: readonly Slip[];
  readonly slipAt: SlipAt;
};

/** A graph read before, and the paths of the files that are as they were then. */
export type ReadBefore = { readonly raw: RawGraph; readonly same: ReadonlySet<string> };

/**
 * Reads all files of graph/ (paths relative to it, such as systems/water.yaml).
 *
 * @param before Left out: every file is read. What is the same is taken from there, the very objects.
 */
export function readGraph(files: readonly GraphFile[], before: ReadBefore | null = null): ReadGraph {
  const slips: Slip[] = [];
  const locates = new Map<string, Locate>();
  const known = before === null ? new Map<string, unknown>() : dataOf(before);
  const read = <T>(file: GraphFile, schema: z.ZodType<T>): T | null => {
    const kept = known.get(file.path);
    if (kept !== undefined) {
      locates.set(file.path, locator(file));
      return kept as T;
    }
    const result = readYaml(file, schema);
    locates.set(file.path, result.locate);
    slips.push(...result.slips);
    return result.data;
  };

  const systems: { file: string; data: SystemData }[] = [];
  const vans: { file: string; data: VanData }[] = [];
  const pictures: { name: string; svg: string }[] = [];
  const single: Partial<Record<SingleName, unknown>> = {};
  for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    const [first = '', second] = file.path.split('/');
    if (first === 'systems' && second !== undefined) {
      const data = read(file, system);
      if (data !== null) systems.push({ file: file.path, data });
    } else if (first === 'vans' && second !== undefined) {
      const data = read(file, van);
      if (data !== null) vans.push({ file: file.path, data });
    } else if (first === 'pictures' && second?.endsWith('.svg')) {
      pictures.push({ name: second.replace(/\.svg$/, ''), svg: file.text });
    } else {
      const name = first.replace(/\.yaml$/, '');
      if (name in SINGLE) single[name as SingleName] = read(file, SINGLE[name as SingleName] as z.ZodType<unknown>);
      else
        slips.push({
          file: file.path,
          line: 1,
          column: 1,
          field: '',
          problem: 'a file that graph/ does not have',
          expected: 'systems/, vans/, pictures/ or one of the files beside them',
        });
    }
  }
  for (const name of Object.keys(SINGLE) as SingleName[]) {
    if (!(name in single)) {
      slips.push({
        file: pathOf(name),
        line: 1,
        column: 1,
        field: '',
        problem: 'the file is missing',
        expected: `graph/${name}.yaml`,
      });
    }
  }
  const slipAt: SlipAt = (file, field, problem, expected) => {
    const locate = locates.get(file);
    return locate === undefined
      ? { file, line: 1, column: 1, field: field.join('.'), problem, expected }
      : locate(field, problem, expected);
  };
  const raw = slips.length > 0 ? null : { systems, vans, pictures, ...whole(single as Single, before) };
  return { raw, firm: (single.firm as FirmData | null | undefined) ?? null, slips, slipAt };
}

const SAFETY: readonly SingleName[] = ['safety', 'safety-examples', 'safety-senses'];
const pathOf = (name: SingleName): string => `${name}.yaml`;

/** What was read of each file that is the same. */
function dataOf({ raw, same }: ReadBefore): ReadonlyMap<string, unknown> {
  const { examples, senses } = raw.safety.reading;
  const singles = { ...raw, 'safety-examples': examples, 'safety-senses': senses };
  const all: readonly (readonly [string, unknown])[] = [
    ...[...raw.systems, ...raw.vans].map(({ file, data }) => [file, data] as const),
    ...(Object.keys(SINGLE) as SingleName[]).map((name) => [pathOf(name), singles[name]] as const),
  ];
  return new Map(all.filter(([path]) => same.has(path)));
}

/** Examples and senses stand in files of their own, as they are many, and are read into the safety reading. */
function whole(
  { 'safety-examples': examples, 'safety-senses': senses, safety, ...others }: Single,
  before: ReadBefore | null,
): Omit<RawGraph, 'systems' | 'vans' | 'pictures'> {
  if (before !== null && SAFETY.every((name) => before.same.has(pathOf(name))))
    return { ...others, safety: before.raw.safety };
  return { ...others, safety: { ...safety, reading: { ...safety.reading, examples, senses } } };
}
