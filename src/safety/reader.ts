import type { TopicId } from '../basics/ids.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import { featuresOf } from './features.ts';
import { HAZARDS } from './hazards.ts';
import { createNetReader, type Opinion, type SecondNet } from './second-net.ts';
import type { Alarm } from './tongue.ts';
import { createTongues, type Tongue } from './tongues.ts';
import type { Danger, SafetyReader, SafetyReading } from './types.ts';
import { wordsOf } from './words.ts';

/** How much a further term of a rule speaks for its hazard, beside what the net leans to. */
const TERM = 0.5;
/** A rule that names its hazard speaks for it more than another. */
const FIRM = 1;

/**
 * Reads whether somebody is in danger. Pure; the same text and context give the same reading.
 *
 * @param data graph/safety.yaml. Compiled once; a reading then takes well under 0.2 ms.
 * @param net  What was learnt from examples ({@link learnSafety}). Without it the rules stand alone, and all of them stand:
 *             sooner a notice too many.
 */
export function createSafetyReader(
  data: Pick<SafetyData, 'notices' | 'reading'>,
  net: SecondNet | null = null,
): SafetyReader {
  const { signs, sure } = data.reading;
  const signMap = new Map(Object.entries(signs));
  const tongues = createTongues(data.reading);
  const askNet = net === null ? null : createNetReader(net);
  const ranks = Object.keys(HAZARDS);

  const readIn = (tongue: Tongue, text: string, before: string): SafetyReading => {
    const from = before === '' ? 0 : tongue.reader.parted(wordsOf(before, signMap, tongue.apostrophes).words).length;
    const whole = before === '' ? text : `${before} ${text}`;
    const words = tongue.reader.parted(wordsOf(whole, signMap, tongue.apostrophes).words);
    const reading = tongue.reader.read(words);
    const fresh = reading.alarms.filter((alarm) => alarm.to > from);
    const opinion = askNet?.(featuresOf(words, reading)) ?? null;
    const believed = fresh.filter((alarm) => alarm.firm || opinion === null || opinion.chance >= sure.rule);
    const doubted = fresh
      .filter((alarm) => !believed.includes(alarm))
      .map((alarm) => `${alarm.why}: weak, and the second net doubts it`);
    const why = [...reading.aside, ...doubted, ...(opinion === null ? [] : [netSays(opinion)])];
    const level = (hazard: TopicId, alarm: Alarm | null) => alarm?.level ?? data.notices[hazard]?.level ?? 'danger';
    const worst = worstOf(believed, opinion, ranks);
    if (worst !== null) {
      const danger = {
        hazard: worst.hazard,
        level: level(worst.hazard, worst),
        language: tongue.code,
        why: believed.map((alarm) => alarm.why),
      };
      return { danger, why: [...danger.why, ...why] };
    }
    if (opinion !== null && opinion.chance >= sure.alone && sure.alone < 1) {
      const hazard = leaningOf(opinion, net?.hazards ?? []);
      const danger: Danger = { hazard, level: level(hazard, null), language: tongue.code, why: [netSays(opinion)] };
      return { danger, why: [...danger.why, ...why] };
    }
    return { danger: null, why };
  };

  const readOnce = (text: string, before: string): SafetyReading => {
    const why: string[] = [];
    for (const tongue of tongues(`${before} ${text}`)) {
      const reading = readIn(tongue, text, before);
      if (reading.danger !== null) return reading;
      why.push(...reading.why);
    }
    return { danger: null, why };
  };

  return (text, context) => {
    const alone = readOnce(text, '');
    if (alone.danger !== null || context.before.trim() === '') return alone;
    // A danger may be typed in two messages; what the first said by itself was read when it came.
    if (readOnce(context.before, '').danger !== null) return alone;
    const together = readOnce(text, context.before);
    return together.danger === null ? alone : together;
  };
}

function worstOf(alarms: readonly Alarm[], opinion: Opinion | null, ranks: readonly TopicId[]): Alarm | null {
  const score = (alarm: Alarm) => alarm.terms * TERM + (alarm.firm ? FIRM : 0) + (opinion?.leaning(alarm.hazard) ?? 0);
  const rank = (alarm: Alarm) => (ranks.includes(alarm.hazard) ? ranks.indexOf(alarm.hazard) : ranks.length);
  return [...alarms].sort((a, b) => score(b) - score(a) || rank(a) - rank(b))[0] ?? null;
}

function leaningOf(opinion: Opinion, hazards: readonly TopicId[]): TopicId {
  return [...hazards].sort((a, b) => opinion.leaning(b) - opinion.leaning(a))[0] ?? '';
}

function netSays({ chance, loudest }: Opinion): string {
  return `second net: ${Math.round(chance * 100)} % danger (${loudest.join(', ')})`;
}
