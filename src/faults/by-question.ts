/*
 * Kinds of question that are answered in words of their own: 'all look the same' to 'Is one flatter than the other?'.
 * The first kind that fits and whose words are said decides. `said` is lower case, contractions written out.
 */

type Kind = { readonly asks: RegExp; readonly yes?: RegExp; readonly no?: RegExp };

const KINDS: readonly Kind[] = [
  { asks: /\blevel card off\b/i, yes: /\bnot (?:\w+ )?(?:level|flat)\b/, no: /\b(?:level|flat|spot on)\b/ },
  {
    asks: /\bthan the other\b|\bwider at\b|\bhotter at\b|\banother way than\b/i,
    no: /\b(?:the same|alike|even|equal|identical)\b/,
  },
  {
    asks: /\bdo the other\b|\bdoes something else\b/i,
    yes: /\b(?:all|every ?(?:one|thing)?)(?: of them)? (?:but|except|apart)\b|\b(?:the )?(?:rest|others) (?:are|is|do|work|come)\b/,
  },
  {
    asks: /\bonce only\b|\bonly once\b/i,
    yes: /^(?:just |only )?(?:the )?once\b/,
    no: /\b(?:twice|second|third|fourth|\d(?:nd|rd|th)|several|few|many|times|again|keeps)\b/,
  },
  {
    asks: /\bstops?\b(?! condition)(?!\.)/i,
    no: /\b(?:keeps|carries on|goes on|going on|does not stop|never stops|whatever|regardless|no difference)\b/,
    yes: /\b(?:stops|stopped|goes quiet|went quiet|shuts up)\b/,
  },
  { asks: /\bshort of its\b/i, no: /\b(?:to (?:the|its) (?:stop|end)|all the way|as far as it goes|fully)\b/ },
  {
    asks: /\bstick out\b|\bsticks out\b/i,
    no: /\b(?:flush|level with|tucked|inside)\b/,
    yes: /\b(?:proud|pokes|poking|sticking)\b/,
  },
  {
    asks: /\bpush(?:es)? in\b.*\bfurther\b|\b(?:turn|twist|push)\w* .*further\b/i,
    no: /\b(?:solid|snug|not budge|not move|as far as)\b/,
    yes: /\b(?:budged|moved|gave|went in|another|more turns?)\b/,
  },
  {
    asks: /\b(?:near the floor|low one)\b/i,
    no: /\b(?:ceiling|roof|high|upper|top)\b/,
    yes: /\b(?:floor|bottom|low|lower)\b/,
  },
  {
    asks: /\boff hook-up\b/i,
    yes: /\boff hook ?-?up\b|\b(?:not|never|no) (?:plugged|hook ?-?up|electric)\b|\bunplugged\b/,
    no: /\b(?:plugged in|on hook ?-?up|hooked up|on electric)\b/,
  },
  { asks: /\bstill to be done\b/i, yes: /\b(?:not|never|no)\b/, no: /\b(?:done|did|already)\b/ },
  {
    asks: /\bbelow 0 °C\b/i,
    no: /\babove (?:freezing|zero)\b|\b(?:mild|no frost|not a frost)\b/,
    yes: /\b(?:frost|frosty|frozen|freezing|ice|icy|minus)\b/,
  },
  {
    asks: /\bbelow (?:5|10) °C\b/i,
    yes: /\b(?:frost|frosty|frozen|freezing|ice|icy|minus)\b/,
    no: /\b(?:warm|hot|mild)\b/,
  },
  {
    asks: /\bchanged today\b/i,
    yes: /\b(?:this (?:morning|afternoon|evening)|just (?:now|changed)|an? (?:hour|minute)|hours? ago|earlier)\b/,
    no: /\b(?:yesterday|last|days? ago|days|week|never|not since|before we)\b/,
  },
  {
    asks: /\bover two days since\b/i,
    no: /\b(?:today|this (?:morning|afternoon)|yesterday|last night|just|earlier|hours? ago)\b/,
    yes: /\b(?:three|3|four|4|five|5|six|6|week|days) ?(?:days?|ago)?\b/,
  },
  {
    asks: /\bthe moment\b/i,
    yes: /\b(?:soon as|straight away|immediately|instantly|right away|when i|every time)\b/,
    no: /\b(?:later|after a while|minutes after|hours)\b/,
  },
  { asks: /\bone chirp a minute\b/i, yes: /\b(?:one|once) (?:a|each|per|every) minute\b/ },
  {
    asks: /\bwork\b.*\bneighbour|\bwork for a neighbour|\bwork in another\b|\bwork in that\b/i,
    no: /\b(?:same|no different|no better|as well|nor|neither|also dead)\b/,
  },
  {
    asks: /\bonly one\b|\bone \w+ only\b/i,
    yes: /\b(?:rest|others?) (?:is |are )?(?:ok|okay|fine|work|works|good|lit|on)\b/,
    no: /\b(?:both|all|every|each|several)\b/,
  },
  { asks: /\btwo or more\b/i, yes: /\w (?:and|plus|with|both) \w/, no: /\b(?:only|just) (?:one|the|a)\b/ },
  {
    asks: /\b(?:dead|weak|dry|gone) (?:too|as well)\b/i,
    yes: /\b(?:same|neither|nor|also|as well|too|dead|either)\b/,
    no: /^(?!.*\bnot\b).*\b(?:runs?|works?|fine|ok|okay|good|strong|lights?|lit|burns?)\b/,
  },
  { asks: /\bhandbrake off\b/i, yes: /\b(?:off|down|released|forgot)\b/, no: /\b(?:on|up|pulled|tight|applied)\b/ },
  { asks: /\b(?:tap|drain)\b.*\bopen\b/i, no: /\b(?:all|everything|they are|are all|is) (?:off|shut|closed)\b/ },
  { asks: /\bkink\b/i, no: /\b(?:straight|downhill|falls|downwards)\b/ },
  { asks: /\bgale\b/i, yes: /\b(?:gale|windy|blowing|storm|howling)\b/, no: /\b(?:calm|no wind|still)\b/ },
  { asks: /\bbelow \d+ °C outside\b/i, no: /\b(?:summer|sunny|sunshine|heatwave)\b/ },
];

/** What a reply says to a question of one of these kinds; null where none fits. */
export function byQuestion(said: string, ask: string): 'yes' | 'no' | null {
  if (/\b(?:OFF)\b/.test(ask) && /\b(?:switched|turned|put) on$/.test(said)) return 'no';
  for (const { asks, yes, no } of KINDS) {
    if (!asks.test(ask)) continue;
    if (no?.test(said) === true) return 'no';
    if (yes?.test(said) === true) return 'yes';
  }
  return null;
}

/** Questions whether something is there at all. */
const THERE =
  /^(?:is|are|was|were) (?:there|anything|something)\b|^can you see\b|^has there been\b|^is a \w+ (?:open|loose|still up)\b/i;
const THERE_SAID =
  /^there (?:is|are|was|were) (?!not|no\b).* (?:on|in|over|under|behind|against) (?:it|them|there|the)\b/;

/** 'A twig' to 'Is there a leaf in the track?', 'there was a duvet on it' to 'Are bags over it?': something is there. */
export function isThereSaid(said: string, ask: string): boolean {
  const words = said.split(' ');
  if (
    words.length > 8 ||
    /\b(?:no|not|none|nothing|never|neither|clean|clear|fine|good|ok|dry|shut|closed|empty|free|only)\b/.test(said)
  )
    return false;
  if (THERE_SAID.test(said)) return true;
  return THERE.test(ask) && words.length <= 5 && words.some((word) => word.length > 2) && !/\?/.test(said);
}
