/** Who is like whom, and how much: symmetric, by number. A node may be linked to itself once it stands for several. */
export type Links = readonly ReadonlyMap<number, number>[];

const MOST_ROUNDS = 20;
const MOST_LEVELS = 10;

/**
 * Parts a network into communities by the method of Louvain (Blondel, Guillaume, Lambiotte and Lefebvre, 2008) with the
 * constant Potts model as what is made large (Traag, Van Dooren and Nesterov, 2011): the links inside, less `resolution`
 * for each pair inside. Unlike modularity it judges a community the same however many others there are, so that groups
 * stay as they are when more gaps come.
 *
 * @param resolution The likeness that two members must have on the whole, above 0. Higher: smaller communities.
 * @returns          The community of each node, numbered from 0 in the order of their first members. Deterministic.
 */
export function communities(links: Links, resolution: number): readonly number[] {
  let of = links.map((_, node) => node);
  let level: Links = links;
  let sizes = links.map(() => 1);
  for (let n = 0; n < MOST_LEVELS; n++) {
    const moved = moveNodes(level, sizes, resolution);
    if (moved === null) break;
    const names = numbered(moved);
    of = of.map((node) => names[node] as number);
    ({ level, sizes } = folded(level, sizes, names));
  }
  return numbered(of);
}

/** Moves each node to the community it adds most to, until none moves; null when none did at all. */
function moveNodes(links: Links, sizes: readonly number[], resolution: number): number[] | null {
  const of = links.map((_, node) => node);
  const totals = [...sizes];
  let any = false;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let moved = false;
    for (let node = 0; node < links.length; node++) {
      const own = of[node] as number;
      const size = sizes[node] as number;
      totals[own] = (totals[own] as number) - size;
      const gains = gainsOf(node, links, of);
      let best = own;
      let most = (gains.get(own) ?? 0) - resolution * size * (totals[own] as number);
      for (const [community, gain] of gains) {
        const worth = gain - resolution * size * (totals[community] as number);
        if (worth > most + 1e-9) [best, most] = [community, worth];
      }
      totals[best] = (totals[best] as number) + size;
      if (best === own) continue;
      of[node] = best;
      moved = true;
      any = true;
    }
    if (!moved) break;
  }
  return any ? of : null;
}

function gainsOf(node: number, links: Links, of: readonly number[]): Map<number, number> {
  const gains = new Map<number, number>();
  for (const [other, weight] of links[node] as ReadonlyMap<number, number>) {
    if (other === node) continue;
    const community = of[other] as number;
    gains.set(community, (gains.get(community) ?? 0) + weight);
  }
  return gains;
}

/** Each community as one node. */
function folded(
  links: Links,
  sizes: readonly number[],
  of: readonly number[],
): { readonly level: Links; readonly sizes: number[] } {
  const count = Math.max(-1, ...of) + 1;
  const level: Map<number, number>[] = Array.from({ length: count }, () => new Map());
  const sums = new Array<number>(count).fill(0);
  for (const [node, neighbours] of links.entries()) {
    const own = of[node] as number;
    sums[own] = (sums[own] as number) + (sizes[node] as number);
    const into = level[own] as Map<number, number>;
    for (const [other, weight] of neighbours) {
      const there = of[other] as number;
      into.set(there, (into.get(there) ?? 0) + weight);
    }
  }
  return { level, sizes: sums };
}

function numbered(of: readonly number[]): number[] {
  const names = new Map<number, number>();
  return of.map((community) => {
    const name = names.get(community) ?? names.size;
    names.set(community, name);
    return name;
  });
}
