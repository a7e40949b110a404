import type { FC } from 'hono/jsx';
import { Beware } from '../pages/icons.tsx';
import type { Field, Parked, Strip, Watched } from './field.ts';
import { capital, gateWords, REASONS, stayWords, watchWords } from './words.ts';

/** The field in words, in the order in which to deal with it. */
export const ListView: FC<{
  field: Field;
  /** The hirer's own words that led to the pass, by thread. */
  questions: ReadonlyMap<string, string>;
  path: (watched: Watched) => string;
  booking: (ref: string) => string;
}> = ({ field, questions, path, booking }) => {
  const waiting = field.watched.filter((one) => one.keeper === 'waiting');
  const held = field.watched.filter((one) => one.keeper === 'staff');
  const quiet = field.strips.flatMap((strip) =>
    strip.parked.filter((one) => one.watched === null).map((parked) => ({ parked, where: placeName(strip) })),
  );
  return (
    <div class="words">
      <h2 class="post">Waiting for us</h2>
      {waiting.length === 0 ? <p>Nobody waits.</p> : null}
      <ol>
        {waiting.map((one) => (
          <WatchedItem watched={one} question={questions.get(one.thread.id)} href={path(one)} field={field} />
        ))}
      </ol>
      <h2 class="post">With one of us</h2>
      {held.length === 0 ? <p>Nobody.</p> : null}
      <ol>
        {held.map((one) => (
          <WatchedItem watched={one} question={questions.get(one.thread.id)} href={path(one)} field={field} />
        ))}
      </ol>
      <h2 class="post">All quiet</h2>
      <ol>
        {quiet.map(({ parked, where }) => (
          <QuietItem
            parked={parked}
            where={where}
            href={parked.booking === null ? null : booking(parked.booking.ref)}
          />
        ))}
      </ol>
    </div>
  );
};

function placeName(strip: Strip): string {
  return strip.kind === 'site' ? strip.name : strip.name.toLowerCase();
}

const WatchedItem: FC<{ watched: Watched; question: string | undefined; href: string; field: Field }> = ({
  watched,
  question,
  href,
  field,
}) => {
  const spot = field.strips
    .flatMap((strip) => strip.parked.map((parked) => ({ parked, strip })))
    .find(({ parked }) => parked.watched === watched);
  const name = watched.booking?.firstName ?? 'Someone';
  return (
    <li class={watched.danger ? 'danger' : undefined}>
      <a href={href} id={`item-${watched.thread.id}`}>
        {watched.danger ? <Beware size={28} /> : null}
        <span>
          <strong>{watched.danger ? `Danger: ${name}` : name}</strong>
          <span>
            {spot === undefined
              ? capital(gateWords(watched.booking, field))
              : `${spot.parked.van.name}, ${placeName(spot.strip)}, ${stayWords(spot.parked)}`}
            {watched.thread.reason === null ? '' : `; ${REASONS[watched.thread.reason]}`}
          </span>
          {question === undefined || question === '' ? null : <q>{question}</q>}
          <span class="wait">{watchWords(watched)}</span>
        </span>
      </a>
    </li>
  );
};

const QuietItem: FC<{ parked: Parked; where: string; href: string | null }> = ({ parked, where, href }) => {
  const words = (
    <span>
      <strong>{parked.booking?.firstName ?? parked.van.name}</strong>
      <span>{parked.booking === null ? 'home' : `${parked.van.name}, ${where}, ${stayWords(parked)}`}</span>
    </span>
  );
  return <li>{href === null ? words : <a href={href}>{words}</a>}</li>;
};
