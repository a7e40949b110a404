import type { TopicId } from '../basics/ids.ts';
import { percent } from '../basics/percent.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import { featuresOf } from './features.ts';
import { HAZARDS } from './hazards.ts';
import { createNetReader, type NetReader, type Opinion, type SecondNet } from './second-net.ts';
import { segmentsOf } from './segments.ts';
import type { Alarm, TongueReader, TongueReading } from './tongue.ts';
import { createTongues, type Tongue } from './tongues.ts';
import type { SafetyReader, SafetyReading } from './types.ts';
import { type Word, wordsOf } from './words.ts';

/** How much a further term of a rule speaks for its hazard, beside what the net leans to. */
const TERM = 0.4;
/** A rule that names its hazard speaks for it more than another. */
const FIRM = 0.6;

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
  const surer = { rule: halfWay(sure.rule), alone: halfWay(sure.alone), firm: sure.firm };
  const signMap = new Map(Object.entries(signs));
  const tongues = createTongues(data.reading);
  const second = net === null ? null : createNetReader(net);
  const ranks = Object.keys(HAZARDS);

  /** One stretch of a text. `fresh` is the first word that was not there before: a danger wholly before it was read then. */
  const readSegment = (tongue: Tongue, words: readonly Word[], fresh: number, sure: Sure): SafetyReading => {
    const reading = tongue.reader.read(words);
    const alarms = reading.alarms.filter((alarm) => alarm.to > fresh);
    const { opinion, said: netWhy } = second === null ? UNSEEN : lookedAt(second, words, reading, tongue.reader);
    const believed = alarms.filter(
      (alarm) => opinion === null || opinion.chance >= (alarm.firm ? sure.firm : sure.rule),
    );
    const doubted = alarms
      .filter((alarm) => !believed.includes(alarm))
      .map((alarm) => `${alarm.why}: the second net doubts it`);
    const why = [...reading.aside, ...doubted, ...netWhy];
    const chance = opinion?.chance ?? 0;
    const alone = opinion !== null && opinion.chance >= sure.alone && sure.alone < 1;
    if (believed.length === 0 && !alone) return { danger: null, why, chance, setAside: reading.stopped };
    const hazard = likeliest(believed, opinion, net?.hazards ?? [], ranks);
    const own = believed.filter((alarm) => alarm.hazard === hazard);
    const level = own[0]?.level ?? data.notices[hazard]?.level ?? 'danger';
    const said = own.length > 0 ? own : believed;
    const because = said.length > 0 ? said.map((alarm) => alarm.why) : netWhy;
    const leant = own.length === 0 && said.length > 0 ? [`${hazard}: its words lean to it`] : [];
    const others = believed.filter((alarm) => !said.includes(alarm)).map((alarm) => alarm.why);
    return {
      danger: { hazard, level, language: tongue.code, why: [...leant, ...because, ...others] },
      why: [...leant, ...because, ...others, ...why],
      chance,
      setAside: reading.stopped,
    };
  };

  const readIn = (tongue: Tongue, text: string, before: string): SafetyReading => {
    const cut = (part: string) => tongue.reader.parted(wordsOf(part, signMap, tongue.apostrophes).words);
    const fresh = before === '' ? 0 : cut(before).length;
    const words = cut(before === '' ? text : `${before} ${text}`);
    const why: string[] = [];
    let chance = 0;
    let setAside = false;
    for (const { from, to } of segmentsOf(words)) {
      if (to <= fresh) continue;
      const whole = from === 0 && to === words.length;
      const reading = readSegment(tongue, whole ? words : words.slice(from, to), fresh - from, whole ? sure : surer);
      if (reading.danger !== null) return reading;
      why.push(...reading.why);
      setAside ||= reading.setAside;
      chance = Math.max(chance, whole ? reading.chance : 2 * reading.chance - 1);
    }
    return { danger: null, why: [...new Set(why)], chance, setAside };
  };

  const readOnce = (text: string, before: string): SafetyReading => {
    const why: string[] = [];
    let chance = 0;
    let setAside = false;
    for (const tongue of tongues(`${before} ${text}`)) {
      const reading = readIn(tongue, text, before);
      if (reading.danger !== null) return reading;
      why.push(...reading.why);
      setAside ||= reading.setAside;
      chance = Math.max(chance, reading.chance);
    }
    return { danger: null, why, chance, setAside };
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

/**
 * The hazard that most speaks for: the best of its rules with its terms, and what the net leans to. The net may lean to one
 * that has no rule here, as a rule's words may mean something else: 'the kettle has run into the plug'.
 */
function likeliest(
  alarms: readonly Alarm[],
  opinion: Opinion | null,
  hazards: readonly TopicId[],
  ranks: readonly TopicId[],
): TopicId {
  const ruled = new Map<TopicId, number>();
  for (const { hazard, terms, firm } of alarms)
    ruled.set(hazard, Math.max(ruled.get(hazard) ?? 0, terms * TERM + (firm ? FIRM : 0)));
  const candidates = [...new Set([...ruled.keys(), ...(opinion === null ? [] : hazards)])];
  const scores = new Map(
    candidates.map((hazard) => [hazard, (ruled.get(hazard) ?? 0) + (opinion?.leaning(hazard) ?? 0)] as const),
  );
  const score = (hazard: TopicId) => scores.get(hazard) ?? 0;
  const rank = (hazard: TopicId) => (ranks.includes(hazard) ? ranks.indexOf(hazard) : ranks.length);
  return candidates.sort((a, b) => score(b) - score(a) || rank(a) - rank(b))[0] ?? '';
}

const LOUDEST = 4;

/** What the net says of a stretch of a text, in figures and in words. */
type Look = { readonly opinion: Opinion | null; readonly said: readonly string[] };

const UNSEEN: Look = { opinion: null, said: [] };

function lookedAt(net: NetReader, words: readonly Word[], reading: TongueReading, reader: TongueReader): Look {
  const features = featuresOf(words, reading, reader);
  const opinion = net.read(features);
  const loudest = loudestOf(
    words,
    features.each.map((place) => net.weightOf(place)),
  );
  return { opinion, said: [`second net: ${percent(opinion.chance)} danger (${loudest.join(', ')})`] };
}

/** The words that spoke loudest for danger, loudest first. */
function loudestOf(words: readonly Word[], weights: readonly number[]): readonly string[] {
  const loudest: { readonly text: string; readonly weight: number }[] = [];
  words.forEach(({ text }, at) => {
    const weight = weights[at] as number;
    const place = loudest.findIndex((other) => other.weight < weight);
    if (loudest.some((other) => other.text === text)) return;
    loudest.splice(place === -1 ? loudest.length : place, 0, { text, weight });
    if (loudest.length > LOUDEST) loudest.pop();
  });
  return loudest.map(({ text }) => text);
}
