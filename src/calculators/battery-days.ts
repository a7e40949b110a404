import { batteryDays as daysOf, leftAh, percentFromVolts, solarWhInMonth, usableAh } from './battery.ts';
import { type Answer, ASKS_HOW_LONG_IT_LASTS, type Calculator, isSet, numberOf } from './calculator.ts';
import { MONTH, NIGHTS_IF_KNOWN } from './common-inputs.ts';
import { DAILY_USE, dailyUse, mainsOnlyLine } from './daily-use.ts';
import type { InputSpec } from './input-spec.ts';
import { monthName } from './months.ts';
import { both } from './plainly.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { rounded } from './units.ts';
import { daysText, figure, forNightsLeft } from './words.ts';

export const SHADED: InputSpec = {
  name: 'shaded',
  as: 'flag',
  known: 'type',
  words: /\b(trees?|shade|shaded|shady|woods?|woodland|dirty panel|forest)\b/,
  unless: /\b(no|not under|without|away from) (the |any )?(trees?|shade)\b/,
};

const { fill: _, ...nights } = NIGHTS_IF_KNOWN;

export const batteryDays: Calculator = {
  topic: 'dc-battery-days',
  subject: {
    named: /\b(battery|batteries)\b/,
    asks: ASKS_HOW_LONG_IT_LASTS,
  },
  plainly: both(
    /\b(battery|batteries)\b/,
    /^(?=.*\b(off ?-? ?grid|off (the )?hook|no hook|without (a |any )?hook|no (mains|electric\w*|plug)|not (plugged|hooked)|unplugged|wild camp\w*)\b)(?=.*(\?|\b(how|will|does|days|nights)\b))/,
    /\b(gas|solar|panel keep|charg\w*|flat|dead|where|volts?|low|gauge|cpap|breathing|inverter|water|disconnect|change|replace)\b/,
  ),
  inputs: [
    ...DAILY_USE,
    MONTH,
    SHADED,
    nights,
    {
      name: 'percent',
      as: 'percent',
      known: 'percent',
      least: 0,
      most: 100,
      sane: 'a battery holds between 0 and 100 per cent',
    },
    {
      name: 'volts',
      as: 'volts',
      known: 'percent',
      least: 9,
      most: 16,
      worse: 'low',
      words: /\b(\d+\.\d+|reads?|reading|says|showing|shows|at|down)\b/,
      sane: 'a 12 V battery reads 10 to 15 volts',
    },
  ],
  answer,
};

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { figures } = context;
  const { battery } = figures;
  const month = numberOf(inputs, 'month') ?? context.month;
  const use = dailyUse(inputs, context);
  const charge = chargeOf(inputs, context);
  const usable = (charge.percent === null ? usableAh(battery) : leftAh(battery, charge.percent)) * use.share;
  const solarAh = solarWhInMonth(context, month, isSet(inputs, 'shaded')) / context.constants.batteryVolts;
  const days = daysOf(usable, use.ah, solarAh);
  return {
    values: { usableAh: usable, dailyAh: use.ah, solarAh, days },
    first: [mainsOnlyLine(inputs, context), firstLine(days, inputs, context, charge.percent === null)]
      .filter((line) => line !== null)
      .join(' '),
    working: [
      charge.percent === null
        ? `Usable: ${figure(battery.nominalAh)} Ah x ${figure(battery.usableShare, 2)} (${typeName(battery.type)}) x ${figure(battery.ageFactor, 2)} for age = ${figure(usableAh(battery))} Ah.`
        : `At ${figure(charge.percent, 0)} % there are ${figure(leftAh(battery, charge.percent))} Ah to use before the low mark.`,
      ...(use.share < 1
        ? [`At that current the battery gives ${figure(use.share * 100, 0)} % of its Ah (Peukert).`]
        : []),
      use.says,
      sumLine(usable, use.ah, solarAh, days, month, context),
    ],
    caution: charge.note ?? cautionFor(context),
    bar: {
      title: 'Battery, day and night',
      unit: 'Ah',
      limit: rounded(usable, 1),
      segments:
        solarAh > 0
          ? [{ label: 'use less solar', amount: rounded(Math.max(0, use.ah - solarAh), 1) }]
          : use.parts.map(({ name, ah }) => ({ label: name, amount: rounded(ah, 1) })),
    },
  };
}

function firstLine(days: number | null, inputs: Inputs, context: CalculatorContext, full: boolean): string {
  const nights = numberOf(inputs, 'nights');
  const inHours = isSet(inputs, 'nonstop');
  if (days === null) return 'The battery keeps going: the sun brings at least what you use.';
  if (days === 0) return 'It is at the low mark now: nothing more to take from it before it is charged.';
  const lasts = inHours || days < 1 ? `about ${figure(days * 24, 0)} hours` : `about ${daysText(days)}`;
  if (nights === null)
    return `The battery lasts ${lasts} off hook-up${full ? ', from full' : ' from there'}${inHours ? '' : forNightsLeft(days, context.nights)}.`;
  return days >= nights
    ? `Yes: the battery lasts ${lasts}, enough for ${daysText(nights)}.`
    : `No: the battery lasts ${lasts}, not ${daysText(nights)}.`;
}

function sumLine(
  usable: number,
  dailyAh: number,
  solarAh: number,
  days: number | null,
  month: number,
  context: CalculatorContext,
): string {
  const ends = days === null ? 'no end' : daysText(days);
  if (context.figures.solarW === undefined) return `${figure(usable)} / ${figure(dailyAh)} = ${ends}.`;
  const sun = `The panel brings ${figure(solarAh)} Ah in ${monthName(month)}`;
  return days === null
    ? `${sun}, the day takes ${figure(dailyAh)}.`
    : `${sun}: ${figure(usable)} / (${figure(dailyAh)} - ${figure(solarAh)}) = ${ends}.`;
}

/** The state of charge from what was said. `note` is said when the volts cannot tell it. */
function chargeOf(
  inputs: Inputs,
  context: CalculatorContext,
): { readonly percent: number | null; readonly note: string | null } {
  const said = numberOf(inputs, 'percent');
  if (said !== null) return { percent: said, note: null };
  const volts = numberOf(inputs, 'volts');
  if (volts === null) return { percent: null, note: null };
  const { chargingVolts, restVolts } = context.constants;
  const percent = percentFromVolts(volts, context.figures.battery.type, restVolts);
  if (percent === null)
    return {
      percent: null,
      note: 'Volts do not tell what is in a lithium battery; read the per cent on the panel. This sum takes it as full.',
    };
  const charging = volts > chargingVolts;
  return {
    percent,
    note: charging
      ? `Over ${figure(chargingVolts)} V it is on charge, so the volts say nothing of its charge: read them again after some hours at rest.`
      : 'From volts this is a guess of a tenth either way, and only after some hours at rest.',
  };
}

function typeName(type: CalculatorContext['figures']['battery']['type']): string {
  return type === 'agm' ? 'sealed lead' : type === 'flooded' ? 'lead acid' : 'lithium';
}

function cautionFor(context: CalculatorContext): string {
  const { battery, gas } = context.figures;
  const fridge = gas?.fridgeGPerDay === undefined ? '' : ' The fridge has to be on gas.';
  return battery.type === 'lithium'
    ? 'A fair guess, within a quarter. It cuts off by itself when it is low.'
    : `A fair guess, within a quarter. Stop at the low mark: draining a lead battery ruins it.${fridge}`;
}
