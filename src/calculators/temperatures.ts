import type { Counted, Quantity } from './quantities.ts';

/** A temperature said, in degrees Celsius, and where it is. `low` and `high` differ for a range such as '2 to 4'. */
export type Temperature = { readonly low: number; readonly high: number; readonly where: 'outside' | 'inside' | null };

const OUTSIDE_AFTER =
  /^(outside|out|outdoors|tonight|overnight|frost|forecast|forecasted|ambient|here|today|tomorrow|weather|there)$/;
const OUTSIDE_BEFORE =
  /^(outside|outdoors|tonight|forecast|overnight|night|frost|air|weather|dropping|drops|drop|falls|falling|down|goes|going|hits|hit|says|it's|its|be|is|was|from|hitting|nights|around|about)$/;
const INSIDE_AFTER = /^(inside|indoors|in)$/;
const INSIDE_BEFORE =
  /^(inside|indoors|in|want|wants|like|get|reach|target|set|thermostat|warm|room|van|up|till|until|feel|to|comfy|cosy|cosey|toasty)$/;

/** How far apart the two ends must be for '5 to 20' to be a way from one to the other, in kelvins, and not a range. */
const WARMING_K = 8;

/**
 * The temperatures of a text, with the words near them saying where. A plain number counts only when such a word
 * stands near it, when it is negative, or when `bare` is set.
 */
export function temperaturesIn(counted: Counted, bare: boolean): readonly Temperature[] {
  return counted.quantities.flatMap((quantity): Temperature[] => {
    const sure = quantity.unit === 'degrees' || quantity.unit === 'celsius';
    if (!sure && quantity.unit !== 'bare') return [];
    const { low, high } = quantity;
    const next = counted.pieces[quantity.to]?.text ?? '';
    if (!sure && /^(people|adults?|kids?|of|amp|bags?|pm|am|and|hour|times?)$/.test(next) && low >= 0) return [];
    const start = counted.pieces[quantity.from - 1]?.text;
    if (high - low >= WARMING_K || (start === 'from' && high !== low)) {
      return sure || bare || start === 'from'
        ? [
            { low, high: low, where: 'outside' },
            { low: high, high, where: 'inside' },
          ]
        : [];
    }
    const where = whereOf(counted, quantity);
    if (!sure && !bare && low >= 0 && where === null) return [];
    return [{ low: Math.min(low, high), high: Math.max(low, high), where }];
  });
}

function whereOf(counted: Counted, quantity: Quantity): Temperature['where'] {
  const { pieces } = counted;
  for (let at = quantity.to; at < quantity.to + 4; at++) {
    const word = pieces[at]?.text ?? '';
    if (/^(,|\.|;|and|but|\?)$/.test(word) || pieces[at]?.kind === 'number') break;
    if (OUTSIDE_AFTER.test(word)) return 'outside';
    if (INSIDE_AFTER.test(word)) return 'inside';
  }
  // Read backwards: the nearest word before decides; 'down to 3' is the weather, 'up to 20' the room.
  for (let at = quantity.from - 1; at >= Math.max(0, quantity.from - 4); at--) {
    const word = pieces[at]?.text ?? '';
    if (/^(,|;|but)$/.test(word) || pieces[at]?.kind === 'number') break;
    const before = pieces[at - 1]?.text ?? '';
    if (
      word === 'to' &&
      /^(down|drop|drops|dropping|fall|falls|falling|going|goes|get|gets|due|meant|supposed)$/.test(before) &&
      !/^(want|warm|it|us|van)$/.test(pieces[at - 2]?.text ?? '') &&
      before !== 'get'
    )
      return 'outside';
    if (INSIDE_BEFORE.test(word)) return 'inside';
    if (OUTSIDE_BEFORE.test(word)) return 'outside';
  }
  return null;
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
