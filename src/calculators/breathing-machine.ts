import { ampHours, usableAh } from './battery.ts';
import { type Answer, type Calculator, isSet, numberOf } from './calculator.ts';
import { AMPS_IF_KNOWN, NIGHTS_IF_KNOWN } from './common-inputs.ts';
import { inverterAh } from './daily-use.ts';
import { both } from './plainly.ts';
import { ampsOf } from './supply.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { rounded } from './units.ts';
import { figure, wattsText } from './words.ts';

const MACHINE =
  /\b(c ?- ?pap|cpap|apap|bipap|breathing machine|sleep (apnoea|apnea)( machine)?|sleep machine|breathing mask|oxygen concentrator)\b/;

export const breathingMachine: Calculator = {
  topic: 'dc-cpap-overnight',
  plainly: both(
    MACHINE,
    /\b(battery|overnight|nights?|tonight|hook|off ?-? ?grid|inverter|run|runs|power|powered|plug|12 ?v|work|works|manage|cope|last|electric|mains)\b/,
    /\b(where|distilled|clean\w*|lost|left behind|forgot\w*|broken)\b/,
  ),
  inputs: [
    {
      ...AMPS_IF_KNOWN,
      needed: (inputs) => inputs['hookedUp'] !== true,
      ask: () => ({
        question: 'Are you on hook-up, and how many amps does it give?',
        choices: ['6 amps', '10 amps', '16 amps', 'No hook-up'],
      }),
    },
    {
      name: 'hookedUp',
      as: 'flag',
      known: 'amps',
      words:
        /\b(on|with|have|got|full) (the |a |an )?(hook ?-? ?up|hookup|ehu|electric|mains)\b|\bplugged in\b|\bhooked up\b/,
      unless:
        /\b(no|off|without|not on|isn't|not) (a |any |the )?(hook|ehu|electric|mains|plugged|hooked)|\boff ?-? ?grid\b/,
    },
    {
      ...NIGHTS_IF_KNOWN,
      words: /\b(tonight|one night|a single night|just the night|this evening)\b/,
      needed: (inputs) => inputs['amps'] === 0 && inputs['overnight'] !== true,
    },
    {
      name: 'overnight',
      as: 'flag',
      known: 'nights',
      words: /\b(overnight|all night|through the night|the night|a night)\b/,
    },
    {
      name: 'watts',
      as: 'watts',
      known: 'watts',
      least: 1,
      most: 600,
      sane: 'a breathing machine draws 20 to 150 watts',
    },
    { name: 'hours', as: 'hours', known: 'hours', least: 0.5, most: 24, sane: 'a night is at most 24 hours' },
    {
      name: 'humidifier',
      as: 'flag',
      known: 'watts',
      words: /\bhumid\w*|\bheated (tube|hose)\b/,
      unless:
        /\b(no|without|not|minus|leave off|turn off|switch off|don't|dont|doesn't|doesnt|never)( use| using| need| have| want| run)?( the| a| its| my| using the)?( heated)? humid\w*|\bhumid\w* (is |turned |switched )?off\b(?! (the|my|our|a|of)\b)/,
    },
    {
      name: 'lead',
      as: 'flag',
      known: 'type',
      words:
        /\b12 ?v(olts?)? (lead|cable|adapt|plug|socket|cord|supply)\w*|\bdc (lead|cable|adapt)\w*|\b(cigar|cigarette)\b|\b12v\b|\b12 ?volts?\b/,
      unless: /\binverter\b/,
    },
  ],
  answer,
};

/**
 * Ah of one night. 45 W for 8 hours is 30 Ah on a 12 V lead, 38 Ah through the inverter, 60 Ah with the humidifier.
 * Always passed to staff as well, whatever the figures.
 */
function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { battery, mains } = context.figures;
  const { things } = context.constants;
  const machine = isSet(inputs, 'humidifier') ? things['cpap-humidifier'] : things['cpap'];
  const watts = numberOf(inputs, 'watts') ?? machine?.watts ?? 0;
  const hours = numberOf(inputs, 'hours') ?? context.constants.usual.breathingHours;
  const amps = numberOf(inputs, 'amps');
  if ((amps ?? 0) > 0 || inputs['hookedUp'] === true) return onHookUp(watts, hours, amps, inputs, context);
  const inverter = mains.inverterW !== undefined && !isSet(inputs, 'lead');
  const direct = ampHours(watts, hours, context.constants.batteryVolts);
  const ah = inverter ? inverterAh(watts, hours, context) : direct;
  const wanted = numberOf(inputs, 'nights') ?? 1;
  const usable = usableAh(battery);
  const nights = usable / ah;
  const fits = nights >= wanted;
  return {
    values: { ah, nights, verdict: fits ? 'fits' : 'over' },
    first: fits
      ? `Yes, for ${nightsText(wanted)} off hook-up: a night takes ${figure(ah, 0)} Ah of the ${figure(usable, 0)} Ah there are.`
      : nights >= 1
        ? `Not for ${nightsText(wanted)} off hook-up: the battery gives ${nightsText(Math.floor(nights))} with little else on.`
        : `No: a night takes ${figure(ah, 0)} Ah and the battery gives ${figure(usable, 0)} Ah.`,
    working: [
      inverter
        ? `${wattsText(watts)} x ${figure(hours)} h through the inverter = ${figure(ah)} Ah; ${figure(direct)} Ah on a 12 V lead of your own.`
        : `${wattsText(watts)} x ${figure(hours)} h / ${figure(context.constants.batteryVolts)} V = ${figure(ah)} Ah, on a 12 V lead of your own.`,
      `Usable ${figure(usable)} / ${figure(ah)} = ${figure(nights)} nights, with little else on.`,
    ],
    caution: CAUTION,
    bar: {
      title: 'Battery in a night',
      unit: 'Ah',
      limit: rounded(usable, 1),
      segments: [{ label: 'machine', amount: rounded(ah, 1) }],
    },
    pass: true,
  };
}

const CAUTION =
  'Take whatever keeps you safe if it stops; if you are unwell, call 999. Our staff see this too and can tell you about a spare battery.';

function onHookUp(
  watts: number,
  hours: number,
  amps: number | null,
  inputs: Inputs,
  context: CalculatorContext,
): Answer {
  const { volts, batteryVolts } = context.constants;
  const ah = ampHours(watts, hours, batteryVolts);
  return {
    values: { ah, nights: numberOf(inputs, 'nights'), verdict: 'fits' },
    first: `Yes, on hook-up: ${wattsText(watts)} is ${figure(ampsOf(watts, volts), 1)} A${amps === null ? ', which any post gives' : ` of the post's ${figure(amps)} A`}.`,
    working: [
      `${wattsText(watts)} / ${figure(volts)} V = ${figure(ampsOf(watts, volts), 1)} A, every night.`,
      `Should the post go off in the night, the machine stops: on the battery a night would take ${figure(ah, 0)} Ah on a 12 V lead of your own.`,
    ],
    caution: CAUTION,
    bar:
      amps === null
        ? null
        : {
            title: 'On the post',
            unit: 'W',
            limit: amps * volts,
            segments: [
              { label: 'fridge and charger', amount: context.figures.mains.backgroundW },
              { label: 'machine', amount: watts },
            ],
          },
    pass: true,
  };
}

function nightsText(nights: number): string {
  return nights === 1 ? 'one night' : `${figure(nights)} nights`;
}
