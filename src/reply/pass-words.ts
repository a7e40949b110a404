import { MINUTE_MS } from '../basics/time.ts';
import { staffedAt, whenText } from '../hours/firm-hours.ts';
import type { FirmData } from '../knowledge/schema.ts';
import type { Reason } from '../thread/thread.ts';

/** Answers are promised by the next five minutes, so that the time said is not past its aim by the time it is read. */
const ROUND_MS = 5 * MINUTE_MS;

/**
 * What happens now and when, said truthfully from the firm's hours: a person is promised only while somebody answers.
 *
 * @returns Lines, and the number to ring if there is one.
 */
export function passLines(reason: Reason, firm: FirmData, nowMs: number): readonly string[] {
  const staffed = staffedAt(firm, nowMs);
  const opens = whenText(staffed.opensMs, nowMs, firm.timeZone);
  const passed = PASSED[reason];
  switch (staffed.kind) {
    case 'open': {
      const byMs = Math.ceil((nowMs + firm.aims.officeMinutes * MINUTE_MS) / ROUND_MS) * ROUND_MS;
      if (byMs <= staffed.untilMs) {
        return [passed, `The office will answer here by ${whenText(byMs, nowMs, firm.timeZone)}.`];
      }
      return [
        passed,
        `The office closes at ${whenText(staffed.untilMs, nowMs, firm.timeZone)}. They may answer before then, or when they open again. In a hurry, ring ${firm.phone} now.`,
      ];
    }
    case 'on-call':
      return [
        passed,
        `The office opens at ${opensAt(opens)}. If you cannot stay the night, or it cannot wait, ring on-call on ${firm.onCallPhone} until ${whenText(staffed.untilMs, nowMs, firm.timeZone)}.`,
      ];
    case 'closed':
      return [
        passed,
        `Nobody of the firm answers at this hour. The yard opens at ${opensAt(opens)} and will see this then. If anyone is in danger, call 999 or 112.`,
      ];
  }
}

/** What a thread that waits already is told. */
export function waitingLine(firm: FirmData, nowMs: number): string {
  const staffed = staffedAt(firm, nowMs);
  if (staffed.kind === 'open')
    return `Your message is with the office and I have added this. In a hurry, ring ${firm.phone}.`;
  return `Your message is with the yard and I have added this. They open at ${opensAt(whenText(staffed.opensMs, nowMs, firm.timeZone))}.`;
}

function opensAt(text: string): string {
  return text.replace(/^tomorrow at (.*)$/, '$1 tomorrow').replace(/^([A-Z][a-z]{2}) at (.*)$/, '$2 on $1');
}

const PASSED: Record<Reason, string> = {
  unsure:
    'I am not sure enough to answer that, so I have passed it to the yard with what you told me. Not worth their time? Say "never mind".',
  asked: 'I have passed you on to the yard, with this conversation.',
  safety: 'I have told the yard.',
  'not-fixed': 'That is as far as I can take it, so I have passed it to the yard with everything you tried.',
  'staff-only': 'This is one for our people, so I have passed it on as well.',
  language: 'I have passed this to a person, who will read it.',
};
