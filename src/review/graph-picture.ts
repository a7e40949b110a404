import type { PartId, TopicId } from '../basics/ids.ts';
import type { Knowledge, Part, Topic } from '../knowledge/knowledge.ts';

/** A part, or a topic beside the part it is about. x grows to the right and y upwards; one is the room that a thing takes. */
export type PictureNode = {
  /** As in {@link Knowledge.graph}: 'part:water-pump', 'topic:water-none'. */
  readonly key: string;
  readonly kind: 'part' | 'symptom' | 'topic';
  readonly name: string;
  readonly system: string;
  readonly x: number;
  readonly y: number;
};

/** One system's room; x and y are its upper left corner. Those `outside` stand on the ground below the van. */
export type PictureRoom = {
  readonly system: string;
  readonly title: string;
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
  readonly outside: boolean;
};

/** `near`: within one room, drawn always; the others only when one of their ends is looked at. */
export type PictureLink = { readonly from: string; readonly to: string; readonly near: boolean };

export type GraphPicture = {
  readonly rooms: readonly PictureRoom[];
  readonly nodes: readonly PictureNode[];
  readonly links: readonly PictureLink[];
};

const ACROSS = 7;
/** Rows are reckoned in steps, so that one thing more seldom moves what lies below. */
const ROW_STEP = 2;
const ROW = 1.25;
/** For the room's title. */
const HEAD = 1.2;
const ASIDE = 0.5;
const WIDE = ACROSS + 2 * ASIDE;
const COLUMNS = 6;

/** Systems as one walks from the hitch to the rear: the order of the rooms. One that is not named comes after these. */
const FRONT_TO_REAR = [
  'towing',
  'driving',
  'gas',
  'load',
  'setup',
  'awning',
  'body',
  'dc',
  'mains',
  'media',
  'living',
  'cooking',
  'fridge',
  'heating',
  'hotwater',
  'water',
  'beds',
  'toilet',
  'safety',
  'kit',
];

/**
 * Lays the graph out as a van cut open: a room for each system, in it each part followed by the topics about it. The
 * places follow from the graph alone and are the same for every van, so that nothing jumps between visits or vans.
 */
export function pictureOf(knowledge: Knowledge): GraphPicture {
  const inside: Filled[] = [];
  const outside: Filled[] = [];
  for (const system of inOrder([...knowledge.systems.keys()])) {
    const groups = groupsOf(system, knowledge);
    const keys = groups.flat();
    if (keys.length === 0) continue;
    const has = keys.some((key) => key.startsWith('part:'));
    (has ? inside : outside).push({ system, places: placed(groups), outside: !has });
  }
  const rooms: PictureRoom[] = [];
  const nodes: PictureNode[] = [];
  const stand = ({ system, places, outside }: Filled, x: number, y: number): number => {
    const high = heightOf(places);
    rooms.push({ system, title: knowledge.systems.get(system) ?? system, x, y, wide: WIDE, high, outside });
    for (const [key, { column, row }] of places)
      nodes.push({
        ...nodeOf(key, knowledge),
        key,
        system,
        x: x + ASIDE + column + 0.5,
        y: y - HEAD - (row + 0.5) * ROW,
      });
    return y - high;
  };
  let floor = 0;
  const each = Math.ceil(inside.length / COLUMNS);
  for (const [i, room] of inside.entries()) {
    const below = i % each === 0 ? 0 : (rooms.at(-1)?.y ?? 0) - (rooms.at(-1)?.high ?? 0);
    floor = Math.min(floor, stand(room, Math.floor(i / each) * WIDE, below));
  }
  for (const [i, room] of outside.entries()) stand(room, i * WIDE, floor - 3);
  const to = new Set(nodes.map(({ key }) => key));
  const systemOf = new Map(nodes.map(({ key, system }) => [key, system]));
  const links = linksOf(knowledge)
    .filter(([from, other]) => to.has(from) && to.has(other))
    .map(([from, other]): PictureLink => ({ from, to: other, near: systemOf.get(from) === systemOf.get(other) }));
  return { rooms, nodes, links };
}

type Place = { readonly column: number; readonly row: number };
type Filled = { readonly system: string; readonly places: ReadonlyMap<string, Place>; readonly outside: boolean };

function inOrder(systems: readonly string[]): readonly string[] {
  const rank = (system: string): number => {
    const at = FRONT_TO_REAR.indexOf(system);
    return at < 0 ? FRONT_TO_REAR.length : at;
  };
  return [...systems].sort((a, b) => rank(a) - rank(b));
}

/** Each part of a system with the topics first about it; parts after the part or role they belong to. */
function groupsOf(system: string, { parts, topics }: Knowledge): readonly (readonly string[])[] {
  const own = [...parts.values()].filter((part) => part.system === system);
  const ownIds = new Set(own.map(({ id }) => id));
  const above = (part: Part): PartId | undefined => [part.of, part.is].find((id) => id !== undefined && ownIds.has(id));
  const told = new Map<PartId | '', TopicId[]>();
  for (const topic of topics.values()) {
    if (topic.system !== system) continue;
    const part = topic.about.find((id) => ownIds.has(id)) ?? '';
    told.set(part, [...(told.get(part) ?? []), topic.id]);
  }
  const topicsOf = (part: PartId | ''): string[] => (told.get(part) ?? []).map((id) => `topic:${id}`);
  const below = (of: PartId | undefined): string[][] =>
    own
      .filter((part) => above(part) === of)
      .flatMap((part) => [[`part:${part.id}`, ...topicsOf(part.id)], ...below(part.id)]);
  const loose = topicsOf('');
  return [...below(undefined), ...(loose.length === 0 ? [] : [loose])];
}

/** Side by side while a group fits in what is left of the row, else from the next row on. */
function placed(groups: readonly (readonly string[])[]): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>();
  let at = 0;
  for (const group of groups) {
    const left = ACROSS - (at % ACROSS);
    if (group.length > left && left < ACROSS) at += left;
    for (const key of group) {
      places.set(key, { column: at % ACROSS, row: Math.floor(at / ACROSS) });
      at++;
    }
  }
  return places;
}

function heightOf(places: ReadonlyMap<string, Place>): number {
  const rows = 1 + Math.max(...[...places.values()].map(({ row }) => row));
  return HEAD + Math.ceil(rows / ROW_STEP) * ROW_STEP * ROW;
}

function nodeOf(key: string, { parts, topics }: Knowledge): Pick<PictureNode, 'kind' | 'name'> {
  const id = key.slice(key.indexOf(':') + 1);
  if (key.startsWith('part:')) return { kind: 'part', name: parts.get(id)?.name ?? id };
  const topic = topics.get(id);
  return { kind: topic?.kind === 'symptom' ? 'symptom' : 'topic', name: topic?.title ?? id };
}

function linksOf({ parts, topics }: Knowledge): (readonly [string, string])[] {
  const ofTopic = (topic: Topic) => topic.about.map((part) => [`part:${part}`, `topic:${topic.id}`] as const);
  const ofPart = (part: Part) =>
    [part.of, part.is].flatMap((id) => (id === undefined ? [] : [[`part:${id}`, `part:${part.id}`] as const]));
  return [...[...parts.values()].flatMap(ofPart), ...[...topics.values()].flatMap(ofTopic)];
}
