/*
 * Short answers that mean the same whatever was asked. Whole messages only: 'yes' in the middle of a sentence
 * says nothing about the bot's own question.
 */

const HELPED =
  /^(?:(?:yes|yep|yeah|great|brilliant|ok|cheers|ta|thanks|thank you|that|it|its|all|now|works?|worked|working|sorted|fixed|good|perfect|did|it|done|the|trick|job|has|is|a treat|lovely|super) ?)+$/;
const WORKED = /work|sort|fix|did|it|done|the|trick|trick|treat|yes|yep|yeah/;
const STUCK =
  /^(?:still (?:stuck|not working|nothing|no good|the same|not|dead|doesnt work|broken)|stuck|no(?:pe)?|nah|not (?:working|fixed|really|yet)|that (?:did not|didnt|doesnt|does not) (?:work|help)|did not (?:work|help)|didnt (?:work|help)|it (?:still )?(?:doesnt|does not|didnt|did not|isnt|is not|wont|will not) (?:work|working|help)|no (?:joy|luck|good|change|difference)|nothing (?:happened|happens|changed)|same again|doesnt work|tried that)(?: .{0,20})?$/;
const ALL_WELL =
  /^(?:(?:yes|yep|yeah|it|is|its|thats|all|everything|very|well|good|fine|ok|okay|right|sorted|great|lovely|perfect|now|thanks|thank you|cheers|ta) ?)+$/;
const NEVER_MIND =
  /^(?:never ?mind|forget it|dont worry|do not worry|no longer needed|its ok now|sorted it|all sorted|cancel(?: that)?|dont need (?:it|anyone|you) (?:now|any ?more))$/;
const RESUME = /^(?:carry on|go on|continue|back to (?:it|that|the .{3,30})|yes carry on|lets go on|resume)$/;
const NONE =
  /^(?:none(?: of (?:these|them|those))?|neither|no|nope|something else|none|other|not (?:these|any of (?:these|them)))$/;

const YES =
  /^(?:yes|yep|yeah|yea|yup|ya|aye|sure|ok|okay|ok then|please|yes please|go on then|it is|thats it|that one|this one|right|correct)(?: (?:please|it is|that one|thats it|lets|carry on|go on))?$/;
const LATER =
  /^(?:no|nope|nah|not now|not yet|later|leave it|no thanks|no thank you|in a bit|maybe later)(?: (?:thanks|please|now|for now))?$/;
/** Words that answer something and say nothing of their own. */
const BARE =
  /^(?:(?:i )?(?:dunno|dont know|do not know|cant tell|cannot tell|am not sure|not sure)|no idea|maybe|perhaps|yes|yep|yeah|no|nope|nah|skip|next|back|done|none|both|neither|what|huh|\d)$/;
const NOT_UNDERSTOOD =
  /^(?:(?:sorry|no|but) )*(?:i )?(?:(?:do|did|can) ?not|dont|didnt|cant|not) (?:really )?(?:understand|understood|follow|get (?:it|that|you|what you mean))(?: .{0,25})?$/;

/** Lower case, no accents or punctuation, one space: what the patterns above expect. */
export function flat(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[\u2018\u2019'`]|\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** What a message says to 'did that help?': null when it is about something else. */
export function readHelped(text: string): boolean | null {
  const said = flat(text);
  if (STUCK.test(said)) return false;
  return HELPED.test(said) && WORKED.test(said) ? true : null;
}

/** What a message says to 'is all well now?': null when it is about something else. */
export function readAllWell(text: string): boolean | null {
  return ALL_WELL.test(flat(text)) ? true : readHelped(text);
}

const QUESTION =
  /^(?:(?:and|but|ok|okay|so|yes|no|anyway|well|right|also|then) )*(?:how|hows|what|whats|where|wheres|whereabouts|which|when|who|can|could|may|should|is there|are there|is (?:it|that|this) (?:ok|okay|safe|alright|all right|allowed|normal|bad)|do we|does it|will it)\b/;

/** 'How do I do that?' asks about the step alone. */
const HOW_THEN =
  /^(?:(?:and|but|ok|okay|so|yes|no|well|right|then) )*how(?: (?:do|can|would|should|could|am) (?:i|we|you)(?: (?:do|see|check|tell|know|test|try|look at|supposed to do))?(?: (?:that|it|this|those|so|then))*)?$/;

/** Whether a message asks something of its own, by how it begins. */
export const saysQuestion = (text: string): boolean => QUESTION.test(flat(text)) && !HOW_THEN.test(flat(text));
export const saysNeverMind = (text: string): boolean => NEVER_MIND.test(flat(text));
export const saysCarryOn = (text: string): boolean => RESUME.test(flat(text));
export const saysYes = (text: string): boolean => YES.test(flat(text));
export const saysLater = (text: string): boolean => LATER.test(flat(text));
export const isBare = (text: string): boolean => BARE.test(flat(text));
export const saysNotUnderstood = (text: string): boolean => NOT_UNDERSTOOD.test(flat(text));
export const saysNone = (text: string): boolean => NONE.test(flat(text));
