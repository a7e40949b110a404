import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spliceOf, takenBack } from '../../../src/review/changes.ts';
import { judgeTrial } from '../../../src/review/judge-trial.ts';
import type { Trialled } from '../../../src/review/trial.ts';

describe('taking a change back', () => {
  it('restores any text to the byte', () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 60 });
    fc.assert(
      fc.property(text, text, (before, after) => {
        expect(takenBack(after, spliceOf({ path: 'a', before, after }))).toBe(before);
      }),
    );
  });

  it('leaves what others have changed elsewhere since', () => {
    const lines = Array.from({ length: 60 }, (_, i) => `- line ${i} of the file`);
    const before = lines.join('\n');
    const after = lines.toSpliced(30, 0, '- the new one').join('\n');
    const since = `# by hand\n${after}`;
    expect(takenBack(since, spliceOf({ path: 'a', before, after }))).toBe(`# by hand\n${before}`);
  });

  it('is refused when what was written is there no longer', () => {
    const splice = spliceOf({ path: 'a', before: 'a\nb\n', after: 'a\nnew\nb\n' });
    expect(takenBack('a\nnewer\nb\n', splice)).toBeNull();
  });
});

function aTrial(change: Partial<Trialled>): Trialled {
  return { text: 'q', van: 'wren', expected: 't', verdict: 'right', got: 't', safety: false, ...change };
}

describe('judging a trial', () => {
  it('finds a change fit that makes nothing worse', () => {
    expect(judgeTrial([aTrial({ verdict: 'passed', got: 'pass' })], [aTrial({})])).toMatchObject({ verdict: 'fit' });
  });

  it('finds it worse when a question is stolen', () => {
    const stolen = aTrial({ verdict: 'wrong', got: 'other' });
    expect(judgeTrial([aTrial({})], [stolen])).toMatchObject({ verdict: 'worse', figures: { worse: [{ text: 'q' }] } });
  });

  it('finds it unsafe when a notice is no longer shown, or another is', () => {
    const safe = aTrial({ safety: true });
    for (const verdict of ['wrong', 'offered'] as const)
      expect(judgeTrial([safe], [{ ...safe, verdict }])).toMatchObject({ verdict: 'unsafe', lost: ['q'] });
  });

  it('holds no change to a notice that was missing before', () => {
    const missed = aTrial({ safety: true, verdict: 'wrong', got: 'pass' });
    expect(judgeTrial([missed], [missed])).toMatchObject({ verdict: 'fit' });
  });
});
