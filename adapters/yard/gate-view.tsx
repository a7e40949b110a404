import type { FC } from 'hono/jsx';
import type { Booking } from '../../src/index.ts';
import { Van, type VanSight } from '../pages/silhouettes.tsx';
import type { Gate } from './field.ts';
import type { WorkshopItem, YardWorld } from './world.ts';

/** Today's gate: who goes out, who comes home, what the workshop has to look at. */
export const GateView: FC<{
  gate: Gate;
  workshop: readonly WorkshopItem[];
  world: YardWorld;
  booking: (ref: string) => string;
}> = (props) => (
  <section class="gate" aria-label="Today's gate">
    <h2 class="post">Today's gate</h2>
    <Comings
      title="Going out"
      nobody="Nobody goes out today."
      bookings={props.gate.out}
      world={props.world}
      booking={props.booking}
    />
    <Comings
      title="Coming home"
      nobody="Nobody comes home today."
      bookings={props.gate.back}
      world={props.world}
      booking={props.booking}
    />
    <h3>For the workshop</h3>
    {props.workshop.length === 0 ? <p>Nothing reported.</p> : null}
    <ul>
      {props.workshop.map((item) => (
        <li>
          <span>
            <strong>{item.van}</strong>
            <span>{item.since === null ? item.what : `${item.what}, since ${item.since}`}</span>
          </span>
        </li>
      ))}
    </ul>
    <p>
      <a href="/yard/turnaround">List to print</a>
    </p>
  </section>
);

const Comings: FC<{
  title: string;
  nobody: string;
  bookings: readonly Booking[];
  world: YardWorld;
  booking: (ref: string) => string;
}> = (props) => (
  <>
    <h3>{props.title}</h3>
    {props.bookings.length === 0 ? <p>{props.nobody}</p> : null}
    <ul>
      {props.bookings.map((booking) => {
        const van: VanSight | undefined = props.world.vans.get(booking.van);
        return (
          <li>
            <a href={props.booking(booking.ref)}>
              {van === undefined ? null : <Van van={van} unit={0.5} />}
              <span>
                <strong>{booking.hirer}</strong>
                <span>{`${van?.name ?? booking.van}, ${props.world.sites.get(booking.site ?? '') ?? 'on the road'}`}</span>
              </span>
            </a>
          </li>
        );
      })}
    </ul>
  </>
);
