import type { FC } from 'hono/jsx';
import { Beware } from '../pages/icons.tsx';
import { DRAWN_HEIGHT, silhouetteOf } from '../pages/silhouettes.tsx';
import type { Field, Parked, Strip, Watched } from './field.ts';
import { PersonShape } from './person-shape.tsx';
import { gateWords, stayWords, watchWords } from './words.ts';
import { firstNameOf } from './world.ts';

/** Units of pole at which a flag shows that the aim is reached. */
const AIM_UNITS = 46;
/** A flag stops growing at half as long again as the aim. */
const MOST_SHARE = 1.5;
const FLAG = { width: 24, height: 14 };
/** Pixels a unit. */
const UNIT = 1.15;

/** The field: each site a strip of grass, each van on it as it stands there today, flags up where somebody waits. */
export const FieldView: FC<{ field: Field; path: (watched: Watched) => string; booking: (ref: string) => string }> = (
  props,
) => (
  <div class="field">
    {props.field.strips.map((strip) =>
      strip.danger ? <StripView strip={strip} path={props.path} booking={props.booking} /> : null,
    )}
    {props.field.unknown.length === 0 ? null : <GateStrip field={props.field} path={props.path} />}
    {props.field.strips.map((strip) =>
      strip.danger ? null : <StripView strip={strip} path={props.path} booking={props.booking} />,
    )}
  </div>
);

/** Those whose van we do not know, or whose van is home again. */
const GateStrip: FC<{ field: Field; path: (watched: Watched) => string }> = ({ field, path }) => {
  const { unknown } = field;
  const danger = unknown.some((one) => one.danger);
  return (
    <section class={danger ? 'strip waits danger' : 'strip waits'} aria-label="At the gate">
      <StripHead name="At the gate" danger={danger} />
      <ul class="stand">
        {unknown.map((one) => (
          <li>
            <Spot
              href={path(one)}
              watched={one}
              width={30}
              pole={{ x: 24, y: 22 }}
              foot={60}
              drawing={<PersonShape />}
              name={firstNameOf(one.booking)}
              about={gateWords(one.booking, field)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
};

const StripHead: FC<{ name: string; danger: boolean }> = ({ name, danger }) => (
  <h2>
    <span class="post">{name}</span>
    {danger ? (
      <span class="alarm">
        <Beware size={28} /> Danger
      </span>
    ) : null}
  </h2>
);

const StripView: FC<{ strip: Strip; path: (watched: Watched) => string; booking: (ref: string) => string }> = ({
  strip,
  path,
  booking,
}) => (
  <section
    class={`strip${strip.parked.some((one) => one.watched !== null) ? ' waits' : ''}${strip.danger ? ' danger' : ''}`}
    aria-label={strip.name}
  >
    <StripHead name={strip.name} danger={strip.danger} />
    <ul class="stand">
      {strip.parked.map((parked) => (
        <li>
          <ParkedView parked={parked} path={path} booking={booking} />
        </li>
      ))}
    </ul>
  </section>
);

const ParkedView: FC<{ parked: Parked; path: (watched: Watched) => string; booking: (ref: string) => string }> = ({
  parked,
  path,
  booking,
}) => {
  const { width, pole, drawing } = silhouetteOf(parked.van);
  const href =
    parked.watched !== null ? path(parked.watched) : parked.booking === null ? null : booking(parked.booking.ref);
  return (
    <Spot
      href={href}
      watched={parked.watched}
      width={width}
      pole={pole}
      drawing={drawing}
      name={parked.booking?.firstName ?? parked.van.name}
      about={parked.booking === null ? 'home' : `${parked.van.name}, ${stayWords(parked)}`}
    />
  );
};

type SpotProps = {
  href: string | null;
  watched: Watched | null;
  width: number;
  pole: { readonly x: number; readonly y: number };
  /** Where the pole ends below; left out: in the roof. */
  foot?: number;
  drawing: unknown;
  name: string;
  about: string;
};

/** One thing standing on the grass, with its flag and its label. */
const Spot: FC<SpotProps> = ({ href, watched, width, pole, foot = pole.y + 2, drawing, name, about }) => {
  const above = watched === null ? 0 : Math.max(0, Math.ceil(poleUnits(watched) - pole.y + 4));
  const height = DRAWN_HEIGHT + above;
  const inside = (
    <>
      <svg
        class="van"
        viewBox={`0 ${60 - height} ${width} ${height}`}
        width={Math.round(width * UNIT)}
        height={Math.round(height * UNIT)}
        aria-hidden="true"
        focusable="false"
      >
        {watched === null ? null : <Flag watched={watched} pole={pole} foot={foot} width={width} />}
        {drawing}
      </svg>
      <span class="label">
        <strong>{name}</strong>
        <span>{about}</span>
        {watched === null ? null : <span class="wait">{watchWords(watched)}</span>}
      </span>
    </>
  );
  const kind = `spot${watched === null ? '' : ` ${watched.keeper}${watched.danger ? ' danger' : ''}`}`;
  return href === null ? (
    <div class={kind}>{inside}</div>
  ) : (
    <a class={kind} href={href} id={`spot-${watched?.thread.id ?? href}`}>
      {inside}
    </a>
  );
};

/** How far above the roof the pole ends. Danger flies highest at once; what staff have is flown low. */
function poleUnits(watched: Watched): number {
  if (watched.keeper === 'staff') return FLAG.height + 6;
  const share = watched.danger ? MOST_SHARE : (watched.share ?? MOST_SHARE);
  return FLAG.height + 6 + Math.min(share, MOST_SHARE) * (AIM_UNITS - FLAG.height);
}

/** The pole's height is the waiting time; the notch on it is the aim. Past the aim the flag has a tail. */
const Flag: FC<{ watched: Watched; pole: SpotProps['pole']; foot: number; width: number }> = ({
  watched,
  pole,
  foot,
  width,
}) => {
  const top = pole.y - poleUnits(watched);
  const late = !watched.danger && (watched.share ?? 0) > 1;
  // The flag flies away from the nearer end, so that it stays inside the picture.
  const side = pole.x + FLAG.width + 2 > width ? -1 : 1;
  const cloth = late
    ? `M${pole.x} ${top}h${side * FLAG.width}l${-side * 8} ${FLAG.height / 2}l${side * 8} ${FLAG.height / 2}h${-side * FLAG.width}z`
    : `M${pole.x} ${top}l${side * FLAG.width} ${FLAG.height / 2}l${-side * FLAG.width} ${FLAG.height / 2}z`;
  const aim = pole.y - (FLAG.height + 6 + AIM_UNITS - FLAG.height);
  return (
    <>
      <path class="pole" d={`M${pole.x} ${foot}V${top - 2}`} />
      {watched.keeper === 'waiting' && !watched.danger && watched.share !== null && watched.share > 0.55 ? (
        <path class="aim" d={`M${pole.x - 5} ${aim}h10`} />
      ) : null}
      <path class="cloth" d={cloth} />
    </>
  );
};
