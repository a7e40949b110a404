import type { FC, PropsWithChildren } from 'hono/jsx';
import { page } from '../pages/page.tsx';
import type { Session } from './session.ts';

/** What every yard page stands in. `live`: the path of its event stream, whose pieces replace `#live`. */
export type FrameProps = PropsWithChildren<{
  readonly title: string;
  readonly files: { readonly style: string; readonly script: string };
  readonly live?: string;
  readonly kind: 'day' | 'thread' | 'gatehouse' | 'sheet' | 'growth';
}>;

export function yardPage(props: FrameProps): ReturnType<typeof page> {
  const { live } = props;
  return page({
    title: props.title,
    style: props.files.style,
    script: props.files.script,
    body: { class: `yard at-${props.kind}`, ...(live === undefined ? {} : { 'data-live': live }) },
    children: props.children,
  });
}

/** The hidden field that proves a form was drawn for this session. */
export const Csrf: FC<{ session: Session }> = ({ session }) => <input type="hidden" name="csrf" value={session.csrf} />;

/** Who is signed in, and the way out. */
export const Door: FC<{ session: Session }> = ({ session }) => (
  <form class="door" method="post" action="/yard/sign-out">
    <Csrf session={session} />
    <span>{session.name}</span>
    <a href="/yard/passkeys">Passkeys</a>
    {session.role === 'operator' ? (
      <>
        <a href="/yard/growth">What it could not answer</a>
        <a href="/yard/people">Let someone in</a>
      </>
    ) : null}
    <button class="press" type="submit">
      Sign out
    </button>
  </form>
);
