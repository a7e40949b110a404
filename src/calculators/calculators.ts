import type { TopicId } from '../basics/ids.ts';
import { batteryDays } from './battery-days.ts';
import { breathingMachine } from './breathing-machine.ts';
import { butaneCold } from './butane-cold.ts';
import type { Calculator } from './calculator.ts';
import { towingCarMatch } from './car-match.ts';
import { chockHeight } from './chock-height.ts';
import { gasHowLong } from './gas-days.ts';
import { heatingBestSource } from './heating-source.ts';
import { heatingTime } from './heating-time.ts';
import { hotWaterTime } from './hot-water-time.ts';
import { loadHowMuch } from './load-left.ts';
import { towingNoseweight } from './noseweight.ts';
import { runTogether } from './run-together.ts';
import { showerLength } from './shower-length.ts';
import { solarKeepUp } from './solar-keep-up.ts';
import { toiletCapacity } from './toilet-days.ts';
import { waterHowMuch } from './water-use.ts';
import { whatCanIRun } from './what-can-i-run.ts';

/** Every sum the bot can do. Adding one is a file and a line here. */
export const CALCULATORS: readonly Calculator[] = [
  chockHeight,
  whatCanIRun,
  runTogether,
  batteryDays,
  solarKeepUp,
  breathingMachine,
  gasHowLong,
  butaneCold,
  waterHowMuch,
  toiletCapacity,
  heatingBestSource,
  heatingTime,
  hotWaterTime,
  showerLength,
  towingNoseweight,
  towingCarMatch,
  loadHowMuch,
];

const byTopic: ReadonlyMap<TopicId, Calculator> = new Map(CALCULATORS.map((each) => [each.topic, each]));

/** The sum of a topic; null when it is answered otherwise. */
export function calculatorOf(topic: TopicId): Calculator | null {
  return byTopic.get(topic) ?? null;
}

/** Whether a topic is answered by a sum. */
export function isCalculation(topic: TopicId): boolean {
  return byTopic.has(topic);
}
