/*
 * Sayings of hirers, written as the plain words that the tables of states and amounts know. Applied before a reply is
 * read, in order.
 */

const SAYINGS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:weighs?|weighing) (?:a ton(?:ne)?|loads|a lot)\b|\bton(?:ne)? weight\b/gi, 'heavy'],
  [/\b(?:light as a feather|weighs? (?:nothing|next to nothing|hardly anything)|no weight in it)\b/gi, 'empty'],
  [/\b(?:up to the (?:neck|top|brim)|to the brim|brim ?full|over ?flowing)\b/gi, 'full'],
  [/\b(?:not (?:much|a lot|very much) left|nearly (?:out|gone|empty)|almost (?:out|gone|empty))\b/gi, 'low'],
  [/\b(?:in one piece|not a mark on (?:it|them)|(?<=(?:is|are|still|looks|strip|wire) )whole)\b/gi, 'intact'],
  [/\b(?:in the green)\b/gi, 'fine'],
  [/\b(?:(?:a )?bit|gone|all|turned) (?:green|furry|rusty)\b/gi, 'dirty'],
  [/\b(screen|display|panel|clock) (?:is |has gone |gone |all )*black\b/gi, '$1 dark'],
  [/\b(\w+) neither$/gi, '$1 dead'],
  [/\b(?:dribble|drip|trickling)\b/gi, 'trickle'],
  [/\b(?:swapped|replaced)\b/gi, 'changed'],
  [/\bevery (?:60 seconds|minute)\b/gi, 'one a minute'],
  [/\b(?:wild camping|off[ -]?grid|in a field)\b/gi, 'off hook-up'],
  [/\b(?:all|the whole|through the) night\b|\bovernight\b/gi, '8 hours'],
  [/\b(?:clean|dry|clear) as a (?:whistle|bone|bell)\b|\bspotless\b/gi, 'clean'],
  [/\b(?:maybe|perhaps|probably|roughly) (?=\d|half|ten|one|two|three|five)/gi, ''],
  [/\bthe (?:two|three|four|lot) of them\b/gi, 'all'],
  [/\b(?:crammed|rammed|stuffed|jam[- ]?packed)(?: full)?\b/gi, 'packed tight'],
  [/\b(?:splutter|sputter|gurgl|cough)(?:s|es|ing)?\b/gi, 'spit'],
];

export function inPlainWords(text: string): string {
  return SAYINGS.reduce((said, [saying, plain]) => said.replace(saying, plain), text);
}
