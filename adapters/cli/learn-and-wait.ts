import type { Knowledge } from '../../src/index.ts';
import type { Learnt, Models } from '../training/models.ts';

const PATIENCE_MS = 180_000;

/** What is learnt from a graph, once the weights and the second net are there; their confidence may still come. */
export function learnAndWait(models: Models, patienceMs = PATIENCE_MS): (knowledge: Knowledge) => Promise<Learnt> {
  return (knowledge) =>
    new Promise((resolve, reject) => {
      // Keeps a command alive as well: the worker alone does not.
      const timer = setTimeout(() => {
        reject(new Error(`the changed graph was not learnt within ${patienceMs / 1000} s; try again`));
      }, patienceMs);
      const take = (learnt: Learnt): void => {
        if (learnt.model === null || learnt.net === null) return;
        clearTimeout(timer);
        resolve(learnt);
      };
      take(models(knowledge, take));
    });
}
