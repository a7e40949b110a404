import type { FC } from 'hono/jsx';

/* Drawn by us in the hand of the pictures: 2 px outline, 1 px detail, on a 24 px square. None is the only word for its button. */

const Drawn: FC<{ size?: number; path: string; fill?: string }> = ({ size = 24, path, fill }) => (
  <svg
    class="icon"
    viewBox="0 0 24 24"
    width={size}
    height={size}
    fill="none"
    stroke="currentColor"
    stroke-width="2"
    stroke-linecap="round"
    stroke-linejoin="round"
    aria-hidden="true"
    focusable="false"
  >
    <path d={path} />
    {fill === undefined ? null : <path d={fill} fill="currentColor" stroke="none" />}
  </svg>
);

type Size = { size?: number };

export const Camera: FC<Size> = ({ size = 24 }) => (
  <Drawn size={size} path="M3 8.5h4l1.8-3h6.4l1.8 3h4V19.5H3zM12 10.2a3.8 3.8 0 1 0 .01 0z" />
);

export const Handset: FC<Size> = ({ size = 24 }) => (
  <Drawn
    size={size}
    path="M5 3.5l4-.5 1.8 5-2.3 1.8q1.5 3.7 5.4 5.7l2-2.3 4.8 2-.6 4.2q-1 1.3-3 1.1Q5.5 19 3.7 6.5q-.2-2.2 1.3-3z"
  />
);

/** The triangle that goes with every red and every caution: a shape beside the word. */
export const Beware: FC<Size> = ({ size = 24 }) => (
  <Drawn size={size} path="M12 3.2L22 20.5H2zM12 9.5v5" fill="M12 16.2a1.3 1.3 0 1 0 .01 0z" />
);

/** A rule as drawn with a pencil along no ruler: it stands under a person's name. */
export const HandRule: FC = () => (
  <svg class="hand-rule" viewBox="0 0 160 8" width="160" height="8" aria-hidden="true" focusable="false">
    <path
      d="M2 4.8c14-2.6 27-2.3 41-.9 17 1.7 33 .9 50-.4 21-1.6 43-.6 65 1.2"
      fill="none"
      stroke="currentColor"
      stroke-width="2"
      stroke-linecap="round"
    />
  </svg>
);
