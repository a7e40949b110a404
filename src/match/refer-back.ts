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
  /** Says less than a whole question: 'and on gas?', 'where is that'. */
  | { readonly kind: 'follows'; readonly text: string }
  /** Takes back what was asked: 'sorry, I meant the fridge'. `text` is what is meant. */
  | { readonly kind: 'corrects'; readonly text: string };

const SHORT = 9;

/** Reads whether a message leans on the one before it. Knows nothing of topics. */
export function readReference(text: string): Reference {
  const form = normalForm(text).trim();
  const corrected = form.match(CORRECTION) ?? form.match(SORRY);
  if (corrected !== null) {
    const meant = form.slice(corrected[0].length).replace(NOT_THIS, '').trim();
    if (meant !== '') return { kind: 'corrects', text: meant };
  }
  const words = form.match(/[\p{L}\p{N}']+/gu)?.length ?? 0;
  if (words > 2 * SHORT) return { kind: 'none' };
  const leans = OPENING.test(form) || (words <= SHORT && POINTING.test(form)) || words <= 3;
  return leans ? { kind: 'follows', text } : { kind: 'none' };
}
