import type { TopicId } from '../basics/ids.ts';
import type { NoticeText, SafetyData } from '../knowledge/safety-schema.ts';
import type { FirmData } from '../knowledge/schema.ts';
import type { Level } from './types.ts';

/** A number to call, with the day the firm last rang or read it in the label. */
export type Call = { readonly label: string; readonly number: string };

/** The words of a notice in one language, slots filled. */
export type NoticeWords = { readonly first: string; readonly steps: readonly string[]; readonly after: string };

/**
 * A notice ready to be shown, in this order: closed (if any) stands right under `first`; `calls` under the steps.
 * `english` stands below everything when the translation has not been signed by a native speaker.
 */
export type Notice = NoticeWords & {
  readonly hazard: TopicId;
  readonly level: Level;
  readonly language: string;
  /** Nobody of the firm answers now: until when, and whom to call. Null while somebody does. */
  readonly closed: string | null;
  readonly calls: readonly Call[];
  /** Whose word goes before ours. */
  readonly local: string;
  readonly english: (NoticeWords & { readonly heading: string }) | null;
};

export type NoticeOptions = {
  readonly safety: Pick<SafetyData, 'notices' | 'shared'>;
  /** Null when the firm's file cannot be read: then only the emergency number is shown. */
  readonly firm: Pick<FirmData, 'name' | 'phone' | 'onCallPhone' | 'numbers'> | null;
  /** Of the message. A language without its own text gets English. */
  readonly language: string;
  /** Two letters, of the booking's site or the firm; null when not known. */
  readonly country: string | null;
  readonly vanName: string | null;
  /** Who answers now. `opens` as it is to be read: '08:30' or 'tomorrow at 08:30'. */
  readonly answers:
    | { readonly kind: 'office' }
    | { readonly kind: 'on-call' }
    | { readonly kind: 'closed'; readonly opens: string };
};

/** What to dial when firm.yaml cannot be read: 112 works all over Europe, 999 in Britain. */
const EMERGENCY_BRITAIN = '999 or 112';
const EMERGENCY_ELSEWHERE = '112';

/**
 * The notice of a hazard.
 *
 * @returns Null only when neither the graph nor the built-in minimum knows the hazard.
 */
export function noticeOf(hazard: TopicId, options: NoticeOptions): Notice | null {
  const { safety, language, answers } = options;
  const notice = safety.notices[hazard];
  const english = notice?.texts['en'];
  if (notice === undefined || english === undefined) return null;
  const own = notice.texts[language];
  const text = own ?? english;
  const spoken = own === undefined ? 'en' : language;
  const say = (saying: Readonly<Record<string, string>>) =>
    filled(saying[spoken] ?? saying['en'] ?? '', options, spoken);
  return {
    hazard,
    level: notice.level,
    language: spoken,
    ...words(text, options, spoken),
    closed: answers.kind === 'closed' ? say(safety.shared.closed).replaceAll('{opens}', answers.opens) : null,
    calls: callsOf(notice.calls, options, spoken, say),
    local: say(safety.shared.local),
    english:
      spoken !== 'en' && text.read_by === null
        ? { heading: safety.shared.english_below['en'] ?? '', ...words(english, options, 'en') }
        : null,
  };
}

function words(text: NoticeText, options: NoticeOptions, spoken: string): NoticeWords {
  return {
    first: filled(text.first, options, spoken),
    steps: text.steps.map((step) => filled(step, options, spoken)),
    after: filled(text.after, options, spoken),
  };
}

function filled(text: string, { firm, vanName, country }: NoticeOptions, spoken: string): string {
  return text
    .replaceAll('{emergency}', emergencyNumber(firm, country, spoken))
    .replaceAll('{firm}', firm?.name ?? 'us')
    .replaceAll('{van}', vanName ?? 'the van');
}

function numbersOf(firm: NoticeOptions['firm'], country: string | null): FirmData['numbers'][string] {
  return firm?.numbers[country ?? ''] ?? firm?.numbers['*'] ?? [];
}

function emergencyNumber(firm: NoticeOptions['firm'], country: string | null, spoken: string): string {
  const given = numbersOf(firm, country).find((each) => each.id === 'emergency');
  return (
    given?.labels?.[spoken] ??
    given?.label ??
    (country === 'GB' || country === null ? EMERGENCY_BRITAIN : EMERGENCY_ELSEWHERE)
  );
}

function callsOf(
  ids: readonly string[],
  options: NoticeOptions,
  spoken: string,
  say: (saying: Readonly<Record<string, string>>) => string,
): readonly Call[] {
  const { firm, country, safety, answers } = options;
  const label = (id: string, fallback: string) => {
    const saying = safety.shared.calls[id];
    return saying === undefined ? fallback : say(saying);
  };
  const numbers = numbersOf(firm, country);
  const calls: Call[] = [];
  for (const id of ids) {
    const found = numbers.find((each) => each.id === id);
    if (found !== undefined) {
      const checked =
        found.checked === null ? '' : ` (${say(safety.shared.checked).replaceAll('{day}', found.checked)})`;
      calls.push({ label: label(id, found.label) + checked, number: found.number });
    } else if (id === 'emergency')
      calls.push({ label: label(id, 'Emergency'), number: emergencyNumber(firm, country, spoken) });
  }
  if (firm !== null && answers.kind === 'office') calls.push({ label: label('firm', firm.name), number: firm.phone });
  if (firm !== null && answers.kind === 'on-call')
    calls.push({ label: label('on-call', firm.name), number: firm.onCallPhone });
  return calls;
}
