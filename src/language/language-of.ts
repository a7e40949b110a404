import { normalForm } from './normal-form.ts';
import { TONGUES } from './tongues.ts';

/** Finds the language of a text: a BCP 47 code, 'en' when it is English or nothing tells. */
export type LanguageReader = (text: string) => string;

const SMOOTHING = 0.3;
/** As if there were this many different letter groups. */
const GROUPS = 20_000;
/** A language's own small words say more than letters do. */
const WORD_GAIN = 2.5;
/** Another language must beat English by this much a word, so that slips and slang stay English. */
const LEAD = 1.2;
/** Shorter texts must hold a word known to be the language's own: letters alone tell too little. */
const ENOUGH = 4;
/** Of the words, at most this share may be English. */
const MOST_ENGLISH = 0.5;

/** Of the languages told apart, worked out once. */
let profiles: Profiles | null = null;

/**
 * Tells English from the eight languages the firm can reply in, by letter groups of one to three and by small words.
 *
 * @param isEnglish Whether a word in normal form is one of English, or of the firm's own vocabulary.
 */
export function createLanguageReader(isEnglish: (word: string) => boolean): LanguageReader {
  profiles ??= profilesOf(TONGUES);
  const { codes, own, gains } = profiles;
  const english = codes.indexOf('en');
  const shared = (word: string) => own.some((words, code) => code !== english && words.has(word));
  return (text) => {
    const words = wordsOf(text);
    if (words.length < 2) return 'en';
    const foreign = words.filter((word) => !isEnglish(normalForm(word)));
    // 'die', 'in', 'man' are words of English and of others: they tell nothing.
    const plain = words.filter((word) => !foreign.includes(word) && !shared(word)).length;
    if (foreign.length === 0 || plain > MOST_ENGLISH * (plain + foreign.length)) return 'en';
    const scores = new Float64Array(codes.length);
    for (const word of words) {
      for (const gram of gramsOf(word)) {
        const gain = gains(gram);
        for (let code = 0; code < scores.length; code++)
          scores[code] = (scores[code] as number) + (gain[code] as number);
      }
      own.forEach((known, code) => {
        if (known.has(word)) scores[code] = (scores[code] as number) + WORD_GAIN;
      });
    }
    scores[english] = (scores[english] as number) + LEAD * words.length;
    const best = scores.indexOf(Math.max(...scores));
    const surely = foreign.some((word) => own[best]?.has(word));
    return words.length >= ENOUGH || surely ? (codes[best] as string) : 'en';
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

type Profiles = {
  readonly codes: readonly string[];
  /** The words of each language's text. */
  readonly own: readonly ReadonlySet<string>[];
  /** What a letter group adds to the score of each language: a third of its logarithm, as every letter is in three groups. */
  readonly gains: (gram: string) => Float64Array;
};

function profilesOf(tongues: Readonly<Record<string, string>>): Profiles {
  const codes = Object.keys(tongues);
  const texts = Object.values(tongues).map(wordsOf);
  const counts = new Map<string, Float64Array>();
  const totals = new Float64Array(codes.length);
  texts.forEach((words, code) => {
    for (const gram of words.flatMap(gramsOf)) {
      const count = counts.get(gram) ?? new Float64Array(codes.length);
      counts.set(gram, count);
      count[code] = (count[code] as number) + 1;
      totals[code] = (totals[code] as number) + 1;
    }
  });
  const gainOf = (count: number, code: number) =>
    Math.log((count + SMOOTHING) / ((totals[code] as number) + SMOOTHING * GROUPS)) / 3;
  const unseen = totals.map((_, code) => gainOf(0, code));
  const known = new Map([...counts].map(([gram, count]) => [gram, count.map(gainOf)] as const));
  return { codes, own: texts.map((words) => new Set(words)), gains: (gram) => known.get(gram) ?? unseen };
}
