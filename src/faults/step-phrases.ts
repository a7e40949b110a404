/*
 * What hirers say about a step, as patterns over the words of a message: lower case, contractions written out, one
 * space between words.
 */

/** One pattern of several, each to be found at the start of what is said. */
function starting(...patterns: readonly string[]): RegExp {
  return new RegExp(`^(?:${patterns.join('|')})(?= |$)`);
}

/** One pattern of several, each of which must be the whole of what is said. */
function whole(...patterns: readonly string[]): RegExp {
  return new RegExp(`^(?:${patterns.join('|')})$`);
}

/** One pattern of several, to be found anywhere. */
function anywhere(...patterns: readonly string[]): RegExp {
  return new RegExp(`(?<= |^)(?:${patterns.join('|')})(?= |$)`);
}

/** Said before the answer proper. */
export const SIGHS =
  /^(?:(?:oh|ah|er|erm|um|umm|hmm|well|so|right|ok|okay|sadly|unfortunately|actually|sorry|hi|hello|i am afraid|afraid|just looked|just checked|checked) )+(?=\w)/;

/** Said back out of politeness: nothing about the step. */
export const POLITE = whole('(?:ok|okay|right|thanks|thank you|cool|lol|haha|cheers| )+');

/** The hirer is at it. */
export const WAIT = whole(
  '(?:(?:hang|hold) on|(?:one|give me a|just a|a|1|2|two) (?:sec|second|moment|minutes?)|wait|looking|checking|trying)(?: .{0,25})?',
  '(?:will (?:do|try|look|check)|(?:let me|i will|going to|off to) (?:look|check|try|see|have))(?: .{0,40})?',
);

/** Too soon to tell what came of a fix. */
export const TOO_SOON =
  /^(?:(?:i am )?not sure|too (?:soon|early)|can not (?:say|tell)|do not know|no idea|ask me)(?: to (?:say|tell))?(?: yet| so soon| in (?:a|an|half).*| later|$)|only been (?:a |an |\w+ )?(?:second|minute|hour|moment)|^(?:wait and see|waiting|we will see|will (?:see|know|tell)|give it)/;

export const RECORD = starting(
  '(?:so |remind me )*(?:what|which things?) (?:have|had|did|all have) (?:we|i|you) (?:already |all )?(?:tried|done|do|try|checked|looked at)',
  'what (?:is|was) tried',
  'tried so far',
  'what so far',
  '(?:so )?where (?:are|were) we',
  'recap',
  'sum (?:it|that) up',
  'remind me (?:where we (?:are|were)|what we have (?:done|tried))',
);

const POLITE_BACK = '(?:no |wait |oops |sorry |hang on |wrong (?:one|button) |(?:can|could|please) (?:we |you |i )?)*';
export const BACK = whole(
  `${POLITE_BACK}(?:go|step|take me|take it) back(?: (?:a|one|1) step| one| please| a bit)*`,
  `${POLITE_BACK}back(?: a step| one| please| up)?`,
  `${POLITE_BACK}(?:undo(?: that| it)?|previous(?: one| step| question)?)`,
  `${POLITE_BACK}(?:that|the last|my last|last)(?: one| answer)? (?:was|is) (?:wrong|a mistake|not right)`,
  `${POLITE_BACK}i (?:got|had|said|answered|pressed|made)(?: that| the last one| it)?(?: a| the)? (?:wrong(?: one| button| thing)?|mistake)`,
  `${POLITE_BACK}wrong (?:button|answer)`,
  `${POLITE_BACK}i meant (?:yes|no|the other one|the opposite)`,
);

export const SKIP = whole(
  '(?:can we |could we |please |let us |just |i would rather |i rather |try |the )*(?:skip|pass|next|move on|leave (?:it|that|this)(?: one)?|something else|next thing|do something else)(?: (?:to|the|this|that|it|one|step|question|please|next|for|now|fix|check|on))*',
);

export const UNWILLING = anywhere(
  'rather not',
  '(?:do not|not going to) (?:want to|fancy|dare|like to|touch|ask|look|go|do|get|bother)',
  'will not (?:touch|go near)',
);

export const HOW = starting(
  '(?:(?:yes|no|and|but) )*(?:how|where|what|which|whats|huh|show me|explain)',
  '(?:can|could) you (?:show|explain|send|tell me (?:how|where|what|which))',
  'is there a (?:picture|photo|drawing)',
  '(?:do|did) you mean',
  '(?:(?:no|sorry|but) )*(?:i )?(?:(?:do|did|can) )?not (?:really )?(?:understand|get (?:it|that|you|what)|follow|know (?:how(?! (?:much|many|long|heavy|old|far|often)\\b)|where|what|which))',
  '(?:i )?can not (?:find the|(?:find|see) where)',
  '(?:not sure|no idea) (?:how|where|what|which)',
  'i am lost',
  '(?:do|should|would) (?:i|we) (?:need|have to|use|want|put|take|turn|push|pull)',
);

/** Stems of asking itself: they name no other subject. */
export const ASKING = new Set(
  'tell know find check mean understand explain pictur photo draw follow lost sure idea sorri do use suppos look like exactli colour kind sort step send'.split(
    ' ',
  ),
);

/** Questions that need no question mark to be one. */
export const QUESTION =
  /^(?:(?:by the way|btw|also|and|hi|hello|ok|another question|quick question|question|one more thing) )*(?:where (?:is|are|do|can|should|would|did)|what (?:time|is|are|do|does|kind|about|day|happens|if)|when (?:is|are|do|does|can|will|should)|how (?:much|many|do|does|far|long|about|can|is|are|old|often)|who (?:is|are|do|can)|why|can (?:i|we|you|it|the|they|my|our|some\w+|kids|dogs)|could (?:i|we|you)|may (?:i|we)|do (?:i|we|you|they)|does (?:the|this|any\w+|my|our)|is (?:there|it (?:ok|okay|safe|possible|allowed|free|far)|the \w+ (?:open|included|free|far|nearby|safe)|any\w+)|are (?:there|you|dogs|pets|we (?:allowed|ok))|should (?:i|we)|would (?:it|you)|will (?:it|you|the|there)|have you|has any\w+|(?:at|on|in) (?:which|what))(?= |$)/;

/** Done, and nothing more: what came of it is not said. */
export const DONE = whole(
  '(?:ok |right |yes |yep |just )*(?:all )?(?:done|(?:i |we )?(?:have )?(?:did|done|tried)(?: all)?(?: (?:that|it|this|so|like you|as you|what you))(?: (?:say|said|told me|wrote))?)(?: now)?',
);

export const CANNOT = starting(
  '(?:(?:honestly|i|we|am|are|really|just) )*(?:do not|not|no longer) (?:really )?(?:know|sure|certain|remember)',
  'unsure|no (?:idea|clue)|idk|who knows|how would i know',
  '(?:hard|difficult|impossible) to (?:say|tell|see)',
  '(?:(?:i|we|just|really) )*(?:can|could) not(?: (?:really|quite|actually))?(?: (?:tell|say|see|find|reach|get (?:to|at|near|in|it)|look|check|make (?:it|that) out|work (?:it|that) out|remember|hear))?',
  '(?:it is )?too (?:dark|high|far|stiff|heavy|tight)',
  'there (?:is|are) not (?:one|any|a)',
  '(?:the |our |my )?neighbours? (?:is|are|has|have) (?:not|out|away|gone|left)',
  '(?:the )?(?:people |ones |folk )?next ?door (?:is|are|has|have) (?:not|out|away|gone|left)',
  '(?:we |i )?(?:have not got|do not have|do not seem to have) (?:one|it|that|any)',
  '(?:they|he|she|neighbours?) (?:said no|refused|will not (?:lend|let))',
  'no can do|(?:there is )?(?:nobody|no one|no torch|no neighbours?)',
  'no such|maybe|perhaps|possibly|might be|could be',
);

export const YES = starting(
  'ye+s+|yep+|ye+a+h*|yup+|ye|yh|y|yer|si',
  'correct|right|true|indeed|affirmative|definitely|absolutely|exactly|certainly|of course|sure|bingo',
  '(?:it (?:is|does|did|was|has|will|can)|they (?:are|do|did|were|have)|there (?:is|are|was|were)|i (?:do|did|am|can|was|have)|we (?:do|did|are|can|were|have))$',
  '(?:i )?(?:think|believe|guess|reckon) so',
  '(?:it|they) (?:does|do|is|are|did) (?:a (?:bit|little)|slightly|sometimes|now and then|indeed|yes)',
  '(?:it )?(?:looks|seems|sounds) (?:like it|so|that way)',
  '(?:i am )?afraid so',
  'that is (?:it|right|correct|the one)',
  '(?:just )?(?:a )?(?:little |wee |tiny )?bit(?: of an?)?|slightly|(?:ha|haha|lol|oops|doh) yes|as soon as|soon as',
  '(?:very|extremely|totally|completely|quite)$',
  '(?:the |number |breaker )?\\w+ (?:is|are|does|did|was)$',
);

export const NO = starting(
  'no+|nope+|na+h*|naw|n|negative|never|none|neither|nothing like that',
  'not (?:at all|really|that i can see|as far as i can see|that i know|on mine|here|now|yet|today|one|any)',
  '(?:it (?:is|does|did|was|has|will|can)|they (?:are|do|did|were|have)|there (?:is|are|was|were)|i (?:do|did|am|can|was|have)|we (?:do|did|are|can|were|have)) not$',
  '(?:i )?(?:do not|did not) (?:think|believe) so',
);

/** A yes or no that comes last: 'kettle boils so no', 'heater and kettle yeah'. */
export const LAST_YES = /(?: |, )(?:so |then )?(?:ye+s+|yep+|yeah|yup|aye)$/;
export const LAST_NO = / (?:(?:so|then) (?:no|nope|nah)|(?<=^i \w+ (?:it|them|that) )(?:no|nope|nah))$/;

/** 'No light' and 'no noise' say what is not there; 'no it is up' refuses. */
export const NO_THING =
  /^no (?!(?:\w+ed|every\w*|each|most|keeps?|goes|runs|works|looks|seems|comes|stays|says|shows|reads|been|was|were|has|had|have|did|does|do|it|its|they|there|the|we|i|that|this|not|all|both|thanks|thank|never|sure|idea|but|and|everything|nothing|just|still|yes|my|our|he|she|only|is|are|up|down|on|off)\b)\w/;

/** It works, said while something was only to be looked at. */
export const WORKS_NOW = anywhere(
  '(?:it|everything|all) (?:is |has |just )*(?:working|works|fixed|sorted|came back on|worked)',
  '(?:power|water|electric|heat|heating|gas|light|lights) (?:is|are) back(?: on)?',
);

export const WORKED = anywhere(
  'worked|works|working|fixed|sorted|solved|mended|cured|success|hooray|hurray|hurrah|yay|yippee|bingo|result|it lives|lit',
  'back (?:on|up|up and running|in business|running|going)',
  '(?:on|running|going|flowing|hot|warm|cold|lit|up) (?:again|now)',
  '(?:did|done) (?:it|the (?:trick|job))',
  '(?:is|are) back|(?:has|have) come (?:back|on)|came (?:back|on)',
  'all (?:is )?(?:good|well)|(?:much |a lot )?better',
  'woke(?: up)?|awake|(?:gone|went|is) quiet|(?:is |stays |it )?(?:closed|shut|coupled|latched)$|drains|draining|rock solid|solid now',
  '(?:goes|going|runs|went|drains) (?:down|away) (?:now|fine|ok|well|again)',
  '(?:is|its|it|they are|are|burner) (?:now )?(?:on|alight)$',
  'you (?:star|legend|genius|beauty)',
  '(?:have|got) (?:\\w+ )?(?:water|light|lights|heat|heating|power|gas|flame|signal|picture|hot)',
  '(?:is|are) (?:coming|flowing|cooling|heating|charging|pumping|boiling|burning|glowing|running|filling|draining|becoming)|gushing|pouring out|nicely',
  'slides|glides|got it|full flow|blowing (?:warm|hot|cold)|big blue flames|thawed|dried (?:off|out)|got (?:steam|it going)|(?:it|needle|blade) moved|burning|down with a|out it came|(?:came|popped|slid|pulled) (?:out|off|free|loose|away|up|on|through)|(?:slides?|moves?|turns?|opens?|shuts?|closes?|goes|runs) (?:\\w+ )?(?:fine|easily|freely|smooth|smoothly|like|well)',
  'like (?:butter|a dream|new|magic|clockwork|a charm)|at last|finally|holding|stayed(?: up| on| in)?|(?:so )?far so good|first time|peace|silence|smooth|warm air',
  'coming (?:through|out)|it (?:clicked|shut|opened|moved|lit)',
  '(?:is )?(?:power|water|gas|light|heat|heating) (?:again|now|is here)|now (?:it )?(?:is )?(?:water|power|gas|light|heat|warm|hot|cold|works)',
  '(?:humming|whirring|purring|buzzing|ticking|ticking over)(?: away)? now',
);

/** Words of things that do again what they should. Of those that the fix itself asks for, they only say that it was done. */
export const GOES_AGAIN =
  /(?<= |^)(?:flush(?:es|ed|ing)?|drains|drained|charges|charged|charging|roaring|roars|blowing|flows|flowing|heats|cools|started|starts|closes|closed|shuts|opened|opens|moves|turns|latched|locked|coupled|freed|free|alive|holds|stopped \w+ing|stays (?:up|on|shut|closed|in|lit|put)|getting (?:\w+er|better)|(?:live|humming|green|glowing|buzzing|bright) again|glows|boiling|showing \d+|this time|first go)(?= |$)/g;

/** A plain yes to 'Did that do it?', with nothing in it that takes it back. */
export const PLAIN_YES =
  /^(?:ye+s+|yep+|yeah|yup)(?= |$)(?!.*\b(?:but|still|not|no|nothing|again and|then|only|almost|nearly)\b).{0,60}$/;

/** 'No more water' is a cure of a leak, and none of a dry tap. */
export const NO_MORE = /^no more \w+/;

export const WELL =
  /^(?:ye+s+|yep+|yeah|yup|y|yh|brilliant|great|perfect|excellent|fantastic|lovely|super|amazing|magic|wonderful|phew|thank you|thanks|that is (?:it|better|the one|done it)|it (?:did|has|is|does)|(?:i )?think so)(?: .{0,40})?$/;

export const BADLY = /^(?:no+|nope+|na+h*|n|naw|negative|it (?:did|has|is|does) not)(?: .{0,60})?$/;

export const FAILED = anywhere(
  '(?:straight|right) back|(?:went|goes|fell|dropped|drops|popped|pops) (?:straight |right )?back(?: down| off| out| again)?|(?:fell|falls|popped) (?:down|out) again|trips|keeps (?:tripping|dropping|going out)',
  'as (?:cold|dead|dark|dry|bad|warm|weak) as (?:ever|before|it was)',
  '(?:fell|dropped|tripped|blew|popped|went|stopped|starts?|started) again|started \\w+ing|it will not \\w+',
  '(?:wet|dead|dark|leaking|beeping|dripping|chirping) again|(?:found )?(?:0|zero|none)(?: \\w+)?$|no (?:channels|water|gas|heat|power|light|picture|signal)',
  '(?:leak|beep|drip|chirp|trip|flash|smell|smok)\\w*ing (?:\\w+ )?now|(?:off|out|dead|dark|worse) now',
  'still|nothing|nowt|not|failed|fails|fail|worse|dead',
  'no (?:joy|luck|good|change|difference|odds|better|use|effect|different)',
  'same(?: as before| again| thing| problem)?|as before',
  'tried (?:that|it)(?: already)?|already (?:did|done|tried)|did that (?:earlier|before|yesterday|first)',
  '(?:goes|went|going|cuts|cut|trips|tripped|dropped|drops) (?:out|off|again|down)(?! (?:\\w+ )?(?:now|fine|ok|well|fast))|doing it again',
  '(?:then|but) (?:it )?(?:stopped|stops|died|dies|went|goes|gave up|cut out|tripped)',
);
/** 'Still working' is no failure. */
export const STILL_WELL = starting('(?:yes )?(?:it (?:is )?)?still (?:working|going|on)');

export const NOT_TRIED = anywhere(
  '(?:have|got|has) no (?!power|water|gas|heat|light|hot|picture|signal)\\w+|(?:is|are) no (?:spares?|fuses?)|tomorrow|later',
  '(?:can|could|will|would) not (?:do|reach|get|find|manage|shift|budge|move|turn|open|lift|undo|risk|try|be able)',
  'not (?:able|allowed|willing|going to|got|strong enough|comfortable)',
  'have not (?:got|done|tried)|do not (?:have|want to|fancy|dare|feel)|rather not|not tonight',
  'no (?:spare|fuse|fuses|key|ladder|tools?|torch|screwdriver|shop)',
  'too (?:stiff|heavy|hard|high|far|tight|difficult|scared|dark|tired|dangerous)',
);

/** Tried, and it does not move: 'it will not budge still'. */
export const TRIED_IN_VAIN = /^it will not \w+ still|^still (?:it )?will not/;

/** The trouble itself has ended: what beeped, dripped or rocked does so no more. */
export const ENDED = anywhere(
  'no longer (?:beep\\w*|chirp\\w*|drip\\w*|leak\\w*|runn\\w*)',
  '(?:beep\\w*|chirp\\w*|drip\\w*|leak\\w*|noise|humm?\\w*|rattl\\w*|smell|rocking|rain) (?:is |has |have )?(?:stopped|gone|went away)',
);

/** A lamp that goes out is a cure of one fault and a sign of another. */
export const LAMP_OUT = /^(?:the )?(?:red )?(?:lamp|light) (?:has |is )?(?:went|gone|goes) (?:off|out)$/;
