import { normalForm } from '../language/normal-form.ts';

const CORRECTION =
  /^(?:(?:oh|ah|oops|whoops|no|nope|sorry|wait|hang on|apologies|my mistake|my bad|er|um|actually)[,.!\s]+)*(?:i (?:meant|mean)|meant|what i meant (?:was|is)|should have said|i should say|rather|make that)\b[,:\s]*/;
const SORRY =
  /^(?:(?:oh|oops|whoops|no|nope|sorry|wait|actually|apologies)[,.!\s]+)+(?=(?:not )?(?:the|on|in|for|with|my|our|it's|its)\b)/;
const NOT_THIS = /[,\s]+(?:and )?not (?:the|that|on|in|for|with|a|my|our)\b[^,.?!]*/;
const OPENING =
  /^(?:and|but|so|or|then|also|what about|how about|what if|and what|same for|ok(?:ay)?|right|in that case|yes but|yeah but)\b/;
const POINTING =
  /\b(?:it|its|it's|that|that's|thats|this|those|these|them|they|there|one|ones|he|she|same|both|other|another|opposite|instead|either|again|still|now|first|then)\b/;

/** What a message says about the one before it. */
export type Reference =
  /** Stands on its own. */
  | { readonly kind: 'none' }
  /** Says less than a whole question: 'and on gas?'. */
  | { readonly kind: 'follows'; readonly text: string }
  /** Names nothing at all: 'where is that', 'how long does it take'. */
  | { readonly kind: 'points'; readonly text: string }
  /** Takes back what was asked: 'sorry, I meant the fridge'. `text` is what is meant. */
  | { readonly kind: 'corrects'; readonly text: string };

/** Words that name nothing: to ask, to point, to do. */
const EMPTY = new Set(
  (
    "and but so or then also ok okay right well yes no oh thanks please where wheres where's whereabouts what whats what's which how hows how's when " +
    "whens why who whos is it its it's are they they're theyre that thats that's this these those them there one ones do does did done doing can could " +
    'should would will must may might i we you me us my our a an the to for of in on at with from about now again still else just normally usually ' +
    'exactly actually supposed meant be been have has had got get gets getting put puts take takes taking go goes going went come comes find found ' +
    'see look need needs use used using make makes work works keep say says said tell know think try tried want long much many often far big size ' +
    'sort kind type time way place side thing things if not dont doesnt wont cant back off out up down first next after before same other another'
  ).split(' '),
);
const SHORT = 9;

/** Reads whether a message leans on the one before it. Knows nothing of topics. */
export function readReference(text: string): Reference {
  const form = normalForm(text).trim();
  const corrected = form.match(CORRECTION) ?? form.match(SORRY);
  if (corrected !== null) {
    const meant = form.slice(corrected[0].length).replace(NOT_THIS, '').trim();
    if (meant !== '') return { kind: 'corrects', text: meant };
  }
  const said = form.match(/[\p{L}\p{N}']+/gu) ?? [];
  const words = said.length;
  if (words > 2 * SHORT) return { kind: 'none' };
  const leans = OPENING.test(form) || (words <= SHORT && POINTING.test(form)) || words <= 3;
  if (!leans) return { kind: 'none' };
  return { kind: said.every((word) => EMPTY.has(word)) ? 'points' : 'follows', text };
}
