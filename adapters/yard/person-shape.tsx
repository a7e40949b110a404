import type { FC } from 'hono/jsx';

/** Someone whose van we do not know yet, to the scale of the vans. */
export const PersonShape: FC = () => (
  <>
    <circle class="b" cx="15" cy="28.5" r="4.2" />
    <path class="b" d="M9.5 40q.5-6 5.5-6t5.5 6l1 9h-2.500l-.8 11h-3l-.6-9h-.2l-.6 9h-3l-.8-11H7.500z" />
    <path class="m" d="M9.2 42.500h11.600l.3 2.500H8.900z" />
    <path class="s" d="M20 36l4.5 3" />
  </>
);
