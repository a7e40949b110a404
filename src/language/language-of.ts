import { normalForm } from './normal-form.ts';
import { TONGUES } from './tongues.ts';

/** Finds the language of a text: a BCP 47 code, 'en' when it is English or nothing tells. */
export type LanguageReader = (text: string) => string;

type Profile = {
  readonly grams: ReadonlyMap<string, number>;
  readonly total: number;
  readonly words: ReadonlySet<string>;
};

const SMOOTHING = 0.3;
/** A language's own small words say more than letters do. */
const WORD_GAIN = 2.5;
/** Another language must beat English by this much a word, so that slips and slang stay English. */
const LEAD = 1.2;
/** Shorter texts must hold a word known to be the language's own: letters alone tell too little. */
const ENOUGH = 4;
/** Of the words, at most this share may be English. */
const MOST_ENGLISH = 0.5;

/**
 * Tells English from the eight languages the firm can reply in, by letter groups of one to three and by small words.
 *
 * @param isEnglish Whether a word in normal form is one of English, or of the firm's own vocabulary.
 */
export function createLanguageReader(isEnglish: (word: string) => boolean): LanguageReader {
  const profiles = new Map(Object.entries(TONGUES).map(([code, text]) => [code, profileOf(text)]));
  const shared = (word: string) => [...profiles].some(([code, { words }]) => code !== 'en' && words.has(word));
  return (text) => {
    const words = wordsOf(text);
    if (words.length < 2) return 'en';
    // 'die', 'in', 'man' are words of English and of others: they tell nothing.
    const english = words.filter((word) => isEnglish(normalForm(word)) && !shared(word)).length;
    const foreign = words.filter((word) => !isEnglish(normalForm(word))).length;
    if (foreign === 0 || english > MOST_ENGLISH * (english + foreign)) return 'en';
    let best = 'en';
    let bestScore = -Infinity;
    for (const [code, profile] of profiles) {
      const score = scoreOf(words, profile) + (code === 'en' ? LEAD * words.length : 0);
      if (score > bestScore) {
        best = code;
        bestScore = score;
      }
    }
    const surely = words.some((word) => profiles.get(best)?.words.has(word) && !isEnglish(normalForm(word)));
    return words.length >= ENOUGH || surely ? best : 'en';
  };
}

function wordsOf(text: string): readonly string[] {
  return (
    text
      .normalize('NFC')
      .toLowerCase()
      .replace(/[\u2018\u2019`]/g, "'")
      .match(/[\p{L}\p{M}]+(?:'[\p{L}\p{M}]+)*'?/gu) ?? []
  );
}

function gramsOf(word: string): readonly string[] {
  const whole = `^${word}$`;
  const grams: string[] = [];
  for (let n = 1; n <= 3; n++) for (let at = 0; at + n <= whole.length; at++) grams.push(whole.slice(at, at + n));
  return grams;
}

function profileOf(text: string): Profile {
  const grams = new Map<string, number>();
  let total = 0;
  const words = wordsOf(text);
  for (const gram of words.flatMap(gramsOf)) {
    grams.set(gram, (grams.get(gram) ?? 0) + 1);
    total++;
  }
  return { grams, total, words: new Set(words) };
}

function scoreOf(words: readonly string[], { grams, total, words: known }: Profile): number {
  let score = 0;
  for (const word of words) {
    const all = gramsOf(word);
    for (const gram of all) score += Math.log(((grams.get(gram) ?? 0) + SMOOTHING) / (total + SMOOTHING * 20_000)) / 3;
    if (known.has(word)) score += WORD_GAIN;
  }
  return score;
}
