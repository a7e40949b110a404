/** Begins a question or a wish: what stands behind 'and' is then likely one of its own. */
const ASKS =
  "(?:how|what|where|which|when|why|who|can|could|may|might|must|should|shall|will|would|do|does|did|is|are|am|need|want|tell|wheres|whats|hows|whens|whos|any|anywhere|whereabouts|please)(?:'s|s)?\\b";

/** What says outright that a second thing begins. */
const OUTRIGHT: readonly RegExp[] = [
  new RegExp(
    `[,;.?!]?\\s+(?:and|also|plus|but|then|oh|or)\\s+(?:(?:and|also|then|oh|so|secondly)\\s+)*(?=${ASKS})`,
    'gi',
  ),
  /[,;.?!]?\s+(?:and also|oh and|also|plus|secondly|another thing|one more thing|while i'?m at it|by the way|btw)[,:]?\s+/gi,
  /[.?!,]+\s+(?:and|so)\s+/gi,
  new RegExp(`[?]+\\s+(?=${ASKS})`, 'gi'),
];
/** Where a second thing may begin. */
const PERHAPS: readonly RegExp[] = [/[?!.;\n]+\s+|\s+-\s+|\s*\n\s*/g];
const PREFACE = /^(?:two (?:things|questions)|couple of (?:things|questions)|2 (?:things|questions))[,:.\s-]+/i;
const FEWEST_WORDS = 2;
const MOST_SPLITS = 2;

/** A message cut in two. `outright`: it says itself that a second thing begins. */
export type Split = { readonly halves: readonly [string, string]; readonly outright: boolean };

/** Ways to cut a message in two, likeliest first; both sides have at least two words. */
export function splits(text: string): readonly Split[] {
  const whole = text.replace(PREFACE, '');
  const found: Split[] = [];
  const seen = new Set<string>();
  const cut = (patterns: readonly RegExp[], outright: boolean): void => {
    for (const match of patterns.flatMap((pattern) => [...whole.matchAll(pattern)])) {
      const first = whole.slice(0, match.index).trim();
      const second = whole.slice(match.index + match[0].length).trim();
      if (wordCount(first) < FEWEST_WORDS || wordCount(second) < FEWEST_WORDS || seen.has(first)) continue;
      seen.add(first);
      found.push({ halves: [first, second], outright });
    }
  };
  cut(OUTRIGHT, true);
  cut(PERHAPS, false);
  return found.slice(0, MOST_SPLITS);
}

function wordCount(text: string): number {
  return text.match(/[\p{L}\p{N}']+/gu)?.length ?? 0;
}
