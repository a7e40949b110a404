const VOWEL = /[aeiouy]/;

/**
 * A word of graph/safety.yaml with its regular English endings: 'smell~' gives smell, smells, smelled, smelling.
 * Without the sign the word alone.
 */
export function withEndings(entry: string): readonly string[] {
  if (!entry.endsWith('~')) return [entry];
  const word = entry.slice(0, -1);
  const stem = word.endsWith('e') ? word.slice(0, -1) : doubled(word);
  const third = /(s|x|z|ch|sh)$/.test(word)
    ? `${word}es`
    : /[^aeiou]y$/.test(word)
      ? `${word.slice(0, -1)}ies`
      : `${word}s`;
  const past = /[^aeiou]y$/.test(word) ? `${word.slice(0, -1)}ied` : `${stem}ed`;
  return [word, third, past, `${stem}ing`];
}

/** 'trip' -> 'tripp': a short word's last consonant is doubled after a single vowel. */
function doubled(word: string): string {
  const [last, middle, first] = [word.at(-1) ?? '', word.at(-2) ?? '', word.at(-3) ?? ''];
  const closed = !VOWEL.test(last) && !/[wx]/.test(last) && VOWEL.test(middle) && !VOWEL.test(first);
  return closed && word.length <= 4 ? word + last : word;
}
