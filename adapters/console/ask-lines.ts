import { z } from 'zod';
import {
  addDays,
  type Booking,
  dayOf,
  instantOn,
  type Message,
  type Move,
  newThread,
  plainText,
  type Served,
  type Thread,
  type Turned,
  turn,
} from '../../src/index.ts';

/** One line of `ask --jsonl`: design.md section 9. What is not given is not known. */
const askLine = z
  .strictObject({
    id: z.union([z.string(), z.number()]),
    van: z.string().optional(),
    text: z.string().optional(),
    turns: z.array(z.string()).min(1).optional(),
    site: z.string().optional(),
    amps: z.number().optional(),
    people: z.number().int().min(0).optional(),
    nights: z.number().int().min(0).optional(),
    at: z.string().optional(),
  })
  .refine((line) => (line.text === undefined) !== (line.turns === undefined), { error: 'either text or turns' });

export type AskLine = z.infer<typeof askLine>;

/** What one message came to. Field order is the order printed. */
export type Asked = {
  readonly outcome: 'answer' | 'choose' | 'check' | 'calculate' | 'pass' | 'safety' | 'chat';
  readonly topic: string | null;
  readonly topics: readonly string[];
  readonly confidence: number;
  readonly options: readonly { readonly topic: string; readonly confidence: number }[];
  readonly hazard: string | null;
  readonly lacks: string | null;
  readonly reason: string | null;
  readonly language: string;
  readonly values: unknown;
  readonly reply: string;
};

export type AskAnswer =
  | ({ readonly id: string | number } & Asked)
  | { readonly id: string | number; readonly turns: readonly Asked[] }
  | { readonly id: string | number | null; readonly error: string };

/** The day and hour that a line without `at` is asked at. */
const USUAL_DAY = '2027-07-15';

/** Answers one line of JSON in a fresh thread. A bad line gives its error and never throws. */
export function answerLine(text: string, served: Served): AskAnswer {
  const parsed = parse(text);
  if ('error' in parsed) return parsed;
  const { line } = parsed;
  const problem = misfit(line, served);
  if (problem !== null) return { id: line.id, error: problem };
  const nowMs = instantFor(line, served);
  const asked = converse(line.turns ?? [line.text ?? ''], bookingFor(line, nowMs, served), nowMs, served);
  const only = asked[0];
  return line.turns === undefined && only !== undefined ? { id: line.id, ...only } : { id: line.id, turns: asked };
}

function parse(text: string): { line: AskLine } | { id: string | number | null; error: string } {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return { id: null, error: `not JSON: ${error instanceof Error ? error.message : String(error)}` };
  }
  const read = askLine.safeParse(json);
  if (read.success) return { line: read.data };
  const given = typeof json === 'object' && json !== null && 'id' in json ? json.id : null;
  const id = typeof given === 'string' || typeof given === 'number' ? given : null;
  return {
    id,
    error: read.error.issues.map((issue) => `${issue.path.join('.') || 'line'}: ${issue.message}`).join('; '),
  };
}

function misfit(line: AskLine, { knowledge }: Served): string | null {
  const vanId = line.van?.toLowerCase();
  if (vanId !== undefined && !knowledge.vans.has(vanId)) {
    return `van: no van '${line.van}' in the fleet, expected one of ${[...knowledge.vans.keys()].join(', ')}`;
  }
  if (line.site !== undefined && siteFor(line.site, knowledge) === null) {
    return `site: no site '${line.site}', expected one of ${Object.keys(knowledge.places.sites).join(', ')}`;
  }
  if (line.at !== undefined && Number.isNaN(Date.parse(line.at))) return `at: '${line.at}' is no ISO time`;
  return null;
}

/** A site by its id or its name. */
function siteFor(said: string, knowledge: Served['knowledge']): string | null {
  const plain = said.toLowerCase();
  const found = Object.entries(knowledge.places.sites).find(
    ([id, site]) => id === plain || site.name.toLowerCase() === plain,
  );
  return found?.[0] ?? null;
}

function instantFor(line: AskLine, { knowledge }: Served): number {
  const { timeZone } = knowledge.firm;
  if (line.at === undefined) return instantOn(USUAL_DAY, '12:00', timeZone);
  // A time without an offset is the firm's own.
  const local = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})(?::\d{2}(?:\.\d+)?)?$/.exec(line.at);
  return local === null ? Date.parse(line.at) : instantOn(local[1] ?? '', local[2] ?? '', timeZone);
}

function bookingFor(line: AskLine, nowMs: number, { knowledge }: Served): Booking | null {
  if (line.van === undefined) return null;
  const today = dayOf(nowMs, knowledge.firm.timeZone);
  const site = line.site === undefined ? null : siteFor(line.site, knowledge);
  return {
    ref: 'ASK',
    hirer: 'you',
    firstName: '',
    people: line.people === undefined ? null : { adults: line.people, children: [], dogs: 0 },
    van: line.van.toLowerCase(),
    site,
    pitch: null,
    amps: line.amps ?? (site === null ? null : (knowledge.places.sites[site]?.amps ?? null)),
    from: today,
    to: line.nights === undefined ? null : addDays(today, line.nights),
    phone: null,
    note: '',
  };
}

const SECOND_MS = 1_000;

/** The turns of one talk, ten seconds apart. */
export function converse(texts: readonly string[], booking: Booking | null, startMs: number, served: Served): Asked[] {
  let thread: Thread = newThread(
    { id: 'ask', channel: 'console', address: 'ask', booking: booking?.ref ?? null, van: booking?.van ?? null },
    startMs,
  );
  return texts.map((text, i) => {
    const atMs = startMs + i * 10 * SECOND_MS;
    const turned = turn(thread, messageOf(text, i, atMs), served, { booking, code: 'none' }, atMs);
    thread = turned.thread;
    return askedOf(turned);
  });
}

export function messageOf(text: string, key: number, atMs: number, choice: string | null = null): Message {
  return {
    channel: 'console',
    address: 'ask',
    key: String(key),
    atMs,
    text,
    choice,
    attachments: [],
    edit: false,
    from: null,
    startToken: null,
  };
}

/** A turn as `ask` reports it. */
export function askedOf({ moves, replies, thread }: Turned): Asked {
  const topics = moves.flatMap(topicOf);
  const notice = moves.find((move) => move.kind === 'notice');
  const choose = moves.find((move) => move.kind === 'choose');
  const lacks = moves.find((move) => move.kind === 'lacks');
  const passed = moves.find((move) => move.kind === 'pass');
  const sum = moves.find((move) => move.kind === 'calculation');
  return {
    outcome: outcomeOf(moves),
    topic: topics[0] ?? null,
    topics,
    confidence: rounded(confidenceOf(moves)),
    options:
      choose?.kind === 'choose'
        ? choose.topics.map(({ topic, probability }) => ({ topic, confidence: rounded(probability) }))
        : [],
    hazard: notice?.kind === 'notice' ? notice.danger.hazard : null,
    lacks: lacks?.kind === 'lacks' ? lacks.topic : null,
    reason: passed?.kind === 'pass' ? passed.reason : notice !== undefined ? 'safety' : null,
    language: thread.memory.language,
    values: sum?.kind === 'calculation' ? valuesOf(sum) : null,
    reply: replies.map(plainText).join('\n\n'),
  };
}

function topicOf(move: Move): string[] {
  switch (move.kind) {
    case 'answer':
    case 'calculation':
      return [move.topic];
    case 'step':
      return [move.walk.symptom];
    default:
      return [];
  }
}

function outcomeOf(moves: readonly Move[]): Asked['outcome'] {
  if (moves.some((move) => move.kind === 'notice')) return 'safety';
  for (const move of moves) {
    switch (move.kind) {
      case 'answer':
      case 'lacks':
        return 'answer';
      case 'choose':
        return 'choose';
      case 'step':
        return 'check';
      case 'calculation':
        return 'calculate';
      case 'pass':
        return 'pass';
      default:
    }
  }
  return 'chat';
}

function confidenceOf(moves: readonly Move[]): number {
  for (const move of moves) {
    if ('understood' in move && move.understood !== null) return move.understood.ranked[0]?.probability ?? 0;
    if ('probability' in move) return move.probability;
  }
  return 0;
}

function valuesOf({ outcome }: Extract<Move, { kind: 'calculation' }>): unknown {
  switch (outcome.kind) {
    case 'asks':
      return { asks: outcome.asks };
    case 'refused':
      return { refused: outcome.refused };
    case 'result':
      return outcome.values;
  }
}

function rounded(share: number): number {
  return Math.round(share * 10_000) / 10_000;
}
