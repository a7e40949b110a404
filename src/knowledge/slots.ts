import type { PartId } from '../basics/ids.ts';
import type { FirmData, PartData, SiteData, VanData } from './schema.ts';

/** What slots are filled from. `site` is null when the booking's site is not known. */
export type SlotSource = {
  readonly van: VanData;
  readonly parts: ReadonlyMap<PartId, Pick<PartData, 'is' | 'of' | 'name'>>;
  readonly firm: FirmData;
  readonly site: SiteData | null;
};

const SLOT = /\{([a-z0-9-]+)\.([A-Za-z0-9-]+)\}/g;

export type Filled = { readonly text: string; readonly missing: readonly string[] };

/**
 * Fills {part.value}, {van.value}, {firm.value} and {site.value}.
 * A part's value is looked up on the van's own part, on the variant that plays the role, then on the parts it belongs to.
 *
 * @returns The text, and the slots for which nothing was found (left as they stand).
 */
export function fillSlots(text: string, source: SlotSource): Filled {
  const missing: string[] = [];
  const filled = text.replace(SLOT, (whole, owner: string, name: string) => {
    const value = slotValue(owner, name, source);
    if (value === null) {
      missing.push(whole);
      return whole;
    }
    return String(value);
  });
  return { text: filled, missing };
}

/** The slots a text uses, as [owner, value name] pairs. */
export function slotsIn(text: string): [string, string][] {
  return [...text.matchAll(SLOT)].map((found) => [found[1] ?? '', found[2] ?? '']);
}

export function slotValue(owner: string, name: string, source: SlotSource): string | number | null {
  switch (owner) {
    case 'van':
      return name === 'name' ? source.van.name : (source.van.values[name] ?? null);
    case 'firm':
      return firmValue(name, source.firm);
    case 'site':
      return siteValue(name, source.site);
    default:
      return partValue(owner, name, source);
  }
}

function firmValue(name: string, firm: FirmData): string | number | null {
  if (name === 'name' || name === 'yard' || name === 'phone' || name === 'onCallPhone') return firm[name];
  return firm.values[name] ?? null;
}

/** A site is known only at run time; unknown it is 'your site', so that answers read well all the same. */
function siteValue(name: string, site: SiteData | null): string | number | null {
  if (site === null) return name === 'name' ? 'your site' : null;
  return name === 'name' ? site.name : (site.values[name] ?? null);
}

function partValue(owner: PartId, name: string, source: SlotSource): string | number | null {
  for (const [id, values] of Object.entries(source.van.has)) {
    if (!plays(id, owner, source.parts)) continue;
    const value = values[name];
    if (value !== undefined) return value;
    if (name === 'name') return source.parts.get(id)?.name ?? null;
  }
  return null;
}

/** Whether part `id` is `role`, or a variant of it at any remove. */
export function plays(id: PartId, role: PartId, parts: SlotSource['parts']): boolean {
  let at: PartId | undefined = id;
  for (let steps = 0; at !== undefined && steps < 8; steps++) {
    if (at === role) return true;
    at = parts.get(at)?.is;
  }
  return false;
}
