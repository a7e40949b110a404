import type { FC } from 'hono/jsx';
import type { Line } from '../../src/index.ts';
import { freshKey } from '../http/fresh-key.ts';
import { dialled } from '../pages/blocks.tsx';
import { Beware, Camera } from '../pages/icons.tsx';
import { page } from '../pages/page.tsx';
import { asTheyStand } from '../pages/put-right.ts';
import { isSaid } from '../pages/said.tsx';
import { Lines } from './lines.tsx';
import { Plate } from './plate.tsx';
import type { Visitor } from './visitor.ts';
import { Welcome } from './welcome.tsx';
import type { WebWorld } from './world.ts';

/** Lines shown when the page opens; those before are one press away, so that a long week stays a small page. */
const SHOWN = 40;

export type ChatPage = {
  readonly world: WebWorld;
  readonly visitor: Visitor;
  readonly lines: readonly Line[];
  readonly all: boolean;
  readonly style: string;
  readonly script: string;
  /** Something that went wrong with what was sent, in words; the box then keeps the text. */
  readonly refused?: { readonly says: string; readonly text: string };
};

export function chatPage(props: ChatPage): ReturnType<typeof page> {
  const { world, visitor } = props;
  const lines = asTheyStand(props.lines).filter(isSaid);
  const van = visitor.booking === null ? null : world.vanOf(visitor.booking);
  const from = props.all ? 0 : Math.max(0, lines.length - SHOWN);
  return page({
    title: van === null ? world.firm.name : `${van.name} - ${world.firm.name}`,
    style: props.style,
    script: props.script,
    body: {
      class: 'chat',
      'data-path': visitor.path,
      'data-after': String(props.lines.at(-1)?.id ?? 0),
    },
    children: (
      <>
        <Plate world={world} visitor={visitor} />
        <main>
          <div class="talk" role="log" aria-label="What was said" aria-live="polite">
            {from > 0 ? (
              <p class="earlier">
                <a href={`${visitor.path}?all`}>Show what was said before</a>
              </p>
            ) : null}
            {visitor.ended ? <Ended world={world} /> : null}
            {lines.length === 0 ? <Welcome world={world} visitor={visitor} /> : null}
            <Lines world={world} visitor={visitor} lines={lines} from={from} />
          </div>
        </main>
        <Box visitor={visitor} world={world} refused={props.refused} />
      </>
    ),
  });
}

const Ended: FC<{ world: WebWorld }> = ({ world }) => (
  <div class="care">
    <Beware />
    <strong>This link no longer opens a hire</strong>
    <p>{`Type the code from your document wallet below, or ring ${world.firm.name} on ${world.firm.phone}. If anyone is in danger call 999 first.`}</p>
  </div>
);

const Box: FC<{ visitor: Visitor; world: WebWorld; refused: ChatPage['refused'] }> = ({ visitor, world, refused }) => (
  <footer class="box">
    <p class="signal" role="status" id="signal">
      {refused?.says ?? ''}
    </p>
    <form id="box" method="post" action={visitor.path} enctype="multipart/form-data">
      <input type="hidden" name="key" value={freshKey()} />
      <label class="hush" for="text">
        {'Your question, in your own words'}
      </label>
      <textarea
        id="text"
        name="text"
        rows={1}
        maxlength={8000}
        autocomplete="off"
        autocapitalize="sentences"
        enterkeyhint="send"
        placeholder={'Ask here'}
      >
        {refused?.text ?? ''}
      </textarea>
      <label class="press photo">
        <Camera />
        <span class="hush">Add a photo or video</span>
        <input class="hush" type="file" name="photo" accept="image/*,video/*,audio/*,application/pdf" />
      </label>
      <button class="press next" type="submit">
        Send
      </button>
    </form>
    <noscript>
      <p>
        <a href={`${visitor.path}#here`}>Look for an answer</a> or ring{' '}
        <a href={dialled(world.firm.phone)}>{world.firm.phone}</a>
      </p>
    </noscript>
  </footer>
);
