import type { Attachment, Booking, Clock, FaultCounts, PictureUse, Store, Thread } from '../../src/index.ts';
import type { OpenElsewhere } from '../http/open-file.ts';
import type { Uploads } from '../http/uploads.ts';
import type { Wakes } from '../http/wakes.ts';
import type { Theme } from '../pages/colours.ts';
import type { VanSight } from '../pages/silhouettes.tsx';
import type { SheetRow } from '../pictures/contact-sheet.ts';
import type { Growth } from './growth-world.ts';

/** How an action ended. `taken-by`: a colleague was first. */
export type ActionEnd =
  | { readonly kind: 'done' }
  | { readonly kind: 'taken-by'; readonly name: string }
  | { readonly kind: 'no-such-thread' };

/** What staff may do with a thread. `by` is the name on the rota. */
export type StaffActions = {
  readonly take: (threadId: string, by: string) => Promise<ActionEnd>;
  readonly giveBack: (threadId: string, by: string) => Promise<ActionEnd>;
  readonly say: (threadId: string, by: string, text: string, attachments: readonly Attachment[]) => Promise<ActionEnd>;
  /** Changes what `by` said in that line. */
  readonly putRight: (threadId: string, by: string, line: number, text: string) => Promise<ActionEnd>;
  readonly note: (threadId: string, by: string, text: string) => Promise<ActionEnd>;
  /** Hands the thread to a colleague: it is theirs at once. */
  readonly pass: (threadId: string, by: string, to: string) => Promise<ActionEnd>;
};

export type Role = 'staff' | 'operator';

export function roleOf(text: string | undefined): Role {
  return text === 'operator' ? 'operator' : 'staff';
}

/** Something the workshop should look at. */
export type WorkshopItem = { readonly van: string; readonly what: string; readonly since: string | null };

/** What walks have shown of each fault's causes, and the operator's word on it. */
export type Priors = {
  /** Every symptom and van of which a walk has ended. */
  readonly report: () => Promise<readonly FaultCounts[]>;
  /** Writes the priors proposed for one of them into the graph; what stood in the way, or null. */
  readonly accept: (symptom: string, van: string, by: string) => Promise<string | null>;
};

/** All that the yard's pages need from the rest of the house. */
export type YardWorld = {
  readonly firm: { readonly name: string; readonly yard: string; readonly timeZone: string };
  readonly store: Pick<
    Store,
    | 'thread'
    | 'threads'
    | 'lines'
    | 'events'
    | 'booking'
    | 'bookings'
    | 'putToken'
    | 'token'
    | 'tokens'
    | 'note'
    | 'notes'
    | 'putNote'
    | 'spendToken'
    | 'dropToken'
  >;
  readonly clock: Clock;
  readonly tokens: {
    readonly newToken: () => { readonly token: string; readonly hash: string };
    readonly hashOf: (token: string) => string;
  };
  /** The fleet, by van id. */
  readonly vans: ReadonlyMap<string, VanSight>;
  /** Names of the sites, by site id, in the order they are drawn. */
  readonly sites: ReadonlyMap<string, string>;
  /** Names on the rota. */
  readonly people: readonly string[];
  readonly actions: StaffActions;
  /** By when a person should have it, in minutes after it was passed; null while nobody is on duty. */
  readonly aimMinutes: (thread: Thread) => number | null;
  /** Teaching the graph, for operators. */
  readonly growth: Growth;
  /** Told when an operator has shut somebody out of the yard. */
  readonly dismissed?: (name: string) => Promise<void>;
  readonly workshop: () => Promise<readonly WorkshopItem[]>;
  /** What keeps staff from being reached elsewhere, in words; null or left out: nothing does. */
  readonly trouble?: () => string | null;
  readonly priors: Priors;
  /** Every drawing, with the parts that answers and steps touch and the words that go with them. */
  readonly drawings: () => readonly SheetRow[];
  readonly pictureSvg: (use: Pick<PictureUse, 'picture' | 'touch'>, theme: Theme) => string | null;
  readonly uploads: Uploads;
  /** Opens what was sent through another channel. Default: nothing can be opened. */
  readonly openFile?: OpenElsewhere;
  readonly wakes: Wakes;
  /** The pages' compiled script: page/yard.ts. */
  readonly script: string;
  /** The compiled script that draws the graph, on its own page alone: page/graph-picture.ts. */
  readonly pictureScript: string;
  readonly secure: boolean;
  /** Where staff reach us, without a slash at its end: for the links that operators make. */
  readonly url: string;
};

/** The name under which open yard pages sleep: wake it when a thread has changed. */
export const YARD = 'yard';

export function firstNameOf(booking: Booking | null): string {
  return booking?.firstName ?? 'Someone';
}
