import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { type Attachment, type Block, barText, never, type PictureUse } from '../../src/index.ts';
import { barInPage } from '../pictures/bar.ts';
import type { Theme } from './colours.ts';
import { Beware, Handset } from './icons.tsx';

/** Where the page that shows a reply finds what the reply only names. */
export type Finds = {
  /** Path of a drawing; null when there is none, and then its words stand alone. */
  readonly picture: (use: PictureUse, theme: Theme) => string | null;
  /** Path of something that was sent along; null when it cannot be opened from here. */
  readonly file: (file: string) => string | null;
};

/** A telephone number as `tel:` wants it: digits and a leading plus; the (0) of a number written for abroad is not dialled. */
export function dialled(number: string): string {
  const abroad = number.trim().startsWith('+');
  const digits = (abroad ? number.replace('(0)', '') : number).replace(/\D/g, '');
  return `tel:${abroad ? '+' : ''}${digits}`;
}

/**
 * The pieces of a reply in order, as the printed page shows them.
 *
 * @param name Unique on the page: tells the steps of one line from those of another, and keeps their ticks.
 */
export const Blocks: FC<{ blocks: readonly Block[]; name: string; finds: Finds; tick?: boolean }> = (props) => (
  <>
    {props.blocks.map((block, i) => (
      <OneBlock block={block} name={`${props.name}-${i}`} finds={props.finds} tick={props.tick ?? true} />
    ))}
  </>
);

const OneBlock: FC<{ block: Block; name: string; finds: Finds; tick: boolean }> = ({ block, name, finds, tick }) => {
  switch (block.kind) {
    case 'line':
      return <p>{block.text}</p>;
    case 'steps':
      return <Steps items={block.items} name={name} tick={tick} />;
    case 'facts':
      return (
        <ul class="facts">
          {block.items.map((item) => (
            <li>{item}</li>
          ))}
        </ul>
      );
    case 'caution':
      return (
        <div class="care">
          <Beware />
          <strong>Take care</strong>
          <p>{block.text}</p>
        </div>
      );
    case 'picture':
      return <Picture use={block.use} finds={finds} />;
    case 'bar':
      return <figure class="sum">{raw(barInPage(block.bar, barText(block.bar)))}</figure>;
    case 'call':
      return (
        <a class="press" href={dialled(block.number)}>
          <Handset />
          <span class="call-words">
            {`${block.label} `}
            <span class="number">{block.number}</span>
          </span>
        </a>
      );
    case 'attachment':
      return <Sent attachment={block.attachment} finds={finds} />;
    default:
      return never(block);
  }
};

/** Numbered by hand, so that the numeral can be large and the whole row can be pressed. */
const Steps: FC<{ items: readonly string[]; name: string; tick: boolean }> = ({ items, name, tick }) => (
  <ol class="steps">
    {items.map((item, i) => (
      <li>
        {tick ? (
          <label class="step">
            <Step number={i + 1} words={item} />
            <input type="checkbox" autocomplete="off" data-tick={`${name}-${i}`} />
          </label>
        ) : (
          <div class="step">
            <Step number={i + 1} words={item} />
          </div>
        )}
      </li>
    ))}
  </ol>
);

const Step: FC<{ number: number; words: string }> = ({ number, words }) => (
  <>
    <span class="numeral">{number}</span>
    <span class="words">{words}</span>
  </>
);

const Picture: FC<{ use: PictureUse; finds: Finds }> = ({ use, finds }) => {
  const light = finds.picture(use, 'light');
  if (light === null) return <p class="picture">{use.alt}</p>;
  return (
    <figure class="picture">
      <picture>
        <source media="(prefers-color-scheme: dark)" srcset={finds.picture(use, 'dark') ?? light} />
        <img src={light} alt={use.alt} width="720" height="540" loading="lazy" decoding="async" />
      </picture>
    </figure>
  );
};

const WORDS: Readonly<Record<Exclude<Attachment['kind'], 'location' | 'contact'>, string>> = {
  photo: 'A photo',
  voice: 'A voice message',
  video: 'A video',
  file: 'A file',
};

/** Something sent along: shown or played if the browser can, and always with a link to it. */
export const Sent: FC<{ attachment: Attachment; finds: Finds }> = ({ attachment, finds }) => {
  switch (attachment.kind) {
    case 'location': {
      const { latitude, longitude } = attachment;
      return (
        <p>
          <a href={`geo:${latitude},${longitude}`}>{`A place: ${latitude.toFixed(5)}, ${longitude.toFixed(5)}`}</a>
        </p>
      );
    }
    case 'contact':
      return (
        <p>
          <a href={dialled(attachment.phone)}>{`${attachment.name}: ${attachment.phone}`}</a>
        </p>
      );
    default: {
      const words = attachment.name ?? WORDS[attachment.kind];
      const path = finds.file(attachment.file);
      if (path === null) return <p>{`[${words}]`}</p>;
      if (attachment.kind === 'voice' || attachment.kind === 'video') {
        const Player = attachment.kind === 'voice' ? 'audio' : 'video';
        return (
          <p class="sent">
            <Player src={path} controls preload="none" aria-label={words} />
            <a href={path}>{words}</a>
          </p>
        );
      }
      // Few browsers draw this kind of photo: a link lets the device try.
      const drawn = attachment.kind === 'photo' && !path.endsWith('.heic');
      return (
        <p class="sent">
          <a href={path}>{drawn ? <img src={path} alt={words} loading="lazy" /> : words}</a>
        </p>
      );
    }
  }
};
