import type { FC, PropsWithChildren } from 'hono/jsx';
import type { Line } from '../../src/index.ts';
import { Blocks, type Finds, Sent } from './blocks.tsx';
import { Beware, HandRule } from './icons.tsx';
import type { StandingLine } from './put-right.ts';
import { clockAt } from './when.ts';

export type SaidProps = PropsWithChildren<{
  readonly line: StandingLine;
  /** Name of the hirer's side: 'You' on their own page. */
  readonly hirer: string;
  /** Name of the bot's side, for those who hear the page. */
  readonly firm: string;
  readonly zone: string;
  readonly finds: Finds;
  /** Steps can be ticked. */
  readonly tick: boolean;
  /** The page's own mark for where one should begin to read. */
  readonly here?: boolean;
  /** Set on the hirer's lines: what their page called the message when it sent it. */
  readonly sentAs?: string | null;
}>;

/** The start of a thread is stored as a message without a word; it is nothing to be read. */
export function isSaid(line: Line): boolean {
  return line.who !== 'hirer' || line.text !== '' || (line.message?.attachments.length ?? 0) > 0;
}

/** One line of the conversation, set as a printed book sets it. Children follow what was said: things to press. */
export const Said: FC<SaidProps> = (props) => {
  const { line, children } = props;
  const rightMs = line.putRightMs ?? (line.message?.edit === true ? line.atMs : null);
  const id = props.here === true ? 'here' : `line-${line.id}`;
  const time = (
    <>
      <time datetime={new Date(line.atMs).toISOString()}>{clockAt(line.atMs, props.zone)}</time>
      {rightMs === null ? null : <span class="right">{` put right ${clockAt(rightMs, props.zone)}`}</span>}
    </>
  );
  if (line.reply?.kind === 'notice') return <Notice {...props} id={id} />;

  if (line.who === 'hirer') {
    return (
      <article class="line hirer" id={id} data-line={line.id} data-key={props.sentAs ?? undefined}>
        <h3 class="hush">{props.hirer}</h3>
        {line.text === '' ? null : <p>{`\u2018${line.text}\u2019`}</p>}
        {(line.message?.attachments ?? []).map((attachment) => (
          <Sent attachment={attachment} finds={props.finds} />
        ))}
        {time}
        {children}
      </article>
    );
  }
  const person = line.who !== 'bot';
  return (
    <article class={person ? 'line person' : 'line firm'} id={id} data-line={line.id}>
      {person ? (
        <>
          <h3 class="name">
            {line.who} {time}
          </h3>
          <HandRule />
        </>
      ) : (
        <h3 class="hush">{props.firm}</h3>
      )}
      <What {...props} />
      {children}
    </article>
  );
};

const What: FC<SaidProps> = ({ line, finds, tick }) =>
  line.reply === null ? (
    <p>{line.text}</p>
  ) : (
    <Blocks blocks={line.reply.blocks} name={`l${line.id}`} finds={finds} tick={tick} />
  );

/** Whole, filling the screen, whom to call first. */
const Notice: FC<SaidProps & { id: string }> = (props) => {
  const { line, id, children } = props;
  const blocks = line.reply?.blocks ?? [];
  const calls = blocks.filter((block) => block.kind === 'call');
  const [first, ...others] = blocks.filter((block) => block.kind !== 'call');
  const rest = first?.kind === 'line' || first === undefined ? others : [first, ...others];
  return (
    <article class="line notice" id={id} data-line={line.id} role="alert">
      <h3>
        <Beware size={44} />
        Danger
      </h3>
      <div class="calls">
        <Blocks blocks={calls} name={`l${line.id}c`} finds={props.finds} tick={false} />
      </div>
      {first?.kind === 'line' ? <p class="lead">{first.text}</p> : null}
      <Blocks blocks={rest} name={`l${line.id}`} finds={props.finds} tick={false} />
      <time datetime={new Date(line.atMs).toISOString()}>{clockAt(line.atMs, props.zone)}</time>
      {children}
    </article>
  );
};
