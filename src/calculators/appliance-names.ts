/*
 * What people call things that draw power, beside what the firm's own files list. Plurals need no line of their own.
 */

const SAID: Readonly<Record<string, string>> = {
  kettle:
    'kettle, kettel, ketle, cuppa, tea, coffee, boil water, boil some water, travel kettle, ' +
    'van kettle, low watt kettle',
  microwave: 'microwave, micro wave, microwaving, nuker, micowave',
  toaster: 'toaster, toasting, toster',
  ring: 'ring, hot plate, electric hotplate',
  heating:
    'heating, heater, heat, room heater, radiator, rads, central heating, blown air, ' +
    'blown air heating, warm air, hot air, blow heating, furnace, heatin, heeter, electric heater, ' +
    'electric heating, heating electric, electric fire, van heater, van heating, warmth, electric',

  'water-heater':
    'water heater, hot water, hot water heater, immersion, geyser, water heating, heating water, heating the water, ' +
    'water boiler, boiler, hot water tank',

  'hair-dryer':
    'hair dryer, hairdryer, hair drier, hairdrier, dry my hair, dry her hair, ' +
    'drying my hair, drying her hair, drying their hair, dry our hair, dry their hair, drying hair, ' +
    'blow dry, dry hair',

  'travel-hair-dryer':
    'travel hair dryer, travel hairdryer, little hair dryer, little hairdryer, ' + 'small hairdryer, mini hair dryer',
  tv: 'tv, telly, television, tele, box set',
  lights: 'light, lighting, leds, lamps',
  lamp: 'lamp, halogen, halogen lamp, bulb',
  pump: 'pump, water pump, shower, taps',
  router: 'router, wifi, wi fi, internet, mobile router',
  panel: 'panel, control panel, alarm',
  fridge: 'fridge, refrigerator, freezer, frige, fridgefreezer, fridge freezer',
  'flat-charge':
    'flat battery, battery is flat, battery was flat, battery flat, dead battery, empty battery, battery is dead, battery is empty',
  straighteners: 'straightening hair, straightening her hair, straightening my hair, hair straightener, straightener',
  phone: 'phone, mobile, phone charger, tablet',
  laptop: 'laptop, lap top, notebook, computer',

  'fan-heater':
    'fan heater, halogen heater, oil filled radiator, oil radiator, oil heater, ' +
    'convector heater, plug in heater, portable heater, own heater, electric radiator, little heater, ' +
    'small heater',

  'house-kettle':
    'kettle from home, home kettle, house kettle, normal kettle, own kettle, ' +
    'full size kettle, domestic kettle, household kettle, ordinary kettle',
  'house-toaster': 'toaster from home, own toaster, sandwich toaster, toastie maker',
  'coffee-machine': 'coffee machine, coffee maker, espresso machine, pod machine, espresso',
  'slow-cooker': 'slow cooker, slowcooker',
  'electric-blanket': 'electric blanket, heated blanket, heated throw, overblanket',
  'games-console': 'games console, console, gaming console, game console, video games',
  cpap:
    'cpap, breathing machine, sleep machine, apap, bipap, sleep apnoea machine, sleep apnea machine, ' + 'cpap machine',
};

/** Things whose draw differs so much that their plate is asked for. */
const BY_PLATE =
  'microwave, vacuum, vacuum cleaner, hoover, rice cooker, bread maker, breadmaker, pressure cooker, ' +
  'multi cooker, induction hob, electric hob, dehumidifier, electric grill, health grill, ' +
  'grill plate, griddle, electric oven, mini oven, pizza oven, cool box, coolbox, cool bag, ' +
  'ice maker, blender, smoothie maker, electric barbecue, electric bbq, hot tub, electric bike, ' +
  'ebike, e bike, bike charger, electric car, scooter, airer, heated airer, washing machine, ' +
  'tumble dryer, tumble drier, spin dryer, steriliser, bottle warmer, urn, projector, ' +
  'popcorn maker, waffle maker, deep fat fryer, fryer, air con, aircon, air conditioner, ' +
  'air conditioning, awning heater, patio heater, power tool, drill, jet wash, pressure washer, ' +
  'fish tank, sewing machine, sandwich maker, sandwich press, panini press, egg boiler, frying pan, electric wok, hand mixer, food processor, soup maker, juicer, ' +
  'foot spa, clothes steamer, air bed pump, airbed pump, inflator, compressor, mobility scooter, wheelchair, ' +
  'boot dryer, clothes horse, printer, speaker, amplifier';

/** Of these what is sold with a lead for a 12 V socket. */
const ON_12V = ['cool box', 'coolbox', 'cool bag', 'bottle warmer'];

/** What else a load or thing is called, by its key in the firm's files; none for keys not listed. */
export function namesOf(key: string): readonly string[] {
  const said = Object.hasOwn(SAID, key) ? SAID[key] : undefined;
  return said === undefined ? [] : said.split(', ');
}

/** Names of things whose watts only their plate tells. */
export const NAMES_BY_PLATE: readonly string[] = BY_PLATE.split(', ');

/** Those of them that run off a 12 V socket. */
export const NAMES_ON_12V: readonly string[] = NAMES_BY_PLATE.filter((name) => ON_12V.includes(name));

/** Every name that people say, of whatever kind. */
export const SAID_NAMES: readonly string[] = [
  ...Object.values(SAID).flatMap((names) => names.split(', ')),
  ...NAMES_BY_PLATE,
];
