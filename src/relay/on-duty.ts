import { peopleToTell, staffedAt } from '../hours/firm-hours.ts';
import type { FirmData } from '../knowledge/schema.ts';
import type { Reason } from '../thread/thread.ts';

/** Whose business a pass is in office hours: money, dates and whoever wants to talk are the office's, kit is the workshop's. */
const SETTLED_BY: Readonly<Record<Reason, 'office' | 'workshop'>> = {
  'staff-only': 'office',
  asked: 'office',
  language: 'office',
  unsure: 'workshop',
  'not-fixed': 'workshop',
  safety: 'workshop',
};

/**
 * Who is to see to a pass now, first first: by its reason in office hours, by the rota on call. Empty at night, and on call for
 * what only the office can settle: on-call is for emergencies and faults with which nobody can stay the night.
 */
export function peopleFor(reason: Reason | null, firm: FirmData, nowMs: number): readonly FirmData['people'][number][] {
  if (reason === 'staff-only' && staffedAt(firm, nowMs).kind === 'on-call') return [];
  return peopleToTell(firm, nowMs, SETTLED_BY[reason ?? 'unsure']);
}

/** Minutes in which somebody should have it; null while nobody is to see to it. */
export function aimMinutes(reason: Reason | null, firm: FirmData, nowMs: number): number | null {
  if (peopleFor(reason, firm, nowMs).length === 0) return null;
  return staffedAt(firm, nowMs).kind === 'open' ? firm.aims.officeMinutes : firm.aims.onCallMinutes;
}
