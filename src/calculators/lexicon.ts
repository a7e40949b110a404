import type { Constants, Figures } from '../knowledge/schema.ts';
import { NAMES_BY_PLATE, NAMES_ON_12V, namesOf } from './appliance-names.ts';

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
export const OWN_MISSED = 5;

/** What draws at most from a 12 V socket: its fuse of 10 A, and a little for what plates overstate. */
export const MOST_ON_12V_W = 150;

/** The key of what the charger takes more after a flat battery. */
export const FLAT_CHARGE = 'flat-charge';

/** What runs all day when no hours are said of it. */
export const ALWAYS_ON: ReadonlySet<string> = new Set(['fridge', 'panel', 'fridge-controls', 'router']);

type Lexicons = {
  readonly mains: readonly Appliance[];
  readonly battery: readonly Appliance[];
  readonly offHookUp: readonly Appliance[];
  readonly needPlug: ReadonlySet<string>;
};

const cache = new WeakMap<Figures, Map<Constants, Lexicons>>();

/** What can be named in a sum about the hook-up: the van's loads, the heater as one, and hirers' own things. */
export function mainsAppliances(figures: Figures, constants: Constants): readonly Appliance[] {
  return lexicons(figures, constants).mains;
}

/** What can be named in a sum about the battery: the van's 12 V loads and hirers' own small things. */
export function batteryAppliances(figures: Figures, constants: Constants): readonly Appliance[] {
  return lexicons(figures, constants).battery;
}

/** What can be named off hook-up: what runs on the battery, and what needs the mains all the same. */
export function offHookUpAppliances(figures: Figures, constants: Constants): readonly Appliance[] {
  return lexicons(figures, constants).offHookUp;
}

/** Whether a thing runs on the battery of this van. */
export function runsOnBattery(key: string, figures: Figures, constants: Constants): boolean {
  return !lexicons(figures, constants).needPlug.has(key);
}

function lexicons(figures: Figures, constants: Constants): Lexicons {
  const known = cache.get(figures) ?? new Map<Constants, Lexicons>();
  cache.set(figures, known);
  const found = known.get(constants) ?? lexiconsOf(figures, constants);
  known.set(constants, found);
  return found;
}

function lexiconsOf(figures: Figures, constants: Constants): Lexicons {
  const onBattery = battery(figures, constants);
  const plugs = mainsOnly(figures, constants);
  return {
    mains: mains(figures, constants),
    battery: onBattery,
    offHookUp: [...onBattery, ...plugs],
    needPlug: new Set(plugs.map(({ key }) => key)),
  };
}

function mains(figures: Figures, constants: Constants): readonly Appliance[] {
  const { loads } = figures.mains;
  const list: Appliance[] = [];
  const steps = Object.entries(loads).filter(([key]) => key.startsWith('heating-'));
  const first = steps[0]?.[1];
  const combined = figures.hotWater !== undefined && loads['water-heater'] === undefined;
  list.push({
    key: 'heating',
    // Diesel heating takes nothing from the hook-up but its fan's watts, through the charger.
    name: steps.length === 0 ? "diesel heater's fan" : 'heating',
    watts: steps.length === 0 ? (figures.battery.loadsW['heating'] ?? 0) : null,
    circuit: first?.circuit ?? null,
    missed: Math.min(9, ...steps.map(([, load]) => load.missed)),
    phrases: phrasesOf(
      'heating',
      [],
      combined
        ? ['boiler', 'hot water', 'heating water', 'heating the water', 'water heater', 'combi', 'immersion']
        : [],
    ),
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
  const { flatChargeW } = figures.mains;
  if (flatChargeW !== undefined) {
    list.push({
      key: FLAT_CHARGE,
      name: 'charging a flat battery',
      watts: flatChargeW,
      circuit: loads['charger']?.circuit ?? null,
      missed: OWN_MISSED,
      phrases: phrasesOf(FLAT_CHARGE, [], []),
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
  list.push(...byPlate(NAMES_BY_PLATE).filter((appliance) => !wired.has(appliance.key)));
  // Where the van has none, a toaster is one from home; a hot plate goes by its plate.
  if (loads['toaster'] === undefined)
    list.push(
      ...list
        .filter(({ key }) => key === 'house-toaster')
        .map((own) => ({ ...own, phrases: phrasesOf('toaster', [], []) })),
    );
  if (loads['ring'] === undefined)
    list.push({ ...byPlateOf('ring', 'electric hotplate'), phrases: HOT_PLATES.map(words) });
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
  const { inverterW = 0 } = figures.mains;
  list.push(
    ...ownThings(constants).filter(
      ({ key, watts }) => (watts !== null && watts <= inverterW) || constants.things[key]?.lead12V === true,
    ),
  );
  list.push(...byPlate(NAMES_ON_12V));
  return list;
}

/** Of these 'hot water' and 'ring' mostly mean the gas, and the rest is wired in. */
const NO_PLUG: ReadonlySet<string> = new Set(['heating', 'water-heater', 'ring', 'fridge', 'charger', FLAT_CHARGE]);

/** What can be named in a sum about the battery and runs on the hook-up alone: over the inverter, or with no inverter at all. */
function mainsOnly(figures: Figures, constants: Constants): readonly Appliance[] {
  const onBattery = new Set(battery(figures, constants).map(({ key }) => key));
  return mains(figures, constants).flatMap((appliance) => {
    if (NO_PLUG.has(appliance.key) || onBattery.has(appliance.key)) return [];
    // 'A brew' is as often made on the hob.
    const phrases = appliance.key === 'kettle' ? [['electric', 'kettle'], ['kettle']] : appliance.phrases;
    return [{ ...appliance, phrases }];
  });
}

function ownThings(constants: Constants): readonly Appliance[] {
  return Object.entries(constants.things).flatMap(([key, thing]) =>
    thing.watts === undefined
      ? []
      : [
          {
            key,
            name: thing.name,
            watts: thing.byPlate === true ? null : thing.watts,
            circuit: null,
            missed: OWN_MISSED,
            phrases: phrasesOf(key, [thing.name], thing.also),
          },
        ],
  );
}

const HOT_PLATES = ['electric ring', 'hot plate', 'hotplate', 'electric hotplate'];

function byPlateOf(key: string, name: string): Appliance {
  return { key, name, watts: null, circuit: null, missed: OWN_MISSED, phrases: [words(name)] };
}

function byPlate(names: readonly string[]): readonly Appliance[] {
  return names.map((name) => byPlateOf(name.replaceAll(' ', '-'), name));
}

function phrasesOf(key: string, names: readonly string[], also: readonly string[]): readonly (readonly string[])[] {
  return [...new Set([...names, ...also, ...namesOf(key)])].map(words).filter((phrase) => phrase.length > 0);
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
