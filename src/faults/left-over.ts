import type { ScopedCause } from '../knowledge/knowledge.ts';

/**
 * Whether a fix gets the hirer going and leaves something to look at before the next hire: a trick, a fuse that blew for
 * some reason, a main safety switch that fell for some reason.
 */
export function leavesOver({ fix }: ScopedCause): boolean {
  return fix.trick || fix.fuse || fix.reset;
}
