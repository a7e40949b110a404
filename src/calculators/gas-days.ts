import { type Answer, ASKS_HOW_LONG_IT_LASTS, type Calculator, isSet, numberOf } from './calculator.ts';
import { INSIDE, MONTH, NIGHTS_IF_KNOWN, OUTSIDE, PEOPLE } from './common-inputs.ts';
import { type GasUse, heating, isHeated, outsideOf, usesOf } from './gas-use.ts';
import type { InputSpec } from './input-spec.ts';
import { ASKS, ampsSaid } from './plainly.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { rounded } from './units.ts';
import { daysText, figure, forNightsLeft, listText } from './words.ts';

const COOKING = 'cook|cooking|hob|kettle|stove|grill|oven|bacon|brew|meals?|tea';
const WATER = 'hot water|water heater|showers?|washing up';
/** With 'off' behind it the water is the heater's. */
const WATER_OFF = `${WATER}|water`;
const HEAT = 'heating|heater|heat|room heater|space heating|fire';
/** What stands between 'only' and one of several uses: 'only for cooking and two tanks of hot water'. */
const AMONG =
  'for|the|using|on|gas|running|run|having|doing|to|a|bit|of|need|it|use|and|,|plus|&|\\+|n|our|cooking|fridge|heating|hot|water|tanks?|one|two|three|\\d+|day|washing|up|per|each';
const only = (words: string) =>
  new RegExp(
    `\\b(only|just|nothing but|purely|solely)( (${AMONG}))* (${words})\\b|\\b(${words})( (${AMONG}))* (only|alone|and nothing else)\\b`,
  );
/** Uses named beside one another: 'no hot water or heating', 'water and space heating off'. */
const OTHERS = '(the |any )?(hot water|water heater|water|fridge|heating|heater|space heating|cooking|showers)';
const ON_ELECTRIC = '(on |from |by |via )(the )?(electric|electrics|electricity|mains|hook|ehu|12|post)';
const no = (words: string) =>
  new RegExp(
    `\\b(no|without|not|never|don't|dont|isn't|instead of|except|apart from)( using| use| run| running| the| any| for| counting| need)*( ${OTHERS} (or|nor|\\/))* (${words})\\b|\\bwithout ${OTHERS} and( the)? (${words})\\b|\\b(${words})('s)?( (and|or|n|&|\\+) ${OTHERS})* (is |are |will be |runs? |running |both |all |kept |left )*(off|not on|isn't on|not needed|not used|${ON_ELECTRIC})|\\b(${words})( :)?( is| are)? electric\\b(?! (or|and gas))`,
  );

const GAS = /\b(gas|(?<!\b(baby|baby's|babys|water) )(bottles?|cylinders?)|propane|butane)\b/;
const NOT_GAS = /\b(battery|batteries|solar|smell\w*)\b/;
const LASTS =
  /\b(lasts?(?! (night|week|year|time))|lasting|(?<!\b(hot|warm|big|heavy|good|long|strong) )enough|running out|runs? out|how many (days|nights)|days (remaining|left)|duration|(do|see) us|days? gas|gas left)\b|\bhow long\b.*\b(gas|bottle|cylinder)\b.*\bgood for\b/;
/** With what burns gas 'how long' asks after the gas; with an end to wait for it asks after that. */
const USES = /\b(cook\w*|fridge|hob)\b/;
const WAITS = /\b(til|till|until|before|take|takes|warm up|heat up)\b/;

const said = (words: string) => new RegExp(`\\b(${words})\\b`);

const flag = (name: string, words: RegExp): InputSpec => ({ name, as: 'flag', known: 'type', words });
const { fill: _, ...nights } = NIGHTS_IF_KNOWN;

export const gasHowLong: Calculator = {
  topic: 'gas-how-long',
  // 'On gas', 'gas heating' name a source, not what is to last.
  subject: {
    named:
      /(?<!\b(on|by|with|via|to|using|the heating|heater) )(?<!\bno )\b(gas|(gas )?(bottles?|cylinders?)|propane|butane)\b(?! (heat|heating|heater|fire|hob|or electric|and electric))/,
    asks: ASKS_HOW_LONG_IT_LASTS,
  },
  plainly: (reading) => {
    const { text } = reading;
    if (!GAS.test(text) || !ASKS.test(text) || NOT_GAS.test(text) || (ampsSaid(reading) ?? 0) > 0) return false;
    return LASTS.test(text) || (/\bhow long\b/.test(text) && USES.test(text) && !WAITS.test(text));
  },
  inputs: [
    {
      ...PEOPLE,
      needed: (inputs) =>
        inputs['only-cooking'] === true ||
        !(
          inputs['only-heating'] === true ||
          inputs['only-fridge'] === true ||
          inputs['only-water'] === true ||
          Object.hasOwn(inputs, 'dailyKg')
        ),
    },
    MONTH,
    OUTSIDE,
    INSIDE,
    nights,
    { name: 'hours', as: 'hours', known: 'hours', least: 0, most: 24, sane: 'a day has 24 hours' },
    { name: 'watts', as: 'watts', known: 'watts', least: 1, most: 6000, sane: 'the heater burns at most 6,000 watts' },
    {
      name: 'percent',
      as: 'percent',
      known: 'percent',
      least: 0,
      most: 100,
      sane: 'a cylinder is between 0 and 100 per cent full',
      needed: (inputs) =>
        inputs['begun'] === true && !['bottles', 'kg', 'dailyKg'].some((name) => Object.hasOwn(inputs, name)),
      ask: () => ({
        question: 'How full is the cylinder, about? Lift it a little, or look at its gauge if it has one.',
        choices: ['A quarter', 'Half', 'Three quarters', 'Full'],
      }),
    },
    {
      name: 'bottles',
      as: 'bottles',
      known: 'percent',
      least: 0,
      most: 6,
      sane: 'the van carries one or two cylinders',
    },
    { name: 'kg', as: 'kg', known: 'percent', least: 0, most: 50, sane: 'the van carries at most 12 kg of gas' },
    {
      name: 'dailyKg',
      as: 'kg',
      known: 'things',
      least: 0.001,
      most: 20,
      words: /\b(a|per|each|every) day\b|\bdaily\b/,
      sane: 'the van cannot burn so much in a day',
    },
    {
      name: 'tanks',
      as: 'count',
      known: 'people',
      least: 0,
      most: 20,
      words: /^(tanks?|tankfuls?|boilers? full|lots of hot water|showers?)\b/,
      sane: 'that is more hot water than the van can make in a day',
    },
    {
      name: 'heated',
      as: 'flag',
      known: 'outside',
      words: /\b(heat|heating|heater|heaters|warm|warmth|fire|radiators|boiler)\b/,
      unless: no(HEAT),
    },
    flag(
      'begun',
      /\b(what('s| is| we have| we've got)?|whatever('s| is)?) left (in|of)\b|\b(isn't|isnt|is not|not|bottle's not|no longer)( quite| completely)? full\b|\b(part|partly|half) ?-? ?used\b|\b(used some|nearly empty|getting low|running low|already been used|already opened)\b/,
    ),
    flag('oneBottle', /\b(bottle|cylinder|canister|bottel)\b/),
    flag('only-cooking', only(COOKING)),
    flag('only-heating', only(HEAT)),
    flag('only-fridge', only('fridge')),
    flag('only-water', only(WATER)),
    flag('said-cooking', said(COOKING)),
    flag('said-fridge', said('fridge')),
    flag('said-water', said(`${WATER}|tanks?`)),
    flag('no-cooking', no(COOKING)),
    flag('no-fridge', no('fridge')),
    flag('no-water', no(WATER_OFF)),
    flag(
      'allElectric',
      /\beverything else (is |runs )?(on |by )?(electric|mains|hook)|\brest (is |on )+(electric|mains|hook)/,
    ),
  ],
  answer,
};

/** Days = usable gas / what is burnt in a day; 95 % of a cylinder is usable. */
function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { constants } = context;
  const carried = carriedOf(inputs, context);
  const dailyKg = numberOf(inputs, 'dailyKg');
  const uses =
    dailyKg === null
      ? usesOf(withOnly(inputs), context)
      : [{ name: 'what you use', grams: dailyKg * 1000, says: `what you use ${figure(dailyKg * 1000, 0)} g` }];
  const gramsPerDay = uses.reduce((sum, use) => sum + use.grams, 0);
  const usableG = carried.kg * 1000 * constants.usableCylinderShare;
  const days = gramsPerDay > 0 ? usableG / gramsPerDay : null;
  return {
    values: { gramsPerDay, days },
    first: firstLine(days, numberOf(inputs, 'nights'), context.nights),
    working: [
      `A day: ${uses.map((use) => use.says).join(', ')}; ${figure(gramsPerDay, 0)} g in all.`,
      `Gas: ${carried.says} x ${figure(constants.usableCylinderShare, 2)} = ${figure(usableG / 1000, 2)} kg; ${figure(usableG, 0)} / ${figure(gramsPerDay, 0)} = ${days === null ? 'no end' : daysText(days)}.`,
      stretchLine(uses, usableG, inputs, context),
    ].filter((line) => line !== ''),
    caution:
      days === null ? null : 'A fair guess, within a quarter. Change the cylinder outdoors, everything off first.',
    bar: {
      title: 'Gas in a week',
      unit: 'kg',
      limit: rounded(usableG / 1000, 2),
      segments: uses.map((use) => ({ label: use.name, amount: rounded((use.grams * 7) / 1000, 2) })),
    },
  };
}

function withOnly(inputs: Inputs): Inputs {
  const named = ['cooking', 'heating', 'fridge', 'water'].filter((each) => inputs[`only-${each}`] === true);
  const only = named.length === 0 && inputs['allElectric'] === true ? ['cooking'] : named;
  if (only.length > 0) return { ...inputs, only };
  // Whoever lists the fridge and the cooking has listed what the gas is for.
  const listed = isSet(inputs, 'said-fridge') && isSet(inputs, 'said-cooking') && !isSet(inputs, 'said-water');
  return listed ? { ...inputs, 'no-water': true } : inputs;
}

function firstLine(days: number | null, nights: number | null, left: number | null): string {
  if (days === null) return 'Nothing you named burns gas, so it lasts.';
  if (nights === null) return `The gas lasts about ${daysText(days)}${forNightsLeft(days, left)}.`;
  return days >= nights
    ? `Yes: the gas lasts about ${daysText(days)}, enough for ${daysText(nights)}.`
    : `No: the gas lasts about ${daysText(days)}, not ${daysText(nights)}.`;
}

/** What is on board: weighed, counted in cylinders, in per cent, or what the van carries that month. */
function carriedOf(inputs: Inputs, context: CalculatorContext): { readonly kg: number; readonly says: string } {
  const { gas } = context.figures;
  const month = numberOf(inputs, 'month') ?? context.month;
  const full = gas?.winter?.months.includes(month) === true ? gas.winter.carriedKg : (gas?.carriedKg ?? 0);
  const one = full / (gas?.cylinders ?? 1);
  // '300 g a day' is what is burnt, not what there is.
  const kg = numberOf(inputs, 'dailyKg') === null ? numberOf(inputs, 'kg') : null;
  if (kg !== null) return { kg, says: `${figure(kg, 2)} kg` };
  const percent = numberOf(inputs, 'percent');
  const bottles = numberOf(inputs, 'bottles');
  if (bottles !== null && percent !== null && bottles >= 1) return share((bottles * percent) / 100, one);
  if (bottles !== null) return share(bottles, one);
  // '60 % left in the bottle' is of one, whatever stands beside it.
  if (percent !== null && isSet(inputs, 'oneBottle')) return share(percent / 100, one);
  if (percent !== null) return { kg: (full * percent) / 100, says: `${figure(percent, 0)} % of ${figure(full, 2)} kg` };
  return { kg: full, says: `${figure(full, 2)} kg` };
}

function share(bottles: number, oneKg: number): { readonly kg: number; readonly says: string } {
  return { kg: bottles * oneKg, says: `${figure(bottles, 2)} x ${figure(oneKg, 2)} kg` };
}

function stretchLine(uses: readonly GasUse[], usableG: number, inputs: Inputs, context: CalculatorContext): string {
  const { gas } = context.figures;
  const heatingUse = uses.find((use) => use.name === 'heating');
  const sum = uses.reduce((total, use) => total + use.grams, 0);
  if (gas?.hobOnly === true) return 'Lids on pans and only the water you need stretch it.';
  if (heatingUse !== undefined && heatingUse.grams > sum / 2) {
    return `Heating is most of it (${figure(outsideOf(inputs, context))}° outside). Without it the rest would last ${daysText(usableG / Math.max(1, sum - heatingUse.grams))}; on hook-up heat with electricity.`;
  }
  const onMains = uses.filter((use) => use.name === 'fridge' || use.name === 'hot water');
  if (onMains.length > 0) {
    const cooking = uses.filter((use) => use.name === 'cooking').reduce((total, use) => total + use.grams, 0);
    const stretched =
      cooking > 0
        ? ` With ${listText(onMains.map((use) => `the ${use.name}`))} on hook-up it lasts ${daysText(usableG / cooking)}.`
        : '';
    const { addGasBelowC, usual } = context.constants;
    const cold = isHeated(inputs, context)
      ? ''
      : ` Heating ${usual.heatingHours} hours at ${figure(addGasBelowC)}° outside would add ${figure(heating({ ...inputs, outside: addGasBelowC }, context).grams / 1000)} kg a day.`;
    return `${stretched}${cold}`.trim();
  }
  return '';
}
