import { kindOf, type PeopleSaid } from './people-kinds.ts';
import { peopleListed } from './people-listed.ts';
import type { Counted } from './quantities.ts';

export type { PeopleSaid } from './people-kinds.ts';

/** Reads how many people a text speaks of; null when it does not say. */
export function peopleIn(counted: Counted): PeopleSaid | null {
  const { pieces } = counted;
  const listed = peopleListed(counted);
  if (listed !== null) return listed;
  let adults: number | null = null;
  let children: number | null = null;
  let anyone: number | null = null;
  for (const quantity of counted.quantities) {
    if (quantity.unit !== 'bare') continue;
    const kind = kindOf(pieces, quantity);
    if (kind === 'adults') adults = (adults ?? 0) + quantity.high;
    else if (kind === 'children') children = (children ?? 0) + quantity.high;
    else if (kind === 'anyone') anyone = Math.max(anyone ?? Number.NEGATIVE_INFINITY, quantity.high);
  }
  const text = pieces.map((piece) => piece.text).join(' ');
  children = plus(
    children,
    (text.match(/\b(a|our|my|the|one) (\w+ )?(baby|toddler|child|infant|daughter|son|teenager)\b/g) ?? []).length,
  );
  if (adults === null && anyone === null) adults = adultsInWords(text);
  if (anyone === null && adults === null && children === null) return null;
  if (anyone !== null) return { people: anyone, children, adults: children === null ? adults : anyone - children };
  if (adults === null) return { people: null, children, adults };
  return { people: adults + (children ?? 0), children, adults };
}

function plus(counted: number | null, more: number): number | null {
  return more === 0 ? counted : (counted ?? 0) + more;
}

const PARTNER =
  /\b(my|the|his|her) (wife|husband|partner|girlfriend|boyfriend|missus|mrs|hubby|other half|mum|mom|dad|sister|brother|friend|mate|fiance|fiancee)\b/;
const WITH_ME = /\bme\b|\band i\b|\bmyself\b/;

function adultsInWords(text: string): number | null {
  if (
    /\b(just|only) (me|myself|i)\b(?! and)|\bon my own\b|\bby myself\b|\b(travel|traveling|travelling|camp|camping|go|going|on|here|am|i'm|im|all|live) alone\b|\bsolo\b|\bmyself only\b|\bjust the one of us\b/.test(
      text,
    )
  )
    return 1;
  if (/\bboth of us\b|\bus two\b|\b(pair|couple) of us\b|\bthe two of us\b|\bjust us 2\b|\bthe pair of us\b/.test(text))
    return 2;
  if (
    /\b(we're|we are|were|as|for|us,?) a couple\b(?! of)|\bcouple$|\bcouple\b(?= ,|,| \.| with| and| here)|\bjust a couple\b(?! of)|^(a )?couple (with|and)\b|\ba couple (with|and)\b/.test(
      text,
    )
  )
    return 2;
  if (/\bdriver (and|plus|with|\+) (a |one |1 )?passenger\b/.test(text)) return 2;
  if (WITH_ME.test(text) && PARTNER.test(text)) return 2;
  return null;
}
