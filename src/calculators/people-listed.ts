import { kindOf, type PeopleSaid } from './people-kinds.ts';
import type { Counted } from './quantities.ts';

/* People named one after another: 'me, hubby and two kids', 'mum dad and the baby', 'us two and four kids'. */

const SELF = /^(me|myself|i)$/;
const ADULT =
  /^(wife|husband|hubby|hubbie|partner|girlfriend|boyfriend|missus|mrs|mum|mom|mam|mummy|dad|daddy|mother|father|nan|nana|nanna|gran|granny|grandma|grandad|granddad|grandpa|sister|brother|aunt|auntie|uncle|friend|mate|fiance|fiancee)$/;
const CHILD =
  /^(baby|toddler|infant|newborn|daughter|son|boy|girl|lad|lass|teenager|teen|child|kid|bairn|grandson|granddaughter|niece|nephew)$/;
const TWO_ADULTS = /^(parents|grandparents|couple|inlaws)$/;
const TWO_CHILDREN = /^twins$/;
/** Named, but nobody knows how many. */
const UNCOUNTED = /^(kids|children|boys|girls|grandkids|grandchildren|friends|family|lads|sons|daughters|bairns)$/;
/** What may stand between two of a list. */
const BETWEEN =
  /^(and|,|&|\+|plus|with|my|our|the|his|her|a|an|one|just|only|little|wee|old|older|younger|young|elderly|teenage|new|big|in|law|laws|-|of|us|also|n)$/;
const JOINS = /^(and|&|\+|plus|with|n)$/;

type Item = {
  readonly adults: number;
  readonly children: number;
  /** Counted without saying whether they are grown up: 'us two'. */
  readonly anyone: number;
  readonly uncounted: boolean;
  readonly from: number;
  readonly to: number;
};

/**
 * Everybody of the first list of people in which someone is named by what they are.
 *
 * @returns Null when there is no such list; `people` is null when a part of it is not counted ('me and the kids').
 */
export function peopleListed(counted: Counted): PeopleSaid | null {
  const lists = listsOf(itemsIn(counted), counted);
  const list = lists.find(
    (each) => each.length > 1 && each.some(({ to, from, anyone }) => to === from + 1 || anyone > 0),
  );
  if (list === undefined || lists.some((each) => each !== list && each.some(({ anyone }) => anyone > 0))) return null;
  const sum = (of: (item: Item) => number) => list.reduce((total, item) => total + of(item), 0);
  const children = sum((item) => item.children);
  const adults = sum((item) => item.adults);
  const anyone = sum((item) => item.anyone);
  if (list.some(({ uncounted }) => uncounted)) return null;
  return { people: adults + children + anyone, children: children === 0 ? null : children, adults: adults + anyone };
}

function itemsIn(counted: Counted): readonly Item[] {
  const { pieces, quantities } = counted;
  const none = { adults: 0, children: 0, anyone: 0, uncounted: false };
  const spans = quantities.flatMap((quantity): Item[] => {
    const kind = quantity.unit === 'bare' ? kindOf(pieces, quantity) : null;
    if (kind === null) return [];
    // The word that is counted belongs to it: 'two little kids', 'two of us'.
    let to = quantity.to;
    while (to < pieces.length && to < quantity.to + 3 && !isPeopleWord(pieces[to]?.text ?? '')) to++;
    const named = to < pieces.length && to < quantity.to + 3;
    return [{ ...none, [kind]: quantity.high, from: quantity.from, to: named ? to + 1 : quantity.to }];
  });
  const words = pieces.flatMap((piece, i): Item[] => {
    if (spans.some(({ from, to }) => i >= from && i < to)) return [];
    const word = piece.text.replace(/'s$/, '');
    const at = { from: i, to: i + 1 };
    if (piece.text !== word) return [];
    if (SELF.test(word)) return isSelf(counted, i) ? [{ ...none, ...at, adults: 1 }] : [];
    if (ADULT.test(word)) return [{ ...none, ...at, adults: 1 }];
    if (CHILD.test(word)) return [{ ...none, ...at, children: 1 }];
    if (TWO_ADULTS.test(word)) return pieces[i + 1]?.text === 'of' ? [] : [{ ...none, ...at, adults: 2 }];
    if (TWO_CHILDREN.test(word)) return [{ ...none, ...at, children: 2 }];
    return UNCOUNTED.test(word) ? [{ ...none, ...at, uncounted: true }] : [];
  });
  return [...spans, ...words].sort((a, b) => a.from - b.from);
}

function isPeopleWord(word: string): boolean {
  return /^(us|adults?|kids?|children|child|boys?|girls?|people|toddlers?|teenagers?|teens|babies|grandkids|grandchildren|bairns|ones)$/.test(
    word,
  );
}

/** 'Me' beside an 'and' or a comma is one of a list; 'I' only behind one: 'tell me', 'I want' are not. */
function isSelf({ pieces }: Counted, at: number): boolean {
  const [before, word, after] = [pieces[at - 1]?.text ?? '', pieces[at]?.text ?? '', pieces[at + 1]?.text ?? ''];
  const listed = (each: string) => JOINS.test(each) || each === ',';
  if (word === 'i') return JOINS.test(before);
  return listed(after) || JOINS.test(before) || (after === 'my' && ADULT.test(pieces[at + 2]?.text ?? ''));
}

/** Items with nothing but small words between them; people counted without a kind join only with an 'and'. */
function listsOf(items: readonly Item[], { pieces }: Counted): readonly (readonly Item[])[] {
  const lists: Item[][] = [];
  for (const item of items) {
    const last = lists.at(-1)?.at(-1);
    const between = last === undefined ? [] : pieces.slice(last.to, item.from).map((piece) => piece.text);
    const joined = between.every((word) => BETWEEN.test(word));
    const loose =
      last !== undefined && (item.anyone > 0 || last.anyone > 0) && !between.some((word) => JOINS.test(word));
    if (last !== undefined && joined && !loose) lists.at(-1)?.push(item);
    else lists.push([item]);
  }
  return lists;
}
