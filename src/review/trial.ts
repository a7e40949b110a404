import type { TopicId, VanId } from '../basics/ids.ts';
import type { QuestionsData } from '../knowledge/schema.ts';

export type RecordedQuestion = QuestionsData['questions'][number];

/** What a question came to. */
export type Got = {
  readonly outcome: string;
  readonly topic: TopicId | null;
  readonly offered: readonly TopicId[];
  readonly hazard: TopicId | null;
  readonly lacks: TopicId | null;
};

/** `right`: as recorded. `offered`: among the choices. `passed`: people got it. `wrong`: something else was answered. */
export type Verdict = 'right' | 'offered' | 'passed' | 'wrong';

export type Trialled = {
  readonly text: string;
  readonly van: VanId | null;
  readonly expected: string;
  readonly verdict: Verdict;
  readonly got: string;
  readonly safety: boolean;
};

/** Answers one text in a fresh thread of a van's booking: the whole turn, given by the caller. */
export type AskOne = (text: string, van: VanId | null) => Got;

/** Replays one recorded question. */
export function tryQuestion(question: RecordedQuestion, isNotice: (topic: TopicId) => boolean, ask: AskOne): Trialled {
  const van = question.van ?? null;
  const got = ask(question.text, van);
  const safety = question.outcome === 'safety' || (question.topic !== undefined && isNotice(question.topic));
  return {
    text: question.text,
    van,
    expected: question.topic ?? question.outcome ?? 'anything',
    verdict: verdictOf(question, safety, got),
    got: got.hazard ?? got.topic ?? (got.lacks === null ? got.outcome : `lacks ${got.lacks}`),
    safety,
  };
}

const ANSWERS = ['answer', 'check', 'calculate'];

function verdictOf({ topic, outcome }: RecordedQuestion, safety: boolean, got: Got): Verdict {
  if (safety)
    return got.hazard !== null && (topic === undefined || got.hazard === topic)
      ? 'right'
      : got.hazard !== null
        ? 'offered'
        : 'wrong';
  if (topic === undefined)
    return outcome === undefined || got.outcome === outcome
      ? 'right'
      : ANSWERS.includes(got.outcome)
        ? 'wrong'
        : 'passed';
  if (outcome === 'lacks') return got.lacks === topic ? 'right' : got.topic === null ? 'passed' : 'wrong';
  if (got.topic === topic) return 'right';
  if (got.offered.includes(topic)) return 'offered';
  return got.hazard !== null || got.topic !== null || got.lacks !== null ? 'wrong' : 'passed';
}

/** The few numbers of a trial. */
export type TrialSummary = Readonly<Record<Verdict, number>> & {
  readonly questions: number;
  readonly safetyMissed: number;
};

export function summaryOf(trialled: readonly Trialled[]): TrialSummary {
  const count = (verdict: Verdict): number => trialled.filter((each) => each.verdict === verdict).length;
  return {
    questions: trialled.length,
    right: count('right'),
    offered: count('offered'),
    passed: count('passed'),
    wrong: count('wrong'),
    safetyMissed: trialled.filter((each) => each.safety && each.verdict === 'wrong').length,
  };
}

const RANK: Readonly<Record<Verdict, number>> = { right: 3, offered: 2, passed: 1, wrong: 0 };

export type Change = {
  readonly text: string;
  readonly van: VanId | null;
  readonly before: string;
  readonly after: string;
};
export type Comparison = {
  readonly better: readonly Change[];
  readonly worse: readonly Change[];
  readonly changed: readonly Change[];
};

/** What a changed graph does to the same questions. Questions that only one of the two has are left out. */
export function compareTrials(before: readonly Trialled[], after: readonly Trialled[]): Comparison {
  const old = new Map(before.map((each) => [keyOf(each), each] as const));
  const better: Change[] = [];
  const worse: Change[] = [];
  const changed: Change[] = [];
  for (const now of after) {
    const was = old.get(keyOf(now));
    if (was === undefined || (was.verdict === now.verdict && was.got === now.got)) continue;
    const step = RANK[now.verdict] - RANK[was.verdict];
    const list = step > 0 ? better : step < 0 ? worse : changed;
    list.push({
      text: now.text,
      van: now.van,
      before: `${was.verdict}: ${was.got}`,
      after: `${now.verdict}: ${now.got}`,
    });
  }
  return { better, worse, changed };
}

/** Questions that are answered wrongly. `fresh`: dangers missed that were not missed before, or are asked for the first time. */
export type Misses = { readonly known: readonly Trialled[]; readonly fresh: readonly Trialled[] };

/** @param before The trial that was accepted last. */
export function missesOf(before: readonly Trialled[], after: readonly Trialled[]): Misses {
  const wrong = new Set(before.filter(({ verdict }) => verdict === 'wrong').map(keyOf));
  const missed = after.filter(({ verdict }) => verdict === 'wrong');
  return {
    known: missed.filter((each) => wrong.has(keyOf(each))),
    fresh: missed.filter((each) => each.safety && !wrong.has(keyOf(each))),
  };
}

function keyOf({ text, van }: Trialled): string {
  return `${van ?? ''}\t${text}`;
}
