const MARKS = /\p{M}+/gu;
const APOSTROPHES = /[\u2018\u2019\u201b\u02bc\u00b4`\u2032]/g;

/**
 * One spelling for what looks the same on a phone: compatibility forms joined (NFKC), lower case, accents taken
 * off, every apostrophe the plain one.
 *
 * @example normalForm('Gasﬂasche, “CAN’T” Kühlschrank') // 'gasflasche, “can\'t” kuhlschrank'
 */
export function normalForm(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(APOSTROPHES, "'")
    .normalize('NFD')
    .replace(MARKS, '')
    .normalize('NFC');
}
