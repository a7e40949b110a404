import { ID_PATTERN, type PartId, type VanId } from '../basics/ids.ts';
import type { Knowledge, Part, VanScope } from '../knowledge/knowledge.ts';
import type { VanData } from '../knowledge/schema.ts';
import { scopeOf } from '../knowledge/scope.ts';
import { plays, slotValue } from '../knowledge/slots.ts';
import { slotSource } from '../reply/answer-context.ts';
import { missingPart } from '../reply/lacks.ts';
import { unfilledSlots } from './unfilled-slots.ts';

/** One question about what is fitted: a role with its variants, or a single part that some vans have. */
export type Fitting = {
  readonly role: PartId;
  readonly name: string;
  readonly options: readonly { readonly part: PartId | null; readonly name: string }[];
  readonly usual: PartId | null;
};

/**
 * What to ask about a new van that is like one of the fleet: every role that vans with its body fill differently, and every
 * part that not all of them have. What they all have alike is not asked, nor what only the other body has: an engine.
 */
export function fittingsToAsk(knowledge: Knowledge, like: VanScope): readonly Fitting[] {
  const vans = [...knowledge.vans.values()].filter((van) => van.data.body === like.data.body);
  const own = ownParts(vans, knowledge);
  const groups = new Map<PartId, Part[]>();
  for (const part of own) {
    const role = topRole(part, knowledge);
    groups.set(role, [...(groups.get(role) ?? []), part]);
  }
  return [...groups].flatMap(([role, parts]): Fitting[] => {
    const everywhere = parts.length === 1 && vans.every((van) => van.parts.has(parts[0]?.id ?? ''));
    if (everywhere) return [];
    const usual = parts.find((part) => part.id in like.data.has)?.id ?? null;
    const none = vans.some((van) => !van.parts.has(role));
    const options = [
      ...parts.map((part) => ({ part: part.id, name: part.name })),
      ...(none ? [{ part: null, name: 'none' }] : []),
    ];
    return [{ role, name: knowledge.parts.get(role)?.name ?? role, options, usual }];
  });
}

/** Parts that vans list as their own. */
function ownParts(vans: readonly VanScope[], knowledge: Knowledge): Part[] {
  const ids = new Set(vans.flatMap((van) => Object.keys(van.data.has)));
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
  const has = Object.fromEntries([...own].map((part) => [part, valuesOf(part, template, knowledge, look)]));
  const values = Object.fromEntries(
    Object.entries({
      ...merged([...knowledge.vans.values()].map((each) => each.data.values)),
      ...template.data.values,
    }).map(([key, value]) => [key, renamed(value, template.name, name)]),
  );
  const priorsAs = template.data.priorsAs ?? like;
  const draft: VanData = { ...template.data, van: id, name, priorsAs, values, has, lacks: {}, out: [] };
  look.push({ field: 'values', from: template.name }, { field: 'figures', from: template.name });
  const complete = withWhatAnswersNeed(draft, template, knowledge, look);
  const lacks = lacksOf(complete, knowledge, look);
  return { van: { ...complete, asked: askedOf(complete, knowledge), lacks }, look };
}

type Values = Readonly<Record<string, string | number>>;

function merged(values: readonly (Values | undefined)[]): Record<string, string | number> {
  return Object.assign({}, ...values);
}

/** A part's values from the van it is like, else from one that has it; the others' stand in for what an answer may name. */
function valuesOf(
  part: PartId,
  template: VanScope,
  knowledge: Knowledge,
  look: ToLookAt[],
): Record<string, string | number> {
  const others = [...knowledge.vans.values()].filter((van) => part in van.data.has);
  const giver = part in template.data.has ? template : others[0];
  const values = merged([...others.map((van) => van.data.has[part]), giver?.data.has[part]]);
  if (giver !== undefined && Object.keys(values).length > 0) look.push({ field: `has.${part}`, from: giver.name });
  return values;
}

/**
 * What an answer about the draft still cannot name: some parts come with others (a toilet with its own flush has a flush
 * tank), and some values no van with that very part has. Both are taken from another van, until nothing is missing.
 */
function withWhatAnswersNeed(draft: VanData, template: VanScope, knowledge: Knowledge, look: ToLookAt[]): VanData {
  const scope = scopeOf(draft, knowledge.parts, knowledge.topics);
  const missing = [...scope.topics].flatMap((id) => {
    const topic = knowledge.topics.get(id);
    return topic === undefined ? [] : unfilledSlots(topic, scope, knowledge);
  });
  const has = { ...draft.has };
  for (const { owner, name } of missing) {
    const own = Object.keys(has).find((part) => plays(part, owner, knowledge.parts));
    const wanted = ownParts([...knowledge.vans.values()], knowledge).find((part) =>
      plays(part.id, owner, knowledge.parts),
    )?.id;
    if (own !== undefined) has[own] = { ...has[own], ...valueElsewhere(owner, name, knowledge) };
    else if (wanted !== undefined) has[wanted] = valuesOf(wanted, template, knowledge, look);
  }
  const grew = JSON.stringify(has) !== JSON.stringify(draft.has);
  return grew ? withWhatAnswersNeed({ ...draft, has }, template, knowledge, look) : draft;
}

/** The value that some other van has for a slot. */
function valueElsewhere(owner: string, name: string, knowledge: Knowledge): Values {
  for (const scope of knowledge.vans.values()) {
    const value = slotValue(owner, name, slotSource({ knowledge, scope, site: null }));
    if (value !== null) return { [name]: value };
  }
  return {};
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
