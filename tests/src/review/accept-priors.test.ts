import { describe, expect, it } from 'vitest';
import { withPriors } from '../../../src/review/accept-priors.ts';
import { aFleet, CAUSES } from './a-fleet.ts';

const YAML = `system: water
topics:
  water-none:
    title: "No water"
    causes:
      # seen most
      - id: empty
        prior: 0.5
      - id: hose
        prior: {dunlin: 0.3, wren: 0.3} # both
`;
const accept = (priors: Record<string, number>, symptom = 'water-none') =>
  withPriors(YAML, { symptom, van: 'dunlin', priors }, aFleet(CAUSES));

describe('withPriors', () => {
  it("changes one van's priors and keeps comments and the rest", () => {
    const changed = accept({ hose: 0.4 });
    expect(changed).toBe(YAML.replace('dunlin: 0.3,', 'dunlin: 0.4,'));
  });

  it('spreads one number out over the vans first, so that the others keep theirs', () => {
    expect(accept({ empty: 0.6 })).toBe(YAML.replace('prior: 0.5', 'prior: {dunlin: 0.6, wren: 0.5}'));
  });

  it('changes several at once, each in its place', () => {
    expect(accept({ empty: 0.525, hose: 0.475 })).toBe(
      YAML.replace('prior: 0.5', 'prior: {dunlin: 0.525, wren: 0.5}').replace('dunlin: 0.3,', 'dunlin: 0.475,'),
    );
  });

  it('is null for a symptom that the file has not', () => {
    expect(accept({ hose: 0.4 }, 'gas-none-anywhere')).toBeNull();
  });
});
