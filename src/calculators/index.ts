export { asks, sumAsked, sumsPlainlyAsked, tellsFault } from './asked.ts';
export { calculate } from './calculate.ts';
export { isCalculation } from './calculators.ts';
export { changesInput, tellsAny, tellsInput } from './follow-up.ts';
export type { Bar, CalculatorContext, InputName, Inputs, Outcome } from './types.ts';
