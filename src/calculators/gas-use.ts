import { isSet, numberOf } from './calculator.ts';
import { OUTSIDE } from './common-inputs.ts';
import { gramsBurnt, heatingGrams } from './lpg.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { figure } from './words.ts';

/** One use of gas in a day. */
export type GasUse = { readonly name: string; readonly grams: number; readonly says: string };

/** Outside temperature said, or the month's usual one. */
export function outsideOf(inputs: Inputs, context: CalculatorContext): number {
  const month = numberOf(inputs, 'month') ?? context.month;
  return numberOf(inputs, OUTSIDE.name) ?? context.constants.outsideC[month - 1] ?? context.constants.heatsBelowC;
}

/** Which uses are meant: those named alone ('just cooking'), or all the van has, less those ruled out. */
export function usesOf(inputs: Inputs, context: CalculatorContext): readonly GasUse[] {
  const { gas, hotWater } = context.figures;
  const { only } = inputs;
  const wanted = (name: string, usual: boolean) =>
    (Array.isArray(only) ? only.includes(name) : usual) && inputs[`no-${name}`] !== true;
  const uses: GasUse[] = [];
  if (wanted('cooking', true)) uses.push(cooking(inputs, context));
  if (gas?.hobOnly === true) return uses;
  if (gas?.fridgeGPerDay !== undefined && wanted('fridge', true)) {
    uses.push({ name: 'fridge', grams: gas.fridgeGPerDay, says: `fridge ${figure(gas.fridgeGPerDay, 0)} g` });
  }
  if (hotWater?.tankGasG !== undefined && wanted('water', true)) {
    const tanks = numberOf(inputs, 'tanks') ?? context.constants.usual.tanksADay;
    uses.push({
      name: 'hot water',
      grams: tanks * hotWater.tankGasG,
      says: `${figure(tanks)} ${tanks === 1 ? 'tank' : 'tanks'} of hot water ${figure(tanks * hotWater.tankGasG, 0)} g`,
    });
  }
  if (wanted('heating', isHeated(inputs, context))) uses.push(heating(inputs, context));
  return uses;
}

/** Heating is meant when it is named, or when a cold outside is and heating is not ruled out. */
export function isHeated(inputs: Inputs, { constants }: CalculatorContext): boolean {
  if (inputs['heated'] !== undefined) return isSet(inputs, 'heated');
  const outside = numberOf(inputs, OUTSIDE.name);
  return outside !== null && outside < constants.heatsBelowC;
}

function cooking(inputs: Inputs, context: CalculatorContext): GasUse {
  const people = numberOf(inputs, 'people') ?? 1;
  const grams = people * context.constants.cookingGPerPersonDay;
  return { name: 'cooking', grams, says: `cooking for ${figure(people)} ${figure(grams, 0)} g` };
}

/** The heater at a stated power for its hours, or what holds the van warm. */
export function heating(inputs: Inputs, context: CalculatorContext): GasUse {
  const { constants, figures } = context;
  const hours = numberOf(inputs, 'hours') ?? context.constants.usual.heatingHours;
  const watts = numberOf(inputs, 'watts');
  if (watts !== null) {
    const grams = gramsBurnt(watts, hours, constants.netCalorificKWhPerKg);
    return {
      name: 'heating',
      grams,
      says: `heating ${figure(watts / 1000)} kW for ${figure(hours)} h ${figure(grams, 0)} g`,
    };
  }
  const outside = outsideOf(inputs, context);
  const inside = numberOf(inputs, 'inside') ?? context.constants.usual.insideC;
  const grams = heatingGrams({
    lossWPerK: figures.heating.lossWPerK,
    liftK: inside - outside,
    hours,
    efficiency: constants.heatingEfficiency,
    netKWhPerKg: constants.netCalorificKWhPerKg,
  });
  return {
    name: 'heating',
    grams,
    says: `heating ${figure(figures.heating.lossWPerK)} W/K x ${figure(Math.max(0, inside - outside))} K x ${figure(hours)} h ${figure(grams, 0)} g`,
  };
}
