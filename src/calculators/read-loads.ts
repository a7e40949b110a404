import type { InputValue, Reader, Reading } from './input-spec.ts';
import { type Load, loadText, parseLoads } from './kept.ts';
import type { Mention } from './mentions.ts';
import type { CalculatorContext } from './types.ts';

export function readLoads(known: (reading: Reading) => readonly Mention[]): Reader {
  return (reading, spec) => {
    const mentions = known(reading);
    const before = parseLoads(reading.previous?.[spec.name]);
    const answer = plateAnswer(reading, before);
    if (answer !== null) return answer;
    const off = new Set(
      mentions.filter((mention) => mention.off || mention.onGas).map((mention) => mention.appliance.key),
    );
    const on = mentions
      .filter((mention) => !mention.off && !mention.onGas)
      .map((mention) => loadOf(mention, reading.context));
    const all = alone(on);
    if (all.length === 0 && off.size === 0) return stepAnswer(reading, before);
    const fresh =
      before.length > 0 &&
      // 'What if the heating is on 1' changes what was there.
      !all.every((load) => before.some((other) => other.key === load.key)) &&
      !/\b(and|too|also|plus|as well|with|without|add|another|off|instead|on)\b/.test(reading.text) &&
      reading.asked === null;
    const kept = fresh
      ? []
      : before.filter((load) => !off.has(load.key) && !all.some((other) => other.key === load.key));
    return [...kept, ...all].map(loadText);
  };
}

/** A kettle of the hirer's own is one kettle, not two: 'our own kettle from home' names both. */
function alone(loads: readonly Load[]): readonly Load[] {
  const own = new Set(loads.map((load) => load.key));
  return loads.filter(
    (load) =>
      !(load.key === 'kettle' && own.has('house-kettle')) && !(load.key === 'cpap' && own.has('cpap-humidifier')),
  );
}

/** The reply to 'how many watts is it?' goes to the load without watts. */
function plateAnswer(reading: Reading, before: readonly Load[]): InputValue | null {
  if (reading.asked !== 'watts') return null;
  const open = before.find((load) => load.watts === null);
  if (open === undefined) return null;
  if (open.key === 'heating' && /\bgas\b/.test(reading.text))
    return before.filter((load) => load !== open).map(loadText);
  const said =
    reading.counted.quantities.find((each) => each.unit === 'watts') ??
    reading.counted.quantities.find((each) => each.unit === 'bare');
  const word = /\b(full|max|high|highest|top)\b/.test(reading.text)
    ? 'high'
    : /\b(low|lowest|min)\b/.test(reading.text)
      ? 'low'
      : null;
  if (said === undefined && word === null) return null;
  const watts = open.key === 'heating' ? stepWatts(said?.high ?? word, reading.context) : (said?.high ?? null);
  return before.map((load) => loadText(load === open ? { ...load, watts: watts ?? said?.high ?? null } : load));
}

/** 'And on 1?' after a sum with the heating on 2. */
function stepAnswer(reading: Reading, before: readonly Load[]): InputValue | null {
  if (!before.some((load) => load.key === 'heating')) return null;
  const only = reading.counted.quantities[0];
  if (reading.counted.quantities.length !== 1 || only === undefined || (only.unit !== 'bare' && only.unit !== 'watts'))
    return null;
  const watts = stepWatts(only.high, reading.context);
  if (watts === null || (only.unit === 'bare' && only.high > 3)) return null;
  return before.map((load) => loadText(load.key === 'heating' ? { ...load, watts } : load));
}

function loadOf(mention: Mention, context: CalculatorContext): Load {
  const { appliance, count, hours } = mention;
  return { key: appliance.key, name: appliance.name, watts: wattsOf(mention, context), count, hours };
}

/** Watts from the mains of a microwave sold by the `outputW` that it puts into the food. */
export function microwaveInputW(outputW: number, outputShare: number): number {
  return outputW / outputShare;
}

function wattsOf(mention: Mention, context: CalculatorContext): number | null {
  const { appliance } = mention;
  if (appliance.key === 'heating' && context.figures.battery.loadsW['heating'] !== appliance.watts) {
    if (mention.watts !== null) return stepWatts(mention.watts, context) ?? mention.watts;
    if (mention.step !== null) return stepWatts(mention.step, context);
    const steps = context.figures.mains.heatingStepsW;
    return steps.length === 1 ? (steps[0] ?? null) : null;
  }
  if (
    mention.watts !== null &&
    appliance.key === 'microwave' &&
    mention.watts <= context.constants.microwave.mostOutputW &&
    mention.watts > 0
  ) {
    return appliance.watts ?? microwaveInputW(mention.watts, context.constants.microwave.outputShare);
  }
  return mention.watts ?? appliance.watts;
}

/** A step as said, in watts: 2, 2000 and 'high' for 2 kW; 2 for the second of 900 and 1,800 W. Null when the van has no such step. */
function stepWatts(step: number | 'low' | 'middle' | 'high' | null, context: CalculatorContext): number | null {
  const steps = context.figures.mains.heatingStepsW;
  if (step === null || steps.length === 0) return null;
  if (step === 'low') return steps[0] ?? null;
  if (step === 'high') return steps.at(-1) ?? null;
  if (step === 'middle') return steps[Math.floor((steps.length - 1) / 2)] ?? null;
  if (step < 0) return step;
  const watts = step < 100 ? step * 1000 : step;
  const near = [...steps].sort((a, b) => Math.abs(a - watts) - Math.abs(b - watts))[0];
  if (near !== undefined && Math.abs(near - watts) <= near * 0.15) return near;
  if (step < 100) return steps[step - 1] ?? null;
  return null;
}
