import type { Piece } from '../language/numbers.ts';
import type { Counted, Quantity } from './quantities.ts';

/** Who is meant, as far as it was said. `people` is null when only children were counted ('3 kids'). */
export type PeopleSaid = {
  readonly people: number | null;
  readonly children: number | null;
  readonly adults: number | null;
};

const ADULTS = /^(adults?|grownups?|grown|parents|grandparents|men|women|ladies|blokes|lads|oldies|pensioners)$/;
const CHILDREN =
  /^(kids?|children|child|childs|bairns?|boys?|girls?|toddlers?|teens?|teenagers?|babies|baby|infants?|sons?|daughters?|grandkids|grandchildren|grandsons?|granddaughters?|littles|littlies|youngsters|nippers)$/;
const ANYONE =
  /^(people|peeps|persons?|folk|folks|pax|guests|sleepers|heads|souls|humans|campers|occupants|passengers|friends|mates)$/;
const BETWEEN = /^(young|small|little|grown|-|other|more|hungry|thirsty|teenage|wee|big|older|fully|full|sized)$/;
const PARTNER =
  /^(wife|husband|partner|girlfriend|boyfriend|missus|mrs|hubby|other|mum|mom|dad|sister|brother|son|daughter|friend|mate|fiance|fiancee)$/;

/** Reads how many people a text speaks of; null when it does not say. */
export function peopleIn(counted: Counted): PeopleSaid | null {
  const { pieces } = counted;
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
  if (adults === null && anyone === null) adults = adultsInWords(text, pieces);
  if (anyone === null && adults === null && children === null) return null;
  if (anyone !== null) return { people: anyone, children, adults: children === null ? adults : anyone - children };
  if (adults === null) return { people: null, children, adults };
  return { people: adults + (children ?? 0), children, adults };
}

function plus(counted: number | null, more: number): number | null {
  return more === 0 ? counted : (counted ?? 0) + more;
}

function kindOf(pieces: readonly Piece[], quantity: Quantity): 'adults' | 'children' | 'anyone' | null {
  let at = quantity.to;
  while (BETWEEN.test(pieces[at]?.text ?? '') && at < quantity.to + 3) {
    if (pieces[at]?.text === 'grown') return 'adults';
    at++;
  }
  const word = (pieces[at]?.text ?? '').replace(/'s?$/, '');
  if (word === 'ones' && at > quantity.to) return 'children';
  if (ADULTS.test(word)) return 'adults';
  if (CHILDREN.test(word)) return 'children';
  if (ANYONE.test(word)) return 'anyone';
  if (word === 'of' && /^(us|them|you|we)$/.test(pieces[at + 1]?.text ?? '')) return 'anyone';
  const [before, earlier] = [pieces[quantity.from - 1]?.text ?? '', pieces[quantity.from - 2]?.text ?? ''];
  if (before === 'us' && !/^(of|give|gave|got|sold)$/.test(earlier)) return 'anyone';
  if (before === 'of' && /^(family|party|group|crew)$/.test(earlier)) return 'anyone';
  const stops =
    word === '' || /^([?.,!;)]|and|on|off|in|for|at|a|per|we|is|with|all|only|the|too|will|would|ok)$/.test(word);
  if (before === 'for' && stops && quantity.high < 13) return 'anyone';
  const ends = word === '' || /^([?.,!;]|with|having|in|and|now|tonight|here|this|for|so)$/.test(word);
  if (
    ends &&
    (before === "we're" || before === 'were' || (before === 'are' && (earlier === 'we' || earlier === 'there')))
  )
    return 'anyone';
  return null;
}

function adultsInWords(text: string, pieces: readonly Piece[]): number | null {
  if (
    /\b(just|only) (me|myself|i)\b(?! and)|\bon my own\b|\bby myself\b|\b(travelling|on|here|am|i'm|im) alone\b|\bsolo\b|\bmyself only\b|\bjust the one of us\b/.test(
      text,
    )
  )
    return 1;
  if (/\bboth of us\b|\bus two\b|\b(pair|couple) of us\b|\bthe two of us\b|\bjust us 2\b|\bthe pair of us\b/.test(text))
    return 2;
  if (
    /\b(we're|we are|were|as|for|us,?) a couple\b(?! of)|\bcouple$|^(just |only )?(a )?couple\b(?= ,|,| with| and)|\bjust a couple\b(?! of)|^(a )?couple (with|and)\b|\ba couple (with|and)\b/.test(
      text,
    )
  )
    return 2;
  if (/\bdriver (and|plus|with|\+) (a |one |1 )?passenger\b/.test(text)) return 2;
  const partner = pieces.findIndex(
    (piece, i) => PARTNER.test(piece.text) && /^(my|the|his|her)$/.test(pieces[i - 1]?.text ?? ''),
  );
  const self = /\bme\b|\band i\b|\bmyself\b/.test(text);
  if (self && partner >= 0) return 2;
  if (/\bme and \b/.test(text) && /\b(kids?|children|child|baby|toddler|boys?|girls?)\b/.test(text)) return 1;
  return null;
}
