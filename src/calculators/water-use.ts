import { type Answer, type Calculator, isSet, numberOf } from './calculator.ts';
import { NIGHTS_IF_KNOWN, PEOPLE } from './common-inputs.ts';
import { both } from './plainly.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { daysText, figure, peopleText } from './words.ts';

const { fill: _, ...nights } = NIGHTS_IF_KNOWN;

export const waterHowMuch: Calculator = {
  topic: 'water-how-much',
  plainly: both(
    /\bhow (much|many litres?( of)?|many gallons( of)?) (fresh |drinking )?water\b|\bhow many (litres?|gallons|fills?|refills|barrels?|trips|times)\b.*\b(water|barrel|tank|fill\w*|tap)\b|\bhow often\b.*\b(fill\w*|barrel|refill|top up)\b|\bwater\b.*\bhow many (litres|fills|barrels)\b/,
    /\b(days?|daily|each|every|per|use|using|need|get through|go through|gone through|how often)\b/,
    /\b(hold|holds|capacity|big|size|hot water|waste|grey|weigh\w*|heavy)\b/,
  ),
  inputs: [
    PEOPLE,
    nights,
    {
      name: 'showers',
      as: 'flag',
      known: 'things',
      words: /\bshower(s|ing|ed)?\b/,
      unless:
        /\b(no|nobody|nobody's|no one|noone|none of us|not one of us|without|not|skip|skipping|never|won't|wont|excluding|except|apart from)( is| are| will be| having| taking| have| counting| doing| using| be| the| any| our| in the van)* shower\w*|\bshower\w* (at|in|on) the (site|block|campsite|wash)|\b(site|site's|campsite|wash) (block )?showers?\b/,
    },
    {
      name: 'showerCount',
      as: 'count',
      known: 'things',
      least: 0,
      most: 40,
      words: /^(quick |short |hot )?showers?\b/,
      sane: 'that is more showers than anybody takes in a day',
    },
    {
      name: 'showersEach',
      as: 'flag',
      known: 'things',
      words:
        /\b(each|everyone|everybody|every one|all of us|apiece|per person|a head|per head|both of us)\b.*\bshower|\bshowers? (each|apiece|per person|a head|per head|for (each|all|everyone|everybody))\b/,
    },
  ],
  answer,
};

/** Litres in a day: people at a steady use, and showers. */
export function litresADay(use: {
  readonly people: number;
  readonly litresEach: number;
  readonly showers: number;
  readonly litresAShower: number;
}): number {
  return use.people * use.litresEach + use.showers * use.litresAShower;
}

/** Days that a full container lasts: less than 1 when it takes more than one fill a day. */
export function daysOfFill(containerL: number, litresPerDay: number): number {
  return containerL / litresPerDay;
}

/** Litres a person a day: drink and cook 4, washing up 4, hands and face 3, flush 2.5 where it comes from the van's water, quick shower 12 each. */
function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { litresPerPersonDay: each, wasteShare } = context.constants;
  const { freshL, wasteL, flushFromFreshL } = context.figures.water;
  const people = numberOf(inputs, 'people') ?? 1;
  const showers = showersOf(inputs, people);
  const base = each.drink + each.washingUp + each.hands + flushFromFreshL;
  const litres = litresADay({ people, litresEach: base, showers, litresAShower: each.shower });
  const fills = litres / freshL;
  const waste = (litres - people * flushFromFreshL) * wasteShare;
  const days = numberOf(inputs, 'nights');
  return {
    values: { litresPerDay: litres, fillsPerDay: fills },
    first: `About ${figure(litres, 0)} L a day for ${peopleText(people)}: ${fills >= 1 ? `${figure(fills)} ${figure(fills) === '1' ? 'fill' : 'fills'} a day` : `a fill lasts ${daysText(daysOfFill(freshL, litres))}`}.`,
    working: [
      `${figure(people)} x ${figure(base)} L${flushFromFreshL > 0 ? ' with the flush' : ''}${showers > 0 ? ` + ${figure(showers)} ${showers === 1 ? 'shower' : 'showers'} x ${figure(each.shower)} L` : ''} = ${figure(litres)} L; ${context.vanName} holds ${figure(freshL)} L.`,
      showers > 0 || context.figures.hotWater?.shower !== true
        ? ''
        : `Each quick shower in the van adds ${figure(each.shower)} L.`,
      `Waste fills with about ${figure(waste, 0)} L a day, ${figure(wasteL)} L to an emptying.`,
      days === null || days <= 1 ? '' : `For ${figure(days)} days that is ${figure(litres * days, 0)} L.`,
    ].filter((line) => line !== ''),
    caution: flushFromFreshL > 0 ? null : 'The flush has its own tank and is not counted here.',
    bar: {
      title: 'Water in a day',
      unit: 'L',
      limit: freshL,
      segments: [
        { label: 'people', amount: people * base },
        ...(showers > 0 ? [{ label: 'showers', amount: showers * each.shower }] : []),
      ],
    },
  };
}

function showersOf(inputs: Inputs, people: number): number {
  if (inputs['showers'] === false) return 0;
  const counted = numberOf(inputs, 'showerCount');
  if (counted !== null) return isSet(inputs, 'showersEach') ? counted * people : counted;
  return isSet(inputs, 'showers') ? people : 0;
}
