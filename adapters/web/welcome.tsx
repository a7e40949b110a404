import type { FC } from 'hono/jsx';
import type { Line } from '../../src/index.ts';
import { freshKey } from '../http/fresh-key.ts';
import { Van, type VanSight } from '../pages/silhouettes.tsx';
import { OneLine } from './lines.tsx';
import type { Visitor } from './visitor.ts';
import type { WebWorld } from './world.ts';

/** The page before a word was said: the van on its pitch, or the fleet and a place for the code. */
export const Welcome: FC<{ world: WebWorld; visitor: Visitor }> = ({ world, visitor }) => {
  const { booking } = visitor;
  const van = booking === null ? null : world.vanOf(booking);
  const reply = world.welcome(booking);
  const line: Line = {
    id: 0,
    threadId: '',
    atMs: world.clock.nowMs(),
    who: 'bot',
    text: '',
    reply,
    message: null,
    sent: null,
  };
  return (
    <>
      <Pitch vans={van === null ? world.fleet : [van]} peg={booking?.pitch ?? null} />
      <OneLine world={world} visitor={visitor} line={line} open={true} here={false} />
      {booking === null ? <Code path={visitor.path} /> : null}
    </>
  );
};

/** Grass under wheels. One van stands large with the number of its pitch beside it; a fleet stands in a row. */
const Pitch: FC<{ vans: readonly VanSight[]; peg: string | null }> = ({ vans, peg }) =>
  vans.length === 0 ? null : (
    <div class={vans.length === 1 ? 'pitch one' : 'pitch'}>
      <div class="ground">
        {vans.map((van) => (
          <Van van={van} unit={vans.length === 1 ? 2 : 1} />
        ))}
        {peg === null ? null : (
          <p class="peg">
            <span class="hush">Pitch</span> {peg}
          </p>
        )}
      </div>
    </div>
  );

const Code: FC<{ path: string }> = ({ path }) => (
  <form class="code" method="post" action={path}>
    <input type="hidden" name="key" value={freshKey()} />
    <label for="code">Code on your document wallet</label>
    <div>
      <input
        id="code"
        name="text"
        required
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        maxlength={40}
      />
      <button class="press next" type="submit">
        Open my van
      </button>
    </div>
  </form>
);
