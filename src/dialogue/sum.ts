import { localTime } from '../basics/time.ts';
import { calculate, changesInput, isCalculation } from '../calculators/index.ts';
import type { CalculatorContext, Inputs, Outcome } from '../calculators/types.ts';
import { nightsLeft } from '../hours/nights.ts';
import type { Understood } from '../match/types.ts';
import type { Open } from '../thread/thread.ts';
import { type Draft, does, opens, passes, remembers, type Situation, talkedAbout } from './draft.ts';

type OpenInput = Extract<Open, { kind: 'input' }>;

/**
 * Works a topic's sum out from the words; what is missing is asked for, one input at a time.
 *
 * @param before The inputs of such a sum that was talked about last: 'how many days when we are only two?' leaves the
 *               rest as it was.
 */
export function startSum(
  draft: Draft,
  topic: string,
  text: string,
  understood: Understood | null,
  before: Inputs | null,
  situation: Situation,
): Draft {
  const context = contextFor(topic, situation);
  if (context === null) return draft;
  const fresh = calculate(topic, text, null, context);
  const again = fresh.kind === 'asks' && before !== null ? calculate(topic, text, before, context) : fresh;
  return told(draft, topic, again.kind === 'result' ? again : fresh, text, understood, situation);
}

/**
 * Reads the answer to the sum's open question.
 *
 * @returns Null when the message gives no input: then it is about something else.
 */
export function answerSum(draft: Draft, open: OpenInput, text: string, situation: Situation): Draft | null {
  const context = contextFor(open.topic, situation);
  if (context === null) return null;
  const outcome = calculate(open.topic, text, open.inputs, context);
  const gaveNothing = outcome.kind === 'asks' && outcome.asks === open.asks && sameInputs(outcome.inputs, open.inputs);
  return gaveNothing ? null : told(draft, open.topic, outcome, open.text, null, situation);
}

/** 'And on 16 amps?' works the last sum out again with one input changed. Null: the message is no such follow-up. */
export function followUpSum(draft: Draft, situation: Situation): Draft | null {
  const { lastTopic, lastInputs } = draft.thread.memory;
  if (lastTopic === null || lastInputs === null || !isCalculation(lastTopic)) return null;
  const context = contextFor(lastTopic, situation);
  const { text } = situation.message;
  if (context === null || !changesInput(text, lastTopic, lastInputs, context)) return null;
  return told(
    talkedAbout(draft, lastTopic, text, situation),
    lastTopic,
    calculate(lastTopic, text, lastInputs, context),
    text,
    null,
    situation,
  );
}

function told(
  draft: Draft,
  topic: string,
  outcome: Outcome,
  text: string,
  understood: Understood | null,
  situation: Situation,
): Draft {
  const probability = understood?.ranked[0]?.probability ?? 1;
  const moved = does(draft, { kind: 'calculation', topic, outcome, probability, understood });
  const kept = remembers(moved, { lastTopic: topic, lastInputs: outcome.inputs, lastAtMs: situation.nowMs });
  switch (outcome.kind) {
    case 'asks':
      return opens(kept, { kind: 'input', topic, asks: outcome.asks, inputs: outcome.inputs, text });
    case 'refused':
      return opens(kept, { kind: 'input', topic, asks: outcome.refused, inputs: outcome.inputs, text });
    case 'result':
      return outcome.pass ? passedToo(opens(kept, null), understood, situation) : opens(kept, null);
  }
}

/** Some sums are a person's business whatever the figures. */
function passedToo(draft: Draft, understood: Understood | null, situation: Situation): Draft {
  if (draft.thread.keeper !== 'bot') return draft;
  const passed = does(draft, { kind: 'pass', reason: 'staff-only', understood, language: null });
  return passes(passed, 'staff-only', situation.nowMs);
}

/** What a sum may look at besides the words; null where no van is known or the topic has none. */
export function contextFor(topic: string, situation: Situation): CalculatorContext | null {
  return isCalculation(topic) ? sumContext(situation) : null;
}

/** What any sum may look at besides the words; null where no van is known. */
export function sumContext({ scope, booking, site, served, nowMs }: Situation): CalculatorContext | null {
  if (scope === null) return null;
  const { firm } = served.knowledge;
  const people = booking?.people ?? null;
  return {
    figures: scope.data.figures,
    vanName: scope.name,
    constants: firm.constants,
    amps: booking?.amps ?? null,
    people: people === null ? null : people.adults + people.children.length,
    children: people === null ? null : people.children.length,
    nights: nightsLeft(booking?.to ?? null, nowMs, firm.timeZone),
    month: localTime(nowMs, firm.timeZone).month,
    sun: site?.sun ?? 'north',
  };
}

function sameInputs(a: Inputs, b: Inputs): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
