import {
  type Booking,
  GAP_EVENTS,
  type Gap,
  gapsOf,
  type Knowledge,
  type Personal,
  type RecordedQuestion,
  type Store,
  type StoredEvent,
  stripped,
  type Thread,
} from '../../src/index.ts';

/** So many of the latest real questions take part in a trial. */
const MOST_REAL = 500;

/** Reads gaps and real questions out of the store, stripped of personal details. */
export type GapRecords = {
  readonly gaps: (knowledge: Knowledge) => Promise<readonly Gap[]>;
  /** Questions that were answered, the latest; those that helped name the topic they must go on getting. */
  readonly realQuestions: (knowledge: Knowledge) => Promise<readonly RecordedQuestion[]>;
};

export function createGapRecords(store: Store, nowMs: () => number): GapRecords {
  /** What a hirer had said before an event, by the event: it never changes. */
  const said = new Map<number, string | null>();

  const readSaid = async (events: readonly StoredEvent[]): Promise<void> => {
    const wanted = events.filter(({ id }) => !said.has(id));
    for (const threadId of new Set(wanted.map((each) => each.threadId))) {
      const lines = (await store.lines(threadId)).filter((line) => line.message !== null && line.text.trim() !== '');
      for (const { id, atMs } of wanted.filter((each) => each.threadId === threadId))
        said.set(id, lines.filter((line) => line.atMs <= atMs).at(-1)?.text ?? null);
    }
  };

  return {
    gaps: async (knowledge) => {
      const events = await store.events({ kinds: GAP_EVENTS });
      const offered = events.filter(({ event }) => event.kind === 'offered');
      await readSaid(offered);
      const textAt = new Map(offered.map((each) => [`${each.threadId} ${each.atMs}`, said.get(each.id) ?? null]));
      const personal = await personalOf(store, knowledge);
      const read = gapsOf({
        events,
        nowMs: nowMs(),
        personal: (threadId) => personal(threadId),
        said: (threadId, atMs) => textAt.get(`${threadId} ${atMs}`) ?? null,
      });
      const threads = new Map((await store.threads({})).map((thread) => [thread.id, thread]));
      return read.map((gap) => (gap.van === null ? { ...gap, van: threads.get(gap.threadId)?.van ?? null } : gap));
    },
    realQuestions: async (knowledge) => {
      const events = await store.events({ kinds: ['answered', 'helped', 'walk-ended'] });
      const answered = events.filter(({ event }) => event.kind === 'answered').slice(-MOST_REAL);
      await readSaid(answered);
      const personal = await personalOf(store, knowledge);
      const threads = new Map((await store.threads({})).map((thread) => [thread.id, thread]));
      const known = new Set(knowledge.questions.questions.map(({ text }) => text));
      return answered.flatMap((each): RecordedQuestion[] => {
        const text = stripped(said.get(each.id) ?? '', personal(each.threadId));
        const van = threads.get(each.threadId)?.van ?? null;
        if (text.trim() === '' || van === null || known.has(text) || !knowledge.vans.has(van)) return [];
        known.add(text);
        const topic = helpedBy(each, events);
        return topic !== null && knowledge.topics.has(topic) ? [{ text, van, topic }] : [{ text, van }];
      });
    },
  };
}

/** The topic of an answer that the hirer said had helped, or whose walk ended with the fault cured. */
function helpedBy(answered: StoredEvent, events: readonly StoredEvent[]): string | null {
  const { event } = answered;
  if (event.kind !== 'answered') return null;
  const next = events.find(({ id, threadId }) => id > answered.id && threadId === answered.threadId)?.event;
  const helped =
    (next?.kind === 'helped' && next.yes && next.topic === event.topic) ||
    (next?.kind === 'walk-ended' && next.end === 'fixed' && next.symptom === event.topic);
  return helped ? event.topic : null;
}

/** The names that must not be kept, by thread. */
async function personalOf(store: Store, knowledge: Knowledge): Promise<(threadId: string) => Personal> {
  const bookings = new Map<string, Booking>((await store.bookings()).map((booking) => [booking.ref, booking]));
  const threads = new Map<string, Thread>((await store.threads({})).map((thread) => [thread.id, thread]));
  const staff = knowledge.firm.people.flatMap((person) => [person.name, person.firstName]);
  const ordinary = ordinaryWords(knowledge);
  return (threadId) => {
    const booking = bookings.get(threads.get(threadId)?.booking ?? '');
    return {
      names: booking === undefined ? staff : [...staff, booking.hirer, booking.firstName],
      isOrdinary: (word) => ordinary.has(word),
    };
  };
}

const ordinaryOf = new WeakMap<Knowledge, ReadonlySet<string>>();

function ordinaryWords(knowledge: Knowledge): ReadonlySet<string> {
  const kept = ordinaryOf.get(knowledge);
  if (kept !== undefined) return kept;
  const words = new Set<string>();
  for (const topic of knowledge.topics.values())
    for (const text of [topic.title, ...Object.values(topic.wordings).flat()])
      for (const word of text.toLowerCase().match(/\p{L}+/gu) ?? []) words.add(word);
  for (const van of knowledge.vans.values()) words.add(van.name.toLowerCase());
  ordinaryOf.set(knowledge, words);
  return words;
}
