import type { FC, PropsWithChildren } from 'hono/jsx';
import { Csrf, type FrameProps, yardPage } from './frame.tsx';
import type { Session } from './session.ts';
import type { YardWorld } from './world.ts';

/** What every page of teaching is drawn with. */
export type Drawn = { readonly world: YardWorld; readonly files: FrameProps['files']; readonly session: Session };

export const HOME = '/yard/growth';

export function growthPage(
  { world, files }: Drawn,
  title: string,
  children: FrameProps['children'],
  live?: string,
): ReturnType<typeof yardPage> {
  return yardPage({
    title: `${title} - ${world.firm.yard}`,
    files,
    kind: 'growth',
    ...(live === undefined ? {} : { live }),
    children: (
      <main>
        <nav class="paths" aria-label="Teaching the bot">
          <a href="/yard">The field</a>
          <a href={HOME}>Unanswered</a>
          <a href={`${HOME}/changes`}>What was taught</a>
          <a href={`${HOME}/figures`}>Figures</a>
          <a href={`${HOME}/graph`}>The graph</a>
          <a href={`${HOME}/thin`}>Thin places</a>
          <a href={`${HOME}/faults`}>Faults</a>
          <a href={`${HOME}/drawings`}>Drawings</a>
        </nav>
        <h1>{title}</h1>
        {children}
      </main>
    ),
  });
}

/** A form of this session, taken once: `once` is new each time it is drawn. */
export const Deed: FC<PropsWithChildren<{ session: Session; action: string; once: string }>> = (props) => (
  <form method="post" action={props.action}>
    <Csrf session={props.session} />
    <input type="hidden" name="key" value={props.once} />
    {props.children}
  </form>
);

/** Something wider than a phone: it scrolls by itself, by the keyboard too. */
export const Wide: FC<PropsWithChildren<{ label: string }>> = ({ label, children }) => (
  <section class="wide" aria-label={label} tabindex={0}>
    {children}
  </section>
);
