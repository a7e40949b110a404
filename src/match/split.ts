/** Begins a question or a wish: what stands behind 'and' is then likely one of its own. */
const ASKS =
  "(?:how|what|where|which|when|why|who|can|could|may|might|must|should|shall|will|would|do|does|did|is|are|am|need|want|tell|wheres|whats|hows|whens|whos|any|anywhere|whereabouts|please)(?:'s|s)?\\b";

const BREAKS: readonly RegExp[] = [
  // Ends of sentences, and what stands for one on a phone.
  /[?!.;\n]+\s+|\s+-\s+|\s*\n\s*/g,
  new RegExp(`[,;]?\\s+(?:and|also|plus|but|then|oh|or)\\s+(?:(?:and|also|then|oh|so|secondly)\\s+)*(?=${ASKS})`, 'gi'),
  new RegExp(`,\\s+(?=${ASKS})`, 'gi'),
  // 'also', 'oh and' and the like begin a second thing whatever follows.
  /[,;.]?\s+(?:and also|oh and|also|plus|secondly|another thing|one more thing|while i'?m at it|by the way|btw)[,:]?\s+/gi,
  /,\s+and\s+/gi,
  /\s+and\s+/gi,
];
const PREFACE = /^(?:two (?:things|questions)|couple of (?:things|questions)|2 (?:things|questions))[,:.\s-]+/i;
const FEWEST_WORDS = 2;
const MOST_SPLITS = 6;

/** Every way to cut a message into two, likeliest first; both sides have at least two words. */
export function splits(text: string): readonly (readonly [string, string])[] {
  const whole = text.replace(PREFACE, '');
  const found: (readonly [string, string])[] = [];
  const seen = new Set<number>();
  for (const pattern of BREAKS) {
    for (const match of whole.matchAll(pattern)) {
      const end = match.index + match[0].length;
      if (seen.has(end)) continue;
      seen.add(end);
      const first = whole.slice(0, match.index).trim();
      const second = whole.slice(end).trim();
      if (wordCount(first) >= FEWEST_WORDS && wordCount(second) >= FEWEST_WORDS) found.push([first, second]);
    }
  }
  return found.slice(0, MOST_SPLITS);
}

function wordCount(text: string): number {
  return text.match(/[\p{L}\p{N}']+/gu)?.length ?? 0;
}
