import type { ReadingData } from '../knowledge/safety-schema.ts';
import { createLanguageReader } from '../language/language-of.ts';
import { normalForm } from '../language/normal-form.ts';
import { rightWords } from '../language/right-words.ts';
import { createSenses } from './senses.ts';
import { createTongueReader, type TongueReader } from './tongue.ts';
import type { Apostrophes } from './words.ts';

/** One language of the reading. */
export type Tongue = { readonly code: string; readonly reader: TongueReader; readonly apostrophes: Apostrophes };

/** The languages a text may be in, likeliest first; English is always among them. */
export type TonguesOf = (text: string) => readonly [Tongue, ...Tongue[]];

export const ENGLISH = 'en';
/** A cry of so few words, most of them no English, names no language: '¡FUEGO!' is looked up in all. */
const CRY = 3;
const LETTERS = /\p{L}+/gu;

/**
 * Compiles the languages of the reading, each when it is first needed. A foreign language is looked at only when the text
 * is in it, so that its danger words do not fire on English ones.
 *
 * @throws When the data has no English.
 */
export function createTongues({ tongues, hazards, alike, senses }: ReadingData): TonguesOf {
  const more = new Set(alike.split(/\s+/));
  const right = { has: (word: string) => rightWords().has(word) || more.has(word) };
  const compiled = new Map<string, Tongue>();
  const tongueOf = (code: string): Tongue => {
    const known = compiled.get(code);
    if (known !== undefined) return known;
    const data = tongues[code];
    if (data === undefined) throw new Error(`the safety reading has no ${code}`);
    const apostrophes = code === ENGLISH ? 'written-out' : 'parted';
    const tongue: Tongue = {
      code,
      apostrophes,
      reader: createTongueReader(data, hazards, right, createSenses(senses[code] ?? {}, apostrophes)),
    };
    compiled.set(code, tongue);
    return tongue;
  };
  const english = tongueOf(ENGLISH);
  const others = Object.keys(tongues).filter((code) => code !== ENGLISH);
  const isEnglish = (word: string) => right.has(word) || english.reader.meant(word).length > 0;
  const languageOf = createLanguageReader(isEnglish);
  return (text) => {
    const words = text.match(LETTERS) ?? [];
    const foreign = words.filter((word) => !isEnglish(normalForm(word))).length;
    if (foreign === 0) return [english];
    const code = languageOf(text);
    if (code !== ENGLISH && others.includes(code)) return [tongueOf(code), english];
    return words.length <= CRY && 2 * foreign > words.length ? [english, ...others.map(tongueOf)] : [english];
  };
}
