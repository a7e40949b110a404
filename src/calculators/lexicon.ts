import type { Constants, Figures } from '../knowledge/schema.ts';

/** Something that draws power, and every way it may be named. `watts` is null when only its plate can tell. */
export type Appliance = {
  /** Stable key: the load's or thing's id in the firm's files; 'heating' for every step of the heater. */
  readonly key: string;
  readonly name: string;
  readonly watts: number | null;
  /** Id of the van's breaker; null for what is plugged into a socket or runs on 12 V. */
  readonly circuit: string | null;
  /** 1 is missed least when switched off. */
  readonly missed: number;
  readonly phrases: readonly (readonly string[])[];
};

/** How much things of the hirer's own are missed: the middle of the firm's scale. */
const OWN_MISSED = 5;

/** What runs all day when no hours are said of it. */
export const ALWAYS_ON: ReadonlySet<string> = new Set(['fridge', 'panel', 'fridge-controls', 'router']);

/** What else people call the usual things, beside what the firm's files list. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  kettle: [
    'kettle',
    'kettel',
    'ketle',
    'kettles',
    'cuppa',
    'tea',
    'coffee',
    'boil water',
    'boil some water',
    'travel kettle',
    'van kettle',
    'low watt kettle',
  ],
  microwave: ['microwave', 'micro wave', 'microwaving', 'nuker', 'micowave'],
  toaster: ['toaster', 'toasting', 'toster'],
  ring: ['ring', 'hot plate', 'electric hotplate'],
  heating: [
    'heating',
    'heater',
    'heat',
    'room heater',
    'radiators',
    'radiator',
    'rads',
    'central heating',
    'blown air',
    'blown air heating',
    'warm air',
    'hot air',
    'blow heating',
    'furnace',
    'heatin',
    'heeter',
    'electric heater',
    'electric heating',
    'heating electric',
    'electric fire',
    'van heater',
    'van heating',
    'warmth',
    'electric',
  ],
  'water-heater': [
    'water heater',
    'hot water',
    'hot water heater',
    'immersion',
    'geyser',
    'water heating',
    'water boiler',
    'boiler',
    'hot water tank',
  ],
  'hair-dryer': [
    'hair dryer',
    'hairdryer',
    'hair drier',
    'hairdrier',
    'dry my hair',
    'dry her hair',
    'drying my hair',
    'drying her hair',
    'drying their hair',
    'dry our hair',
    'dry their hair',
    'drying hair',
    'blow dry',
    'dry hair',
  ],
  'travel-hair-dryer': [
    'travel hair dryer',
    'travel hairdryer',
    'little hair dryer',
    'little hairdryer',
    'small hairdryer',
    'mini hair dryer',
  ],
  tv: ['tv', 'telly', 'television', 'tele', 'tvs', 'box set'],
  lights: ['lights', 'light', 'lighting', 'leds', 'lamps'],
  lamp: ['lamp', 'lamps', 'halogen', 'halogens', 'halogen lamp', 'halogen lamps', 'bulb', 'bulbs'],
  pump: ['pump', 'water pump', 'shower', 'showers', 'taps'],
  router: ['router', 'wifi', 'wi fi', 'internet', 'mobile router'],
  panel: ['panel', 'control panel', 'alarm'],
  fridge: ['fridge', 'refrigerator', 'freezer', 'frige', 'fridgefreezer', 'fridge freezer'],
  phone: ['phone', 'mobile', 'phones', 'phone charger', 'tablet', 'ipad'],
  laptop: ['laptop', 'lap top', 'notebook', 'computer'],
  'fan-heater': [
    'fan heater',
    'halogen heater',
    'oil filled radiator',
    'oil radiator',
    'oil heater',
    'convector heater',
    'plug in heater',
    'portable heater',
    'own heater',
    'electric radiator',
    'little heater',
    'small heater',
  ],
  'house-kettle': [
    'kettle from home',
    'home kettle',
    'house kettle',
    'normal kettle',
    'own kettle',
    'full size kettle',
    'domestic kettle',
    'household kettle',
    'ordinary kettle',
  ],
  'house-toaster': ['toaster from home', 'own toaster', 'sandwich toaster', 'toastie maker'],
  'coffee-machine': ['coffee machine', 'coffee maker', 'espresso machine', 'pod machine', 'espresso'],
  'slow-cooker': ['slow cooker', 'slowcooker', 'crock pot', 'crockpot'],
  'electric-blanket': ['electric blanket', 'heated blanket', 'heated throw', 'overblanket'],
  'games-console': ['games console', 'console', 'gaming console', 'game console', 'video games'],
  cpap: [
    'cpap',
    'breathing machine',
    'sleep machine',
    'apap',
    'bipap',
    'sleep apnoea machine',
    'sleep apnea machine',
    'cpap machine',
  ],
};

/** Things whose draw differs so much that their plate is asked for. */
const BY_PLATE = [
  'microwave',
  'vacuum',
  'vacuum cleaner',
  'rice cooker',
  'bread maker',
  'breadmaker',
  'pressure cooker',
  'multi cooker',
  'induction hob',
  'electric hob',
  'dehumidifier',
  'electric grill',
  'health grill',
  'grill plate',
  'griddle',
  'electric oven',
  'mini oven',
  'pizza oven',
  'cool box',
  'coolbox',
  'cool bag',
  'ice maker',
  'blender',
  'smoothie maker',
  'electric barbecue',
  'electric bbq',
  'hot tub',
  'electric bike',
  'ebike',
  'e bike',
  'bike charger',
  'electric car',
  'scooter',
  'airer',
  'heated airer',
  'washing machine',
  'tumble dryer',
  'tumble drier',
  'spin dryer',
  'steriliser',
  'bottle warmer',
  'urn',
  'projector',
  'printer',
  'popcorn maker',
  'waffle maker',
  'deep fat fryer',
  'fryer',
  'air con',
  'aircon',
  'air conditioner',
  'air conditioning',
  'awning heater',
  'patio heater',
  'power tool',
  'drill',
  'jet wash',
  'pressure washer',
  'fish tank',
  'sewing machine',
];

const cache = new WeakMap<Figures, Map<Constants, { mains: readonly Appliance[]; battery: readonly Appliance[] }>>();

/** What can be named in a sum about the hook-up: the van's loads, the heater as one, and hirers' own things. */
export function mainsAppliances(figures: Figures, constants: Constants): readonly Appliance[] {
  return lexicons(figures, constants).mains;
}

/** What can be named in a sum about the battery: the van's 12 V loads and hirers' own small things. */
export function batteryAppliances(figures: Figures, constants: Constants): readonly Appliance[] {
  return lexicons(figures, constants).battery;
}

function lexicons(
  figures: Figures,
  constants: Constants,
): { mains: readonly Appliance[]; battery: readonly Appliance[] } {
  const known = cache.get(figures) ?? new Map();
  cache.set(figures, known);
  const found = known.get(constants) ?? { mains: mains(figures, constants), battery: battery(figures, constants) };
  known.set(constants, found);
  return found;
}

function mains(figures: Figures, constants: Constants): readonly Appliance[] {
  const { loads } = figures.mains;
  const list: Appliance[] = [];
  const steps = Object.entries(loads).filter(([key]) => key.startsWith('heating-'));
  const first = steps[0]?.[1];
  const combined = figures.hotWater !== undefined && loads['water-heater'] === undefined;
  list.push({
    key: 'heating',
    name: 'heating',
    // Diesel heating takes nothing from the hook-up but its fan's watts, through the charger.
    watts: steps.length === 0 ? (figures.battery.loadsW['heating'] ?? 0) : null,
    circuit: first?.circuit ?? null,
    missed: Math.min(9, ...steps.map(([, load]) => load.missed)),
    phrases: phrasesOf('heating', [], combined ? ['boiler', 'hot water', 'water heater', 'combi', 'immersion'] : []),
  });
  for (const [key, load] of Object.entries(loads)) {
    if (key.startsWith('heating-')) continue;
    const name = load.name.replace(/^low-watt /, '');
    list.push({
      key,
      name,
      watts: load.watts,
      circuit: load.circuit,
      missed: load.missed,
      phrases: phrasesOf(key, [name, load.name], load.also),
    });
  }
  list.push(...ownThings(constants));
  // A television and lights run on 12 V, but through the charger they count here as well.
  for (const key of ['tv', 'lights', 'router']) {
    const watts = figures.battery.loadsW[key];
    if (watts !== undefined)
      list.push({
        key,
        name: key === 'tv' ? 'TV' : key,
        watts,
        circuit: null,
        missed: OWN_MISSED,
        phrases: phrasesOf(key, [], []),
      });
  }
  const wired = new Set(list.map((appliance) => appliance.key));
  list.push(...byPlate().filter((appliance) => !wired.has(appliance.key)));
  return list;
}

function battery(figures: Figures, constants: Constants): readonly Appliance[] {
  const list: Appliance[] = Object.entries(figures.battery.loadsW)
    .filter(([key]) => key !== 'inverter-idle')
    .map(([key, watts]) => {
      const name = key === 'tv' ? 'TV' : key.replaceAll('-', ' ');
      const phrases = phrasesOf(key, [name], key === 'heating' ? ['fan', 'blower', 'boiler', 'diesel heater'] : []);
      // Where each lamp counts for itself, 'lights' still means the four of an evening.
      return {
        key,
        name,
        watts,
        circuit: null,
        missed: OWN_MISSED,
        phrases:
          key === 'lights' && figures.battery.loadsW['lamp'] !== undefined
            ? phrases.filter(([word]) => word !== 'lamp')
            : phrases,
      };
    });
  if (figures.battery.fridgeAhPerDay !== undefined) {
    list.push({
      key: 'fridge',
      name: 'fridge',
      watts: null,
      circuit: null,
      missed: OWN_MISSED,
      phrases: phrasesOf('fridge', [], []),
    });
  }
  list.push(
    ...ownThings(constants).filter((thing) => thing.watts !== null && thing.watts <= (figures.mains.inverterW ?? 150)),
  );
  list.push(...byPlate());
  return list;
}

function ownThings(constants: Constants): readonly Appliance[] {
  return Object.entries(constants.things).flatMap(([key, thing]) =>
    thing.watts === undefined
      ? []
      : [
          {
            key,
            name: thing.name,
            watts: thing.watts,
            circuit: null,
            missed: OWN_MISSED,
            phrases: phrasesOf(key, [thing.name], thing.also),
          },
        ],
  );
}

function byPlate(): readonly Appliance[] {
  return BY_PLATE.map((name) => ({
    key: name.replaceAll(' ', '-'),
    name,
    watts: null,
    circuit: null,
    missed: OWN_MISSED,
    phrases: [words(name)],
  }));
}

function phrasesOf(key: string, names: readonly string[], also: readonly string[]): readonly (readonly string[])[] {
  return [...new Set([...names, ...also, ...(ALSO[key] ?? [])])].map(words).filter((phrase) => phrase.length > 0);
}

/** A phrase as it is compared: lower case, without hyphens. */
export function words(phrase: string): readonly string[] {
  return phrase
    .toLowerCase()
    .split(/[^\p{L}\p{N}.]+/u)
    .filter((word) => word !== '')
    .map(singular);
}

/** 'kettles' and "kettle's" are 'kettle'; short words and '-ss' stay. */
export function singular(said: string): string {
  const word = said.replace(/'s?$/, '');
  return word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}
