import type { FC } from 'hono/jsx';
import { Beware } from '../pages/icons.tsx';
import { watch } from './field.ts';
import { Csrf } from './frame.tsx';
import type { Session } from './session.ts';
import type { ThreadFacts } from './thread-facts.ts';
import { capital, REASONS, watchWords } from './words.ts';
import type { YardWorld } from './world.ts';

/** Who has the thread, and the one or two things to press about it. */
export const HolderView: FC<{ world: YardWorld; session: Session; facts: ThreadFacts }> = ({
  world,
  session,
  facts,
}) => {
  const { thread } = facts;
  const path = `/yard/thread/${encodeURIComponent(thread.id)}`;
  const danger = thread.reason === 'safety' && thread.keeper !== 'bot';
  const mine = thread.keeper === 'staff' && thread.keeperName === session.name;
  const watched = watch(thread, facts.booking, world.aimMinutes, world.clock.nowMs());
  return (
    <section class={danger ? 'holder danger' : 'holder'} aria-label="Who has it">
      <p>
        {danger ? (
          <strong class="alarm">
            <Beware size={28} /> Danger
          </strong>
        ) : null}
        {watched === null
          ? 'The bot has it.'
          : mine
            ? 'You have it. What you write goes to them; the bot is silent.'
            : `${capital(watchWords(watched))}.`}
        {thread.keeper === 'waiting' && thread.reason !== null ? ` Why: ${REASONS[thread.reason]}.` : ''}
        {thread.keeper === 'waiting' && facts.brief?.tell != null ? ` For ${facts.brief.tell}.` : ''}
      </p>
      <div class="choices">
        {mine ? null : (
          <form method="post" action={`${path}/take`}>
            <Csrf session={session} />
            <button class={thread.keeper === 'waiting' ? 'press next' : 'press'} type="submit">
              I have it
            </button>
          </form>
        )}
        {thread.keeper === 'bot' ? null : (
          <form method="post" action={`${path}/give-back`}>
            <Csrf session={session} />
            <button class="press" type="submit">
              Back to the bot
            </button>
          </form>
        )}
      </div>
    </section>
  );
};
