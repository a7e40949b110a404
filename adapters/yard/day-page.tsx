import type { FC } from 'hono/jsx';
import { dayAt } from '../pages/when.ts';
import type { Field, Watched } from './field.ts';
import { FieldView } from './field-view.tsx';
import { Door, type FrameProps, yardPage } from './frame.tsx';
import { GateView } from './gate-view.tsx';
import { ListView } from './list-view.tsx';
import type { Session } from './session.ts';
import type { WorkshopItem, YardWorld } from './world.ts';

export type Day = {
  readonly field: Field;
  readonly questions: ReadonlyMap<string, string>;
  readonly workshop: readonly WorkshopItem[];
  readonly nowMs: number;
};

export type As = 'field' | 'list';

export function threadPath(watched: Watched): string {
  return `/yard/thread/${encodeURIComponent(watched.thread.id)}`;
}

export function bookingPath(ref: string): string {
  return `/yard/booking/${encodeURIComponent(ref)}`;
}

export function dayPage(
  world: YardWorld,
  files: FrameProps['files'],
  session: Session,
  day: Day,
  as: As,
): ReturnType<typeof yardPage> {
  return yardPage({
    title: `${dayAt(day.nowMs, world.firm.timeZone)} - ${world.firm.yard}`,
    files,
    live: `/yard/events?as=${as}`,
    kind: 'day',
    children: (
      <>
        <header class="top">
          <div class="plate sign">
            <h1>{dayAt(day.nowMs, world.firm.timeZone)}</h1>
            <p>{world.firm.yard}</p>
          </div>
          <nav>
            {as === 'field' ? (
              <a class="press" href="/yard/list">
                As a list
              </a>
            ) : (
              <a class="press" href="/yard">
                As the field
              </a>
            )}
            <button class="press" type="button" id="sound" hidden>
              Sound on
            </button>
          </nav>
        </header>
        {world.trouble?.() == null ? null : (
          <p class="trouble" role="alert">
            {world.trouble()}
          </p>
        )}
        <p class="hush" role="status" id="spoken" />
        <main id="live">
          <DayParts world={world} day={day} as={as} />
        </main>
        <Door session={session} />
      </>
    ),
  });
}

/** What the event stream sends again when it has changed. */
export const DayParts: FC<{ world: YardWorld; day: Day; as: As }> = ({ world, day, as }) => (
  <>
    <span
      hidden
      id="facts"
      data-danger={day.field.watched
        .filter((one) => one.danger && one.keeper === 'waiting')
        .map(describe)
        .join('|')}
      data-waiting={day.field.watched
        .filter((one) => one.keeper === 'waiting')
        .map(describe)
        .join('|')}
    />
    {as === 'field' ? (
      <FieldView field={day.field} path={threadPath} booking={bookingPath} />
    ) : (
      <ListView field={day.field} questions={day.questions} path={threadPath} booking={bookingPath} />
    )}
    <GateView gate={day.field.gate} workshop={day.workshop} world={world} booking={bookingPath} />
  </>
);

/** 'thread-id;Ngozi': enough to say aloud who is new. */
function describe(watched: Watched): string {
  return `${watched.thread.id};${watched.booking?.firstName ?? 'Someone'}`;
}
