import { percent } from '../basics/percent.ts';
import type { Attachment } from '../message/message.ts';
import type { Brief, Reason } from '../thread/thread.ts';

export type Urgency = 'danger' | 'urgent' | 'usual';

/** One line of a brief. Channels choose how each kind looks; the order is the order of reading. */
export type BriefLine = {
  readonly kind: 'alarm' | 'who' | 'why' | 'question' | 'with' | 'understood' | 'tried' | 'phone' | 'suggested';
  readonly text: string;
};

/** A brief fits into one message on every channel; the whole of a long text stands in the thread itself. */
const QUESTION_UNITS = 1500;
const TRIED_UNITS = 600;
/** Enough to judge an answer by; the press sends it whole. */
const SUGGESTED_UNITS = 500;

/**
 * A brief as a person reads it in five seconds: what burns, who and where, why it came, the hirer's own words, what the
 * bot made of them, what was tried, the number to ring, the answer that lies ready.
 */
export function briefLines(brief: Brief, urgency: Urgency): readonly BriefLine[] {
  const lines: (BriefLine | null)[] = [
    alarmLine(brief, urgency),
    { kind: 'who', text: whoText(brief) },
    { kind: 'why', text: whyText(brief) },
    brief.question.trim() === ''
      ? null
      : { kind: 'question', text: `“${shortened(brief.question.trim(), QUESTION_UNITS)}”` },
    brief.attachments.length === 0 ? null : { kind: 'with', text: `With it: ${attachmentsText(brief.attachments)}` },
    understoodLine(brief),
    brief.tried.length === 0
      ? null
      : { kind: 'tried', text: `Tried: ${shortened(brief.tried.join('; '), TRIED_UNITS)}` },
    brief.phone === null ? null : { kind: 'phone', text: `Ring: ${brief.phone}` },
    brief.suggested === null ? null : { kind: 'suggested', text: shortened(brief.suggested, SUGGESTED_UNITS) },
  ];
  return lines.filter((line) => line !== null);
}

/** What a booking's conversations are called among staff: 'Dunlin, Ada'. */
export function briefTitle(brief: Pick<Brief, 'van' | 'firstName'>): string {
  return [brief.van, brief.firstName ?? (brief.van === null ? 'Somebody without a booking' : null)]
    .filter((part) => part !== null)
    .join(', ');
}

function alarmLine(brief: Brief, urgency: Urgency): BriefLine | null {
  if (urgency === 'usual') return null;
  const what = brief.hazard === null ? '' : `: ${brief.hazard.replace(/^safety-/, '').replaceAll('-', ' ')}`;
  return { kind: 'alarm', text: urgency === 'danger' ? `DANGER${what}` : `Cannot wait${what}` };
}

function whoText(brief: Brief): string {
  const place = [brief.site, brief.pitch === null ? null : `pitch ${brief.pitch}`]
    .filter((part) => part !== null)
    .join(', ');
  const parts = [
    brief.firstName ?? 'No booking yet',
    brief.van,
    place === '' ? null : place,
    nightsText(brief.nightsLeft),
    brief.amps === null ? null : brief.amps === 0 ? 'no hook-up' : `${brief.amps} A hook-up`,
    brief.booking,
  ];
  return parts.filter((part) => part !== null).join(' · ');
}

function nightsText(nights: number | null): string | null {
  if (nights === null) return null;
  if (nights < 0) return 'hire is over';
  if (nights === 0) return 'goes home today';
  return nights === 1 ? '1 night left' : `${nights} nights left`;
}

const WHY: Readonly<Record<Exclude<Reason, 'language'>, string>> = {
  unsure: 'The bot was not sure.',
  asked: 'Asked for a person.',
  safety: 'Somebody may be in danger.',
  'not-fixed': 'What the bot had to offer did not help.',
  'staff-only': 'Only the yard can settle this.',
};

function whyText(brief: Brief): string {
  const language = brief.language === 'en' ? null : languageName(brief.language);
  const whom = brief.tell == null ? '' : `For ${brief.tell}. `;
  if (brief.reason === 'language')
    return `${whom}Writes in ${language ?? 'another language'}; the bot cannot answer in it.`;
  return `${whom}${WHY[brief.reason]}${language === null ? '' : ` Writes in ${language}.`}`;
}

/** 'German' for 'de'; what is no language code stands as it is. */
function languageName(code: string): string {
  try {
    return new Intl.DisplayNames(['en'], { type: 'language' }).of(code) ?? code;
  } catch {
    return code;
  }
}

function understoodLine(brief: Brief): BriefLine | null {
  if (brief.understood.length === 0) return null;
  const topics = brief.understood.map(({ title, probability }) => `${title} (${percent(probability)})`);
  return { kind: 'understood', text: `Understood: ${topics.join(', ')}` };
}

const KINDS: Readonly<Record<Attachment['kind'], readonly [one: string, many: string]>> = {
  photo: ['a photo', 'photos'],
  voice: ['a voice message', 'voice messages'],
  video: ['a video', 'videos'],
  file: ['a file', 'files'],
  location: ['where they are', 'places'],
  contact: ['a phone number', 'phone numbers'],
};

/** '2 photos, a voice message'. */
export function attachmentsText(attachments: readonly Attachment[]): string {
  const counts = new Map<Attachment['kind'], number>();
  for (const { kind } of attachments) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts].map(([kind, count]) => (count === 1 ? KINDS[kind][0] : `${count} ${KINDS[kind][1]}`)).join(', ');
}

/** Cut between words, never within a sign of two units. */
function shortened(text: string, most: number): string {
  if (text.length <= most) return text;
  const cut = text.slice(0, most);
  const end = Math.max(cut.lastIndexOf(' '), cut.lastIndexOf('\n'));
  const kept = end > most / 2 ? cut.slice(0, end) : cut.replace(/[\uD800-\uDBFF]$/, '');
  return `${kept.trimEnd()} …`;
}
