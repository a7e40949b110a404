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
    'on lit alight glow glows glowing shining shines bright work works working worked live alive lights flame flickering flicker flickers blinking blink flashing flash flashes burn burns burning boils powered charging illuminated',
    'off dead dark unlit blank out lose loses lost black extinguished dim dimmer faint',
  ],
  height: ['up raised upright lifted upwards', 'down dropped drops tripped fallen lowered flipped downwards'],
  valve: ['open opened opens dribbling ajar', 'shut closed'],
  amount: ['full plenty loads brimming filled topped heavy lots sloshing', 'empty emptied low dry'],
  fit: [
    'tight firm firmly secure latched seated clipped attached',
    'loose wobbly wobbles wobble unplugged slack rattles undone unclipped disconnected hanging detached adrift',
  ],
  turn: ['along lengthways aligned inline parallel', 'across crosswise crossways sideways crossed perpendicular'],
  damp: [
    'wet damp soaked soaking soggy drenched puddle puddles moist rain rained raining poured dripping drips pool',
    'dry',
  ],
  heat: [
    'hot warm mild boiling scalding roasting toasty baking',
    'cold freezing frozen icy cool chilly frost frosty baltic perishing',
  ],
  noise: [
    'hum hums humming buzz buzzes buzzing whir whirs whirring whirr run runs running ran hear heard noise noisy sound sounds loud rattle rattles rattling click clicks clicking clicked tick ticks ticking blowing blows blow peep spark sparks sparking snapping crackling gurgle roars roaring purrs purring groans groaning clunks gurgles drone droning vibrates vibrating whine whining grinding chugging throbbing spins spinning',
    'silent silence quiet mute',
  ],
  health: [
    'fine good ok okay alright intact normal clean clear undamaged perfect healthy',
    'broken blown burnt snapped damaged cracked crack bent torn blocked kinked pinched faulty failed worn dirty grit black fluff gap melted sooty corroded muddy rusty burst ripped split',
  ],
  size: ['big large huge massive strong wok', 'small tiny weak feeble trickle poor slow'],
  count: ['all both every everything everywhere each', 'only single'],
};

/** Things that are lit or not: 'no light' says unlit, 'there is a light' lit. */
const LAMPS = new Set(['light', 'lamp', 'glow', 'led', 'display', 'neon', 'power', 'juice']);
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
const WEIGHED = new Set(['cylinder', 'bottle', 'half', 'feels', 'is', 'quite', 'very', 'pretty', 'really', 'so']);
const ONE = new Set(['one', '1']);
const PLACES = new Set(['on', 'off', 'out', 'up', 'down']);
const OF_A_PLACE = new Set('it the that this my our a an of top there its either any mine'.split(' '));
/** How far a 'not' reaches. */
const REACH = 3;

/** A word may stand on several axes: a barrel is dry when it is empty, a plug when it is not wet. */
const WORDS = new Map<string, readonly State[]>();
for (const [axis, sides] of Object.entries(PAIRS) as [Axis, readonly [string, string]][]) {
  sides.forEach((words, i) => {
    for (const word of words.split(' '))
      WORDS.set(word, [...(WORDS.get(word) ?? []), { axis, side: i === 0 ? 1 : -1 }]);
  });
}

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

/**
 * The states a text speaks of, 'not off' as on; in the order said.
 *
 * @param asked Of a question: a state before a name belongs to the name ('the clear bowl', 'the hot side').
 */
export function statesIn(words: readonly string[], asked = false): State[] {
  return words.flatMap((word, at): State[] => {
    const refused = refusedAt(words, at);
    if (
      ONE.has(word) &&
      words.slice(Math.max(0, at - 2), at).some((before) => before === 'just' || before === 'only')
    ) {
      return [{ axis: 'count', side: refused ? 1 : -1 }];
    }
    if (word === 'just' && at === 0) return [{ axis: 'count', side: -1 }];
    // A cylinder that is light is not lit.
    if (word === 'light' && (WEIGHED.has(words[at - 1] ?? '') || words[at + 1] === 'to'))
      return [{ axis: 'amount', side: refused ? 1 : -1 }];
    const named = asked && isName(words, at);
    const states = isPlace(words, at) || LAMPS.has(word) || named ? undefined : WORDS.get(word);
    if (states !== undefined) return states.map(({ axis, side }) => ({ axis, side: refused ? flip(side) : side }));
    if (LAMPS.has(word) && (refused || isThere(words, at))) return [{ axis: 'power', side: refused ? -1 : 1 }];
    return [];
  });
}

export function isState(word: string): boolean {
  return WORDS.has(word) || LAMPS.has(word) || REFUSALS.has(word);
}

/** 'the pump's clear bowl': a state between its article and a word of its own. */
function isName(words: readonly string[], at: number): boolean {
  const after = words[at + 1];
  return after !== undefined && !COMMON.has(after) && !isState(after) && !/^\d|ly$/.test(after) && after !== 'enough';
}

/** 'no light on it', 'out of the window': where, not how. */
function isPlace(words: readonly string[], at: number): boolean {
  return PLACES.has(words[at] ?? '') && OF_A_PLACE.has(words[at + 1] ?? '');
}

/** What shows that a lamp is there, or burns in a colour. */
const COLOUR = /^(?:green|red|blue|orange|amber|yellow)$/;
const THERE_OR_LIT = /\b(?:there is|there are|see|got|have|has)\b|^(?:green|red|blue|orange|amber|yellow)$/;

/** 'there is a light', 'I see a light': that it is there is all that is said of it. */
function isThere(words: readonly string[], at: number): boolean {
  const before = words.slice(Math.max(0, at - 4), at).join(' ');
  const after = words[at + 1];
  return (
    (THERE_OR_LIT.test(before) || THERE_OR_LIT.test(words[at - 1] ?? '') || COLOUR.test(after ?? '')) &&
    (after === undefined || !WORDS.has(after) || isPlace(words, at + 1))
  );
}

function flip(side: Side): Side {
  return side === 1 ? -1 : 1;
}
