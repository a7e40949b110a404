import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Blocks, dialled } from '../../../adapters/pages/blocks.tsx';
import type { Bar, Block } from '../../../src/index.ts';

const NOTHING = { picture: () => null, file: () => null };
const drawn = (blocks: readonly Block[], finds: Parameters<typeof Blocks>[0]['finds'] = NOTHING) =>
  String(<Blocks blocks={blocks} name="l1" finds={finds} />);

describe('the pieces of a reply', () => {
  it('are numbered steps that can be ticked, each under a name of its own', () => {
    const html = drawn([
      { kind: 'steps', items: ['Open it', 'Shut it'] },
      { kind: 'steps', items: ['Again'] },
    ]);
    expect([...html.matchAll(/data-tick="([^"]+)"/g)].map(([, name]) => name)).toEqual(['l1-0-0', 'l1-0-1', 'l1-1-0']);
    expect(html).toContain('<ol class="steps">');
  });

  it('show a drawing in both themes, and its words alone when there is none', () => {
    const block: Block = { kind: 'picture', use: { picture: 'panel', touch: null, alt: 'The panel by the door' } };
    expect(drawn([block])).toBe('<p class="picture">The panel by the door</p>');
    const html = drawn([block], { ...NOTHING, picture: (_, theme) => `/x.${theme}.svg` });
    expect(html).toContain('srcset="/x.dark.svg"');
    expect(html).toContain('src="/x.light.svg" alt="The panel by the door"');
  });

  it('dial what a number means, whatever it is written like', () => {
    expect(['01632 960147', '+44 (0)1632-960147', '999'].map(dialled)).toEqual([
      'tel:01632960147',
      'tel:+441632960147',
      'tel:999',
    ]);
  });

  it('show a place as coordinates that a map opens', () => {
    expect(
      drawn([{ kind: 'attachment', attachment: { kind: 'location', latitude: 54.1, longitude: -3.25 } }]),
    ).toContain('href="geo:54.1,-3.25"');
  });

  it('leave a photo that browsers cannot draw to the device', () => {
    const heic: Block = { kind: 'attachment', attachment: { kind: 'photo', file: 'a.heic' } };
    const html = drawn([heic], { ...NOTHING, file: (file) => `/file/${file}` });
    expect(html).toContain('<a href="/file/a.heic">A photo</a>');
    expect(drawn([heic])).toBe('<p>[A photo]</p>');
  });

  it('draw the bar of a sum inside its frame, whatever the figures', () => {
    const amount = fc.double({ min: 0, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(amount, fc.array(fc.record({ label: fc.string(), amount }), { maxLength: 8 }), (limit, segments) => {
        const bar: Bar = { title: 'Sum', unit: 'W', limit, segments };
        const html = drawn([{ kind: 'bar', bar }]);
        expect(html).not.toMatch(/NaN|Infinity/);
        for (const [, x = '', width = ''] of html.matchAll(
          /<rect class="part[^"]*" x="([^"]+)" y="8" width="([^"]+)"/g,
        )) {
          expect(Number(x) + Number(width)).toBeLessThanOrEqual(300.2);
          expect(Number(width)).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  it('say the figures of a sum in words as well: each part, together, what there is', () => {
    const html = drawn([
      {
        kind: 'bar',
        bar: {
          title: 'On a 10 A post',
          unit: 'W',
          limit: 2300,
          segments: [
            { label: 'heating', amount: 2000 },
            { label: 'kettle', amount: 1000 },
          ],
        },
      },
    ]);
    for (const part of ['2,000 W', '1,000 W', '3,000 W', '2,300 W', 'class="over"']) expect(html).toContain(part);
  });
});
