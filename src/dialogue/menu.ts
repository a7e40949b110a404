import type { TopicId } from '../basics/ids.ts';
import { COMMON, stemsOf } from '../faults/words.ts';
import type { Open } from '../thread/thread.ts';
import { pickTyped } from './choices.ts';
import { type Draft, does, opens, type Situation } from './draft.ts';
import { saysYes } from './words-read.ts';

/*
 * A list that the bot has put ('Which of these is it?'), and the words that choose from it. What chooses nothing has the
 * list put once more before people are asked.
 */

type Menu = Extract<Open, { kind: 'choice' }>;

export const NONE_LABEL = 'None of these';

/** The topic that the words choose, `none` for none of them, or null. */
export function chosenFrom(menu: Menu, text: string, situation: Situation): TopicId | 'none' | null {
  const titles = menu.topics.map((topic) => situation.served.knowledge.topics.get(topic)?.title ?? topic);
  const picked = pickTyped(text, [...titles, NONE_LABEL]);
  if (picked !== null) return menu.topics[picked] ?? 'none';
  const [only] = menu.topics;
  if (menu.topics.length === 1 && only !== undefined && saysYes(text)) return only;
  return byWords(menu, titles, text);
}

/** 'The one on hook-up': the words of one title that no other has, and none of another's. */
function byWords(menu: Menu, titles: readonly string[], text: string): TopicId | null {
  const said = stemsOf(text);
  const about = titles.map((title) => stemsOf(title));
  const fits = about.map(
    (own, i) =>
      [...said].filter((each) => own.has(each) && about.every((other, k) => k === i || !other.has(each))).length,
  );
  const best = Math.max(0, ...fits);
  const at = fits.indexOf(best);
  const others = fits.filter((count, i) => i !== at && count > 0).length;
  // Most of what is said must be about it: a new question may share a word with a title.
  const strange = [...said].filter((each) => !COMMON.has(each) && about[at]?.has(each) !== true).length;
  return best > 0 && others === 0 && strange <= best ? (menu.topics[at] ?? null) : null;
}

/** Moves after which the list is as open as before: nothing was understood that answers or leads on. */
const LOST: readonly string[] = ['choose', 'waiting'];

/**
 * Words that choose nothing and ask nothing: the list is put once more.
 *
 * @returns Null when something was understood, no list is open, or it was put again already.
 */
export function menuAgain(before: Draft, understood: Draft): Draft | null {
  const { open } = before.thread;
  if (open?.kind !== 'choice' || open.again === true) return null;
  const made = understood.moves.slice(before.moves.length);
  const lost = made.every(
    (move) =>
      LOST.includes(move.kind) ||
      (move.kind === 'pass' && move.reason === 'unsure') ||
      (move.kind === 'chat' && (move.chat === 'ok' || move.chat === 'chat')),
  );
  return lost ? putAgain(before, open) : null;
}

export function putAgain(draft: Draft, menu: Menu): Draft {
  const topics = menu.topics.map((topic) => ({ topic, probability: 0 }));
  return opens(does(draft, { kind: 'choose', topics, understood: null, why: 'again' }), { ...menu, again: true });
}
