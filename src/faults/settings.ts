import { isState, refusedAt } from './states.ts';
import type { Verdict } from './types.ts';

/*
 * What a dial, a page or a selector is set to, and which label is lit: naming another setting than the one asked for
 * denies it. Words in capitals are labels.
 */

/** What a lamp or selector may name beside what was asked: 'MAINS is lit' denies 'Is GAS lit?'. */
const SOURCES = new Set(['mains', 'gas', 'car', 'battery', 'electric', 'van', 'auto', 'plug', 'flame', 'mix']);
const LIT = new Set(['mains', 'gas', 'car', 'battery', 'electric']);
/** What alone can be the whole of a reply about a setting. */
const VALUES = new Set([...SOURCES, 'on', 'off', 'full', 'low', 'high', 'max', 'min', 'normal', 'eco', 'hot']);
/** Words that only lead up to a setting said. */
const LEADS = new Set(
  'it its is the switch selector dial knob set turned on at to in says say shows show reads showing points pointing lever'.split(
    ' ',
  ),
);

export function isOfSetting(word: string): boolean {
  return VALUES.has(word) || LEADS.has(word) || /^\d/.test(word);
}

/** A dial or page that points to, or is set to, one thing: another thing said denies it. */
export function bySetting(words: readonly string[], ask: string): Verdict | null {
  const said = words.join(' ');
  return (
    byOther(said, ask) ?? byNumber(words, ask) ?? byBareValue(words, ask) ?? byVerb(said, ask) ?? byLabel(words, ask)
  );
}

/** 'Does the dial point to something other than the plug?' 'It points to the flame.' */
function byOther(said: string, ask: string): Verdict | null {
  const other = /\bother than the (\w+)/i.exec(ask)?.[1]?.toLowerCase();
  if (other === undefined) return null;
  return said.includes(other) ? 'no' : chosenIn(said) === undefined ? null : 'yes';
}

/** 'Is the dial at 50?' '70'; 'set to electric 1?' 'electric 2'. */
function byNumber(words: readonly string[], ask: string): Verdict | null {
  const asked = /\b(?:at|set to|set at|to electric|at electric|show|shows) (\d+)\b(?! ?(?:%|°))(?! or)/i.exec(ask)?.[1];
  const numbers = words.filter((word) => /^\d+$/.test(word));
  if (asked === undefined || numbers.length !== 1 || words.length > 6 || /\b(?:below|under|less)\b/i.test(ask))
    return null;
  return numbers[0] === asked ? 'yes' : 'no';
}

/** 'Is HOT WATER set to off?' 'Full.' */
function byBareValue(words: readonly string[], ask: string): Verdict | null {
  const asked = [...ask.matchAll(/\b(?:set to|show|on|to) ([a-z]+)\b(?: or ([A-Z]+))?/gi)].flatMap(([, one, two]) =>
    [one, two].flatMap((each) => (each === undefined ? [] : [each.toLowerCase()])),
  );
  if (!/\b(?:set to|selector on|selector at|page show)\b/i.test(ask) || /\bset to \d/i.test(ask)) return null;
  const named = words.filter((word) => !LEADS.has(word) || (word === 'on' && words.length === 1));
  const [value] = named;
  if (value === undefined || !(VALUES.has(value) || /^\d+$/.test(value)) || named.length > 2) return null;
  return asked.includes(value) ? 'yes' : 'no';
}

function byVerb(said: string, ask: string): Verdict | null {
  const asked = /\b(?:set|show|point) (?:to )?(?:the )?([a-z]+)\b/i.exec(ask)?.[1]?.toLowerCase();
  const chosen = chosenIn(said);
  if (chosen === undefined || asked === undefined || !/\b(?:set|points?|turned)\b/.test(said)) return null;
  return chosen === asked ? 'yes' : 'no';
}

function chosenIn(said: string): string | undefined {
  return /\b(?:set|shows?|points?|pointing|turned|is|on) (?:to|at|on) (?:the )?([a-z]+)\b/.exec(said)?.[1];
}

/**
 * Where the question asks which of several labels is chosen, naming one answers; where it asks of the state of one ('Is
 * ELECTRIC at 0?'), the name alone says nothing.
 */
function byLabel(said: readonly string[], ask: string): Verdict | null {
  const labels = new Set(
    [...ask.matchAll(/\b[A-Z]{2,}\b(?! (?:lamp|page|set|at|off|out|below|not|[A-Z]))/g)].map((found) =>
      found[0].toLowerCase(),
    ),
  );
  if (labels.size === 0) return null;
  // 'Already switched on' to 'on CAR or OFF?'.
  if (labels.has('off') && /\b(?:switched|turned|put) on$/.test(said.join(' '))) return 'no';
  const another = said.some((word) => LIT.has(word) && !labels.has(word));
  if (
    another &&
    said.length <= 4 &&
    [...labels].some((each) => LIT.has(each)) &&
    !said.some((word) => labels.has(word))
  )
    return 'no';
  const named = said.findIndex((word) => labels.has(word));
  if (named >= 0 && said.length <= 6) return refusedAt(said, named) ? 'no' : 'yes';
  const chosen =
    /^(?:it |its |is |the |switch |selector |set |turned |says? |shows? |reads? )*(?:on|at|to|says?|shows?|reads?) (?:the )?([a-z]+)$/.exec(
      said.join(' '),
    );
  return chosen?.[1] === undefined || isState(chosen[1]) ? null : 'no';
}
