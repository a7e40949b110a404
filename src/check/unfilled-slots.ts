import type { Knowledge, Topic, VanScope } from '../knowledge/knowledge.ts';
import type { SiteData } from '../knowledge/schema.ts';
import { slotsIn, slotValue } from '../knowledge/slots.ts';
import type { FieldPath } from '../knowledge/yaml-file.ts';
import { slotSource } from '../reply/answer-context.ts';
import { type PlacedText, textsIn } from './texts.ts';

/** A slot of a topic's texts that nothing fills in one van, with the field of the text. */
export type UnfilledSlot = { readonly field: FieldPath; readonly owner: string; readonly name: string };

export function unfilledSlots(topic: Topic, scope: VanScope, knowledge: Knowledge): readonly UnfilledSlot[] {
  return textsAtEverySite(topic, scope, knowledge).flatMap(({ field, text, site }) => {
    const source = slotSource({ knowledge, scope, site });
    return slotsIn(text)
      .filter(([owner, name]) => slotValue(owner, name, source) === null)
      .map(([owner, name]) => ({ field, owner, name }));
  });
}

type AtSite = PlacedText & { readonly site: SiteData | null };

/** What is said with no site known, and what at each of the sites: only texts with {site...} differ between them. */
function textsAtEverySite(topic: Topic, scope: VanScope, knowledge: Knowledge): AtSite[] {
  const away = textsIn(topic, scope, false).map((text) => ({ ...text, site: null }));
  const sites = Object.values(knowledge.places.sites);
  const there = textsIn(topic, scope, true).filter(({ text }) => text.includes('{site.'));
  return [...away, ...there.flatMap((text) => sites.map((site) => ({ ...text, site })))];
}
