import { COMMON } from './words.ts';

/*
 * The states in which hirers see things, as pairs of opposites: 'on' answers a question about 'off'. Each word stands on
 * one axis, on its side. Words as they come out of language/tokens.ts.
 */

export type Axis =
  | 'power'
  | 'height'
  | 'valve'
  | 'amount'
  | 'fit'
  | 'turn'
  | 'damp'
  | 'heat'
  | 'noise'
  | 'health'
  | 'size'
  | 'count';
export type Side = 1 | -1;
export type State = { readonly axis: Axis; readonly side: Side };

const PAIRS: Readonly<Record<Axis, readonly [string, string]>> = {
  power: [
    'on lit alight glow glows glowing shining bright work works working worked live lights flame flickering burn burns burning boils',
    'off dead dark unlit blank out lose loses lost',
  ],
  height: ['up raised', 'down dropped drops tripped fallen lowered'],
  valve: ['open opened dribbling', 'shut closed'],
  amount: ['full plenty brimming filled topped heavy', 'empty emptied low'],
  fit: ['tight firm firmly secure latched seated', 'loose wobbly wobbles wobble unplugged slack'],
  turn: ['along lengthways aligned inline', 'across crosswise crossways sideways'],
  damp: ['wet damp soaked soaking soggy drenched puddle rain rained raining poured', 'dry'],
  heat: ['hot warm mild boiling scalding roasting', 'cold freezing frozen icy cool chilly frost frosty'],
  noise: [
    'hum hums humming buzz buzzes buzzing whir whirs whirring run runs running hear heard noise noisy sound sounds loud rattle rattles rattling click clicks clicking clicked ticking blowing blows peep',
    'silent silence quiet',
  ],
  health: [
    'fine good ok okay alright intact normal clean clear undamaged',
    'broken blown burnt snapped damaged cracked bent torn blocked kinked pinched faulty failed worn dirty grit black fluff gap melted sooty corroded muddy',
  ],
  size: ['big large huge massive strong wok', 'small tiny'],
  count: ['all both every everything everywhere each', 'only single'],
};

/** Things that are lit or not: 'no light' says unlit, 'there is a light' lit. */
const LAMPS = new Set(['light', 'lamp', 'glow', 'led', 'display', 'neon']);
const REFUSALS = new Set([
  'not',
  'no',
  'never',
  'without',
  'none',
  'nothing',
  'nowt',
  'nor',
  'neither',
  'hardly',
  'stopped',
  'stops',
  'stop',
]);
/** Words after which an earlier 'not' says nothing any more. */
const TURNS = new Set(['but', 'and', 'or', 'so', 'because', 'then', 'though', 'when', 'if', 'is', 'are', 'was']);
const WEIGHED = new Set(['cylinder', 'bottle', 'half', 'feels', 'is', 'quite', 'very']);
const ONE = new Set(['one', '1']);
const PLACES = new Set(['on', 'off', 'out', 'up', 'down']);
const OF_A_PLACE = new Set('it the that this my our a an of top there its either any mine'.split(' '));
/** How far a 'not' reaches. */
const REACH = 3;

const WORDS = new Map<string, State>(
  (Object.entries(PAIRS) as [Axis, readonly [string, string]][]).flatMap(([axis, [plus, minus]]) => [
    ...plus.split(' ').map((word): [string, State] => [word, { axis, side: 1 }]),
    ...minus.split(' ').map((word): [string, State] => [word, { axis, side: -1 }]),
  ]),
);

/**
 * Whether the word at `at` is refused by a 'not' or 'no' before it. A 'not' is used up by the first word of content:
 * 'will not start, clicks' clicks; only 'not switched on' reaches past it.
 */
export function refusedAt(words: readonly string[], at: number): boolean {
  let refused = false;
  let usedUp = false;
  for (let i = at - 1, reach = 0; i >= 0 && reach < REACH; i--, reach++) {
    const word = words[i] ?? '';
    if (word === 'but' || (TURNS.has(word) && reach > 0)) break;
    if (REFUSALS.has(word)) refused = usedUp && word !== 'no' ? refused : !refused;
    else if (!COMMON.has(word) && !/(?:ed|ly)$/.test(word)) usedUp = true;
  }
  return refused;
}

/** The states a text speaks of, 'not off' as on; in the order said. */
export function statesIn(words: readonly string[]): State[] {
  return words.flatMap((word, at): State[] => {
    const refused = refusedAt(words, at);
    if (
      ONE.has(word) &&
      words.slice(Math.max(0, at - 2), at).some((before) => before === 'just' || before === 'only')
    ) {
      return [{ axis: 'count', side: refused ? 1 : -1 }];
    }
    if (word === 'just' && at === 0) return [{ axis: 'count', side: -1 }];
    const state = isPlace(words, at) ? undefined : WORDS.get(word);
    if (state !== undefined) return [{ axis: state.axis, side: refused ? flip(state.side) : state.side }];
    // A cylinder that is light is not lit.
    if (word === 'light' && WEIGHED.has(words[at - 1] ?? '')) return [{ axis: 'amount', side: refused ? 1 : -1 }];
    if (LAMPS.has(word) && (refused || isThere(words, at))) return [{ axis: 'power', side: refused ? -1 : 1 }];
    return [];
  });
}

export function isState(word: string): boolean {
  return WORDS.has(word) || LAMPS.has(word) || REFUSALS.has(word);
}

/** 'no light on it', 'out of the window': where, not how. */
function isPlace(words: readonly string[], at: number): boolean {
  return PLACES.has(words[at] ?? '') && OF_A_PLACE.has(words[at + 1] ?? '');
}

/** 'there is a light', 'I see a light': that it is there is all that is said of it. */
function isThere(words: readonly string[], at: number): boolean {
  const before = words.slice(Math.max(0, at - 4), at).join(' ');
  const after = words[at + 1];
  return /\b(?:there is|there are|see|got|have|has)\b/.test(before) && (after === undefined || !WORDS.has(after));
}

function flip(side: Side): Side {
  return side === 1 ? -1 : 1;
}
