import { afterEach, describe, expect, it } from 'vitest';
import { createGrowth } from '../../../adapters/cli/growth-trials.ts';
import type { GapGroup, GrowthDecision } from '../../../src/index.ts';
import { aGap, type SmallDesk, smallDesk } from '../../helpers/small-desk.ts';

const ASIDE: GrowthDecision = { kind: 'set-aside', wordings: ['is there a pool near here'] };

describe('trials beside the server', () => {
  let small: SmallDesk | null = null;
  afterEach(() => small?.remove());

  /** A desk whose trials last until they are ended; those that were. */
  async function endless() {
    small = smallDesk();
    for (const text of ['is there a pool near here', 'which temperature for a pie']) await small.came([aGap(text)]);
    const ended: string[] = [];
    const { desk } = small;
    const growth = createGrowth(
      {
        ...desk,
        trial: (draft, how) =>
          new Promise((_resolve, reject) => {
            how?.signal?.addEventListener('abort', () => {
              ended.push(draft.gaps[0]?.text ?? '');
              reject(how.signal?.reason);
            });
          }),
      },
      () => {},
    );
    const [pool, pie] = (await desk.groups()) as [GapGroup, GapGroup];
    const begin = (group: GapGroup): string => {
      const begun = growth.begin(ASIDE, group);
      if (begun.kind !== 'begun') throw new Error(begun.problems.join());
      return begun.key;
    };
    return { growth, begin, pool, pie, ended };
  }
  const turns = () => new Promise((resolve) => setImmediate(resolve));

  it('are ended when another of the same questions is begun, and only then', async () => {
    const { growth, begin, pool, pie, ended } = await endless();
    const first = begin(pool);
    await turns();
    begin(pie);
    await turns();
    expect(ended).toEqual([]);
    begin(pool);
    await turns();
    expect(ended).toEqual([pool.gaps[0]?.text]);
    expect(growth.trial(first)).toEqual({ state: 'failed', why: 'another trial of the same questions was begun' });
  });

  it('keep what was decided, to be changed and tried again', async () => {
    const { growth, begin, pool } = await endless();
    expect(growth.decisionTried(begin(pool))).toEqual(ASIDE);
    expect(growth.decisionTried('no-such-trial')).toBeNull();
  });
});
