import fc from 'fast-check';
import { expect, test } from 'vitest';
import { memoryJobs } from '../../../adapters/memory/memory-jobs.ts';
import { memoryStore } from '../../../adapters/memory/memory-store.ts';
import { everything, step } from '../../contracts/store-model.ts';
import { sqlite } from './temporary.ts';

test('answers as the plain store in memory does, whatever is done and wherever the process ends', async () => {
  const steps = fc.array(
    fc.oneof({ weight: 20, arbitrary: step }, { weight: 1, arbitrary: fc.constant('reopen' as const) }),
    {
      minLength: 5,
      maxLength: 60,
      size: 'max',
    },
  );
  await fc.assert(
    fc.asyncProperty(steps, async (all) => {
      const plain = { store: memoryStore(), jobs: memoryJobs() };
      const { end, reopen, ...opened } = await sqlite.open();
      let kept = opened;
      try {
        for (const each of all) {
          if (each === 'reopen') kept = (await reopen?.()) ?? kept;
          else expect(await each.run(kept), each.name).toEqual(await each.run(plain));
        }
        expect(await everything(kept)).toEqual(await everything(plain));
      } finally {
        await end();
      }
    }),
    { numRuns: 40 },
  );
});
