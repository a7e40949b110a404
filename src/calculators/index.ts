export { calculate, changesInput, isCalculation } from './calculate.ts';
export type { Bar, CalculatorContext, InputName, Inputs, Outcome } from './types.ts';
