import type { Child, FC } from 'hono/jsx';

/*
 * The vans from their nearside, drawn to one scale: 20 units a metre, the ground at y = 60, the hitch or bonnet to the
 * left. So a short van is short beside a long one wherever they stand together. Tones by class: `b` the body, `c` what
 * is cut out of it, `m` the marigold band, `s` a line in the body's tone.
 */

/** A van as the pages name and draw it. `silhouette`: the name of its drawing; unknown ones get that of `body`. */
export type VanSight = {
  readonly name: string;
  readonly body: 'caravan' | 'campervan';
  readonly silhouette: string;
};

export type Silhouette = {
  /** Units from end to end. */
  readonly width: number;
  /** Where a flag pole stands on the roof. */
  readonly pole: { readonly x: number; readonly y: number };
  readonly drawing: Child;
};

/** Units above the ground that every drawing fits under: a roof pushed up is the tallest. */
export const DRAWN_HEIGHT = 62;

const Wheel: FC<{ x: number; r?: number }> = ({ x, r = 6.6 }) => (
  <>
    <circle class="c" cx={x} cy={60 - r} r={r + 1.6} />
    <circle class="b" cx={x} cy={60 - r} r={r} />
    <circle class="c" cx={x} cy={60 - r} r={r * 0.42} />
  </>
);

/** The frame between van and car with its head and jockey wheel; `to` is where the body begins. */
const Drawbar: FC<{ to: number }> = ({ to }) => (
  <>
    <path class="b" d={`M1 47.5h7l2 1.6H${to + 3}v3H9l-2-1.4H1z`} />
    <path class="b" d="M11.2 44.5h2v11h-2z" />
    <circle class="b" cx="12.2" cy="57.3" r="2.7" />
  </>
);

/** The legs that are wound down on the pitch. */
const Steady: FC<{ x: number; lean: number }> = ({ x, lean }) => <path class="s" d={`M${x} 52l${lean} 7h-2.5h5`} />;

const dunlin: Silhouette = {
  width: 148,
  pole: { x: 84, y: 8 },
  drawing: (
    <>
      <Drawbar to={31} />
      <Steady x={40} lean={-4} />
      <Steady x={138} lean={4} />
      <path class="b" d="M34 52.4q-4-.4-4-5V36q.4-9 6-16.5Q43 9.6 54 8H138q8 0 8 8V48q0 4.4-4 4.4z" />
      <path class="b" d="M50 8.6q1-3.6 5-3.6h11q2.5 0 2.5 3zM100 8V6h9v2z" />
      <path
        class="c"
        d="M36.5 31.5q1-7 6-13 1.4-1.5 3.5-1.5h3v14.5zM53 17h18.5q1.5 0 1.5 1.5v11.5q0 1.5-1.5 1.5H53zM112 17h20.5q1.5 0 1.5 1.5v11.5q0 1.5-1.5 1.5H112q-1.5 0-1.5-1.5v-11.5q0-1.5 1.5-1.5z"
      />
      <path class="c" d="M78 13h11q1.2 0 1.2 1.2V51H88.7V14.5H78.3V51h-1.5V14.2Q76.8 13 78 13zM80 18h7v9h-7z" />
      <path class="m" d="M30 37.5h46.8v3.5H30zM90.2 37.5H146.4v3.5H90.2z" />
      <Wheel x={97} />
    </>
  ),
};

const wren: Silhouette = {
  width: 109,
  pole: { x: 70, y: 10 },
  drawing: (
    <>
      <Drawbar to={30} />
      <Steady x={38} lean={-4} />
      <Steady x={100} lean={3.5} />
      <path class="b" d="M33 52.4q-4-.4-4-4.6V30q0-20.4 22-20.4h22q22 1 31 26.4 3 8.5 3 12.4 0 4-4 4z" />
      <path class="b" d="M57 10V5.5h-1.5V4h6v1.5H60V10z" />
      <path
        class="c"
        d="M41 20q2-1.5 5-1.5h8.5q1.5 0 1.5 1.5v9.5q0 1.5-1.5 1.5h-16q-1.5 0-1.4-1.5 .4-6.5 3.9-9.5zM80 20.5q6 1.5 9.5 9 .6 1.5-1 1.5H80q-1.5 0-1.5-1.5v-8q0-1.4 1.5-1z"
      />
      <path
        class="c"
        d="M62 14.5h10.5q1.2 0 1.2 1.2V44h-1.5V16H62.3v35h-1.5V15.7q0-1.2 1.2-1.2zM64.5 19h5.5v5.5h-5.5z"
      />
      <path class="m" d="M29 36.5h31.8v2.5H29zM73.7 36.5h30.5l1 2.5H73.7z" />
      <Wheel x={79} r={5.8} />
    </>
  ),
};

const curlew: Silhouette = {
  width: 151,
  pole: { x: 88, y: 7.6 },
  drawing: (
    <>
      <Drawbar to={32} />
      <Steady x={40} lean={-4} />
      <Steady x={141} lean={4} />
      <path class="b" d="M35 52.4q-4-.4-4-5V22q1-13 13-14.2h98q7 .6 7.5 8V48q0 4.4-4 4.4z" />
      <path class="b" d="M54 8q0-6 7-6t7 6zM99 5.5h26V7h-3v1h-3V7h-14v1h-3V7h-3z" />
      <path
        class="c"
        d="M34.5 30V22q1-6 7-7h4v15zM50 15h20q1.5 0 1.5 1.5v12q0 1.5-1.5 1.5H50zM110 17h10v13h-8.5q-1.5 0-1.5-1.5zM122.5 17H140q1.5 0 1.5 1.5v10q0 1.5-1.5 1.5h-17.5zM110 42.5h14v6h-14z"
      />
      <path
        class="c"
        d="M77 12h11.5q1.2 0 1.2 1.2V51h-1.5V34H77.3v17h-1.5V13.2Q75.8 12 77 12zM77.3 13.5V32.5h10.9v-19zM79.5 16h6.5v10h-6.5z"
      />
      <path class="m" d="M31 35h44.8v4.5H31zM89.7 35h60v4.5h-60z" />
      <path class="c" d="M133 35l4 4.5h2l-4-4.5zM138 35l4 4.5h2l-4-4.5z" />
      <Wheel x={101} r={6.8} />
    </>
  ),
};

const plover: Silhouette = {
  width: 99,
  pole: { x: 62, y: 10 },
  drawing: (
    <>
      <path class="b" d="M4 53.5q-3 0-3-3.5l1-8q1-4 6-5.5l6.5-1.5 9-11.5q3-4 9-4H93q4.5.5 5 6V50q0 3.5-3.5 3.5z" />
      <path class="b" d="M28.5 19.5V4.2L30 2.5l63 14.8q1.5.5 1 2.2z" />
      <path
        class="c"
        d="M31 7v11h4V8zM38 8.7V18h4V9.6zM45 10.4V18h4v-6.7zM52 12V18h4v-5zM59 13.7V18h4v-3.4zM66 15.3V18h4v-1.7z"
      />
      <path
        class="c"
        d="M18.5 34.5l6.5-8.5q1.5-2 4-2h4v11zM37.5 24H57q1.2 0 1.2 1.2v9.8H37.5zM66 24h24.5q1.5 0 1.5 1.5V33.5q0 1.5-1.5 1.5H66z"
      />
      <path
        class="c"
        d="M35 23h.9v28H35zM60.5 23h.9v28h-.9zM50 39.5h7v1.4h-7zM62 38.2h33v1h-33zM1.6 43h4.5l-1 3H1.3z"
      />
      <path class="m" d="M8 40.5h26.5v3H7zM36.5 43.5h23.5v2.5H36.5zM62 41.5h36.2v2.7H62z" />
      <Wheel x={18.5} r={6.9} />
      <Wheel x={80} r={6.9} />
    </>
  ),
};

const godwit: Silhouette = {
  width: 133,
  pole: { x: 80, y: 9 },
  drawing: (
    <>
      <Drawbar to={33} />
      <Steady x={42} lean={-4} />
      <Steady x={124} lean={4} />
      <path class="b" d="M36 52.4q-3.5 0-3.5-3.5V31L44 10.5Q45 9 47 9h76.5q2 0 2.8 1.5L132 24v25q0 3.4-3.5 3.4z" />
      <path class="b" d="M52 9V6.5h12V9zM104 9V6.5h12V9z" />
      <path
        class="c"
        d="M38 29.5l7.5-13.5h1.5v13.5zM50.5 17h15.5v12.5H50.5zM68 17h4v12.5h-4zM93 17h12v12.5H93zM107.5 17h14.5l4.5 9.5v3h-19z"
      />
      <path class="c" d="M77 13h11v38h-1.5V14.5H78.5V51H77zM80.5 18h4v4h-4z" />
      <path class="m" d="M32.5 34H77v2H32.5zM32.5 38H77v3.5H32.5zM88 34h44v2H88zM88 38h44v3.5H88z" />
      <Wheel x={91} r={6.3} />
    </>
  ),
};

/** For a caravan that nobody has drawn yet. */
const caravan: Silhouette = {
  width: 136,
  pole: { x: 80, y: 9 },
  drawing: (
    <>
      <Drawbar to={31} />
      <Steady x={40} lean={-4} />
      <Steady x={126} lean={4} />
      <path class="b" d="M34 52.4q-4 0-4-4.4V24q0-15 15-15h77q12 0 12 12v27q0 4.4-4 4.4z" />
      <path class="c" d="M40 18h28v13H36v-8q0-5 4-5zM98 18h28v13H98zM76 14h12v37h-1.5V15.5h-9V51H76z" />
      <path class="m" d="M30 37h46v3H30zM88 37h46v3H88z" />
      <Wheel x={94} />
    </>
  ),
};

/** For a campervan that nobody has drawn yet. */
const campervan: Silhouette = {
  width: 112,
  pole: { x: 66, y: 8 },
  drawing: (
    <>
      <path class="b" d="M4 53.5q-3 0-3-3.5l1-9q1-4 6-5.5l7-1.5 7-13q5-13 17-13h66q6 0 6.5 6v36q0 3.5-3.5 3.5z" />
      <path
        class="c"
        d="M18.5 34l5.5-10q1.5-2 4-2h5v12zM44 18h20v13H44zM76 18h26v13H76zM38 14h.9v37H38zM69 14h.9v37H69z"
      />
      <path class="m" d="M7 40h30v3H7zM40 40h28v3H40zM71 40h40v3H71z" />
      <Wheel x={20} r={6.9} />
      <Wheel x={90} r={6.9} />
    </>
  ),
};

const DRAWN: ReadonlyMap<string, Silhouette> = new Map(
  Object.entries({ dunlin, wren, curlew, plover, godwit, caravan, campervan }),
);

/** The drawing of that name; for a van that has none of its own, that of its kind of body. */
export function silhouetteOf(van: Omit<VanSight, 'name'>): Silhouette {
  return DRAWN.get(van.silhouette) ?? (van.body === 'campervan' ? campervan : caravan);
}

/**
 * One van standing on its ground line.
 *
 * @param unit Pixels a unit at which it is shown; CSS may scale it further.
 */
export const Van: FC<{ van: Omit<VanSight, 'name'>; unit: number }> = ({ van, unit }) => {
  const { width, drawing } = silhouetteOf(van);
  return (
    <svg
      class="van"
      viewBox={`0 ${60 - DRAWN_HEIGHT} ${width} ${DRAWN_HEIGHT}`}
      width={Math.round(width * unit)}
      height={Math.round(DRAWN_HEIGHT * unit)}
      aria-hidden="true"
      focusable="false"
    >
      {drawing}
    </svg>
  );
};
