import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TELEGRAM_RATES } from '../../../adapters/telegram/limits.ts';
import { createPace } from '../../../adapters/telegram/pace.ts';

/** A clock and a wait on which everybody's timers run in order of time, and nothing takes real time. */
function aTimeline() {
  let nowMs = 0;
  const timers: { at: number; go: () => void }[] = [];
  return {
    clock: { nowMs: () => nowMs },
    wait: (ms: number) => new Promise<void>((go) => timers.push({ at: nowMs + ms, go })),
    /** Lets time pass until nobody waits. */
    async runOut() {
      for (;;) {
        await new Promise((resolve) => setImmediate(resolve));
        const next = timers.sort((a, b) => a.at - b.at).shift();
        if (next === undefined) return;
        nowMs = Math.max(nowMs, next.at);
        next.go();
      }
    },
  };
}

type Sent = { readonly chat: number; readonly at: number; readonly urgent: boolean; readonly n: number };

async function sendAll(wanted: readonly { chat: number; urgent: boolean }[]): Promise<Sent[]> {
  const { clock, wait, runOut } = aTimeline();
  const pace = createPace(clock, wait, new AbortController().signal);
  const sent: Sent[] = [];
  wanted.forEach(({ chat, urgent }, n) => {
    void pace.run(chat, urgent, async () => void sent.push({ chat, urgent, n, at: clock.nowMs() }));
  });
  await runOut();
  return sent;
}

const mostIn = (times: readonly number[], windowMs: number) =>
  Math.max(0, ...times.map((from) => times.filter((at) => at >= from && at < from + windowMs).length));

describe('the pace of sending', () => {
  const message = fc.record({ chat: fc.constantFrom(1, 2, 3, 4, 5, -6, -7), urgent: fc.boolean() });

  it('keeps to the published rates and sends everything, whatever is asked of it', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(message, { maxLength: 90 }), async (wanted) => {
        const sent = await sendAll(wanted);
        expect(sent).toHaveLength(wanted.length);
        expect(
          mostIn(
            sent.map((each) => each.at),
            1000,
          ),
        ).toBeLessThanOrEqual(30);
        for (const chat of new Set(sent.map((each) => each.chat))) {
          const own = sent.filter((each) => each.chat === chat);
          if (chat < 0)
            expect(
              mostIn(
                own.map((each) => each.at),
                60_000,
              ),
            ).toBeLessThanOrEqual(20);
          expect(own.map((each) => each.n)).toEqual(own.map((each) => each.n).toSorted((a, b) => a - b));
          own.forEach((each, i) => {
            const before = own[i - 1];
            if (before !== undefined && !each.urgent) expect(each.at - before.at).toBeGreaterThanOrEqual(1000);
          });
        }
      }),
      { numRuns: 40 },
    );
  });

  it('sends to 200 people at thirty a second', async () => {
    const sent = await sendAll(Array.from({ length: 200 }, (_, i) => ({ chat: i + 1, urgent: false })));
    expect(Math.max(...sent.map((each) => each.at))).toBeGreaterThanOrEqual(6000);
    expect(Math.max(...sent.map((each) => each.at))).toBeLessThanOrEqual(7000);
  });

  it('keeps places in a group’s minute for what is urgent', async () => {
    const wanted = [...Array.from({ length: 25 }, () => ({ chat: -1, urgent: false }))];
    const usual = await sendAll(wanted);
    const free = TELEGRAM_RATES.groupPerMinute - TELEGRAM_RATES.groupKeptForUrgent;
    expect(usual.filter((each) => each.at < 60_000)).toHaveLength(free);
  });

  it('holds a chat for as long as Telegram asked, and no other', async () => {
    const { clock, wait, runOut } = aTimeline();
    const pace = createPace(clock, wait, new AbortController().signal);
    pace.hold(1, 5000);
    expect(pace.freeIn(1, true)).toBe(5000);
    expect(pace.freeIn(2, false)).toBe(0);
    const at: number[] = [];
    void pace.run(1, false, async () => void at.push(clock.nowMs()));
    await runOut();
    expect(at).toEqual([5000]);
  });

  it('goes on after a message that failed', async () => {
    const { clock, wait, runOut } = aTimeline();
    const pace = createPace(clock, wait, new AbortController().signal);
    const failed = pace.run(1, false, () => Promise.reject(new Error('no')));
    failed.catch(() => {});
    const next = pace.run(1, false, async () => 'sent');
    await runOut();
    await expect(failed).rejects.toThrow('no');
    await expect(next).resolves.toBe('sent');
  });

  it('sends nothing more once it stops while a message waits', async () => {
    const stopping = new AbortController();
    const pace = createPace({ nowMs: () => 0 }, async () => stopping.abort(), stopping.signal);
    await pace.run(1, false, async () => 'first');
    await expect(pace.run(1, false, async () => 'second')).rejects.toMatchObject({ failure: 'unready' });
  });
});
