import { type Brief, type BriefLine, briefLines, type Event, type Line, type Urgency } from '../../src/index.ts';
import type { Keyboard } from './keyboard.ts';
import { bold, type MarkedText, mention, plain, type Run } from './marked-text.ts';

export type Press = 'have' | 'back' | 'keep' | 'send' | 'talk';
/** How a brief's thread stands; it decides which presses the brief offers. */
export type Standing =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'taken'; readonly by: string }
  | { readonly kind: 'back'; readonly by: string };

const LABELS: Readonly<Record<Press, string>> = {
  have: 'I have it',
  back: 'Back to the bot',
  keep: 'Keep in the yard',
  send: 'Send the answer at hand',
  talk: 'The whole talk',
};

/** A name on the rota is what a hirer sees; somebody whose Telegram account has none yet is this. */
export const UNNAMED = 'Somebody';

export const SAYS = {
  youHave: 'You have it.',
  youHaveUnnamed: `You have it. Hirers see '${UNNAMED}' until you open your own one-time link.`,
  othersHave: (name: string) => `${name} has it already.`,
  notSent: (name: string) => `${name} has this hirer: your words were not sent.`,
  back: 'Back with the bot.',
  keep: 'Your next message here stays in the yard.',
  sent: 'Sent.',
  talk: 'The talk so far stands below.',
  nothingAtHand: 'There is no answer at hand.',
  noThread: 'This conversation is no longer kept.',
  notSentNoThread: 'This conversation is no longer kept: your words were not sent.',
  welcome: (name: string) => `You are ${name} here now. In the staff group hirers see that name.`,
  noBooking: (ref: string) => `There is no booking ${ref}.`,
  nobodyThere: (ref: string, phone: string | null) =>
    `Nobody of ${ref} has opened the chat yet.${phone === null ? '' : ` Ring ${phone}.`}`,
  shiftEnded: (by: string, name: string) => `${by}'s shift has ended: ${name} waits for somebody to press 'I have it'.`,
  opened: (name: string) => `Write here and it goes to ${name}.`,
  topicFailed:
    'The bot may not manage forum topics here: it answers in the group itself, by reply. Make it an administrator who may manage topics.',
  groupLost: 'The bot is no longer in the staff group on Telegram.',
} as const;

/** A brief as it stands in the group, with how its thread stands as the last line. */
export function briefMarked(lines: readonly BriefLine[], standing: Standing): MarkedText {
  const runs: Run[] = [];
  for (const line of lines) {
    if (runs.length > 0) runs.push(plain(line.kind === 'suggested' ? '\n\n' : '\n'));
    runs.push(...lineRuns(line));
  }
  if (standing.kind === 'taken') runs.push(plain('\n\n'), bold(`${standing.by} has it.`));
  if (standing.kind === 'back') runs.push(plain('\n\n'), bold(`Back with the bot (${standing.by}).`));
  return runs;
}

function lineRuns(line: BriefLine): readonly Run[] {
  switch (line.kind) {
    case 'alarm':
      return [bold(`⛔ ${line.text}`)];
    case 'who':
      return [bold(line.text)];
    case 'suggested':
      return [bold('Answer at hand: '), plain(line.text)];
    default:
      return [plain(line.text)];
  }
}

export function linesOfPass(event: Extract<Event, { kind: 'passed' }>): readonly BriefLine[] {
  return briefLines(event.brief, event.urgency);
}

/** A line for the group's common room: a danger must be seen by those who look at no forum topic. */
export function alarmMarked(title: string, brief: Brief, urgency: Urgency): MarkedText {
  const first = briefLines(brief, urgency)[0]?.text ?? '';
  return [bold(`⛔ ${first}`), plain(`\n${title}: see the forum topic of that name.`)];
}

/** A reminder, in which the app tells whom it names, or all of the staff whom it can where it names everyone. */
export function reminderMarked(
  words: string,
  staff: readonly { readonly user: number; readonly name: string }[],
): MarkedText {
  const found = /^((?:DANGER: )?)([^:]+)(:.*)$/s.exec(words);
  const [before = '', whom = '', after = ''] = found?.slice(1) ?? [];
  const named = staff.filter(({ name }) => name === whom);
  if (named.length > 0)
    return [plain(before), ...named.slice(0, 1).map((one) => mention(whom, one.user)), plain(after)];
  if (whom !== 'Everyone' || staff.length === 0) return [plain(words)];
  const all = staff.flatMap(({ user, name }, i) => [plain(i === 0 ? '' : ', '), mention(name, user)]);
  return [plain(`${before}${whom} (`), ...all, plain(`)${after}`)];
}

export function briefKeyboard(threadId: string, standing: Standing, hasSuggested: boolean): Keyboard {
  const row = (...presses: Press[]) =>
    presses.map((press) => ({ text: LABELS[press], callback_data: `${press}:${threadId}` }));
  const send = hasSuggested ? [row('send')] : [];
  switch (standing.kind) {
    case 'waiting':
      return { inline_keyboard: [row('have', 'back'), ...send, row('talk')] };
    case 'taken':
      return { inline_keyboard: [row('keep', 'back'), ...send, row('talk')] };
    case 'back':
      return { inline_keyboard: [row('have'), row('talk')] };
  }
}

/** More than this is read on the yard page. */
const MOST_LINES = 30;

/** A talk as it went, the latest last. */
export function talkText(lines: readonly Pick<Line, 'who' | 'text'>[], firstName: string): string {
  const shown = lines.slice(-MOST_LINES).map(({ who, text }) => `${namedIn(who, firstName)}: ${text}`);
  const left = lines.length - shown.length;
  return [...(left > 0 ? [`(${left} more before this, on the yard page)`] : []), ...shown].join('\n\n');
}

function namedIn(who: string, firstName: string): string {
  if (who === 'hirer') return firstName;
  return who === 'bot' ? 'The bot' : who;
}

/** What was pressed, or null for a button that is none of ours. */
export function readPress(data: string): { readonly press: Press; readonly threadId: string } | null {
  const match = /^(have|back|keep|send|talk):(.+)$/.exec(data);
  return match === null ? null : { press: match[1] as Press, threadId: match[2] as string };
}
