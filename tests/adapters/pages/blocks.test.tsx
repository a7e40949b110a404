import { describe, expect, it } from 'vitest';
import { Blocks, dialled } from '../../../adapters/pages/blocks.tsx';
import { barSvg } from '../../../adapters/pictures/bar.ts';
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

  it("draw a sum in the drawings' own hand, with its figures in words for whoever cannot see it", () => {
    const bar: Bar = {
      title: 'On a "10 A" post',
      unit: 'W',
      limit: 2300,
      segments: [
        { label: 'heating <2>', amount: 2000 },
        { label: 'kettle', amount: 1000 },
      ],
    };
    const html = drawn([{ kind: 'bar', bar }]);
    const paper = barSvg(bar, 'light');
    const shapes = (svg: string) => [...svg.matchAll(/<(?:rect|path)[^>]*?(?: d| x)="[^"]*"/g)].length;
    expect(shapes(html)).toBe(shapes(paper));
    for (const part of ['2,000 W', '1,000 W', '3,000 W', '2,300 W', 'var(--bar-ink)', '&lt;2>'])
      expect(html).toContain(part);
    expect(html).toContain(
      'role="img" aria-label="On a &quot;10 A&quot; post: heating &lt;2> 2000 + kettle 1000 of 2300 W"',
    );
  });
});
