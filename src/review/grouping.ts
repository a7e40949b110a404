import type { Glossary } from '../language/glossary.ts';
import { communities } from './communities.ts';
import { createNeighbourhood, type Neighbour } from './gap-vectors.ts';

/**
 * The likeness that two members of a group must have on the whole; pairs that are no neighbours count as having none.
 * Set on training halves of the open data sets. Of what is measured on, only banking77's overlaps them.
 */
const RESOLUTION = 0.02;

/** Texts in groups that ask the same. `id` is the caller's own. */
export type Grouping = {
  /** Puts one text to the group it adds most to, or into one of its own. */
  readonly join: (id: number, text: string) => void;
  /** Parts all texts anew. Deterministic: the same texts in the same order give the same groups. */
  readonly regroup: () => void;
  /** Ids of each group in the order they came; largest group first, then the one that began earlier. */
  readonly groups: () => readonly (readonly number[])[];
};

/** @param background Texts that tell which words are common: the graph's wordings. */
export function createGrouping(glossary: Glossary, background: readonly string[]): Grouping {
  const neighbourhood = createNeighbourhood(glossary, background);
  const ids: number[] = [];
  let groupOf: number[] = [];
  let sizes: number[] = [];

  const put = (item: number, group: number): void => {
    groupOf[item] = group;
    sizes[group] = (sizes[group] ?? 0) + 1;
  };

  return {
    join: (id, text) => {
      const item = neighbourhood.add(text);
      ids[item] = id;
      put(item, groupFor(neighbourhood.near(item), groupOf, sizes));
    },
    regroup: () => {
      neighbourhood.reweigh();
      const links: Map<number, number>[] = ids.map(() => new Map());
      for (let item = 0; item < ids.length; item++) {
        for (const { item: other, likeness } of neighbourhood.near(item)) {
          links[item]?.set(other, likeness);
          links[other]?.set(item, likeness);
        }
      }
      groupOf = [];
      sizes = [];
      for (const [item, group] of communities(links, RESOLUTION).entries()) put(item, group);
    },
    groups: () => {
      const members: number[][] = sizes.map(() => []);
      for (const [item, group] of groupOf.entries()) members[group]?.push(ids[item] as number);
      return members
        .filter((group) => group.length > 0)
        .sort((a, b) => b.length - a.length || (a[0] as number) - (b[0] as number));
    },
  };
}

/** The same gain that regrouping reckons with, for one newcomer. */
function groupFor(near: readonly Neighbour[], groupOf: readonly number[], sizes: readonly number[]): number {
  const links = new Map<number, number>();
  for (const { item, likeness } of near) {
    const group = groupOf[item] as number;
    links.set(group, (links.get(group) ?? 0) + likeness);
  }
  let best = sizes.length;
  let most = 0;
  for (const [group, gain] of links) {
    const worth = gain - RESOLUTION * (sizes[group] as number);
    if (worth > most) [best, most] = [group, worth];
  }
  return best;
}
