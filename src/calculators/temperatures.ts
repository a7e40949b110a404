import { kindOf } from './people-kinds.ts';
import type { Counted, Quantity } from './quantities.ts';

/** Where a temperature is said to be; `sure` when the word itself says so ('outside'), not only its neighbours. */
export type Where = {
  readonly at: 'outside' | 'inside';
  readonly sure: boolean /** As it is now, not as it is wanted. */;
  readonly now?: boolean;
};

/** A temperature said, in degrees Celsius. `low` and `high` differ for a range such as '2 to 4'. */
export type Temperature = { readonly low: number; readonly high: number; readonly where: Where | null };

const OUTSIDE = /^(outside|out|outdoors|tonight|forecast|forecasted|ambient|weather|frost|overnight)$/;
const INSIDE = /^(inside|indoors|indoor)$/;
/** Words that lean one way when nothing plainer stands near. */
const LEANS_OUTSIDE =
  /^(night|nights|air|dropping|drops|drop|dropped|falls|falling|fall|down|hits|hit|hitting|says|it's|its|from|now|today|tomorrow|currently|only|temperature|temp)$/;
const LEANS_INSIDE =
  /^(in|want|wants|like|reach|target|set|thermostat|setpoint|keep|keeps|hold|need|needs|warm|room|van|up|till|until|feel|to|comfy|cosy|cosey|toasty|a|nice)$/;
/** What falls to a number is the weather. */
const DOWN = /^(down|drop|drops|dropping|fall|falls|falling|going|goes|due|meant|supposed)$/;
const STOP = /^(,|\.|;|and|but|\?|when|while|if)$/;

/** How far apart the two ends must be for '5 to 20' to be a way from one to the other, in kelvins, and not a range. */
const WARMING_K = 8;
/** From here on a number is a temperature only when it says so. */
const NO_TEMPERATURE = 100;

/**
 * The temperatures of a text, with the words near them saying where. A plain number counts only when such a word
 * stands near it, when it is negative, or when `bare` is set.
 */
export function temperaturesIn(counted: Counted, bare: boolean): readonly Temperature[] {
  return counted.quantities.flatMap((quantity): Temperature[] => {
    const degrees = quantity.unit === 'degrees' || quantity.unit === 'celsius';
    if (!degrees && quantity.unit !== 'bare') return [];
    const { low, high } = quantity;
    const next = counted.pieces[quantity.to]?.text ?? '';
    // 'On 1000' is a setting.
    if (!degrees && !bare && high >= NO_TEMPERATURE) return [];
    if (!degrees && !bare && kindOf(counted.pieces, quantity) !== null) return [];
    if (!degrees && /^(people|adults?|kids?|children|of|amps?|bags?|showers?|tanks?|times?)$/.test(next)) return [];
    const start = counted.pieces[quantity.from - 1]?.text;
    if (high - low >= WARMING_K || (start === 'from' && high > low)) {
      return [
        { low, high: low, where: { at: 'outside', sure: false } },
        { low: high, high, where: { at: 'inside', sure: false } },
      ];
    }
    const where = whereOf(counted, quantity);
    if (!degrees && !bare && low >= 0 && where === null) return [];
    return [{ low: Math.min(low, high), high: Math.max(low, high), where }];
  });
}

function whereOf(counted: Counted, quantity: Quantity): Where | null {
  const { pieces } = counted;
  const after = wordsFrom(counted, quantity.to, 1, 4);
  const before = wordsFrom(counted, quantity.from - 1, -1, 5);
  const inVan =
    /^in (the |our )?(van|here|room|caravan|camper)/.test(after.join(' ')) ||
    /\bin (the |our )?(van|here|room|caravan|camper)/.test([...before].reverse().join(' '));
  // 'From 5 outside to 18': what it is brought to is inside, whatever stands before.
  const broughtTo = before[0] === 'to' && !DOWN.test(before[1] ?? '') && !after.some((word) => OUTSIDE.test(word));
  for (const words of broughtTo ? [after] : [after, before]) {
    const plain = words.find((word) => OUTSIDE.test(word) || INSIDE.test(word));
    // 'Down to', 'out of the van': 'out' before a number is the weather only as 'it's out'.
    if (plain !== undefined)
      return { at: INSIDE.test(plain) ? 'inside' : 'outside', sure: true, now: isNow(before, after) };
  }
  if (inVan) return { at: 'inside', sure: true, now: isNow(before, after) };
  for (let i = 0; i < before.length; i++) {
    const word = before[i] ?? '';
    if (word === 'to' && DOWN.test(before[i + 1] ?? '')) return { at: 'outside', sure: false };
    if (LEANS_INSIDE.test(word)) return { at: 'inside', sure: false, now: isNow(before, after) };
    if (LEANS_OUTSIDE.test(word)) return { at: 'outside', sure: false };
  }
  const tail = pieces[quantity.to]?.text ?? '';
  return /^(today|tomorrow|now)$/.test(tail) ? { at: 'outside', sure: false } : null;
}

/** 'It's 8 in here', 'the van is 10': how it is, unless a word of wanting stands nearer. */
function isNow(before: readonly string[], after: readonly string[]): boolean {
  // 'Until it's nineteen inside', 'when it is 18'.
  if (
    /^(until|till|til|when|before|once) (it is|it's|its|we're|the van is)\b/.test(
      [...before]
        .reverse()
        .join(' ')
        .replace(/^.*(?=\b(until|till|til|when|before|once) )/, ''),
    )
  )
    return false;
  const nearest = before.find((word) =>
    /^(is|it's|its|are|reads|currently|already|only|at|want|wants|need|needs|like|to|reach|get|set|until|till|up|be)$/.test(
      word,
    ),
  );
  return (
    /^(now|currently|already)$/.test(after.find((word) => /^(now|currently|already)$/.test(word)) ?? '') ||
    /^(is|it's|its|are|reads|currently|already|only)$/.test(nearest ?? '')
  );
}

/** Up to `most` words from a piece on, forwards or backwards, up to the end of the clause or another number. */
function wordsFrom(counted: Counted, start: number, step: 1 | -1, most: number): readonly string[] {
  const { pieces, quantities } = counted;
  const words: string[] = [];
  for (let at = start; words.length < most; at += step) {
    const piece = pieces[at];
    if (piece === undefined || STOP.test(piece.text)) break;
    if (quantities.some((other) => at >= other.from && at < other.to)) break;
    words.push(piece.text);
  }
  return words;
}

/** A temperature that words alone give: 'below freezing'. Null when there is none, or it is only 'cold'. */
export function frostInWords(text: string): number | null {
  if (
    /\b(below|under) (zero|freezing)\b|\bsub ?-? ?zero\b|\bminus (figures|numbers|temperatures|temps|degrees)\b|\bminuses\b/.test(
      text,
    )
  )
    return -2;
  return /\b(at|around|about|bang on|hits?|near) (freezing( point)?|zero)\b/.test(text) ? 0 : null;
}
