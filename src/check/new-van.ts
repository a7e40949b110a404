import { ID_PATTERN, type PartId, type VanId } from '../basics/ids.ts';
import type { Knowledge, Part, VanScope } from '../knowledge/knowledge.ts';
import type { VanData } from '../knowledge/schema.ts';
import { scopeOf } from '../knowledge/scope.ts';
import { missingPart } from '../reply/lacks.ts';

/** One question about what is fitted: a role with its variants, or a single part that some vans have. */
export type Fitting = {
  readonly role: PartId;
  readonly name: string;
  readonly options: readonly { readonly part: PartId | null; readonly name: string }[];
  readonly usual: PartId | null;
};

/**
 * What to ask about a new van that is like one of the fleet: every role some vans fill differently, and every part that
 * not all vans have. What all vans have alike is not asked.
 */
export function fittingsToAsk(knowledge: Knowledge, like: VanScope): readonly Fitting[] {
  const own = ownParts(knowledge);
  const groups = new Map<PartId, Part[]>();
  for (const part of own) {
    const role = topRole(part, knowledge);
    groups.set(role, [...(groups.get(role) ?? []), part]);
  }
  return [...groups].flatMap(([role, parts]): Fitting[] => {
    const everywhere =
      parts.length === 1 && [...knowledge.vans.values()].every((van) => van.parts.has(parts[0]?.id ?? ''));
    if (everywhere) return [];
    const usual = parts.find((part) => part.id in like.data.has)?.id ?? null;
    const none = [...knowledge.vans.values()].some((van) => !van.parts.has(role)) || parts.length === 1;
    const options = [
      ...parts.map((part) => ({ part: part.id, name: part.name })),
      ...(none ? [{ part: null, name: 'none' }] : []),
    ];
    return [{ role, name: knowledge.parts.get(role)?.name ?? role, options, usual }];
  });
}

/** Parts that vans list as their own. */
function ownParts(knowledge: Knowledge): Part[] {
  const ids = new Set([...knowledge.vans.values()].flatMap((van) => Object.keys(van.data.has)));
  return [...ids].flatMap((id) => knowledge.parts.get(id) ?? []);
}

function topRole(part: Part, knowledge: Knowledge): PartId {
  let at = part;
  for (let up = at.is; up !== undefined; up = at.is) at = knowledge.parts.get(up) ?? at;
  return at.id;
}

export type NewVan = {
  readonly name: string;
  readonly like: VanId;
  readonly fitted: ReadonlyMap<PartId, PartId | null>;
};

/** What of the draft was taken over from another van and wants a look, as field and where it came from. */
export type ToLookAt = { readonly field: string; readonly from: string };

/**
 * Drafts a van's file: its parts as chosen, each with the values of a van that has it, and what it lacks in the words of
 * a van that lacks it too. The draft passes the check; what was taken over is listed, to be put right with the van at hand.
 */
export function draftVan(
  knowledge: Knowledge,
  { name, like, fitted }: NewVan,
): { readonly van: VanData; readonly look: readonly ToLookAt[] } {
  const template = knowledge.vans.get(like);
  if (template === undefined) throw new Error(`no van '${like}' in the fleet`);
  const id = vanId(name);
  const look: ToLookAt[] = [];
  const own = new Set(Object.keys(template.data.has));
  for (const [role, part] of fitted) {
    for (const each of own) if (topRole(knowledge.parts.get(each) as Part, knowledge) === role) own.delete(each);
    if (part !== null) own.add(part);
  }
  const has: Record<PartId, Record<string, string | number>> = {};
  for (const part of own) {
    const giver =
      part in template.data.has ? template : [...knowledge.vans.values()].find((van) => part in van.data.has);
    has[part] = { ...giver?.data.has[part] };
    if (giver !== undefined && Object.keys(has[part] ?? {}).length > 0)
      look.push({ field: `has.${part}`, from: giver.name });
  }
  const values = Object.fromEntries(
    Object.entries(template.data.values).map(([key, value]) => [key, renamed(value, template.name, name)]),
  );
  const draft: VanData = { ...template.data, van: id, name, values, has, lacks: {}, out: [] };
  look.push({ field: 'values', from: template.name }, { field: 'figures', from: template.name });
  const lacks = lacksOf(draft, knowledge, look);
  return { van: { ...draft, asked: askedOf(draft, knowledge), lacks }, look };
}

/** A van's id from its name: 'Grey Wagtail' as grey-wagtail. */
export function vanId(name: string): VanId {
  const id = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  if (!ID_PATTERN.test(id)) throw new Error(`'${name}' makes no file name; use letters and digits`);
  return id;
}

function lacksOf(draft: VanData, knowledge: Knowledge, look: ToLookAt[]): Record<PartId, string> {
  const scope = scopeOf(draft, knowledge.parts, knowledge.topics);
  const lacks: Record<PartId, string> = {};
  for (const topic of knowledge.topics.values()) {
    if (scope.topics.has(topic.id)) continue;
    const part = missingPart(topic, scope, knowledge);
    if (lacks[part] !== undefined) continue;
    const giver = [...knowledge.vans.values()].find((van) => van.data.lacks[part] !== undefined);
    lacks[part] =
      giver === undefined
        ? `${draft.name} has no ${knowledge.parts.get(part)?.name ?? part}.`
        : String(renamed(giver.data.lacks[part] ?? '', giver.name, draft.name));
    look.push({ field: `lacks.${part}`, from: giver?.name ?? 'nobody' });
  }
  return lacks;
}

function askedOf(draft: VanData, knowledge: Knowledge): VanData['asked'] {
  const scope = scopeOf(draft, knowledge.parts, knowledge.topics);
  const fitting = draft.asked.filter((topic) => scope.topics.has(topic));
  const more = [...scope.topics].filter((topic) => !fitting.includes(topic));
  return [...fitting, ...more].slice(0, 3);
}

function renamed(value: string | number, from: string, to: string): string | number {
  return typeof value === 'string' ? value.replaceAll(from, to) : value;
}
