/*
 * Sayings of hirers, written as the plain words that the tables of states, shapes and amounts know: typing on a phone,
 * dialect, and English as a second language first, then figures of speech. Applied before a reply is read, in order.
 */

const SAYINGS: readonly (readonly [RegExp, string])[] = [
  // Typed or said another way.
  [/\bno\.? ?(?=\d)/gi, 'number '],
  [/\blite(s?)\b/gi, 'light$1'],
  [/\bnite\b/gi, 'night'],
  [/\bdoon\b/gi, 'down'],
  [/\boot\b/gi, 'out'],
  [/\baff\b/gi, 'off'],
  [/\bdeid\b/gi, 'dead'],
  [/\b(?:ain'?t|aint) (?=got|no\b)/gi, 'has not '],
  [/(?<=\w )'?(?:un|yin)\b/gi, 'one'],
  [/'em\b|\bem\b/gi, 'them'],
  [/(?<=\w )n(?= \w)/gi, 'and'],
  [/(?<=\w ?)[+&](?= ?\w)/g, ' and '],
  [/\br(?= )/gi, 'are'],
  [/\bowt\b/gi, 'anything'],
  [/\bnowt\b|\bbugger all\b|\bsod all\b|\bzip\b|\bzilch\b|\bnada\b|\bnichts\b|\brien\b/gi, 'nothing'],
  [/\bsummat\b/gi, 'something'],
  [/\bnobbut\b/gi, 'only'],
  [/\bnae\b/gi, 'no'],
  [/\b(?:nay|nein|non|nee)\b/gi, 'no'],
  [/\b(?:aye|ja|oui|jep|hai|tak)\b/gi, 'yes'],
  [/\bmebbe\b/gi, 'maybe'],
  [/\bmins?\b/gi, 'minutes'],
  [/\bsecs?\b/gi, 'seconds'],
  [/\belec\b/gi, 'electric'],
  [/\b(?:batt|bat)\b/gi, 'battery'],
  [/\bkinda\b|\bsort of\b|\bkind of\b/gi, ''],
  // As a second language has it.
  [/\b(?:current|corrente|strom|electricity)\b/gi, 'power'],
  [/\b(?:in|on|at) (?:the )?(?:high|upper|top)(?: position)?\b|\bpositions? (?:is |are )?(?:high|up)\b/gi, 'up'],
  [/\b(?:in|on|at) (?:the )?(?:low|lower|bottom)(?: position)\b|\bpositions? (?:is |are )?(?:low|down)\b/gi, 'down'],
  [/\b(is|are|its|it's|completely|totally|fully|already|was) close\b/gi, '$1 closed'],
  [/\bnot close (?:good|well|right)\b/gi, 'not closed'],
  [/\b(?:is|it is|it's) (?:written|marked)\b/gi, 'it says'],
  [/\b(?:don'?t|doesn'?t|do not|does not|no|not) (?:function|functions|functioning|functional)\b/gi, 'does not work'],
  [/\b(?:function|functions|functioning)\b/gi, 'works'],
  [/\b(?:the )?(?:same (?:way|direction)|in line|parallel) (?:as|with|to) (?:the )?pipes?\b/gi, 'along'],
  // Figures of speech; what a thing is likened to says no more than the thing itself.
  [
    /\b(?:bone|stone|pitch|rock|ice|dead(?= (?:silent|quiet|flat|cold|dry|slow|level)))[ -](?=dry|dead|cold|dark|black|solid|hard|silent|quiet|flat|slow|level)/gi,
    '',
  ],
  [
    /\b(?:weighs?|weighing) (?:a ton(?:ne)?|loads|a lot|plenty)\b|\bton(?:ne)? weight\b|\b(?:weighs?|weight) much\b/gi,
    'heavy',
  ],
  [
    /\b(?:can'?t|cannot|can not|can (?:barely|hardly)|could (?:barely|hardly)|struggled? to) (?:even )?(?:lift|shift|pick up|carry) (?:it|them|that)\b/gi,
    'heavy',
  ],
  [
    /\b(?:light as a feather|feather ?light|weighs? (?:nothing|next to nothing|hardly anything|very little|not much)|no weight (?:in it|at all)|(?:lift|pick|carry)\w* (?:it|them|that)(?: up)? (?:easily|easy|no bother|wi(?:th)? (?:(?:one|a|1|my|just|little) )*(?:hand|finger|pinky)))\b/gi,
    'empty',
  ],
  [
    /\b(?:up to the (?:neck|top|brim)|to the (?:brim|top|rim)|brim ?full|over ?flowing|chock?a(?:block)?|chock[ -]a[ -]block|brimming|maxed? ?out|full up)\b/gi,
    'full',
  ],
  [
    /\b(?:not (?:much|a lot|very much) left|nearly (?:out|gone|empty)|almost (?:out|gone|empty)|(?:only |just )?(?:a )?(?:little|tiny bit|drop|dribble)(?: of)? water|running low|on its last legs|dregs)\b/gi,
    'low',
  ],
  [
    /\b(?:all )?in one piece\b|\bnot a mark on (?:it|them)\b|(?<=(?:is|are|still|looks|strip|wire|all) )whole\b|\bunbroken\b/gi,
    'intact',
  ],
  [
    /\b(?:in the green|tickety[ -]?boo|hunky[ -]?dory|champion|grand|reet|mint|spot on|as it should(?: be)?|no (?:bother|issues?|damage|faults?)|a treat|shipshape|nothing wrong(?: with (?:it|them|that))?)\b/gi,
    'fine',
  ],
  [
    /\b(?:knackered|bust(?:ed)?|buggered|kaput|goosed|banjaxed|broke|in bits|in two|shattered|done for|had it|split|snapped)\b/gi,
    'broken',
  ],
  [
    /\b(?:(?:a )?bit|gone|all|turned) (?:green|furry|rusty|mucky|manky|grubby)\b|\b(?:mucky|manky|minging|filthy|grubby|clarty)\b/gi,
    'dirty',
  ],
  [/\b(?:sopping|wringing|sodden|drookit|dripping wet|wet through|waterlogged|saturated)\b/gi, 'wet'],
  [
    /\b(?:chucking|tipping|bucketing|pouring|lashing|hammering|peeing|pissing|siling|hoying|stotting) (?:it )?(?:down|of rain|with rain|rain)\b|\bpouring\b|\bcats and dogs\b/gi,
    'raining',
  ],
  [/\b(screen|display|panel|clock) (?:is |has gone |gone |all )*black\b/gi, '$1 dark'],
  [/\bclean (?=through|off|across)/gi, ''],
  [/\b(\w+) neither$/gi, '$1 dead'],
  [/\b(?:dribble|drip|trickling)\b/gi, 'trickle'],
  [/\b(?:swapped|swopped|replaced)\b/gi, 'changed'],
  [/\bevery (?:60 seconds|minute)\b/gi, 'one a minute'],
  [/\b(?:wild camping|off[ -]?grid|in a field)\b/gi, 'off hook-up'],
  [/\b(?:all|the whole|through the) night\b|\bovernight\b/gi, '8 hours'],
  [/\b(?:clean|dry|clear) as a (?:whistle|bone|bell)\b|\bspotless\b/gi, 'clean'],
  [/\b(?:maybe|perhaps|probably|roughly) (?=\d|half|ten|one|two|three|five)/gi, ''],
  [/\bthe (?:two|three|four|lot|pair|both) of them\b|\b(?:pair|lot) of them\b/gi, 'all'],
  [/\b(?:crammed|rammed|stuffed|jam[- ]?packed)(?: full)?\b/gi, 'packed tight'],
  [/\b(?:splutter|sputter|gurgl|cough)(?:s|es|ing)?\b/gi, 'spit'],
  [/\b(?:telly|tele)\b/gi, 'TV'],
  [/\bfired? up\b|\bsprang to life\b|\bburst into life\b/gi, 'works'],
  [/\bmakes? no (?:odds|difference|odd)\b/gi, 'no difference'],
  [
    / (?<!same )(?:as|like) (?!(?:well|before|soon|far|it|if|this|that|yours?|theirs|ours|mine|new|now|next|usual|ever|always|normal|he|she|they|we|you|i)\b)(?:a |an |the )?(?:old |bloody |wet |good )*\w+(?=\W*$| (?:still|now|yes|no)\W*$)/gi,
    '',
  ],
];

export function inPlainWords(text: string): string {
  return SAYINGS.reduce((said, [saying, plain]) => said.replace(saying, plain), text);
}
