import { DAY_MS } from '../basics/time.ts';
import { nextStep } from '../faults/next-step.ts';
import { openWalk } from '../faults/open-walk.ts';
import { asksRecord, readStepAnswer, type StepAnswer } from '../faults/read-step-answer.ts';
import { withSeen } from '../faults/seen.ts';
import type { Step, Walk } from '../faults/types.ts';
import { goBack, put, type Told, tell } from '../faults/walk.ts';
import { staffedAt } from '../hours/firm-hours.ts';
import type { VanScope } from '../knowledge/knowledge.ts';
import type { Understood } from '../match/types.ts';
import type { Thread } from '../thread/thread.ts';
import { pickTyped, type StepPress, stepPresses } from './choices.ts';
import { type Draft, does, notes, opens, remembers, type Situation } from './draft.ts';
import type { StepNote } from './moves.ts';
import { toPerson } from './pass.ts';
import { stepRecord, stepWords, triedLines } from './walk-record.ts';
import { saysCarryOn, saysLater, saysQuestion, saysYes } from './words-read.ts';

/** After so long a walk is taken up again with a line that says where it stood. */
const RECAP_AFTER_MS = DAY_MS / 2;

/**
 * Starts fault finding on a symptom of the van.
 *
 * @returns Null when the symptom has no causes here, or a danger shown in this thread forbids it: then its text answers.
 */
export function startWalk(
  draft: Draft,
  symptom: string,
  text: string,
  understood: Understood | null,
  situation: Situation,
): Draft | null {
  const { scope, nowMs } = situation;
  if (scope === null || forbidden(draft.thread, symptom, situation)) return null;
  const causes = scope.causes(symptom);
  if (causes.length === 0) return null;
  const walk = openWalk(symptom, causes, {
    said: [text, symptomBefore(draft, symptom, situation)].filter((said) => said !== ''),
    seen: draft.thread.memory.seen,
    van: scope,
    nowMs,
  });
  return goOn(draft, walk, { opening: true, note: null, understood }, situation);
}

/** The title of the symptom the thread was at before: no mains at all explains why a fridge beeps. */
function symptomBefore({ thread }: Draft, symptom: string, { served }: Situation): string {
  const before = thread.memory.tried.find((line) =>
    [...served.knowledge.topics.values()].some((topic) => topic.title === line && topic.id !== symptom),
  );
  return before ?? '';
}

/** After a danger no fault finding on gas, mains, heating or alarms: that is for people. */
function forbidden(thread: Thread, symptom: string, { served }: Situation): boolean {
  const system = served.knowledge.topics.get(symptom)?.system ?? '';
  return (
    thread.memory.dangers.length > 0 && ['gas', 'mains', 'heating', 'hotwater', 'cooking', 'safety'].includes(system)
  );
}

type Going = { readonly opening: boolean; readonly note: StepNote | null; readonly understood: Understood | null };

/** Puts the next step to the hirer, or ends the walk. */
function goOn(draft: Draft, walk: Walk, going: Going, situation: Situation): Draft {
  const { scope, nowMs } = situation;
  if (scope === null) return draft;
  const causes = scope.causes(walk.symptom);
  const remembered = remembers(draft, { seen: withSeen(draft.thread.memory.seen, walk, causes, scope), aside: null });
  const next = nextStep(walk, causes, { passMinutes: passMinutes(situation) });
  switch (next.kind) {
    case 'check':
    case 'fix': {
      const step: Step = { kind: next.kind, cause: next.cause };
      return putStep(remembered, put(walk, step), step, going, situation);
    }
    case 'fixed': {
      const ended = ends(keepsTried(remembered, walk, scope, situation), walk, 'fixed', next.cause, situation);
      return opens(does(ended, { kind: 'walk-fixed', walk }), null);
    }
    case 'pass': {
      if (going.opening) {
        // Nothing a hirer can do: the symptom's own text is still worth reading while people are fetched.
        const answered = does(remembered, {
          kind: 'answer',
          topic: walk.symptom,
          probability: going.understood?.ranked[0]?.probability ?? 1,
          understood: going.understood,
          asksHelped: false,
        });
        return toPerson(
          ends(answered, walk, 'passed', next.likely, situation),
          'not-fixed',
          going.understood,
          situation,
        );
      }
      const kept = remembers(keepsTried(remembered, walk, scope, situation), { lastAtMs: nowMs });
      const ended = ends(kept, walk, 'passed', next.likely, situation);
      return toPerson(ended, 'not-fixed', null, situation, meanwhileFor(next.likely, walk, scope, situation));
    }
  }
}

/** What staff's fix asks of the hirer until they come, when one cause is believed in more than all others. */
function meanwhileFor(likely: string | null, walk: Walk, scope: VanScope, situation: Situation): string | null {
  const cause = scope.causes(walk.symptom).find((each) => each.id === likely);
  return cause?.fix.who === 'staff' ? stepWords(cause.fix.do, scope, situation) : null;
}

function putStep(draft: Draft, walk: Walk, step: Step, going: Going, situation: Situation): Draft {
  const probability = going.understood?.ranked[0]?.probability ?? 1;
  const moved = does(draft, { kind: 'step', walk, step, probability, ...going });
  return opens(remembers(moved, { lastTopic: walk.symptom, lastAtMs: situation.nowMs }), { kind: 'step', walk });
}

/** What a pass costs at this hour, in minutes: firm.yaml's estimate. */
export function passMinutes({ served, nowMs }: Situation): number {
  const { firm } = served.knowledge;
  const staffed = staffedAt(firm, nowMs).kind;
  return staffed === 'open'
    ? firm.passMinutes.open
    : staffed === 'on-call'
      ? firm.passMinutes.onCall
      : firm.passMinutes.closed;
}

function ends(
  draft: Draft,
  walk: Walk,
  end: 'fixed' | 'passed' | 'left',
  cause: string | null,
  situation: Situation,
): Draft {
  const { scope } = situation;
  if (scope === null) return draft;
  return notes(draft, {
    kind: 'walk-ended',
    symptom: walk.symptom,
    van: scope.id,
    end,
    cause,
    tried: stepRecord(walk, scope, situation),
  });
}

/** 'Never mind' in the middle of a walk: it is left. */
export function leaveWalk(draft: Draft): Draft {
  return does(opens(remembers(draft, { aside: null }), null), { kind: 'helped' });
}

/**
 * A walk that is over without having come to its own end, by whatever was said or pressed: its end is recorded with what
 * was done, and people get that with the thread.
 */
export function closesWalks(draft: Draft, before: Thread, situation: Situation): Draft {
  const { scope } = situation;
  const walks = [before.open?.kind === 'step' ? before.open.walk : null, before.memory.aside];
  return walks.reduce((so: Draft, walk): Draft => {
    if (walk === null || scope === null || goesOn(so, walk.symptom)) return so;
    if (so.thread.keeper === 'bot') return ends(so, walk, 'left', null, situation);
    return ends(keepsTried(so, walk, scope, situation), walk, 'passed', null, situation);
  }, draft);
}

function goesOn({ thread, events }: Draft, symptom: string): boolean {
  return (
    (thread.open?.kind === 'step' && thread.open.walk.symptom === symptom) ||
    thread.memory.aside?.symptom === symptom ||
    events.some((event) => event.kind === 'walk-ended' && event.symptom === symptom)
  );
}

/** What was done on a walk, for the brief. */
function keepsTried(draft: Draft, walk: Walk, scope: VanScope, situation: Situation): Draft {
  const title = situation.served.knowledge.topics.get(walk.symptom)?.title ?? walk.symptom;
  const { tried } = draft.thread.memory;
  return remembers(draft, { tried: [...tried, title, ...triedLines(walk, scope, situation)].slice(-20) });
}

/**
 * What the hirer said about the step that is with them.
 *
 * @param press Set when a button was pressed.
 * @returns Null when the message is about something else: then the walk is laid aside and offered again.
 */
export function answerStep(draft: Draft, walk: Walk, situation: Situation, press?: StepPress): Draft | null {
  const { scope, message, nowMs } = situation;
  const { now } = walk;
  if (scope === null || now === null) return null;
  const cause = scope.causes(walk.symptom).find((each) => each.id === now.cause);
  if (cause === undefined) return null;
  const read = press === undefined ? readStepAnswer(message.text, now.kind, cause, scope) : pressed(press, now.kind);
  // 'Fewer than 2 lamps?' '1' says how many; only where a number says nothing of the step it is the choice's own.
  const presses = stepPresses(now.kind, cause.check?.look !== undefined);
  const number =
    read.kind === 'other' && /^\W*\d\W*$/.test(message.text) ? pickTyped(message.text, [...presses, 'person']) : null;
  if (number === presses.length) return toPerson(draft, 'asked', null, situation);
  const byNumber = number === null ? undefined : presses[number];
  const answer = byNumber === undefined ? read : pressed(byNumber, now.kind);
  const late = nowMs - draft.thread.memory.lastAtMs > RECAP_AFTER_MS;
  const recapped = late ? does(draft, { kind: 'recap', walk }) : draft;
  const again = (note: StepNote): Draft =>
    putStep(recapped, walk, now, { opening: false, note, understood: null }, situation);
  switch (answer.kind) {
    case 'told':
      return goOn(recapped, tell(walk, answer.told), { opening: false, note: null, understood: null }, situation);
    case 'back': {
      const back = goBack(walk);
      return back.now === null
        ? again('again')
        : putStep(recapped, back, back.now, { opening: false, note: 'back', understood: null }, situation);
    }
    case 'how':
      return again('how');
    case 'unclear':
      return again('unclear');
    case 'done':
      return again('done');
    case 'record':
      return again('tried');
    case 'other':
      return null;
  }
}

/** Whether all that the step's own reading made of a message is to show the step once more. */
export function showsAgain({ moves }: Draft): boolean {
  const last = moves.at(-1);
  return last?.kind === 'step' && last.note === 'how';
}

function pressed(press: StepPress, kind: 'check' | 'fix'): StepAnswer {
  const told = (what: Told): StepAnswer => ({ kind: 'told', told: what });
  switch (press) {
    case 'yes':
    case 'no':
      return told(kind === 'check' ? { kind: 'observed', answer: press } : { kind: 'tried', worked: press === 'yes' });
    case 'unsure':
      return told({ kind: 'observed', answer: 'cannot-tell' });
    case 'worked':
      return told({ kind: 'works' });
    case 'still':
      return told({ kind: 'tried', worked: false });
    case 'skip':
      return told({ kind: 'skip' });
    case 'back':
      return { kind: 'back' };
    case 'how':
      return { kind: 'how' };
    case 'tried':
      return { kind: 'record' };
  }
}

/**
 * Words that fit neither the step nor any topic are most likely about the step: it is put again, and nobody is fetched.
 * A question that fits several topics, and not the symptom, is met with those.
 *
 * @returns Null when something was understood, or no step is open.
 */
export function stayOnStep(before: Draft, understood: Draft, situation: Situation): Draft | null {
  const { open, memory } = before.thread;
  const walk = open?.kind === 'step' ? open.walk : open?.kind === 'carry-on' ? memory.aside : null;
  if (walk === null || walk.now === null) return null;
  const made = understood.moves.slice(before.moves.length);
  const { symptom } = walk;
  const asks = saysQuestion(situation.message.text);
  const lost = made.every(
    (move) =>
      (move.kind === 'pass' && move.reason === 'unsure') ||
      (move.kind === 'choose' &&
        !(asks && move.why === 'close' && move.topics.every(({ topic }) => topic !== symptom))),
  );
  if (!lost) return null;
  const taken = remembers(before, { aside: null });
  return putStep(taken, walk, walk.now, { opening: false, note: 'unknown', understood: null }, situation);
}

/** 'What have we tried?' with no step open: the record, and the step where a walk laid aside stood. */
export function recallWalk(draft: Draft, situation: Situation): Draft | null {
  const { aside, tried } = draft.thread.memory;
  if (!asksRecord(situation.message.text)) return null;
  if (aside?.now == null) return does(draft, { kind: 'record', lines: tried });
  const taken = remembers(draft, { aside: null });
  return putStep(taken, aside, aside.now, { opening: false, note: 'tried', understood: null }, situation);
}

/** What is said to 'Shall we carry on?': also an answer to the step itself, which is heard as such. */
export function answerCarryOn(draft: Draft, situation: Situation): Draft | null {
  const { aside } = draft.thread.memory;
  const { text } = situation.message;
  if (aside?.now == null) return null;
  const picked = pickTyped(text, ['Carry on', 'Get a person']);
  if (picked === 1) return toPerson(draft, 'asked', null, situation);
  if (picked === 0 || saysYes(text) || saysCarryOn(text)) return resumeWalk(draft, situation);
  if (saysLater(text)) return opens(does(draft, { kind: 'later', walk: aside }), null);
  const cause = situation.scope?.causes(aside.symptom).find((each) => each.id === aside.now?.cause);
  if (cause === undefined || situation.scope === null) return null;
  const told = readStepAnswer(text, aside.now.kind, cause, situation.scope).kind === 'told';
  return told ? answerStep(remembers(draft, { aside: null }), aside, situation) : null;
}

/** A walk laid aside is taken up where it stood. */
export function resumeWalk(draft: Draft, situation: Situation): Draft | null {
  const { aside } = draft.thread.memory;
  if (aside === null || aside.now === null) return null;
  const recapped = does(remembers(draft, { aside: null }), { kind: 'recap', walk: aside });
  return putStep(recapped, aside, aside.now, { opening: false, note: null, understood: null }, situation);
}

/**
 * After a change of subject in the middle of a walk: the walk is kept and offered again, unless the new subject opened
 * a question of its own.
 */
export function offersAside(draft: Draft, before: Thread, situation: Situation): Draft {
  const aside = before.open?.kind === 'carry-on' ? before.memory.aside : null;
  const walk = before.open?.kind === 'step' ? before.open.walk : aside;
  if (walk === null || draft.thread.keeper !== 'bot' || situation.scope === null) return draft;
  const kept = remembers(draft, { aside: walk });
  const { open } = draft.thread;
  if (open?.kind === 'step' && open.walk.symptom !== walk.symptom) return kept;
  // Small talk leaves the step where it is.
  if (open?.kind === 'step') return draft;
  const offered = does(kept, { kind: 'offer-walk', walk });
  return open === null || open.kind === 'carry-on' ? opens(offered, { kind: 'carry-on' }) : offered;
}
