import { describe, expect, it } from 'vitest';
import { DRAWN_HEIGHT, silhouetteOf, Van } from '../../../adapters/pages/silhouettes.tsx';

const UNITS_PER_METRE = 20;
const DRAWN = ['dunlin', 'wren', 'curlew', 'plover', 'godwit'] as const;
const of = (silhouette: string, body: 'caravan' | 'campervan' = 'caravan') => silhouetteOf({ silhouette, body });

describe('the silhouettes', () => {
  it('are as long as the vans, to one scale', () => {
    // Overall lengths in metres, from the firm's fleet sheet.
    const lengths = { dunlin: 7.38, wren: 5.45, curlew: 7.55, plover: 4.95, godwit: 6.65 };
    for (const name of DRAWN) expect(Math.abs(of(name).width / UNITS_PER_METRE - lengths[name])).toBeLessThan(0.1);
  });

  it('are each one\u2019s own', () => {
    const drawings = [...DRAWN, 'caravan', 'campervan'].map((name) =>
      String(<Van van={{ silhouette: name, body: 'caravan' }} unit={1} />),
    );
    expect(new Set(drawings).size).toBe(drawings.length);
  });

  it('have a pole inside them and nothing taller than the frame', () => {
    for (const name of [...DRAWN, 'caravan', 'campervan']) {
      const { pole, width } = of(name);
      expect(pole.x).toBeGreaterThan(0);
      expect(pole.x).toBeLessThan(width);
      expect(pole.y).toBeGreaterThan(60 - DRAWN_HEIGHT);
    }
  });

  it('stand in by body for a van that nobody has drawn', () => {
    expect(of('lapwing')).toBe(of('caravan'));
    expect(of('lapwing', 'campervan')).toBe(of('campervan'));
  });
});
