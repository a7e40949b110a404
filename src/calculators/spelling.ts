import { editDistance } from '../language/edit-distance.ts';
import { rightWords } from '../language/right-words.ts';
import { createSpeller } from '../language/speller.ts';
import { SAID_NAMES } from './appliance-names.ts';

/*
 * The sums read the words as they were typed, before any speller: 'tosater' left out of a sum would be a wrong figure, not
 * only a message not understood. So what the sums go by is mended here, and nothing else.
 */

const WORDS =
  'long last lasts does will which what when much many often enough together simultaneously without nothing only ' +
  'outside inside outdoors indoors tonight overnight forecast degrees degree minus below freezing frost ' +
  'gas battery batteries solar panel bottle bottles cylinder cylinders butane propane cooking fridge ' +
  'toilet cassette portaloo empty emptying water heating heater warm electric electricity diesel hookup ' +
  'amps watts litres litre minutes minute hours hour nights night days weeks week weekend fortnight percent quarter ' +
  'people persons adults adult children child kids noseweight weight kerb towbar towing ' +
  'ramp ramps level leaning leans tilted slope bubble clothes food bikes bike awning chairs chair luggage ' +
  'heavy overweight allowance shower showers showering barrel humidifier ' +
  'january february march april june july august september october november december';

/** The shortest word that is mended: of fewer letters one slip is too much. */
const SHORTEST = 4;
/** From here on two slips are mended, below it one: 'missus' is no 'minus' and 'Friday' no fridge. */
const LONG = 10;

const counts: ReadonlyMap<string, number> = new Map(
  [...WORDS.split(' '), ...SAID_NAMES.flatMap((name) => name.split(' ').filter((word) => word.length >= SHORTEST))].map(
    (word) => [word, 1],
  ),
);
/** What hirers and the firm say that no list of right words has, and what is written without its apostrophe. */
const OURS = new Set(
  (
    'dunlin wren curlew plover godwit brackenfold hubby telly leccy lecky kilos kilo amper ampers sept degs deg hrs mins kws wats littles littlies cowl friday missus blokes stabiliser manky ' +
    'dont doesnt didnt isnt arent wasnt werent wont cant havent hasnt hadnt couldnt wouldnt shouldnt mustnt neednt ' +
    'whats thats hows wheres whens whos theres heres lets ive weve youve theyve youre theyre were youll well theyll ' +
    'gonna gotta wanna dunno innit aint ppl peeps'
  ).split(' '),
);

const spell = createSpeller({
  counts,
  protectedWords: { has: (word) => OURS.has(word) || rightWords().has(word) },
});

/** The word that was meant, where it is one that the sums go by; else the word itself. */
export function mended(word: string): string {
  if (word.length < SHORTEST || word.includes("'")) return word;
  const meant = spell(word);
  const most = word.length < LONG ? 1 : 2;
  return meant !== null && meant[0] === word[0] && editDistance(word, meant, most) <= most ? meant : word;
}
