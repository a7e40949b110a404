import type { TopicId } from '../basics/ids.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import { featuresOf } from './features.ts';
import { HAZARDS } from './hazards.ts';
import { createNetReader, type Opinion, type SecondNet } from './second-net.ts';
import { segmentsOf } from './segments.ts';
import type { Alarm } from './tongue.ts';
import { createTongues, type Tongue } from './tongues.ts';
import type { SafetyReader, SafetyReading } from './types.ts';
import { type Word, wordsOf } from './words.ts';

/** How much a further term of a rule speaks for its hazard, beside what the net leans to. */
const TERM = 2;
/** A rule that names its hazard speaks for it more than another. */
const FIRM = 3;

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
  /** A stretch torn out of its text must be surer than the whole. */
  const surer = { rule: halfWay(sure.rule), alone: halfWay(sure.alone) };
  const signMap = new Map(Object.entries(signs));
  const tongues = createTongues(data.reading);
  const askNet = net === null ? null : createNetReader(net);
  const ranks = Object.keys(HAZARDS);

  /** One stretch of a text. `fresh` is the first word that was not there before: a danger wholly before it was read then. */
  const readSegment = (tongue: Tongue, words: readonly Word[], fresh: number, sure: Sure): SafetyReading => {
    const reading = tongue.reader.read(words);
    const alarms = reading.alarms.filter((alarm) => alarm.to > fresh);
    const opinion = askNet?.(featuresOf(words, reading, tongue.reader.meant)) ?? null;
    const believed = alarms.filter((alarm) => alarm.firm || opinion === null || opinion.chance >= sure.rule);
    const doubted = alarms
      .filter((alarm) => !believed.includes(alarm))
      .map((alarm) => `${alarm.why}: weak, and the second net doubts it`);
    const netWhy = opinion === null ? [] : [netSays(opinion)];
    const why = [...reading.aside, ...doubted, ...netWhy];
    const level = (hazard: TopicId, alarm: Alarm | null) => alarm?.level ?? data.notices[hazard]?.level ?? 'danger';
    const worst = worstOf(believed, opinion, ranks);
    if (worst !== null) {
      const own = believed.map((alarm) => alarm.why);
      return {
        danger: { hazard: worst.hazard, level: level(worst.hazard, worst), language: tongue.code, why: own },
        why: [...own, ...why],
      };
    }
    if (opinion !== null && opinion.chance >= sure.alone && sure.alone < 1) {
      const hazard = leaningOf(opinion, net?.hazards ?? []);
      return { danger: { hazard, level: level(hazard, null), language: tongue.code, why: netWhy }, why };
    }
    return { danger: null, why };
  };

  const readIn = (tongue: Tongue, text: string, before: string): SafetyReading => {
    const cut = (part: string) => tongue.reader.parted(wordsOf(part, signMap, tongue.apostrophes).words);
    const fresh = before === '' ? 0 : cut(before).length;
    const words = cut(before === '' ? text : `${before} ${text}`);
    const why: string[] = [];
    for (const { from, to } of segmentsOf(words)) {
      if (to <= fresh) continue;
      const whole = from === 0 && to === words.length;
      const reading = readSegment(tongue, whole ? words : words.slice(from, to), fresh - from, whole ? sure : surer);
      if (reading.danger !== null) return reading;
      why.push(...reading.why);
    }
    return { danger: null, why: [...new Set(why)] };
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

type Sure = SafetyData['reading']['sure'];

function halfWay(chance: number): number {
  return (1 + chance) / 2;
}

/** What speaks most for its hazard: the rule with its terms, and what the net leans to. */
function worstOf(alarms: readonly Alarm[], opinion: Opinion | null, ranks: readonly TopicId[]): Alarm | null {
  if (alarms.length <= 1) return alarms[0] ?? null;
  const leanings = leaningsOf(
    alarms.map((alarm) => alarm.hazard),
    opinion,
  );
  const score = ({ terms, firm, hazard }: Alarm) => terms * TERM + (firm ? FIRM : 0) + (leanings.get(hazard) ?? 0);
  const rank = ({ hazard }: Alarm) => (ranks.includes(hazard) ? ranks.indexOf(hazard) : ranks.length);
  return [...alarms].sort((a, b) => score(b) - score(a) || rank(a) - rank(b))[0] ?? null;
}

function leaningOf(opinion: Opinion, hazards: readonly TopicId[]): TopicId {
  const leanings = [...leaningsOf(hazards, opinion)];
  return leanings.sort(([, a], [, b]) => b - a)[0]?.[0] ?? '';
}

/** Each hazard is asked for once: it is a sum over all features. */
function leaningsOf(hazards: readonly TopicId[], opinion: Opinion | null): ReadonlyMap<TopicId, number> {
  return new Map([...new Set(hazards)].map((hazard) => [hazard, opinion?.leaning(hazard) ?? 0] as const));
}

function netSays({ chance, loudest }: Opinion): string {
  return `second net: ${Math.round(chance * 100)} % danger (${loudest.join(', ')})`;
}
