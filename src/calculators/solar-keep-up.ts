import { solarWhInMonth, sunHoursIn } from './battery.ts';
import { SHADED } from './battery-days.ts';
import { type Answer, type Calculator, isSet, numberOf } from './calculator.ts';
import { MONTH } from './common-inputs.ts';
import { DAILY_USE_IF_SAID, dailyUse, mainsOnlyLine } from './daily-use.ts';
import { monthName } from './months.ts';
import { both } from './plainly.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { rounded } from './units.ts';
import { figure } from './words.ts';

export const solarKeepUp: Calculator = {
  topic: 'dc-solar-keep-up',
  subject: {
    named: /\b(solar|roof panel|the sun|sunshine)\b/,
    asks: /\b(keep(s|ing)?\b.*\bup|enough|cover|covers|manage|cope|sufficient|plenty)\b/,
  },
  plainly: both(
    /\b(solar|roof panel|panel on the roof|the sun|sunshine)\b/,
    /\b(keep(s|ing)?|enough|cover|covers|manage|cope|copes|sufficient|plenty|pace)\b/,
    /\b(how (long|many)|lasts?|not (working|charging)|lamp|led|clean|gas)\b/,
  ),
  inputs: [...DAILY_USE_IF_SAID, MONTH, SHADED],
  answer,
};

/** Wh a day = panel W x sun hours x 0.70 (the firm's factor for its own vans), against the day's use. */
function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { figures, constants } = context;
  const month = numberOf(inputs, 'month') ?? context.month;
  const shaded = isSet(inputs, 'shaded');
  const solarWh = solarWhInMonth(context, month, shaded);
  const solarAh = solarWh / constants.batteryVolts;
  const use = dailyUse(inputs, context);
  const keepsUp = solarAh >= use.ah;
  const drive = figures.battery.driveAhPerHour;
  return {
    values: { solarWh, solarAh, dailyAh: use.ah, verdict: keepsUp ? 'keeps-up' : 'falls-short' },
    first:
      figures.solarW === undefined
        ? `${context.vanName} has no solar panel.`
        : keepsUp
          ? `Yes, in ${monthName(month)} it keeps up: ${figure(solarAh)} Ah a day against ${figure(use.ah)} Ah.`
          : `No, in ${monthName(month)} it falls short: ${figure(solarAh)} Ah a day against ${figure(use.ah)} Ah.`,
    working: [
      `${figure(figures.solarW ?? 0)} W x ${figure(sunHoursIn(month, context))} sun hours x ${figure(constants.solarFactor, 2)}${shaded ? ` x ${figure(constants.shadedShare, 2)} for shade` : ''} = ${figure(solarWh, 0)} Wh, ${figure(solarAh)} Ah.`,
      mainsOnlyLine(inputs, context) ?? '',
      use.says,
      ...(drive === undefined || keepsUp ? [] : [`An hour's driving brings another ${figure(drive)} Ah.`]),
    ].filter((line) => line !== ''),
    caution: shaded ? null : 'Halve it under trees or with a dirty panel.',
    bar: {
      title: `A day in ${monthName(month)}`,
      unit: 'Ah',
      limit: rounded(solarAh, 1),
      segments: [{ label: 'use', amount: rounded(use.ah, 1) }],
    },
  };
}
