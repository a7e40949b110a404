import type { TopicId } from '../basics/ids.ts';
import { SAFETY_LANGUAGES, type SafetyData } from '../knowledge/safety-schema.ts';
import type { TopicData } from '../knowledge/schema.ts';
import { HAZARDS } from './hazards.ts';
import { listed } from './lexicon.ts';

/** What is wrong with the safety part of a graph; `field` is its place in graph/safety.yaml, or in the topic. */
export type SafetySlip = {
  readonly where: 'safety' | 'topic';
  readonly field: readonly (string | number)[];
  readonly problem: string;
  readonly expected: string;
};

const LEVELS = ['urgent', 'ask', 'danger'] as const;
const PASSES: readonly TopicData['pass'][] = ['never', 'if-not-fixed', 'always'];
const SLOTS = new Set(['emergency', 'firm', 'van', 'opens', 'day']);
/** Nobody but the fire service, a gas engineer or another competent person may say this. */
const SAYS_SAFE = /\b(?:it is|it's|is) safe to (?:go|come|get|return|enter)\b|\bsafe to go back\b|\buntil we say\b/i;

/**
 * What `check` refuses: a hazard, its notice, its reading or its pass that was lost or made weaker, a language that was lost,
 * a text that says what only others may say, and names of groups that are not there. Wording may change, hazards may be added.
 */
export function safetySlips(
  safety: SafetyData,
  topics: ReadonlyMap<TopicId, Pick<TopicData, 'notice' | 'pass'>>,
): readonly SafetySlip[] {
  return [
    ...Object.entries(HAZARDS).flatMap(([hazard, floor]) => hazardSlips(hazard, floor, safety, topics)),
    ...Object.keys(safety.notices).flatMap((hazard) => textSlips(hazard, safety)),
    ...Object.keys(safety.reading.hazards).flatMap((hazard) => ruleSlips(hazard, safety)),
    ...nestingSlips(safety),
    ...topicsWithout(safety, topics),
  ];
}

function slip(where: SafetySlip['where'], field: SafetySlip['field'], problem: string, expected: string): SafetySlip {
  return { where, field, problem, expected };
}

function hazardSlips(
  hazard: TopicId,
  { level, pass }: (typeof HAZARDS)[TopicId],
  { notices, reading }: SafetyData,
  topics: ReadonlyMap<TopicId, Pick<TopicData, 'notice' | 'pass'>>,
): SafetySlip[] {
  const slips: SafetySlip[] = [];
  const notice = notices[hazard];
  const topic = topics.get(hazard);
  if (notice === undefined)
    slips.push(
      slip(
        'safety',
        ['notices', hazard],
        `the notice of ${hazard} is lost`,
        'a notice: it may be reworded, not dropped',
      ),
    );
  else if (LEVELS.indexOf(notice.level) < LEVELS.indexOf(level)) {
    slips.push(
      slip('safety', ['notices', hazard, 'level'], `${notice.level} is weaker than ${level}`, `${level} or stronger`),
    );
  }
  if ((reading.hazards[hazard]?.length ?? 0) === 0) {
    slips.push(slip('safety', ['reading', 'hazards', hazard], `nothing reads ${hazard} any more`, 'at least one rule'));
  }
  if (topic === undefined)
    slips.push(slip('topic', [hazard], `the hazard ${hazard} is lost`, 'a topic of some file in systems/'));
  else {
    if (!topic.notice)
      slips.push(slip('topic', [hazard, 'notice'], `${hazard} no longer shows its notice`, 'notice: true'));
    if (PASSES.indexOf(topic.pass) < PASSES.indexOf(pass)) {
      slips.push(slip('topic', [hazard, 'pass'], `${topic.pass} is weaker than ${pass}`, `${pass} or stronger`));
    }
  }
  return slips;
}

function textSlips(hazard: TopicId, { notices }: SafetyData): SafetySlip[] {
  const texts = notices[hazard]?.texts ?? {};
  const lost = SAFETY_LANGUAGES.filter((language) => texts[language] === undefined).map((language) =>
    slip(
      'safety',
      ['notices', hazard, 'texts', language],
      `no text in ${language}`,
      `one in each of ${SAFETY_LANGUAGES.join(', ')}`,
    ),
  );
  const said = Object.entries(texts).flatMap(([language, { first, steps, after }]) =>
    [first, ...steps, after].flatMap((text) => [
      ...(SAYS_SAFE.test(text)
        ? [
            slip(
              'safety',
              ['notices', hazard, 'texts', language],
              `'${text}'`,
              'until the fire service, a gas engineer or another competent person has said so',
            ),
          ]
        : []),
      ...[...text.matchAll(/\{([^}]*)\}/g)]
        .filter(([, slot]) => !SLOTS.has(slot ?? ''))
        .map(([whole]) =>
          slip('safety', ['notices', hazard, 'texts', language], `no slot ${whole}`, '{emergency}, {firm} or {van}'),
        ),
    ]),
  );
  return [...lost, ...said];
}

function ruleSlips(hazard: TopicId, { notices, reading }: SafetyData): SafetySlip[] {
  const english = reading.tongues['en'];
  const groups = new Set(Object.keys(english?.groups ?? {}));
  const unread =
    notices[hazard] === undefined
      ? [slip('safety', ['reading', 'hazards', hazard], `${hazard} has no notice`, 'a hazard of notices')]
      : [];
  const unknown = (reading.hazards[hazard] ?? []).flatMap((rule, at) =>
    [...rule.all, ...rule.unless]
      .filter((group) => !groups.has(group))
      .map((group) =>
        slip('safety', ['reading', 'hazards', hazard, at], `no group '${group}'`, 'a group of the English reading'),
      ),
  );
  return [...unread, ...unknown];
}

/** Groups that a group names and that are not there. */
function nestingSlips({ reading }: SafetyData): SafetySlip[] {
  return Object.entries(reading.tongues).flatMap(([language, { groups }]) =>
    Object.entries(groups).flatMap(([name, phrases]) =>
      listed(phrases)
        .filter((phrase) => /^<.+>$/.test(phrase) && !Object.hasOwn(groups, phrase.slice(1, -1)))
        .map((phrase) =>
          slip(
            'safety',
            ['reading', 'tongues', language, 'groups', name],
            `no group ${phrase}`,
            'a group of the same language',
          ),
        ),
    ),
  );
}

function topicsWithout(
  { notices }: SafetyData,
  topics: ReadonlyMap<TopicId, Pick<TopicData, 'notice' | 'pass'>>,
): SafetySlip[] {
  return [...topics]
    .filter(([id, { notice }]) => notice && notices[id] === undefined)
    .map(([id]) => slip('topic', [id, 'notice'], `${id} has no notice in safety.yaml`, 'a notice, or notice: false'));
}
