import type { FC } from 'hono/jsx';
import type { Thread } from '../../src/index.ts';
import { Van } from '../pages/silhouettes.tsx';
import { dayName } from '../pages/when.ts';
import type { Visitor } from './visitor.ts';
import type { WebWorld } from './world.ts';

/** The enamel sign: which van is spoken of, and who has the thread. */
export const Plate: FC<{ world: WebWorld; visitor: Visitor }> = ({ world, visitor }) => {
  const { booking, thread } = visitor;
  const van = booking === null ? null : world.vanOf(booking);
  const site = booking?.site == null ? null : world.siteName(booking.site);
  return (
    <header id="plate">
      <div class={thread === null || thread.keeper === 'bot' ? 'plate' : 'plate held'}>
        {van === null ? null : <Van van={van} unit={0.9} />}
        <div class="words">
          <h1>{van === null ? world.firm.name : van.name}</h1>
          {booking === null ? null : (
            <p class="where">
              {site}
              {booking.to === null ? null : (
                <span class="home">{`${site === null ? '' : ', '}home ${dayName(booking.to)}`}</span>
              )}
            </p>
          )}
          <Holder thread={thread} />
        </div>
      </div>
    </header>
  );
};

const Holder: FC<{ thread: Thread | null }> = ({ thread }) => {
  switch (thread?.keeper) {
    case 'waiting':
      return <p class="holder">Passed to the yard</p>;
    case 'staff':
      return <p class="holder">{`${thread.keeperName ?? 'A person'} has your thread`}</p>;
    default:
      return null;
  }
};
