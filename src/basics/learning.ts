/** What is learnt beside the graph: the weights of the matcher, the safety reading's second net. */
export type Learner = 'match' | 'safety';

/** Put in by the build (.config/learning.mjs). */
declare const LEARNING_CODE: Readonly<Record<Learner, string>>;

/**
 * A name for the code that learns, which is another whenever that code is: it goes into the name of what was learnt, so
 * that nothing is used that other code left.
 */
export function codeNameOf(learner: Learner): string {
  return LEARNING_CODE[learner];
}
