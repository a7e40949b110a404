import type { FC } from 'hono/jsx';
import { dayAt } from '../pages/when.ts';
import type { Day } from './day-page.tsx';
import { type FrameProps, yardPage } from './frame.tsx';
import type { YardWorld } from './world.ts';

/** A sheet to print and carry: what to look at before the next hire, van by van. */
export function turnaroundPage(world: YardWorld, files: FrameProps['files'], day: Day): ReturnType<typeof yardPage> {
  const vans = [...world.vans].map(([id, van]) => ({
    name: van.name,
    back: day.field.gate.back.find((booking) => booking.van === id)?.hirer ?? null,
    out: day.field.gate.out.find((booking) => booking.van === id)?.hirer ?? null,
    items: day.workshop.filter((item) => item.van === van.name),
  }));
  const busy = vans.filter((van) => van.back !== null || van.out !== null || van.items.length > 0);
  return yardPage({
    title: `Before the next hire - ${world.firm.yard}`,
    files,
    kind: 'sheet',
    children: (
      <main>
        <p class="back">
          <a href="/yard">Back to the field</a>
        </p>
        <h1>{`Before the next hire, ${dayAt(day.nowMs, world.firm.timeZone)}`}</h1>
        {busy.length === 0 ? <p>Nothing comes, nothing goes, nothing was reported.</p> : null}
        {busy.map((van) => (
          <VanSheet {...van} />
        ))}
      </main>
    ),
  });
}

const VanSheet: FC<{ name: string; back: string | null; out: string | null; items: Day['workshop'] }> = ({
  name,
  back,
  out,
  items,
}) => (
  <section>
    <h2>{name}</h2>
    {back === null ? null : <p>{`Home from ${back}`}</p>}
    {out === null ? null : <p>{`Out to ${out}`}</p>}
    <ul class="look-at">
      {items.map((item) => (
        <li>{item.since === null ? item.what : `${item.what} (since ${item.since})`}</li>
      ))}
    </ul>
    {items.length === 0 ? <p>Nothing reported.</p> : null}
  </section>
);
