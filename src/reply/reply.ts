import type { TopicId } from '../basics/ids.ts';
import type { Bar } from '../calculators/types.ts';
import type { Attachment } from '../message/message.ts';

/** A drawing and the part of it to ring. */
export type PictureUse = { readonly picture: string; readonly touch: string | null; readonly alt: string };

/** The pieces of a reply, in the order they are read. No channel's format. */
export type Block =
  | { readonly kind: 'line'; readonly text: string }
  | { readonly kind: 'steps'; readonly items: readonly string[] }
  | { readonly kind: 'facts'; readonly items: readonly string[] }
  | { readonly kind: 'caution'; readonly text: string }
  | { readonly kind: 'picture'; readonly use: PictureUse }
  | { readonly kind: 'bar'; readonly bar: Bar }
  | { readonly kind: 'call'; readonly label: string; readonly number: string }
  | { readonly kind: 'attachment'; readonly attachment: Attachment };

/** A thing to press. `id` comes back as the message's `choice`; at most 64 bytes. `label` can be typed as well. */
export type Choice = { readonly id: string; readonly label: string; readonly tone: 'next' | 'quiet' };

export type ReplyKind =
  | 'answer'
  | 'choose'
  | 'check'
  | 'calculate'
  | 'notice'
  | 'pass'
  | 'chat'
  | 'lacks'
  | 'relay'
  | 'welcome';

/**
 * One message to the hirer. `from` is null for the bot and a rota name for a person. `topic` is what it answers.
 * A `notice` is always delivered whole and before anything else.
 */
export type Reply = {
  readonly kind: ReplyKind;
  readonly from: string | null;
  readonly topic: TopicId | null;
  readonly blocks: readonly Block[];
  readonly choices: readonly Choice[];
  /** The id of the line that these words take the place of: a person has put right what they said. */
  readonly putsRight?: number;
};

/** The reply as plain text: what the console prints, what staff see as a suggestion, what lengths are measured on. */
export function plainText(reply: Pick<Reply, 'blocks' | 'choices'>): string {
  const lines = reply.blocks.map(blockText).filter((line) => line !== '');
  const choices = reply.choices.map((choice, i) => `  ${i + 1}. ${choice.label}`);
  return [...lines, ...(choices.length > 0 ? ['', ...choices] : [])].join('\n');
}

function blockText(block: Block): string {
  switch (block.kind) {
    case 'line':
      return block.text;
    case 'steps':
      return block.items.map((item, i) => `${i + 1}. ${item}`).join('\n');
    case 'facts':
      return block.items.map((item) => `- ${item}`).join('\n');
    case 'caution':
      return `! ${block.text}`;
    case 'picture':
      return `[picture: ${block.use.alt}]`;
    case 'bar':
      return `[${barText(block.bar)}]`;
    case 'call':
      return `${block.label}: ${block.number}`;
    case 'attachment':
      return `[${block.attachment.kind}]`;
  }
}

/** The bar in words, for whoever cannot see it: 'Hook-up: kettle 1000 + heating 2000 of 2300 W'. */
export function barText({ title, segments, limit, unit }: Bar): string {
  const parts = segments.map(({ label, amount }) => `${label} ${amount}`).join(' + ');
  return `${title}: ${parts === '' ? 0 : parts} of ${limit} ${unit}`;
}
