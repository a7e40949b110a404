import type { Booking, Clock, Message, PictureUse, Reply, Store } from '../../src/index.ts';
import type { OpenElsewhere } from '../http/open-file.ts';
import type { Uploads } from '../http/uploads.ts';
import type { Wakes } from '../http/wakes.ts';
import type { Theme } from '../pages/colours.ts';
import type { VanSight } from '../pages/silhouettes.tsx';

/** All that the chat page needs from the rest of the house. */
export type WebWorld = {
  readonly firm: { readonly name: string; readonly phone: string; readonly timeZone: string };
  /** Resolves when the message is stored; a repeated key changes nothing. */
  readonly receive: (message: Message) => Promise<void>;
  readonly store: Pick<Store, 'threadAt' | 'lines' | 'booking' | 'token'>;
  readonly clock: Clock;
  readonly tokens: { readonly newToken: () => { readonly token: string }; readonly hashOf: (token: string) => string };
  /** What stands on the page before anything was said: the same reply that a start brings. */
  readonly welcome: (booking: Booking | null) => Reply;
  readonly vanOf: (booking: Booking) => VanSight | null;
  /** The vans of the firm, for the page that knows no booking yet. */
  readonly fleet: readonly VanSight[];
  readonly siteName: (site: string) => string | null;
  /** A drawing with its part ringed; null when there is none. */
  readonly pictureSvg: (use: Pick<PictureUse, 'picture' | 'touch'>, theme: Theme) => string | null;
  readonly uploads: Uploads;
  /** Opens what was sent through another channel. Default: nothing can be opened. */
  readonly openFile?: OpenElsewhere;
  readonly wakes: Wakes;
  /** The page's compiled script: page/chat.ts. */
  readonly script: string;
  /** True when hirers reach us over https: cookies are then sent over nothing else. */
  readonly secure: boolean;
  /** Milliseconds that a page without scripting waits for the answer before it is shown again. Default 2,500. */
  readonly patienceMs?: number;
  /** New threads without a booking that one network address may begin in an hour. Default 60. */
  readonly newThreadsAnHour?: number;
};
