import { type Answer, type Calculator, numberOf } from './calculator.ts';
import { CHILDREN, PEOPLE_IF_KNOWN } from './common-inputs.ts';
import { parseThings } from './kept.ts';
import { ASKS } from './plainly.ts';
import { goByHead, STUFF, spread, type Thing, thingsIn } from './things.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { figure } from './words.ts';

/** What may be loaded: the plated maximum less the ready weight, in kg. */
export function payloadKg(mtplmKg: number, readyKg: number): number {
  return mtplmKg - readyKg;
}

/** What is left of a payload after things, in kg; below nought it is over. */
export function leftKgAfter(payload: number, things: readonly Pick<Thing, 'count' | 'kg'>[]): number {
  return payload - things.reduce((sum, thing) => sum + thing.count * thing.kg, 0);
}

const ridesInVan = (context: CalculatorContext) => context.figures.peopleCount;

const WEIGHS =
  /\b(weigh\w*|heavy|heavier|over ?-? ?weight|overload\w*|allowance|payload|weight limit|have left|left over|kilos left|kg left|go over|(over|within|under) the limit)\b/;
/** What is weighed is the car, the hitch or a bed; or it is no weight at all. */
const OTHER_WEIGHTS =
  /\b(nose|tow|towing|kerb|licen[cs]e|kg car|bunk|bed|shelf|rack|amps?|watts?|battery|heavy enough|big enough|gas (last|do))\b/;

export const loadHowMuch: Calculator = {
  topic: 'load-how-much',
  plainly: (reading) => {
    const { text, counted, context } = reading;
    if (!ASKS.test(text) || OTHER_WEIGHTS.test(text)) return false;
    if (
      /\b(are|is|am) (we|it|i|the van|everything|all this) (going to be |gonna be )?(too heavy|over ?-? ?weight|overloaded)\b/.test(
        text,
      )
    )
      return true;
    const things = thingsIn(counted, context.figures, context.constants, null);
    return things.length > 0 && (WEIGHS.test(text) || (/\b(load|loading|limit)\b/.test(text) && things.length > 1));
  },
  inputs: [
    {
      name: 'things',
      as: 'things',
      known: 'things',
      needed: (inputs) => inputs['general'] !== true || inputs['stuff'] === true,
      ask: () => ({
        question: 'What do you want to load? Name the things, with their weight where you know it.',
        choices: ['Clothes and food for all of us', 'Two bikes and four chairs', 'A full water tank'],
      }),
    },
    { ...PEOPLE_IF_KNOWN, needed: (inputs, context) => ridesInVan(context) || goByHead(parseThings(inputs['things'])) },
    CHILDREN,
    // 'Will all our stuff be over the limit?' wants to know what there is.
    { name: 'stuff', as: 'flag', known: 'things', words: STUFF, unless: /\bhow much\b|\bleft\b|\ballowance\b/ },
    {
      name: 'general',
      as: 'flag',
      known: 'things',
      words:
        /\bhow much (weight|can|could|may|stuff|kit|gear|luggage|is|are|more|load|do|room|does|will|allowance|payload)\b|\b(payload|allowance|weight limit|loading limit|load limit|limit|capacity)\b|\bhow (many )?(kilos?|kg|heavy)\b|\bhow heavy (can|may)\b|\bwhat (weight|can) (can )?(we|i)\b|\bleft (for us|over|to load)\b/,
    },
  ],
  answer,
};

/** left = MTPLM - ready weight - things; where people ride in the van, they count too, all but the driver. */
function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { figures } = context;
  const things = spread(
    parseThings(inputs['things']),
    numberOf(inputs, 'people') ?? 1,
    numberOf(inputs, 'children') ?? 0,
    context.constants,
  );
  const riders = ridesInVan(context) ? ridersOf(inputs, context) : [];
  const all = [...riders, ...things];
  const payload = payloadKg(figures.mtplmKg, figures.readyKg);
  const leftKg = leftKgAfter(payload, all);
  const usedKg = payload - leftKg;
  const over = leftKg < 0;
  return {
    values: { leftKg, verdict: over ? 'over' : 'fits' },
    first: over
      ? `Over by ${figure(-leftKg, 0)} kg: leave something behind or carry it in the car.`
      : things.length === 0
        ? `${context.vanName} leaves you ${figure(leftKg, 0)} kg${riders.length === 0 ? '' : ' besides yourselves'}.`
        : `That fits, with ${figure(leftKg, 0)} kg to spare.`,
    working: [
      `${figure(figures.mtplmKg)} kg at most less ${figure(figures.readyKg)} kg ready = ${figure(payload)} kg for you; full gas is counted already.`,
      ...(all.length === 0
        ? [usualThings(context)]
        : [
            `${all.map((thing) => `${thing.count === 1 ? '' : `${figure(thing.count)} x `}${thing.name} ${figure(thing.count * thing.kg)}`).join(' + ')} = ${figure(usedKg)} kg.`,
          ]),
    ],
    caution: over
      ? 'Overloaded is unsafe and not allowed. The plate and the weighbridge decide.'
      : 'Heavy things low and over the axle. The plate and the weighbridge decide.',
    bar: {
      title: 'Load',
      unit: 'kg',
      limit: payload,
      segments: all.map((thing) => ({ label: thing.name, amount: Math.round(thing.count * thing.kg) })),
    },
  };
}

function usualThings(context: CalculatorContext): string {
  const { things } = context.constants;
  const awning = context.figures.awningKg === undefined ? '' : `the air awning ${figure(context.figures.awningKg)}, `;
  return `Count ${awning}clothes ${figure(things['adult-kit']?.kg ?? 0)} an adult and ${figure(things['child-kit']?.kg ?? 0)} a child, food ${figure(things['food-for-two']?.kg ?? 0)} for two, a chair ${figure(things['chair']?.kg ?? 0)}, a bike ${figure(things['bike']?.kg ?? 0)}, water 1 a litre.`;
}

function ridersOf(inputs: Inputs, context: CalculatorContext): readonly Thing[] {
  const { things } = context.constants;
  const people = numberOf(inputs, 'people') ?? 1;
  const children = Math.min(numberOf(inputs, 'children') ?? 0, Math.max(0, people - 1));
  const adults = Math.max(0, people - children - 1);
  const rider = (key: string, name: string, count: number): Thing[] =>
    count === 0 ? [] : [{ key, name, count, kg: things[key]?.kg ?? 0 }];
  return [...rider('adult', 'adult besides the driver', adults), ...rider('child', 'child', children)];
}
