import type { Booking, Thread } from '../../src/index.ts';
import { type FrameProps, yardPage } from './frame.tsx';
import { BookingFacts, HirerSign } from './thread-page.tsx';
import type { YardWorld } from './world.ts';

const KEEPERS: Readonly<Record<Thread['keeper'], string>> = {
  bot: 'the bot has it',
  waiting: 'waits for us',
  staff: 'with one of us',
};

/** A hire with no thread yet, or with several. */
export function bookingPage(
  world: YardWorld,
  files: FrameProps['files'],
  booking: Booking,
  threads: readonly Thread[],
): ReturnType<typeof yardPage> {
  const van = world.vans.get(booking.van);
  return yardPage({
    title: `${booking.hirer} - ${world.firm.yard}`,
    files,
    kind: 'thread',
    children: (
      <>
        <header class="top">
          <HirerSign
            van={van}
            name={booking.firstName}
            about={[van?.name ?? booking.van, world.sites.get(booking.site ?? '') ?? 'on the road'].join(', ')}
          />
          <BookingFacts world={world} booking={booking} />
        </header>
        <main>
          {threads.length === 0 ? <p>Nobody of this hire has written yet.</p> : null}
          <ol class="threads">
            {threads.map((thread) => (
              <li>
                <a
                  href={`/yard/thread/${encodeURIComponent(thread.id)}`}
                >{`${thread.channel}: ${KEEPERS[thread.keeper]}`}</a>
              </li>
            ))}
          </ol>
        </main>
      </>
    ),
  });
}
