import type { Plainly } from './calculator.ts';
import type { Reading } from './input-spec.ts';
import { mainsAppliances } from './lexicon.ts';
import { type Mention, mentionsIn } from './mentions.ts';
import { readAmps } from './read-numbers.ts';
import { isBackground } from './supply.ts';

/* What several sums need to tell whether a text asks plainly for them. */

/** A question or a wish to know, however it is put. */
export const ASKS =
  /\?|\b(can|could|may|might|is|isn't|are|am|will|would|won't|shall|should|does|do|ok|okay|alright|right|enough|possible|allowed|too much|cope|handle|what|which|how)\b/;
/** Something has already happened: a fault, not a sum. */
export const TROUBLE =
  /\b(trips|tripped|tripping|keeps|blew|blown|went (off|out)|gone (off|out)|goes off|all off|is off now|doesn't|doesnt|does not|didn't|isn't working|not working|stopped|won't|wont|broken|dead|no power|lost power|nothing works?|smell\w*|burn\w*)\b/;
/** How long or how much of a stock: never about what fits together. */
export const STOCK =
  /\bhow (long|soon|often|quick\w*|fast|many (days|nights|hours|minutes|litres))\b|\btime to (heat|warm)\b|\bwhen (will|must|should|do|does|is|can)\b|\blasts?\b(?! (night|week|year|time))/;
const BATTERY =
  /\b(battery|batteries|off ?-? ?grid|(?<!\b(run|runs|running|work|works|use|have) )off (the |our )?hook|no hook|without (a )?hook|inverter|invertor|green (one|socket)|without (any )?(electric\w*|power|mains)|solar|the sun|sunshine|cpap|breathing machine)\b/;
/** 'What can we run', 'how much electric have we got': no thing that is named is in question. */
const WHAT =
  /\b(what|which)('s)?( else| all| other| sort of| kind of| electrical| electric)*( things?| appliances?| kit| stuff| gadgets?| devices?)? (can|could|may|are|am|is|do|does|will|would|should)\b.*\b(run|use|using|plug|plugged|have|put|switch\w*|turn\w*|power|get|gets|manage|draw|safe|allowed)\b|\bhow (much|many) (else|more|spare|room|electric|electricity|electrics|leccy|power|juice|watts|amps|can|could|things|appliances|of)\b|\b(anything|something) else\b|\b(max\w*|simultaneous|available|total) (load|power|draw)\b|\bwhat (runs|works|goes|can run)\b|\b(electric\w*|power|leccy|watts?|amps?) limit\b/;

/** Whether the question is what may be run, not whether something may. */
export function asksWhat({ text }: Reading): boolean {
  return WHAT.test(text);
}

/** Whether the words are about a supply from the post, and not about a stock or the battery. */
export function isOfSupply({ text }: Reading): boolean {
  return !STOCK.test(text) && !BATTERY.test(text) && !TROUBLE.test(text);
}

/** The post's amps as the words say them; null when they do not, 0 where there is no hook-up. */
export function ampsSaid(reading: Reading): number | null {
  return readAmps(reading, { name: 'amps', as: 'amps', known: 'amps', worse: 'low' });
}

/** What is named that draws from the hook-up: no background, nothing off or on gas, each thing once. */
export function mainsNamed({ counted, context }: Reading): readonly Mention[] {
  const mentions = mentionsIn(counted, mainsAppliances(context.figures, context.constants), true);
  return mentions.filter(({ appliance, off, onGas }) => !off && !onGas && !isBackground(appliance.key));
}

/** Both tests on the text. */
export function both(named: RegExp, asks: RegExp, unless?: RegExp): Plainly {
  return ({ text }) => named.test(text) && asks.test(text) && unless?.test(text) !== true;
}
