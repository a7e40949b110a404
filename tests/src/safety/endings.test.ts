import { describe, expect, it } from 'vitest';
import { withEndings } from '../../../src/safety/endings.ts';

describe('regular English endings', () => {
  it.each([
    ['smell~', ['smell', 'smells', 'smelled', 'smelling']],
    ['smoke~', ['smoke', 'smokes', 'smoked', 'smoking']],
    ['hiss~', ['hiss', 'hisses', 'hissed', 'hissing']],
    ['trip~', ['trip', 'trips', 'tripped', 'tripping']],
    ['try~', ['try', 'tries', 'tried', 'trying']],
    ['sway~', ['sway', 'sways', 'swayed', 'swaying']],
    ['gas', ['gas']],
  ])('%s', (entry, forms) => {
    expect(withEndings(entry)).toEqual(forms);
  });
});
