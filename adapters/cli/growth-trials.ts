import { randomUUID } from 'node:crypto';
import type { GapGroup, GrowthDecision } from '../../src/index.ts';
import type { Growth, TrialView } from '../yard/growth-world.ts';
import type { Draft, GrowthDesk, Tried } from './growth-desk.ts';

const MOST_KEPT = 20;

type Kept = { view: TrialView; tried: Tried | null };

/**
 * A desk for pages: trials go on beside the server, one after the other, and are found again by their key.
 *
 * @param onStep Called when a page that shows a trial should look again.
 */
export function createGrowth(desk: GrowthDesk, onStep: () => void): Growth {
  const trials = new Map<string, Kept>();
  let last: Promise<void> = Promise.resolve();

  const run = async (kept: Kept, draft: Draft, group: GapGroup): Promise<void> => {
    try {
      let shown = 0;
      const tried = await desk.trial(draft, (done, total) => {
        kept.view = { state: 'replaying', done, total };
        if (done - shown < total / 20) return;
        shown = done;
        onStep();
      });
      const { verdict, lost, figures, words, previews, hirers } = tried;
      const { decision, edits } = draft;
      kept.tried = tried;
      kept.view = { state: 'done', decision, group, verdict, lost, figures, words, previews, edits, hirers };
    } catch (error) {
      kept.view = { state: 'failed', why: error instanceof Error ? error.message : String(error) };
    }
    onStep();
  };

  return {
    groups: desk.groups,
    group: desk.group,
    knowledge: desk.knowledge,
    begin: (decision: GrowthDecision, group: GapGroup) => {
      const drafted = desk.draft(decision, group);
      if (drafted.kind === 'refused') return drafted;
      const key = randomUUID();
      const kept: Kept = { view: { state: 'learning' }, tried: null };
      trials.set(key, kept);
      const [oldest] = trials.keys();
      if (trials.size > MOST_KEPT && oldest !== undefined) trials.delete(oldest);
      last = last.then(() => run(kept, drafted.draft, group));
      return { kind: 'begun', key };
    },
    trial: (key) => trials.get(key)?.view ?? null,
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
    heat: desk.heat,
  };
}
