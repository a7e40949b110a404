import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkGraph } from '../../../src/check/check-graph.ts';
import { draftVan, fittingsToAsk, vanId } from '../../../src/check/new-van.ts';
import { van as vanSchema } from '../../../src/knowledge/schema.ts';
import { scopeOf } from '../../../src/knowledge/scope.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const knowledge = realKnowledge();
const slipAt = (file: string, field: readonly (string | number)[], problem: string, expected: string) => ({
  file,
  line: 1,
  column: 1,
  field: field.join('.'),
  problem,
  expected,
});

describe('a new van', () => {
  it('passes the check with any mixture of what is offered', () => {
    const vans = [...knowledge.vans.values()];
    fc.assert(
      fc.property(fc.constantFrom(...vans), fc.infiniteStream(fc.nat(20)), (like, picks) => {
        const fitted = new Map(
          fittingsToAsk(knowledge, like).map(({ role, options }) => {
            const option = options[(picks.next().value ?? 0) % options.length];
            return [role, option?.part ?? null] as const;
          }),
        );
        const { van } = draftVan(knowledge, { name: 'Grey Wagtail', like: like.id, fitted });
        expect(vanSchema.safeParse(van).error?.issues ?? []).toEqual([]);
        const scope = scopeOf(van, knowledge.parts, knowledge.topics);
        const withIt = { ...knowledge, vans: new Map([...knowledge.vans, [van.van, scope]]) };
        const slips = checkGraph(withIt, slipAt).filter((slip) => /Grey Wagtail/.test(slip.problem));
        expect(slips.map((slip) => `${slip.file} ${slip.field}: ${slip.problem}`)).toEqual([]);
      }),
      { numRuns: 15 },
    );
  });

  it('is named after its name', () => {
    expect(vanId('Grey Wagtail')).toBe('grey-wagtail');
    expect(() => vanId('???')).toThrow(/file name/);
  });
});
