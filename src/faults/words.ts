import { stem } from '../language/stems.ts';
import { tokens } from '../language/tokens.ts';

/** Words that carry no content of their own: shared by a question and an answer they show nothing. */
export const COMMON = new Set(
  (
    'a an the is are was were be been being am do does did done has have had having will would can could should may might must ' +
    'it its this that these those there here he she they we you i me my our your their them us one ones some any ' +
    'of in on at to from by with for as up down out off over under into onto about after before than then now just still too also ' +
    'and or but so if when while because what which who where how why yes no not nor never none ok okay please thanks ' +
    'get got go goes going went see look looks looked say says said think seem seems show shows bit very really well much work works working worked more most less ' +
    'van thing things other another same only all both every each first last own'
  ).split(' '),
);

/** The words of a text as they are compared. Slots say nothing. */
export function wordsOf(text: string): string[] {
  return tokens(
    text
      .replace(/\{[^}]*\}/g, ' ')
      .replace(/anything but/gi, 'not')
      .replace(/in line/gi, 'inline')
      .replace(/\br[au]n out\b/gi, 'empty')
      .replace(/hook[ -]up/gi, 'hookup'),
  ).map((token) => token.text);
}

/** The stems that say what a text is about. */
export function contentOf(words: readonly string[]): Set<string> {
  return new Set(words.filter((word) => !COMMON.has(word) && !/^\d/.test(word)).map(stem));
}
