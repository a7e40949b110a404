import type { TopicId } from '../basics/ids.ts';

/**
 * What can be pressed. Written into a button of at most 64 bytes and read back when it is pressed; a button lives as
 * long as the message it hangs on, so a press may come when its question is long closed.
 */
export type Pressed =
  | { readonly kind: 'topic'; readonly topic: TopicId }
  | { readonly kind: 'none-of-these' }
  | { readonly kind: 'helped'; readonly topic: TopicId; readonly yes: boolean }
  | { readonly kind: 'step'; readonly symptom: TopicId; readonly answer: StepPress }
  | { readonly kind: 'input'; readonly value: string }
  | { readonly kind: 'danger'; readonly answer: 'yes' | 'no' }
  | { readonly kind: 'all-well'; readonly yes: boolean }
  | { readonly kind: 'resume' }
  | { readonly kind: 'person' }
  | { readonly kind: 'never-mind' };

export const STEP_PRESSES = ['yes', 'no', 'unsure', 'worked', 'still', 'skip', 'back', 'how', 'tried'] as const;
export type StepPress = (typeof STEP_PRESSES)[number];

/** What can be pressed at a step, in the order shown; a person comes after them. `seen`: the check says how to see it. */
export function stepPresses(kind: 'check' | 'fix', seen: boolean): readonly StepPress[] {
  if (kind === 'fix') return ['worked', 'still', 'skip'];
  return ['yes', 'no', 'unsure', ...(seen ? (['how'] as const) : [])];
}

export function choiceId(pressed: Pressed): string {
  switch (pressed.kind) {
    case 'topic':
      return `t:${pressed.topic}`;
    case 'none-of-these':
      return 'none';
    case 'helped':
      return `${pressed.yes ? 'ok' : 'stuck'}:${pressed.topic}`;
    case 'step':
      return `s:${pressed.answer}:${pressed.symptom}`;
    case 'input':
      return `i:${pressed.value}`;
    case 'danger':
      return `d:${pressed.answer}`;
    case 'all-well':
      return `well:${pressed.yes ? 'yes' : 'no'}`;
    case 'resume':
    case 'person':
    case 'never-mind':
      return pressed.kind;
  }
}

/** Null for a button that is not ours. */
export function readChoice(id: string): Pressed | null {
  const [head = '', ...rest] = id.split(':');
  const tail = rest.join(':');
  switch (head) {
    case 't':
      return tail === '' ? null : { kind: 'topic', topic: tail };
    case 'none':
      return { kind: 'none-of-these' };
    case 'ok':
    case 'stuck':
      return { kind: 'helped', topic: tail, yes: head === 'ok' };
    case 's': {
      const [answer = '', symptom = ''] = rest;
      const known = STEP_PRESSES.find((each) => each === answer);
      return known === undefined ? null : { kind: 'step', symptom, answer: known };
    }
    case 'i':
      return { kind: 'input', value: tail };
    case 'd':
      return tail === 'yes' || tail === 'no' ? { kind: 'danger', answer: tail } : null;
    case 'well':
      return tail === 'yes' || tail === 'no' ? { kind: 'all-well', yes: tail === 'yes' } : null;
    case 'resume':
    case 'person':
    case 'never-mind':
      return { kind: head };
    default:
      return null;
  }
}

const ORDINALS: readonly RegExp[] = [
  /^(?:the )?(?:1|one|first)(?:st)?(?: one| of (?:them|these))?$/,
  /^(?:the )?(?:2|two|second)(?:nd)?(?: one| of (?:them|these))?$/,
  /^(?:the )?(?:3|three|third)(?:rd)?(?: one| of (?:them|these))?$/,
  /^(?:the )?(?:4|four|fourth)(?:th)?(?: one| of (?:them|these))?$/,
  /^(?:the )?(?:5|five|fifth)(?:th)?(?: one| of (?:them|these))?$/,
];

/**
 * Which of the offered choices a typed text picks: a number, 'the second one', 'last', or a label (its whole or
 * a part of it that only one label has).
 *
 * @returns The position, or null.
 */
export function pickTyped(text: string, labels: readonly string[]): number | null {
  const said = plain(text)
    .replace(
      /^(?:(?:it is|it s|its|i think|i mean|i guess|maybe|probably|that is|thats|that would be|yes|ok|hmm|erm|um) )+/,
      '',
    )
    .replace(
      /(?: (?:please|pls|thanks|thank you|i (?:think|guess|suppose|reckon|believe|d say)|probably|maybe|then|mate))+$/,
      '',
    );
  if (said === '') return null;
  const ordinal = ORDINALS.findIndex((pattern) => pattern.test(said));
  if (ordinal >= 0) return ordinal < labels.length ? ordinal : null;
  if (/^(?:the )?last(?: one)?$/.test(said)) return labels.length - 1;
  if (/^(?:the )?top(?: one)?$/.test(said)) return 0;
  const plainLabels = labels.map(plain);
  const whole = plainLabels.indexOf(said);
  if (whole >= 0) return whole;
  const part = plainLabels.flatMap((label, i) => (said.length >= 4 && label.includes(said) ? [i] : []));
  return part.length === 1 ? (part[0] ?? null) : null;
}

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .replace(/^(?:number|option|no) (?=\d)/, '');
}
