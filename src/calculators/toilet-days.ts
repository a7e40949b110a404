import { type Answer, type Calculator, numberOf } from './calculator.ts';
import { PEOPLE } from './common-inputs.ts';
import { both } from './plainly.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { daysText, figure, peopleText } from './words.ts';

export type Cassette = { readonly cassetteL: number; readonly people: number; readonly litresPerPersonDay: number };

/**
 * Days until a cassette is full: litres / (people x litres a person a day).
 * The firm's sums with its corrections: 2.5 L where flush water is the van's own, 2.0 L where the flush tank is separate.
 */
export function toiletDays({ cassetteL, people, litresPerPersonDay }: Cassette): number {
  return cassetteL / (people * litresPerPersonDay);
}

export const toiletCapacity: Calculator = {
  topic: 'toilet-capacity',
  subject: {
    named: /\b(toilet|loo|cassette|portaloo)\b/,
    asks: /\bhow (long|often|many (days|nights))\b|\bwhen\b.*\b(full|empty|emptying)\b/,
  },
  plainly: both(
    /\b(toilet|loo|cassette|portaloo)\b/,
    /\bhow (often|many days|many nights)\b.*\b(empty\w*|full|fills?|lasts?|toilet|loo|cassette|portaloo)\b|\bwhen\b.*\bfull\b/,
    /\b(lamp|light|indicator|know|tell|smell\w*|chemical|fluid|sachets?|water)\b/,
  ),
  inputs: [PEOPLE],
  answer,
};

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { cassetteL, litresPerPersonDay } = context.figures.toilet;
  const people = numberOf(inputs, 'people') ?? 1;
  const warm = context.constants.cassetteDaysWhenWarm;
  const days = toiletDays({ cassetteL, people, litresPerPersonDay });
  return {
    values: { days },
    first: `Empty it about every ${daysText(days)} with ${peopleText(people)}.`,
    working: [
      `${figure(cassetteL)} L in ${context.vanName}'s ${context.figures.peopleCount ? 'waste half' : 'cassette'} / (${figure(people)} x ${figure(litresPerPersonDay)} L a day) = ${daysText(days)}.`,
      days > warm
        ? `In warm weather empty it every ${figure(warm - 1)} or ${figure(warm)} days all the same.`
        : "Fewer night flushes stretch it a little; the site's own toilets stretch it most.",
    ],
    caution: 'Only into a chemical disposal point, never a drain or hedge.',
    bar: {
      title: 'Cassette in a day',
      unit: 'L',
      limit: cassetteL,
      segments: [{ label: peopleText(people), amount: Math.round(people * litresPerPersonDay * 10) / 10 }],
    },
  };
}
