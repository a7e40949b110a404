import { type Answer, type Calculator, numberOf } from './calculator.ts';
import { AMPS } from './common-inputs.ts';
import { type Load, parseLoads } from './kept.ts';
import { ampsSaid, asksWhat, isOfSupply } from './plainly.ts';
import { APPLIANCES } from './run-together.ts';
import { drawW, isBackground, limitsOf, loadVerdict, tightest, wattsOf } from './supply.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { figure, listText, wattsText } from './words.ts';

/** How many of the sets are worth telling. */
const MOST_SETS = 4;

const ON_THE_POST =
  /\b(same time|at once|run|runs|running|use|using|plug|plugged|electric\w*|leccy|hook|hookup|ehu|post|pole|amps?|supply|mains|power|watts)\b/;

const RUNS = /\b(same time|at once|run|runs|plug|plugged|leccy|electric\w*|watts|limit)\b/;

export const whatCanIRun: Calculator = {
  topic: 'mains-what-can-i-run',
  plainly: (reading) =>
    asksWhat(reading) &&
    isOfSupply(reading) &&
    ((ampsSaid(reading) ?? 0) !== 0 || (ON_THE_POST.test(reading.text) && RUNS.test(reading.text))),
  inputs: [APPLIANCES, AMPS],
  answer,
};

type Item = { readonly load: Load; readonly label: string; readonly missed: number };

/**
 * The largest useful sets of the van's own things that fit together: none can take one more thing or a higher step.
 * Those that would be missed most come first.
 *
 * @param on What is on already and stays on.
 */
export function largestSets(
  on: readonly Load[],
  amps: number,
  context: CalculatorContext,
): readonly (readonly string[])[] {
  const items = itemsOf(on, context);
  const fits = (set: readonly Item[]) =>
    loadVerdict(
      tightest(limitsOf([...on, ...set.map((item) => item.load)], amps, context.figures, context.constants)).share,
    ) === 'fits';
  const sets: Item[][] = [];
  for (let mask = 1; mask < 2 ** items.length; mask++) {
    const set = items.filter((_, i) => mask & (1 << i));
    if (set.filter((item) => item.load.key === 'heating').length <= 1 && fits(set)) sets.push(set);
  }
  const full = sets.filter(
    (set) => !items.some((item) => !set.includes(item) && sets.some((other) => isMore(other, set, item))),
  );
  const worth = (set: readonly Item[]) => set.reduce((sum, item) => sum + item.missed, 0);
  return full
    .sort((a, b) => worth(b) - worth(a) || a.length - b.length)
    .slice(0, MOST_SETS)
    .map((set) => set.map((item) => item.label));
}

/** `other` is `set` with `item` more, or with `item` as a higher step of the heating. */
function isMore(other: readonly Item[], set: readonly Item[], item: Item): boolean {
  if (!other.includes(item)) return false;
  const rest =
    item.load.key === 'heating'
      ? set.filter((each) => each.load.key !== 'heating' || drawW(each.load) > drawW(item.load))
      : set;
  return other.length === rest.length + 1 && rest.every((each) => other.includes(each));
}

function itemsOf(on: readonly Load[], context: CalculatorContext): readonly Item[] {
  return Object.entries(context.figures.mains.loads).flatMap(([id, load]): Item[] => {
    const key = id.startsWith('heating-') ? 'heating' : id;
    if (isBackground(key) || on.some((other) => other.key === key)) return [];
    const name = key === 'heating' ? `heating ${wattsText(load.watts)}` : load.name.replace(/^low-watt /, '');
    // A higher step of the heating is never missed less than a lower one, or a set with it would come last.
    const missed = key === 'heating' ? 5 + load.watts / 1000 : load.missed;
    return [{ load: { key, name, watts: load.watts, count: 1, hours: null }, label: name, missed }];
  });
}

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { figures, constants } = context;
  const amps = numberOf(inputs, 'amps') ?? 0;
  const on = parseLoads(inputs['appliances']).filter((load) => !isBackground(load.key) && load.watts !== null);
  const onW = on.reduce((sum, load) => sum + drawW(load), 0);
  const postW = wattsOf(amps, constants.volts);
  const availableW = Math.max(0, postW - figures.mains.backgroundW - onW);
  const sets = amps === 0 ? [] : largestSets(on, amps, context);
  const onText = on.length === 0 ? '' : `, with the ${listText(on.map((load) => load.name))} on`;
  return {
    values: { availableW, sets },
    first:
      amps === 0
        ? `Nothing from the mains sockets: there is no hook-up.${figures.mains.inverterW === undefined ? '' : ` The inverter socket gives ${wattsText(figures.mains.inverterW)}.`}`
        : availableW > 0
          ? `You have ${wattsText(availableW)} to spare on ${figure(amps)} amps${onText}.`
          : tooMuchAlready(on, amps, context)
            ? `No: with the ${listText(on.map((load) => load.name))} on it is more than ${figure(amps)} amps carry. ${withoutLine(amps, context)}`
            : `Nothing more fits on ${figure(amps)} amps${onText}.`,
    working:
      amps === 0
        ? ['Lights, pump and USB run on the battery; cook on gas.']
        : [
            `${figure(amps)} A x ${figure(constants.volts)} V = ${wattsText(postW)}, less ${wattsText(figures.mains.backgroundW)} for fridge and charger${onW > 0 ? ` and ${wattsText(onW)} for what is on` : ''}.`,
            sets.length === 0
              ? "None of the van's own large things fits beside that."
              : `Together: ${sets.map((set) => listText(set)).join('; or ')}.`,
            tooLarge(availableW, context),
          ].filter((line) => line !== ''),
    caution: `Add your own things by the watts on their plates${socketsLine(context)}.`,
    bar: {
      title: 'On the post',
      unit: 'W',
      limit: postW,
      segments: [
        { label: 'fridge and charger', amount: figures.mains.backgroundW },
        ...on.map((load) => ({ label: load.name, amount: drawW(load) })),
      ],
    },
  };
}

/** Whether what is on is past a limit before anything is added. */
function tooMuchAlready(on: readonly Load[], amps: number, { figures, constants }: CalculatorContext): boolean {
  return loadVerdict(tightest(limitsOf(on, amps, figures, constants)).share) !== 'fits';
}

function withoutLine(amps: number, { figures, constants }: CalculatorContext): string {
  return `Without it there are ${wattsText(Math.max(0, wattsOf(amps, constants.volts) - figures.mains.backgroundW))} to spare.`;
}

/** What the breaker of the sockets carries. */
function socketsLine({ figures }: CalculatorContext): string {
  const sockets = figures.mains.breakers.find((breaker) => breaker.feeds.includes('sockets'));
  return sockets === undefined ? '' : `; the sockets' breaker in the van carries ${figure(sockets.amps)} A in all`;
}

/** The steps of the heating that this post never carries. */
function tooLarge(availableW: number, context: CalculatorContext): string {
  const steps = context.figures.mains.heatingStepsW.filter((watts) => watts > availableW);
  return steps.length === 0 ? '' : `Too much for it: heating on ${listText(steps.map(wattsText))}.`;
}
