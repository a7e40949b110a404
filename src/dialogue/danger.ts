import { MINUTE_MS } from '../basics/time.ts';
import { followUps, readFollowUp } from '../safety/follow-up.ts';
import type { Danger, SafetyReading } from '../safety/types.ts';
import type { DangerAsk } from '../thread/thread.ts';
import { readChoice } from './choices.ts';
import { type Draft, does, notes, opens, passes, remembers, type Situation } from './draft.ts';

/** A danger told in two messages is still told: the words of the last minute are read along. */
const SPLIT_WITHIN_MS = MINUTE_MS;

const NOTHING_READ: SafetyReading = { danger: null, why: [], chance: 0, setAside: false };

/** The safety reading of the message, before anything else, in every state. */
export function readSafety(draft: Draft, situation: Situation): SafetyReading {
  const { message, served, scope, nowMs } = situation;
  if (message.text.trim() === '') return NOTHING_READ;
  const { heard } = draft.thread.memory;
  const before = heard !== undefined && nowMs - heard.atMs <= SPLIT_WITHIN_MS ? heard.text : '';
  // Without a booking the van may have anything.
  const vanHas = (part: string): boolean => scope === null || scope.parts.has(part);
  return served.readDanger(message.text, { before, vanHas });
}

/** Keeps the text for the next reading, whatever is made of it. */
export function hears(draft: Draft, { message, nowMs }: Situation): Draft {
  return message.text.trim() === '' ? draft : remembers(draft, { heard: { text: message.text, atMs: nowMs } });
}

/** The notice first and whole; the thread goes to people; only what changes the action is asked. */
export function showNotice(draft: Draft, danger: Danger, situation: Situation): Draft {
  const asks = asksOf(danger.hazard, danger.level, situation)[0] ?? null;
  const shown = notes(does(draft, { kind: 'notice', danger, asks }), {
    kind: 'notice',
    hazard: danger.hazard,
    level: danger.level,
  });
  const passed = passes(shown, 'safety', situation.nowMs);
  const dangers = [...new Set([...draft.thread.memory.dangers, danger.hazard])];
  const kept = remembers(passed, {
    dangers,
    language: danger.language,
    aside: null,
    lastText: situation.message.text,
    lastAtMs: situation.nowMs,
  });
  return opens(
    kept,
    asks === null || draft.thread.keeper === 'staff' ? null : { kind: 'danger', hazard: danger.hazard, asks },
  );
}

/** What is asked after the notice, first first; where they are is not asked when the booking tells the pitch. */
function asksOf(hazard: string, level: Danger['level'], { served, booking }: Situation): readonly DangerAsk[] {
  const asks = followUps(hazard, level, served.knowledge.safety);
  return booking?.pitch == null ? asks : asks.filter((ask) => ask !== 'where');
}

/**
 * The answer to what was asked after a notice: it goes to people with the thread. Only a clear 'no, it is not that'
 * to the first question of an `ask` notice ends the danger; whatever else is said keeps it.
 */
export function answerDanger(draft: Draft, situation: Situation): Draft | null {
  const { open } = draft.thread;
  if (open?.kind !== 'danger') return null;
  const { message } = situation;
  const pressed = readChoice(message.choice ?? '');
  if (pressed !== null && pressed.kind !== 'danger') return null;
  const said =
    pressed?.kind === 'danger' ? pressed.answer : readFollowUp(message.text, situation.served.knowledge.safety);
  const heard = remembers(draft, {
    tried: [...draft.thread.memory.tried, `${ASKED[open.asks]} ${message.text === '' ? said : message.text}`].slice(
      -20,
    ),
  });
  if (open.asks === 'is-it' && said === 'no') return notDangerous(heard, situation);
  if (said === 'unclear' && open.asks !== 'where' && wantsPerson(situation))
    return does(does(heard, { kind: 'waiting' }), { kind: 'danger-asks', hazard: open.hazard, asks: open.asks });
  const asks = asksOf(open.hazard, 'ask', situation);
  const next = asks[asks.indexOf(open.asks) + 1];
  if (next === undefined) return opens(does(heard, { kind: 'danger-noted', over: false }), null);
  return opens(does(heard, { kind: 'danger-asks', hazard: open.hazard, asks: next }), { ...open, asks: next });
}

/** People are told already: it is said again, and the question stands. */
function wantsPerson({ message, scope, served }: Situation): boolean {
  if (scope === null) return false;
  const read = served.matcher.understand(message.text, { van: scope.id, lastTopic: null, lastText: '' });
  return read.some(({ decision }) => decision.kind === 'person');
}

const ASKED: Record<DangerAsk, string> = {
  'is-it': 'Is it the dangerous one?',
  'everyone-out': 'Is everyone out?',
  'anyone-ill': 'Is anyone ill?',
  where: 'Where?',
};

function notDangerous(draft: Draft, situation: Situation): Draft {
  const { thread } = draft;
  const back =
    thread.keeper === 'waiting' && thread.reason === 'safety'
      ? notes(
          { ...draft, thread: { ...thread, keeper: 'bot', keeperName: null, reason: null, sinceMs: situation.nowMs } },
          { kind: 'given-back', by: 'hirer' },
        )
      : draft;
  return opens(does(back, { kind: 'danger-noted', over: true }), null);
}
