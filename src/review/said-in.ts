import { everyText, firstThatHolds } from '../knowledge/holds.ts';
import type { Knowledge, VanScope } from '../knowledge/knowledge.ts';
import type { Says } from '../knowledge/schema.ts';
import { fillSlots } from '../knowledge/slots.ts';

/** What a text of the graph comes to in a van with its values filled in; without a van, each way it can be put. */
export function saidIn(says: Says, van: VanScope | null, { parts, firm }: Knowledge): readonly string[] {
  if (van === null) return everyText(says);
  const text = firstThatHolds(says, van);
  return text === null ? [] : [fillSlots(text, { van: van.data, parts, firm, site: null }).text];
}
