import type { ReadingData } from '../knowledge/safety-schema.ts';
import { foldText } from './fold.ts';
import { listed } from './lexicon.ts';
import { createTongueReader, type TongueReader } from './tongue.ts';
import type { Apostrophes } from './words.ts';

/** One language of the reading. */
export type Tongue = { readonly code: string; readonly reader: TongueReader; readonly apostrophes: Apostrophes };

/** The languages a text may be in, likeliest first; English is always among them. */
export type TonguesOf = (text: string) => readonly [Tongue, ...Tongue[]];

/**
 * Compiles every language, and tells by its commonest words which a text may be in. A foreign language is looked at only
 * when the text has words of it that are not English, so that its danger words do not fire on English ones.
 */
export function createTongues({ tongues, hazards, alike }: ReadingData): TonguesOf {
  const right = new Set(alike.split(/\s+/));
  const spoken = Object.entries(tongues).map(([code, data]) => ({
    common: new Set(listed(data.common)),
    tongue: {
      code,
      apostrophes: code === ENGLISH ? ('written-out' as const) : ('parted' as const),
      reader: createTongueReader(data, hazards, right),
    },
  }));
  const english = spoken.find(({ tongue }) => tongue.code === ENGLISH);
  if (english === undefined) throw new Error('the safety reading has no English');
  const others = spoken.filter((each) => each !== english);
  return (text) => {
    const words = foldText(text).match(/\p{L}+/gu) ?? [];
    const count = (common: ReadonlySet<string>) => words.filter((word) => common.has(word)).length;
    const mine = count(english.common);
    const likely = others
      .map(({ tongue, common }) => ({ tongue, found: count(common) }))
      .filter(({ found }) => found > 0 && found >= mine)
      .sort((a, b) => b.found - a.found)
      .map(({ tongue }) => tongue);
    const [first, second] = likely;
    if (first === undefined) return [english.tongue];
    return second === undefined ? [first, english.tongue] : [first, second, english.tongue];
  };
}

const ENGLISH = 'en';
