import { firstThatHolds, type Holder } from '../knowledge/holds.ts';
import type { ScopedCause } from '../knowledge/knowledge.ts';
import { stem } from '../language/stems.ts';
import { inPlainWords } from './plain-words.ts';
import { saysStop } from './read-stop.ts';
import { readStatement, type Statement } from './statement.ts';
import * as phrases from './step-phrases.ts';
import type { Observation, Verdict } from './types.ts';
import type { Told } from './walk.ts';
import { contentOf, wordsOf } from './words.ts';

/**
 * What a message says about the step that is with the hirer. `how`: how do I see or do that, or a word about it that
 * answers nothing yet ('hang on', 'there are two'): the step is shown again. `unclear`: about the step, though not surely
 * yes or no; `done`: the fix was done, and nothing said of what came of it: both are asked for. `record`: what have we
 * tried? `other`: nothing about the step; the subject has changed.
 */
export type StepAnswer =
  | { readonly kind: 'told'; readonly told: Told }
  | { readonly kind: 'back' }
  | { readonly kind: 'how' }
  | { readonly kind: 'unclear' }
  | { readonly kind: 'done' }
  | { readonly kind: 'record' }
  | { readonly kind: 'other' };

/** A message as it is read: `words` as tokens, `said` the same as one line without its 'oh' and 'well'. */
type Heard = { readonly text: string; readonly words: readonly string[]; readonly said: string };

/** Words up to which a message is short: longer ones often carry a second thought. */
const SHORT_WORDS = 8;
/** A message this long that asks something is about something else. */
const LONG_WORDS = 14;

/** Whether a message asks what has been tried, at a step or while the walk is laid aside. */
export function asksRecord(message: string): boolean {
  return phrases.RECORD.test(hear(message).said);
}

/** Reads one message in the light of the step: 'no' to a check is an answer, to a fix it says that it did not help. */
export function readStepAnswer(message: string, step: 'check' | 'fix', cause: ScopedCause, van: Holder): StepAnswer {
  const heard = hear(inPlainWords(withSignsRead(message)));
  const { said } = heard;
  if (said === '') return { kind: 'other' };
  if (phrases.RECORD.test(said)) return { kind: 'record' };
  if (phrases.BACK.test(said)) return { kind: 'back' };
  if (saysStop(heard.words, cause)) return told({ kind: 'stop', said: message.trim() });
  if (phrases.POLITE.test(said)) return { kind: 'other' };
  if (phrases.WAIT.test(said)) return { kind: 'how' };
  if (phrases.SKIP.test(said)) return told({ kind: 'skip' });
  const asked = firstThatHolds(step === 'check' ? cause.check?.ask : cause.fix.do, van) ?? '';
  if (asksHow(heard, asked, cause, van)) return { kind: 'how' };
  if (asksSomething(heard)) return { kind: 'other' };
  const about = [firstThatHolds(cause.check?.look, van) ?? '', cause.say, firstThatHolds(cause.fix.do, van) ?? ''].join(
    ' ',
  );
  const answer = step === 'check' ? readCheck(heard, { ask: asked, about }) : readFix(heard, asked);
  return answer.kind === 'other' && bearsOn(heard, asked) ? { kind: 'unclear' } : answer;
}

/** The question of a check, and further words that are no surprise in its answer. */
type Asked = { readonly ask: string; readonly about: string };

function readCheck(heard: Heard, asked: Asked): StepAnswer {
  const { text, words, said } = heard;
  const { ask } = asked;
  const unseen = notPerceived(said, asked);
  if (unseen !== null) return unseen;
  if (phrases.CANNOT.test(said)) return observed('cannot-tell');
  if (phrases.UNWILLING.test(said)) return told({ kind: 'skip' });
  if (phrases.WORKS_NOW.test(said) && !words.includes('not') && !/work/i.test(ask)) return told({ kind: 'works' });
  if (phrases.DONE.test(said)) return { kind: 'unclear' };
  if (phrases.NO_THING.test(said) && !/^no\s*[,.;:!-]/i.test(text)) return stated(text, asked) ?? noSuch(heard, asked);
  const first = foundFirst(heard);
  if (first !== null) return readCheck(first, asked);
  if (/^(?:none|neither)\b/.test(said)) return stated(text, asked) ?? observed('no');

  const explicit = explicitIn(heard);
  if (explicit === null) return stated(text, asked) ?? { kind: 'other' };
  // What is said about the thing itself goes before 'yes': 'yep its on' denies 'Is it off?'.
  const rest = said.replace(phrases.YES, '').replace(phrases.NO, '').trim();
  const firm = words.length <= SHORT_WORDS && isFirm(rest, ask) ? readStatement(rest, ask, asked.about) : null;
  return firm === null || firm.verdict === explicit ? observed(explicit) : sureOnly(firm);
}

/** 'No grit' denies what is asked for; 'no warmth at all' says something else. */
function noSuch({ words }: Heard, { ask }: Asked): StepAnswer {
  const about = contentOf(wordsOf(ask));
  return [...contentOf(words)].every((each) => about.has(each)) ? observed('no') : { kind: 'unclear' };
}

/** A plain yes or no, at the start of what is said or at its end. */
function explicitIn({ text, said }: Heard): Verdict | null {
  if (/,\s*no(?:pe)?\W*$/i.test(text)) return 'no';
  if (phrases.YES.test(said)) return 'yes';
  if (phrases.NO.test(said)) return 'no';
  if (phrases.LAST_YES.test(said)) return 'yes';
  return phrases.LAST_NO.test(said) ? 'no' : null;
}

/** What a statement answers; null where it does not bear on the question. */
function stated(text: string, { ask, about }: Asked): StepAnswer | null {
  const statement = readStatement(text, ask, about);
  return statement === null ? null : sureOnly(statement);
}

function sureOnly({ verdict, sure }: Statement): StepAnswer {
  return sure ? observed(verdict) : { kind: 'unclear' };
}

function readFix({ said, words }: Heard, fix: string): StepAnswer {
  const tried = (worked: boolean): StepAnswer => told({ kind: 'tried', worked });
  if (phrases.DONE.test(said) || phrases.TOO_SOON.test(said)) return { kind: 'done' };
  if (phrases.NOT_TRIED.test(said) && !phrases.TRIED_IN_VAIN.test(said)) return told({ kind: 'skip' });
  if (phrases.NO_MORE.test(said)) return { kind: 'unclear' };
  if (phrases.BADLY.test(said)) return tried(false);
  if (phrases.LAMP_OUT.test(said)) return { kind: 'other' };
  if (phrases.ENDED.test(said)) return tried(true);
  if (phrases.PLAIN_YES.test(said)) return tried(true);
  if (phrases.FAILED.test(said)) return tried(phrases.STILL_WELL.test(said));
  if (
    phrases.WORKED.test(said) ||
    (words.length <= SHORT_WORDS && words.at(-1) === 'now') ||
    (phrases.WELL.test(said) && words.length <= SHORT_WORDS)
  )
    return tried(true);
  const again = said.match(phrases.GOES_AGAIN);
  if (again === null || words.length > LONG_WORDS) return { kind: 'other' };
  const own = contentOf(wordsOf(fix));
  return again.some((each) => wordsOf(each).every((word) => !own.has(stem(word)))) ? tried(true) : { kind: 'done' };
}

/** 'I cannot hear it' answers 'Can you hear it run?', and 'I cannot see any grit' answers 'Is there grit in the bowl?'. */
function notPerceived(said: string, asked: Asked): StepAnswer | null {
  const found = /\b(?:can|could|do|did) not (see|hear|feel|smell|notice)\b ?(any|a|anything|nothing)?/.exec(said);
  if (found === null) return null;
  const verb = found[1] ?? '';
  if (verb === 'hear' && /silent|quiet|\b(?:no|not any) (?:sound|noise|click|fan)/i.test(asked.ask))
    return observed('yes');
  if (new RegExp(`\\b${verb}`, 'i').test(asked.ask)) return observed('no');
  if (found[2] === undefined) return null;
  return stated(said.replace(found[0], 'no'), asked) ?? observed('no');
}

/** 'It was off but I put it on': what was found is the answer, not what was done about it. Null when that is all. */
function foundFirst({ text, said }: Heard): Heard | null {
  if (!/^(?:it|they) (?:was|were)\b/.test(said)) return null;
  const first = text.split(/[,.;]|\b(?:but|so|and|now)\b/i)[0] ?? '';
  return first.trim() === text.trim() || first.trim() === '' ? null : hear(first);
}

/** Only the opposite of a state that was asked about outweighs a plain yes or no. */
function isFirm(rest: string, asked: string): boolean {
  const words = wordsOf(rest);
  const about = contentOf(wordsOf(asked));
  const names = [...contentOf(words)].some((each) => about.has(each));
  return words.length > 0 && words.length <= 5 && !names && !/\b(?:no|not|never)\b/.test(rest);
}

function asksHow({ words, said }: Heard, asked: string, cause: ScopedCause, van: Holder): boolean {
  if (!phrases.HOW.test(said)) return false;
  const about = contentOf(wordsOf([asked, firstThatHolds(cause.check?.look, van) ?? '', cause.say].join(' ')));
  const own = [...contentOf(words)].filter((each) => !phrases.ASKING.has(each));
  if (own.length === 0 || own.some((each) => about.has(each))) return true;
  return /\b(?:that|it|this|those|them|one)\b/.test(said) && words.length <= SHORT_WORDS;
}

/** A short word about the very thing of the step, though not an answer. */
function bearsOn({ words }: Heard, asked: string): boolean {
  const about = contentOf(wordsOf(asked));
  return words.length <= SHORT_WORDS && [...contentOf(words)].some((each) => about.has(each));
}

function asksSomething({ text, said }: Heard): boolean {
  if (phrases.QUESTION.test(said)) return true;
  if (!text.includes('?')) return false;
  const question = /^(?:how|what|where|when|why|which|who|can|could|do|does|is|are|should|would|will|may) /.test(said);
  return (question && !/^(?:what next|now what)\b/.test(said)) || said.split(' ').length > LONG_WORDS;
}

function hear(text: string): Heard {
  const words = wordsOf(text);
  return { text, words, said: words.join(' ').replace(phrases.SIGHS, '') };
}

/** Picture signs that answer on their own, in words. */
function withSignsRead(text: string): string {
  return text
    .replace(/👍|✅|👌/gu, ' yes ')
    .replace(/👎|❌/gu, ' no ')
    .replace(/🎉/gu, ' it worked ');
}

function observed(answer: Observation): StepAnswer {
  return told({ kind: 'observed', answer });
}

function told(what: Told): StepAnswer {
  return { kind: 'told', told: what };
}
