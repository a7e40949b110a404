import {
  addDays,
  dayOf,
  type Gap,
  type GrowthRow,
  growthFigures,
  HEAT_EVENTS,
  type Heat,
  heatOf,
  type Knowledge,
  localTime,
  type Store,
  type TopicId,
  type VanId,
} from '../../src/index.ts';

type Counted = Pick<Store, 'events' | 'threads'>;

/** How questions ended, by week (its Monday), van and system. */
export async function figuresFrom(store: Counted, knowledge: Knowledge): Promise<readonly GrowthRow[]> {
  const vans = await vansOf(store);
  const zone = knowledge.firm.timeZone;
  return growthFigures({
    events: await store.events({}),
    vanOf: (threadId) => vans.get(threadId) ?? null,
    systemOf: (topic) => knowledge.topics.get(topic)?.system ?? null,
    weekOf: (atMs) => addDays(dayOf(atMs, zone), -((localTime(atMs, zone).weekday + 6) % 7)),
  });
}

/** How often each topic was asked for and did not help, in one van or (null) in all. */
export async function heatFrom(
  store: Counted,
  gaps: readonly Gap[],
  van: VanId | null,
): Promise<ReadonlyMap<TopicId, Heat>> {
  const [events, vans] = [await store.events({ kinds: HEAT_EVENTS }), await vansOf(store)];
  const isOf = (threadId: string): boolean => van === null || vans.get(threadId) === van;
  return heatOf(
    events.filter(({ threadId }) => isOf(threadId)).map(({ event }) => event),
    gaps.filter(({ threadId }) => isOf(threadId)),
  );
}

async function vansOf(store: Counted): Promise<ReadonlyMap<string, VanId | null>> {
  return new Map((await store.threads({})).map((thread) => [thread.id, thread.van]));
}
