/*
 * Letters of other alphabets that pass for Latin ones, by the Latin letter: from Unicode TR39's confusables table,
 * cut to letters of the alphabets phones offer. Upper and lower case differ on purpose: Greek H is an h, Greek eta an n.
 */
const LOOK_ALIKES: Readonly<Record<string, string>> = {
  a: 'ɑΑαАаᎪꓮ',
  b: 'ƀƂƃƄɓΒБВЬѢѣҌҍᏏᏴꓐꞴ',
  c: 'ȼΣςСсҪҫᏟᴄⲤⲥꓚꮯ',
  d: 'ÐðĐđƉƌɖɗԁᎠᏧꓒꓓ',
  e: 'ɆɇΕЕеҽҿᎬꓰꬲ',
  f: 'ƑƒϜքᵮẝꓝꞘꞙꬵ',
  g: 'ƍǤǥɠɡԌցᏀᏳᶃꓖ',
  h: 'ĦħɦΗНнћҢһӇӉհᎻᏂᏲⱧⲎꓧꚕ',
  i: 'ıɨɩɪΙιІіӀӏᎥᵻᵼꙇꭵ',
  j: 'ɈɉͿϳЈјᎫꓙꞲ',
  k: 'ƙΚКҚҞᏦⱩⲔꓗꝀ',
  l: 'ŁłƖƗƚǀɫɭᏞⲒⳐꓡꓲ',
  m: 'ɱΜϺМӍᎷᵯⲘꓟ',
  n: 'ƝƞɳΝηոռᵰⲚꓠ',
  o: 'ØøƟɵΘΟθοσОоѲѳӨөՕօᎾᏫᴏᴑⲞⲟꓳꝊꝋꬽꬾꭴꮎꮻ',
  p: 'ƥΡρРрᏢᵽⲢⲣꓑ',
  q: 'ʠԛգզ',
  r: 'ƦɍɼɽгғᎡᏒᴦᵲⲅꓣꭇꭈꮁ',
  s: 'ƽʂЅѕՏᏕᏚᵴꓢꜱꮪ',
  t: 'ŦŧƭƮȾΤТҬᎢᵵⲦꓔ',
  u: 'ɄʋυՍսᏌᴜᵾꓴꞟꭎꭒꮜ',
  v: 'νѴѵᏙᴠꓦꮩ',
  w: 'ɯѡѽԜԝաᎳᏔᴡꓪꝡꮃ',
  x: 'ΧХхҲⲬꓫꞳ',
  y: 'ƴɎɏɣʏΥγУуҮүҰұᎩᎽᶌỿⲨꓬꭚ',
  z: 'ƵƶȤȥʐΖᏃᴢᵶꓜꮓ',
};

const latin = new Map<string, string>([
  ['ß', 'ss'],
  ['æ', 'ae'],
  ['Æ', 'ae'],
  ['œ', 'oe'],
  ['Œ', 'oe'],
]);
for (const [letter, alike] of Object.entries(LOOK_ALIKES)) for (const each of alike) latin.set(each, letter);

const MARKS = /\p{M}+/gu;
/** What prints nothing: zero-width spaces and joiners, soft hyphens, direction marks, fillers. */
const UNSEEN = /[\p{Cf}\u115f\u1160\u3164\uffa0]+/gu;
const APOSTROPHES = /[\u2018\u2019\u201b\u02bc\u00b4`\u2032]/g;
const FOREIGN_LETTER = /\P{ASCII}/gu;
const PLAIN = /^[\t\n\r -~]*$/;

/**
 * One spelling for what looks the same to a reader: compatibility forms joined, unseen characters and accents taken
 * off, letters of other alphabets that look Latin made Latin, lower case. Picture signs stay.
 *
 * @example foldText('ѕmеll of gаs') // 'smell of gas', though three letters were Cyrillic
 */
export function foldText(text: string): string {
  if (PLAIN.test(text)) return text.toLowerCase().replace(APOSTROPHES, "'");
  return text
    .normalize('NFKC')
    .replace(UNSEEN, '')
    .normalize('NFD')
    .replace(MARKS, '')
    .replace(APOSTROPHES, "'")
    .replace(FOREIGN_LETTER, (letter) => latin.get(letter) ?? letter)
    .toLowerCase();
}
