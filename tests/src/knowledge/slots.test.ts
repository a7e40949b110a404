import { describe, expect, it } from 'vitest';
import { fillSlots } from '../../../src/knowledge/slots.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const knowledge = smallKnowledge();
const source = (van: string) => {
  const scope = knowledge.vans.get(van);
  if (scope === undefined) throw new Error(van);
  return { van: scope.data, parts: knowledge.parts, firm: knowledge.firm, site: null };
};

describe('slots', () => {
  it('are filled by the variant that plays the role in the van', () => {
    expect(fillSlots('At {fridge.where}.', source('buttercup')).text).toBe('At the kitchen.');
    expect(fillSlots('At {fridge.where}.', source('daisy')).text).toBe('At the wardrobe.');
  });

  it('name the van, the firm and a site that is not known', () => {
    expect(fillSlots('{van.name} at {site.name}: {firm.phone}', source('daisy')).text).toBe(
      `Daisy at your site: ${knowledge.firm.phone}`,
    );
  });

  it('are reported when nothing fills them, and stay as they are', () => {
    expect(fillSlots('Fuse {fridge.fuse}', source('daisy'))).toEqual({
      text: 'Fuse {fridge.fuse}',
      missing: ['{fridge.fuse}'],
    });
  });
});
