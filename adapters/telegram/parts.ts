import { type Attachment, type Bar, type Block, barText, never, type PictureUse, type Reply } from '../../src/index.ts';
import { type LaidChoices, layChoices } from './keyboard.ts';
import { TELEGRAM } from './limits.ts';
import { bold, type MarkedText, plain, type Run, splitMarked, textOf } from './marked-text.ts';

/** One message as it will be sent. The choices hang on the last. */
export type Part = Loose & { readonly keyboard: LaidChoices['keyboard'] };

type Loose = { readonly kind: 'text'; readonly text: MarkedText } | Media;
type Media =
  | { readonly kind: 'picture'; readonly use: PictureUse; readonly caption: MarkedText }
  | { readonly kind: 'bar'; readonly bar: Bar; readonly caption: MarkedText }
  | { readonly kind: 'attachment'; readonly attachment: Attachment; readonly caption: MarkedText };

/**
 * A reply as the messages Telegram takes, in reading order: never longer than it allows, as few as may be.
 * The same reply gives the same parts, so a delivery that was cut off can go on where it stopped.
 */
export function partsOf(reply: Reply): readonly Part[] {
  const { keyboard, listed } = layChoices(reply.choices);
  const loose: Loose[] = [];
  let runs: Run[] = reply.from === null ? [] : [bold(reply.from), plain('\n')];
  let begun = false;
  const bars: Media[] = [];
  const flush = () => {
    for (const text of splitMarked(runs, TELEGRAM.textUnits)) loose.push({ kind: 'text', text });
    runs = [];
    begun = false;
  };
  for (const block of reply.blocks) {
    // A sum's picture stands beside its words, so that both make one message.
    if (block.kind === 'bar') bars.push({ kind: 'bar', bar: block.bar, caption: [] });
    const media = mediaOf(block);
    if (media === null) {
      if (begun) runs.push(plain('\n\n'));
      runs.push(...runsOf(block, reply.kind === 'notice' && !begun));
      begun = true;
    } else {
      if (begun) flush();
      loose.push(media);
    }
  }
  if (listed !== '') runs.push(plain(begun ? `\n\n${listed}` : listed));
  flush();
  const joined = withCaption([...loose, ...bars]);
  if (joined.length === 0 && keyboard !== null) joined.push({ kind: 'text', text: [plain('Press one:')] });
  return joined.map((part, i) => ({ ...part, keyboard: i === joined.length - 1 ? keyboard : null }));
}

/** One text and one picture or file make one message, the text standing under it. */
function withCaption(loose: readonly Loose[]): Loose[] {
  const [first, second] = loose;
  if (loose.length !== 2 || first === undefined || second === undefined) return [...loose];
  const text = first.kind === 'text' ? first : second.kind === 'text' ? second : null;
  const media = first.kind === 'text' ? second : first;
  if (text === null || media.kind === 'text' || !takesCaption(media)) return [...loose];
  return textOf(text.text).length > TELEGRAM.captionUnits ? [...loose] : [{ ...media, caption: text.text }];
}

function takesCaption(media: Media): boolean {
  if (media.kind !== 'attachment') return true;
  const { attachment } = media;
  if (attachment.kind === 'location' || attachment.kind === 'contact') return false;
  return !/^tg:(video_note|sticker|copy):/.test(attachment.file);
}

function mediaOf(block: Block): Media | null {
  if (block.kind === 'picture') return { kind: 'picture', use: block.use, caption: [] };
  if (block.kind === 'attachment') return { kind: 'attachment', attachment: block.attachment, caption: [] };
  return null;
}

function runsOf(block: Block, heading: boolean): readonly Run[] {
  switch (block.kind) {
    case 'line':
      return [heading ? bold(block.text) : plain(block.text)];
    case 'steps':
      return block.items.flatMap((item, i) => [
        bold(`${i + 1}.`),
        plain(` ${item}${i + 1 < block.items.length ? '\n' : ''}`),
      ]);
    case 'facts':
      return [plain(block.items.map((item) => `• ${item}`).join('\n'))];
    case 'caution':
      return [bold('Take care: '), plain(block.text)];
    case 'call':
      // Plain, so that the app makes the number one to press.
      return [plain(`${block.label}: ${block.number}`)];
    case 'bar':
      // Telegram has no words for those who cannot see a picture but those beside it.
      return [plain(barText(block.bar))];
    case 'picture':
    case 'attachment':
      return [];
    default:
      return never(block);
  }
}
