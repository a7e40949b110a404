/*
 * Words that count, with two letters the wrong way round: 'poeple', 'nigths', 'lirtes'. The reading of numbers stands
 * before the speller, so it mends these itself.
 */

const COUNTED =
  'people persons adults children nights hours minutes degrees litres bottles amperes watts weeks cylinder percent kilos'.split(
    ' ',
  );

/** First letter, all letters in order, last letter. */
function keyOf(word: string): string {
  return `${word[0]}${[...word].sort().join('')}${word.at(-1)}`;
}

const byKey: ReadonlyMap<string, string> = new Map(COUNTED.map((word) => [keyOf(word), word]));

/** The counting word that has these letters between the same first and last; else the word itself. */
export function unscrambled(word: string): string {
  return word.length < 5 ? word : (byKey.get(keyOf(word)) ?? word);
}
