import type { CauseId, TopicId } from '../basics/ids.ts';
import { firstThatHolds, type Holder } from '../knowledge/holds.ts';
import type { ScopedCause } from '../knowledge/knowledge.ts';
import { stem } from '../language/stems.ts';
import { readStatement } from './statement.ts';
import { contentOf, wordsOf } from './words.ts';

/*
 * What the opening words already say about the causes. Cautious: words are weak evidence, so each only leans the
 * beliefs, and all together no further than LEAST..MOST.
 */

/** Said of the very thing a check asks about: much as if it had been asked, and answered in passing. */
const STATED = 3;
/** A word that only this cause uses. */
const NAMED = 1.8;
/** Stands where the symptom itself was named, so that 'will not start, clicks' keeps its shape. */
const COMPLAINT = 'complaint';
const MOST = 6;
const LEAST = 1 / 6;

/** Stated in part: one side of an 'and' confirmed, or one side of an 'or' denied. */
const HALF_STATED = 1.5;

/**
 * How many times as likely as its prior the words make each cause; causes they say nothing of are left out.
 *
 * @param said    What the hirer said, oldest last; titles of symptoms met earlier in the thread read like words.
 * @param symptom Its id: the words it is made of tell the symptom, not the cause.
 */
export function leaningOf(
  said: readonly string[],
  symptom: TopicId,
  causes: readonly ScopedCause[],
  van: Holder,
): Record<CauseId, number> {
  const told = contentOf(symptom.split('-'));
  const about = causes.map((cause) => contentOf(wordsOf(textOf(cause, van))));
  const leaning: Record<CauseId, number> = {};
  for (const clause of said.flatMap(clausesOf)) {
    const words = wordsOf(clause).map((word) => (told.has(stem(word)) ? COMPLAINT : word));
    const content = contentOf(words);
    causes.forEach((cause, i) => {
      const shared = [...content].filter((each) => about[i]?.has(each) === true);
      if (shared.length === 0) return;
      const rare = shared.filter((each) => about.filter((other) => other.has(each)).length === 1);
      const by = leanBy(words, rare, cause, van);
      if (by !== 1) leaning[cause.id] = Math.min(MOST, Math.max(LEAST, (leaning[cause.id] ?? 1) * by));
    });
  }
  return leaning;
}

function leanBy(words: readonly string[], rare: readonly string[], cause: ScopedCause, van: Holder): number {
  const ask = firstThatHolds(cause.check?.ask, van) ?? '';
  const clause = words.join(' ');
  const verdict = ask === '' ? null : readStatement(clause, ask)?.verdict;
  if (verdict === 'yes') return /,(?! or)| and /i.test(ask) ? HALF_STATED : STATED;
  if (verdict === 'no') return / or /i.test(ask) ? 1 / HALF_STATED : 1 / STATED;
  if (readStatement(clause, cause.say)?.verdict === 'no') return 1 / HALF_STATED;
  return rare.length === 0 ? 1 : NAMED;
}

/** 'The pump is humming but nothing comes out' says two things. */
function clausesOf(text: string): string[] {
  return text
    .split(/[.,;!?\n]|\b(?:but|and|although|though|because|so|however)\b/i)
    .map((clause) => clause.trim())
    .filter((clause) => clause !== '');
}

function textOf(cause: ScopedCause, van: Holder): string {
  return `${cause.say} ${firstThatHolds(cause.check?.ask, van) ?? ''}`;
}
