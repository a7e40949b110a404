import type { Calculator } from './calculator.ts';
import { chockHeight } from './chock-height.ts';
import { runTogether } from './run-together.ts';
import { toiletCapacity } from './toilet-days.ts';

/** Every sum the bot can do. Adding one is a file and a line here. */
export const CALCULATORS: readonly Calculator[] = [chockHeight, runTogether, toiletCapacity];
