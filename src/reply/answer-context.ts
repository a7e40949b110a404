import type { Holder } from '../knowledge/holds.ts';
import type { Knowledge, VanScope } from '../knowledge/knowledge.ts';
import type { SiteData } from '../knowledge/schema.ts';
import { fillSlots, type SlotSource } from '../knowledge/slots.ts';

/** Where and when an answer is given. */
export type AnswerContext = {
  readonly knowledge: Knowledge;
  readonly scope: VanScope;
  readonly site: SiteData | null;
  readonly nowMs: number;
};

/** Fills the slots of a text for the van and site of the context. */
export function fill(text: string, context: AnswerContext): string {
  return fillSlots(text, slotSource(context)).text;
}

export function slotSource({ knowledge, scope, site }: Omit<AnswerContext, 'nowMs'>): SlotSource {
  return { van: scope.data, parts: knowledge.parts, firm: knowledge.firm, site };
}

/** What conditions are judged on: the van, and whether its site is known. */
export function holderOf({ scope, site }: Pick<AnswerContext, 'scope' | 'site'>): Holder {
  return { id: scope.id, parts: scope.parts, atKnownSite: site !== null };
}
