import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { plainScalar, withItems, withKey, withScalar } from '../../../src/review/yaml-edits.ts';

const aLine = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
  .map((text) => text.replace(/\s+/g, ' ').trim())
  .filter((text) => /\p{L}/u.test(text));

describe('a text in YAML', () => {
  it('is read back as it was, in a block list and in a flow list', () => {
    fc.assert(
      fc.property(fc.array(aLine, { minLength: 1, maxLength: 4 }), (texts) => {
        const items = texts.map(plainScalar);
        expect(parse(withItems('a:\n  b:\n    - one # kept\n\nc: 1\n', ['a', 'b'], items) ?? '')).toEqual({
          a: { b: ['one', ...texts] },
          c: 1,
        });
        expect(parse(withItems('a: [one]\n', ['a'], items) ?? '')).toEqual({ a: ['one', ...texts] });
      }),
    );
  });
});

describe('an edit', () => {
  it('goes after the last item, before the comment of what comes next', () => {
    const yaml = 'list:\n  - a\n  - b\n\n# about the next\nnext: 1\n';
    expect(withItems(yaml, ['list'], ['c'])).toBe('list:\n  - a\n  - b\n  - c\n\n# about the next\nnext: 1\n');
  });

  it('keeps a file without a last line end, and one with CRLF, as they are', () => {
    expect(withKey('a: 1', [], 'b', '2')).toBe('a: 1\nb: 2');
    expect(withKey('a: 1\r\n', [], 'b', '2')).toBe('a: 1\r\nb: 2\r\n');
  });

  it('replaces one text and nothing around it', () => {
    expect(withScalar('a: "old" # why\nb: 1\n', ['a'], '"new"')).toBe('a: "new" # why\nb: 1\n');
  });

  it('goes below a text that runs over several lines', () => {
    const yaml = 'a:\n  - >\n    long\n    text\nb: 1\n';
    expect(parse(withItems(yaml, ['a'], ['c']) ?? '')).toEqual({ a: ['long text\n', 'c'], b: 1 });
  });

  it('refuses what is not there, what is there already, and a list laid out over lines in brackets', () => {
    expect(withItems('a: 1\n', ['a'], ['b'])).toBeNull();
    expect(withKey('a: {b: 1}\n', ['a'], 'b', '2')).toBeNull();
    expect(withItems('a: [\n  b,\n]\n', ['a'], ['c'])).toBeNull();
  });

  it('adds one line to any file of systems, whatever its layout', () => {
    for (const file of readdirSync('graph/systems')) {
      const yaml = readFileSync(`graph/systems/${file}`, 'utf8');
      const edited = withKey(yaml, ['topics'], 'zz-new', ['kind: fact']);
      expect(edited?.length, file).toBe(yaml.length + '  zz-new:\n    kind: fact\n'.length);
      expect(Object.keys((parse(edited ?? '') as { topics: object }).topics).at(-1), file).toBe('zz-new');
    }
  });
});
