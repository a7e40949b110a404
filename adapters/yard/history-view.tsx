import type { FC } from 'hono/jsx';
import type { Line } from '../../src/index.ts';
import type { StandingLine } from '../pages/put-right.ts';
import { Said } from '../pages/said.tsx';
import { clockAt, dayAt, sameDay } from '../pages/when.ts';
import { findsFor } from './finds.ts';
import type { Session } from './session.ts';
import type { Entry, Mark, ThreadFacts } from './thread-facts.ts';
import { REASONS } from './words.ts';
import { firstNameOf, type YardWorld } from './world.ts';

/** Everything that was said and done in the thread, oldest first. */
export const HistoryView: FC<{ world: YardWorld; session: Session; facts: ThreadFacts }> = ({
  world,
  session,
  facts,
}) => {
  const zone = world.firm.timeZone;
  return (
    <section class="talk" aria-label="What was said">
      {facts.history.map((entry, i) => {
        const before = facts.history[i - 1];
        const newDay = before === undefined || !sameDay(timeOf(before), timeOf(entry), zone);
        return (
          <>
            {newDay ? <p class="day">{dayAt(timeOf(entry), zone)}</p> : null}
            {entry.kind === 'line' ? (
              <OneLine world={world} session={session} facts={facts} line={entry.line} />
            ) : (
              <OneMark mark={entry.mark} zone={zone} />
            )}
          </>
        );
      })}
      <span id="last" />
    </section>
  );
};

function timeOf(entry: Entry): number {
  return entry.kind === 'line' ? entry.line.atMs : entry.mark.atMs;
}

const OneLine: FC<{ world: YardWorld; session: Session; facts: ThreadFacts; line: StandingLine }> = (props) => {
  const { world, session, facts, line } = props;
  const sent = line.who === 'hirer' || line.who === 'bot' ? null : SENT[line.sent ?? 'delivered'];
  return (
    <Said
      line={line}
      hirer={`${firstNameOf(facts.booking)} said`}
      firm="The bot said"
      zone={world.firm.timeZone}
      finds={findsFor(world, facts.thread.id)}
      tick={false}
    >
      {line.reply !== null && line.reply.choices.length > 0 ? (
        <p class="offered">{`Offered: ${line.reply.choices.map((choice) => choice.label).join(' / ')}`}</p>
      ) : null}
      {sent === null ? null : <p class="offered">{sent}</p>}
      {line.reply?.from === session.name ? (
        <p class="offered">
          <a href={`/yard/thread/${encodeURIComponent(facts.thread.id)}?right=${line.id}#text`}>Put it right</a>
        </p>
      ) : null}
    </Said>
  );
};

/** Staff must know when their words have not arrived. */
const SENT: Readonly<Record<NonNullable<Line['sent']>, string | null>> = {
  delivered: null,
  waiting: 'on its way',
  unknown: 'it may not have arrived',
  gone: 'did not arrive and will not: ring them',
};

const OneMark: FC<{ mark: Mark; zone: string }> = ({ mark, zone }) => {
  const time = clockAt(mark.atMs, zone);
  switch (mark.kind) {
    case 'note':
      return (
        <aside class="note">
          <h3>{`${mark.by}, in the yard, ${time}`}</h3>
          <p>{mark.text}</p>
        </aside>
      );
    case 'passed':
      return <p class="mark">{`${time} came to us: ${REASONS[mark.brief.reason]}`}</p>;
    case 'taken':
      return <p class="mark">{`${time} ${mark.by} took it`}</p>;
    case 'given-back':
      return <p class="mark">{`${time} ${mark.by} gave it back to the bot`}</p>;
  }
};
