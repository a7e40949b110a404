import type { Knowledge } from '../knowledge/knowledge.ts';
import { createJudge, type Judge } from './judge.ts';
import { leaningOn } from './leaning.ts';
import type { Model } from './model.ts';
import { trained, untrained } from './ready.ts';
import { readReference } from './refer-back.ts';
import { splits } from './split.ts';
import type { Matcher, Understood } from './types.ts';

/** A message this sure of its topic stands on its own, whatever it points back to. */
const STANDS = 0.85;
/** Both halves of a message must be at least this sure to be answered one by one. */
const SPLIT = { both: 0.45, one: 0.6 };

/**
 * A matcher for one graph.
 *
 * @param model What training left for this very graph; null: naive Bayes alone, ready at once.
 */
export function createMatcher(knowledge: Knowledge, model: Model | null): Matcher {
  const ready = model === null ? untrained(knowledge) : trained(knowledge, model);
  const judge = createJudge(knowledge, ready);

  const understand: Matcher['understand'] = (text, { van, lastTopic, lastText }) => {
    const alone = judge.judge(text, van, null);
    if (lastText === '') return halves(text, alone, judge, van);
    const reference = readReference(text);
    const stands = alone.decision.kind === 'answer' && alone.decision.probability >= STANDS;
    if (reference.kind === 'none' || (reference.kind === 'follows' && stands)) return halves(text, alone, judge, van);
    if (isPlain(alone)) return [alone];
    const corrects = reference.kind === 'corrects';
    const leaning = leaningOn(lastTopic, judge.scoresOf(lastText), ready.keys, knowledge.topics, corrects);
    return [{ ...judge.judge(reference.text, van, leaning), text }];
  };

  return {
    understand,
    nearest: (text, { van }, most) => judge.judge(text, van, null).ranked.slice(0, most),
  };
}

const isPlain = ({ decision: { kind } }: Understood): boolean => kind === 'chat' || kind === 'person';

/** Two questions in one message, where each half is surer of a topic of its own than the whole is of one. */
function halves(text: string, whole: Understood, judge: Judge, van: string): readonly Understood[] {
  if (isPlain(whole)) return [whole];
  let best: readonly Understood[] = [whole];
  let bestWorth = 0;
  for (const [first, second] of splits(text)) {
    const pair = [judge.judge(first, van, null), judge.judge(second, van, null)] as const;
    const worth = worthOf(pair, whole);
    if (worth > bestWorth) {
      best = pair;
      bestWorth = worth;
    }
  }
  return best;
}

function worthOf([first, second]: readonly [Understood, Understood], whole: Understood): number {
  const a = first.ranked[0];
  const b = second.ranked[0];
  if (a === undefined || b === undefined || a.topic === b.topic) return 0;
  if (first.decision.kind !== 'answer' || second.decision.kind !== 'answer') return 0;
  const least = Math.min(a.probability, b.probability);
  const single = whole.ranked[0];
  const told = single !== undefined && (single.topic === a.topic || single.topic === b.topic);
  return least >= (told ? SPLIT.both : SPLIT.one) ? least : 0;
}
