import { randomUUID } from 'node:crypto';
import type { GapGroup, GrowthDecision } from '../../src/index.ts';
import type { Growth, TrialView } from '../yard/growth-world.ts';
import type { Draft, GrowthDesk, Tried } from './growth-types.ts';

const MOST_KEPT = 20;

type Kept = {
  readonly decision: GrowthDecision;
  readonly group: GapGroup;
  readonly end: AbortController;
  view: TrialView;
  tried: Tried | null;
};

/**
 * A desk for pages: trials go on beside the server, one after the other, and are found again by their key. A later trial of
 * the same questions ends an earlier one that is not over.
 *
 * @param onStep Called when a page that shows a trial should look again.
 */
export function createGrowth(desk: GrowthDesk, onStep: () => void): Growth {
  const trials = new Map<string, Kept>();
  let last: Promise<void> = Promise.resolve();

  const run = async (kept: Kept, draft: Draft): Promise<void> => {
    try {
      let shown = 0;
      kept.end.signal.throwIfAborted();
      const tried = await desk.trial(draft, {
        signal: kept.end.signal,
        onStep: (done, total) => {
          kept.view = { state: 'replaying', done, total };
          if (done - shown < total / 20) return;
          shown = done;
          onStep();
        },
      });
      const { verdict, lost, figures, words, previews, hirers } = tried;
      const { decision, edits } = draft;
      kept.tried = tried;
      kept.view = {
        state: 'done',
        decision,
        group: kept.group,
        verdict,
        lost,
        figures,
        words,
        previews,
        edits,
        hirers,
      };
    } catch (error) {
      kept.view = { state: 'failed', why: error instanceof Error ? error.message : String(error) };
    }
    onStep();
  };

  const isOver = ({ view }: Kept): boolean => view.state === 'done' || view.state === 'failed';
  const discard = (kept: Kept): void => {
    if (!isOver(kept)) kept.end.abort(new Error('another trial of the same questions was begun'));
  };

  return {
    groups: desk.groups,
    group: desk.group,
    knowledge: desk.knowledge,
    begin: (decision: GrowthDecision, group: GapGroup) => {
      const drafted = desk.draft(decision, group);
      if (drafted.kind === 'refused') return drafted;
      for (const other of trials.values()) if (other.group.id === group.id) discard(other);
      const key = randomUUID();
      const kept: Kept = { decision, group, end: new AbortController(), view: { state: 'learning' }, tried: null };
      trials.set(key, kept);
      const [oldest] = trials.entries();
      if (trials.size > MOST_KEPT && oldest !== undefined) {
        discard(oldest[1]);
        trials.delete(oldest[0]);
      }
      last = last.then(() => run(kept, drafted.draft));
      return { kind: 'begun', key };
    },
    trial: (key) => trials.get(key)?.view ?? null,
    decisionTried: (key) => trials.get(key)?.decision ?? null,
    publish: async (key, how) => {
      const tried = trials.get(key)?.tried;
      if (tried == null) return { kind: 'refused', problems: ['the trial is too long ago, or not over: try it again'] };
      const published = await desk.publish(tried, how);
      if (published.kind === 'published') trials.delete(key);
      return published;
    },
    changes: desk.changes,
    undo: desk.undo,
    figures: desk.figures,
    effects: desk.effects,
    heat: desk.heat,
  };
}
