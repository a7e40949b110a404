import { CHANNEL } from './visitor.ts';
import type { WebWorld } from './world.ts';

/** Waits until the last thing said at an address is not the hirer's, or staff have it, or `patienceMs` is over. */
export async function untilAnswered(world: WebWorld, address: string, patienceMs: number): Promise<void> {
  const bell = world.wakes.join(address);
  try {
    const untilMs = world.clock.nowMs() + patienceMs;
    for (;;) {
      const thread = await world.store.threadAt({ channel: CHANNEL, address });
      const lines = thread === null ? [] : await world.store.lines(thread.id);
      const leftMs = untilMs - world.clock.nowMs();
      if (lines.at(-1)?.who !== 'hirer' || thread?.keeper === 'staff' || leftMs <= 0) return;
      if ((await bell.wait(Math.min(leftMs, 500))) === 'closed') return;
    }
  } finally {
    bell.leave();
  }
}
