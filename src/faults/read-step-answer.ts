import { firstThatHolds, type Holder } from '../knowledge/holds.ts';
import type { ScopedCause } from '../knowledge/knowledge.ts';
import { saysStop } from './read-stop.ts';
import { contentOf, readStatement, wordsOf } from './statement.ts';
import type { Observation } from './types.ts';
import type { Told } from './walk.ts';

/**
 * What a message says about the step that is with the hirer. `how`: how do I see or do that? `record`: what have we
 * tried? `other`: nothing about the step; the subject has changed.
 */
export type StepAnswer =
  | { readonly kind: 'told'; readonly told: Told }
  | { readonly kind: 'back' }
  | { readonly kind: 'how' }
  | { readonly kind: 'record' }
  | { readonly kind: 'other' };

const RECORD =
  /^(?:(?:so |ok |sorry |remind me )*(?:what|which things?) (?:have|had|did|all have) (?:we|i|you) (?:already |all )?(?:tried|done|do|try|checked|looked at)|what (?:is|was) tried|tried so far|what so far|(?:so )?where (?:are|were) we|recap|sum (?:it|that) up|remind me(?: where we (?:are|were))?)\b/;
const BACK =
  /^(?:sorry |no |wait |oops |hang on |oh |actually )*(?:(?:can|could|please) (?:we|you|i) )?(?:(?:go|step|take me|take it) back(?: (?:a|one|1) step| one| please| a bit)?|back(?: a step| one| please)?|back up|undo(?: that| it)?|previous(?: one| step| question)?|(?:that|the last|my last|last)(?: one| answer)? (?:was|is) (?:wrong|a mistake|not right)|i (?:got|had|said|answered|pressed|made)(?: that| the last one| it)?(?: a)?(?: the)? (?:wrong(?: one| button| thing)?|mistake)|wrong (?:button|answer)|i meant (?:yes|no|the other one|the opposite))$/;
const SKIP =
  /^(?:ok |can we |could we |please |lets |just |id |i would |i |rather )*(?:skip|pass|next|move on|leave (?:it|that|this)(?: one)?|skip (?:it|that|this)|try something else|something else|do something else)(?: (?:to|the|this|that|it|one|step|question|please|next|for|now|fix|check|on))*$/;
const HOW =
  /^(?:(?:sorry|ok|yes|no|and|but|um|erm|so|hi) )*(?:how\b|where\b|what (?:is|are|does|do|did|would|should|you|kind|sort|colour)\b|what$|which\b|whats\b|huh$|show me|explain|(?:can|could) you (?:show|explain|tell me (?:how|where|what|which))|is there a (?:picture|photo|drawing)|(?:do|did) you mean|(?:i )?(?:do not|did not) (?:understand|get (?:it|that|you|what)|follow|know (?:how|where|what|which))|not sure (?:how|where|what|which)|i am lost|no idea (?:how|where|what|which))/;
const CANNOT =
  /^(?:(?:sorry|um|erm|hmm|well|oh|honestly|i|we|am|are|really|just) )*(?:(?:do not|not|no longer) (?:really )?(?:know|sure|certain|remember)|unsure|no (?:idea|clue)|idk|dunno|who knows|how would i know|hard to (?:say|tell|see)|difficult to (?:say|tell|see)|impossible to (?:say|tell|see)|(?:can|could) not (?:really |quite |actually )?(?:tell|say|see|find|reach|get (?:to|at|near|in)|look|check|make (?:it|that) out|work (?:it|that) out|remember|hear|get)|(?:it is )?too (?:dark|high|far|stiff|heavy|tight)|maybe|perhaps|possibly|might be|could be|not certain|cannot)\b/;
const YES =
  /^(?:yes|yep|yeah|yup|yea|ye|yh|y|yer|si|correct|right|true|indeed|affirmative|definitely|absolutely|exactly|certainly|of course|sure|it (?:is|does|did|was|has|will|can)$|they (?:are|do|did|were|have)$|there (?:is|are|was|were)$|i (?:do|did|am|can|was|have)$|we (?:do|did|are|can|were|have)$|(?:i )?(?:think|believe|guess|reckon) so|(?:it )?(?:looks|seems|sounds) (?:like it|so|that way)|(?:i )?am afraid so|that is (?:it|right|correct|the one)|bingo|spot on)(?= |$)/;
const NO =
  /^(?:no|nope|nah|na|naw|n|negative|not (?:at all|really|that i can see|as far as i can see|that i know|on mine|here|now|yet|today|one|any)|never|none|neither|nothing like that|it (?:is|does|did|was|has|will|can) not$|they (?:are|do|did|were|have) not$|there (?:is|are|was|were) (?:not|none)(?: any)?$|i (?:do|did|am|can|was|have) not$|we (?:do|did|are|can|were|have) not$|(?:i )?(?:do not|did not) (?:think|believe) so|do not think so)(?= |$)/;
/** 'No light' and 'no noise' say what is not there; 'no it is up' refuses. */
const NO_THING =
  /^no (?!(?:it|its|they|there|the|we|i|that|this|not|all|both|sorry|thanks|thank|never|sure|idea|but|and|everything|nothing|just|still|yes|my|our|he|she|only|is|are|up|down|on|off)\b)\w/;
const WORKED =
  /\b(?:(?:that|it|this|which|all|now|its|everything|has|have|is|did|they|both|one|yes|yep|yeah|we|are) )*(?:worked|works|working|fixed|sorted|solved|mended|cured|back (?:on|up|up and running|in business|running|going)|(?:on|running|going|flowing|hot|warm|cold|lit|up)(?: again| now)|did (?:it|the (?:trick|job))|done the (?:trick|job)|success|hooray|hurrah|bingo|result|(?:is|are) back|came (?:back|on)|(?:has|have) come (?:back|on)|all good|(?:much |a lot )?better|all (?:is )?well|lit (?:first time|up|now)|it (?:is )?lit)\b/;
const FAILED =
  /\b(?:still|nothing|not|no (?:joy|luck|good|change|change there|difference|better|use|effect)|same(?: as before| again| thing)?|did not|does not|will not|has not|have not|failed|fails|fail|as before|no different|tried (?:that|it)(?: already)?|already (?:did|done|tried)|worse|dead)\b/;
const WELL =
  /^(?:yes|yep|yeah|yup|y|yh|brilliant|great|perfect|excellent|fantastic|lovely|super|amazing|magic|wonderful|hooray|phew|thank you|thanks|that is (?:it|better|the one|done it)|it (?:did|has|is|does))(?: .{0,40})?$/;
const BADLY = /^(?:no|nope|nah|na|n|naw|negative|it (?:did|has|is|does) not)(?: .{0,60})?$/;
const NOT_TRIED =
  /\b(?:(?:can|could|will|would) not (?:do|reach|get|find|manage|shift|budge|move|turn|open|lift|undo|risk|try|be able)|not (?:able|allowed|willing|going to|got|strong enough|comfortable)|have not got|do not (?:have|want to|fancy|dare|feel)|no (?:spare|fuse|fuses|key|ladder|tools?|torch|screwdriver|shop)|too (?:stiff|heavy|hard|high|far|tight|difficult|scared|dark|tired|dangerous)|rather not|not tonight)\b/;
/** A message this long that asks something is about something else. */
const LONG_WORDS = 14;

/** Reads one message in the light of the step: 'no' to a check is an answer, to a fix it says that it did not help. */
export function readStepAnswer(message: string, step: 'check' | 'fix', cause: ScopedCause, van: Holder): StepAnswer {
  const text = withSignsRead(message);
  const words = wordsOf(text);
  const said = words.join(' ');
  if (said === '') return { kind: 'other' };
  if (RECORD.test(said)) return { kind: 'record' };
  if (BACK.test(said)) return { kind: 'back' };
  if (saysStop(words, cause)) return told({ kind: 'stop', said: message.trim() });
  if (SKIP.test(said)) return told({ kind: 'skip' });
  const asked = firstThatHolds(step === 'check' ? cause.check?.ask : cause.fix.do, van) ?? '';
  if (asksHow(text, said, words, asked, cause, van)) return { kind: 'how' };
  if (asksSomething(text, said)) return { kind: 'other' };
  return step === 'check' ? readCheck(text, said, words, asked) : readFix(said, words);
}

function readCheck(text: string, said: string, words: readonly string[], asked: string): StepAnswer {
  const observed = (answer: Observation): StepAnswer => told({ kind: 'observed', answer });
  const unseen = notPerceived(said, asked);
  if (unseen !== null) return observed(unseen);
  if (CANNOT.test(said)) return observed('cannot-tell');
  if (
    /\b(?:it|everything|all) (?:is |has |just )*(?:working|works|fixed|sorted|came back on|worked)\b(?! (?:in|on|at|fine in))/.test(
      said,
    ) &&
    !/\bnot\b/.test(said) &&
    !/work/i.test(asked)
  ) {
    return told({ kind: 'works' });
  }
  if (NO_THING.test(said)) return observed(readStatement(text, asked) ?? 'no');
  // What is said about the thing itself goes before 'yes': 'yep its on' denies 'Is it off?'.
  const rest = said.replace(YES, '').replace(NO, '').trim();
  const explicit = YES.test(said) ? 'yes' : NO.test(said) ? 'no' : null;
  const statement = rest === '' && explicit !== null ? null : readStatement(explicit === null ? text : rest, asked);
  if (explicit !== null)
    return observed(statement !== null && isShort(words) && firmly(rest, asked) ? statement : explicit);
  return statement === null ? { kind: 'other' } : observed(statement);
}

function readFix(said: string, words: readonly string[]): StepAnswer {
  const tried = (worked: boolean): StepAnswer => told({ kind: 'tried', worked });
  if (NOT_TRIED.test(said)) return told({ kind: 'skip' });
  if (BADLY.test(said)) return tried(false);
  const worked = WORKED.test(said);
  const failed = FAILED.test(said);
  if (failed) return tried(/^(?:yes )?(?:it (?:is )?)?still (?:working|going|on)\b/.test(said));
  if (worked || (WELL.test(said) && isShort(words))) return tried(true);
  return { kind: 'other' };
}

/** 'I cannot hear it' answers 'Can you hear it run?', and 'I cannot see any grit' answers 'Is there grit in the bowl?'. */
function notPerceived(said: string, asked: string): Observation | null {
  const found = /\b(?:can|could|do|did) not (see|hear|feel|smell|notice)\b ?(any|a|anything|nothing)?/.exec(said);
  if (found === null) return null;
  const verb = found[1] ?? '';
  const about = new RegExp(`\\b${verb}`, 'i').test(asked);
  if (verb === 'hear' && /silent|quiet/i.test(asked)) return 'yes';
  if (verb === 'hear' && /\b(?:no|not any) (?:sound|noise|click|fan)/i.test(asked)) return 'yes';
  if (about) return 'no';
  if (found[2] === undefined) return null;
  return readStatement(said.replace(found[0], 'no'), asked) ?? 'no';
}

/** Only the opposite of a state that was asked about outweighs a plain yes or no. */
function firmly(rest: string, asked: string): boolean {
  const short = wordsOf(rest);
  return (
    short.length <= 5 &&
    !/\b(?:no|not|never)\b/.test(rest) &&
    readStatement(rest, asked) !== null &&
    !sharesContent(short, asked)
  );
}

function sharesContent(words: readonly string[], asked: string): boolean {
  const about = contentOf(wordsOf(asked));
  return [...contentOf(words)].some((each) => about.has(each));
}

function asksHow(
  text: string,
  said: string,
  words: readonly string[],
  asked: string,
  cause: ScopedCause,
  van: Holder,
): boolean {
  if (!HOW.test(said)) return false;
  if (/^(?:how would i know|which|what) ?$/.test(said)) return true;
  const about = contentOf(wordsOf([asked, firstThatHolds(cause.check?.look, van) ?? '', cause.say].join(' ')));
  const own = [...contentOf(words)].filter((each) => !ASKING.has(each));
  return (
    own.length === 0 ||
    own.some((each) => about.has(each)) ||
    (/\b(?:that|it|this|those|them|one)\b/.test(said) && isShort(words) && !text.includes('...'))
  );
}

function asksSomething(text: string, said: string): boolean {
  const question = /^(?:how|what|where|when|why|which|who|can|could|do|does|is|are|should|would|will|may) /.test(said);
  const statement = /^(?:what next|now what|it is|they are|is on|is off|is up|is down|are on|are off)\b/.test(said);
  return (question && !statement && text.includes('?')) || (text.includes('?') && said.split(' ').length > LONG_WORDS);
}

/** Stems of asking itself. */
const ASKING = new Set([
  'tell',
  'know',
  'find',
  'check',
  'mean',
  'understand',
  'explain',
  'picture',
  'photo',
  'draw',
  'pictur',
  'follow',
  'lost',
  'sure',
  'idea',
  'sorri',
  'do',
  'use',
  'suppos',
  'look',
  'like',
  'exactli',
  'colour',
  'kind',
  'sort',
  'step',
]);

/** Picture signs that answer on their own, in words. */
function withSignsRead(text: string): string {
  return text
    .replace(/👍|✅|👌/gu, ' yes ')
    .replace(/👎|❌/gu, ' no ')
    .replace(/🎉/gu, ' it worked ');
}

function isShort(words: readonly string[]): boolean {
  return words.length <= 8;
}

function told(what: Told): StepAnswer {
  return { kind: 'told', told: what };
}
