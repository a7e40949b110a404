/** Whose names must not be kept. */
export type Personal = {
  /** As on the booking: 'The Okonkwo-Hale family', 'Ngozi'; and names of staff. */
  readonly names: readonly string[];
  /** Whether a word, in lower case, is a word of the trade: 'will' and 'rose' are names only when written as names. */
  readonly isOrdinary: (word: string) => boolean;
};

const MAIL = /[\w.+-]+@[\w-]+(?:\.[\w-]+)+/g;
const LINK =
  /\b(?:https?:\/\/|www\.)\S+|\b[\w-]+(?:\.[\w-]+)*\.(?:com|org|net|info|uk|eu|de|fr|nl|ie|io|app|me|shop)(?:\/\S*)?\b/gi;
/** Nine digits and more that begin as numbers to call do; readings such as '12.5 13.2 12.8' do not. */
const PHONE = /(?<![\d.])(?:\+|00|\(0|0)\d?[\d\s()./-]{7,}\d/g;
const LONG_NUMBER = /\b\d(?:[ -]?\d){9,}\b/g;
const REFERENCE = /\b[A-Z]{2}-\d{3,}\b/gi;
/** British plates since 2001 in any writing; the older forms in capitals only, or 'f6 and' would be one. */
const PLATE = /\b[a-z]{2}\d{2}\s?[a-z]{3}\b/gi;
const OLD_PLATE = /\b(?:[A-Z]\d{1,3} ?[A-Z]{3}|[A-Z]{3} ?\d{1,3}[A-Z])\b/g;
const POSTCODE = /\b[A-Z]{1,2}\d[A-Z\d]? \d[A-Z]{2}\b/g;
const INTRODUCED =
  /\b((?:my name is|my name's|this is|i am|i'm|im|it's|its|regards,?|love,?|cheers,?|thanks,?)\s+)(\p{Lu}\p{Ll}+)\b/gu;
/** Parts of how a party is written that name nobody. */
const NO_NAMES = new Set(['the', 'family', 'and', 'party', 'mr', 'mrs', 'ms', 'dr', 'miss', 'group', 'couple']);
const SHORTEST_NAME = 2;

/** What stands in the place of what was taken out. */
export const TAKEN_OUT = /\[(?:mail|link|phone|number|reference|plate|postcode|name)\]/g;

/**
 * A text without personal details: names of the booking and of staff, telephone numbers, mail addresses, links, number
 * plates, references, postcodes. What is taken out leaves its kind in brackets, so that the sentence can still be read.
 */
export function stripped(text: string, { names, isOrdinary }: Personal): string {
  const plain = text
    .replace(MAIL, '[mail]')
    .replace(LINK, '[link]')
    .replace(PHONE, '[phone]')
    .replace(LONG_NUMBER, '[number]')
    .replace(REFERENCE, '[reference]')
    .replace(POSTCODE, '[postcode]')
    .replace(PLATE, '[plate]')
    .replace(OLD_PLATE, '[plate]')
    .replace(INTRODUCED, (whole, lead: string, name: string) =>
      isOrdinary(name.toLowerCase()) ? whole : `${lead}[name]`,
    );
  const words = new Set(names.flatMap(nameWords));
  return plain.replace(/(?<!\[)\p{L}[\p{L}'’]*/gu, (word) => {
    const [name = '', possessive = ''] = /^(.*?)(['’]s)?$/.exec(word)?.slice(1) ?? [];
    if (!words.has(name.toLowerCase())) return word;
    const written = /^\p{Lu}/u.test(name);
    return written || !isOrdinary(name.toLowerCase()) ? `[name]${possessive}` : word;
  });
}

/** A text as it may stand in the graph: without the brackets that {@link stripped} leaves. */
export function withoutBrackets(text: string): string {
  return text
    .replace(TAKEN_OUT, ' ')
    .replace(/\s+/g, ' ')
    .replace(/ ([,.?!])/g, '$1')
    .trim();
}

function nameWords(name: string): string[] {
  return name
    .toLowerCase()
    .split(/[^\p{L}'’]+/u)
    .filter((word) => word.length >= SHORTEST_NAME && !NO_NAMES.has(word));
}
