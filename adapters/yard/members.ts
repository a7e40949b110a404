import type { Store, Token } from '../../src/index.ts';
import { type Role, roleOf } from './world.ts';

/** Who belongs to the yard, as operators have said last. `role` null: no longer. */
type Member = { readonly role: Role | null };

type MemberStore = Pick<Store, 'note' | 'putNote' | 'notes'>;

const PREFIX = 'member/';
/** Everything that lets a person in. */
const WAYS_IN: readonly Token['use'][] = ['session', 'passkey', 'sign-in', 'staff-telegram'];

/**
 * What a person may do now, whatever their link, session or passkey was made for.
 *
 * @param made The role that it was made for: it counts while nobody has said anything of this person.
 * @returns    Null for somebody who was removed.
 */
export async function roleNow(
  store: Pick<Store, 'note'>,
  name: string,
  made: string | undefined,
): Promise<Role | null> {
  const note = await store.note(PREFIX + name);
  return note === null ? roleOf(made) : (JSON.parse(note) as Member).role;
}

/** Says that this person belongs to the yard, and what they may do from now on. */
export function admit(store: Pick<Store, 'putNote'>, name: string, role: Role): Promise<void> {
  return store.putNote(PREFIX + name, JSON.stringify({ role } satisfies Member));
}

/** Ends a person's links, sessions and passkeys. Said first, so that nothing made at this very moment lets them in. */
export async function dismiss(
  store: MemberStore & Pick<Store, 'tokens' | 'dropToken'>,
  name: string,
  nowMs: number,
): Promise<void> {
  await store.putNote(PREFIX + name, JSON.stringify({ role: null } satisfies Member));
  for (const use of WAYS_IN) for (const { hash } of await store.tokens(use, nowMs, name)) await store.dropToken(hash);
}

/** Everybody who can come in or has been let in, by name. */
export async function members(
  store: MemberStore & Pick<Store, 'tokens'>,
  nowMs: number,
): Promise<readonly { readonly name: string; readonly role: Role }[]> {
  const made = new Map<string, string | undefined>();
  for (const { name } of await store.notes(PREFIX)) made.set(name.slice(PREFIX.length), undefined);
  for (const use of WAYS_IN) {
    for (const { subject, data } of await store.tokens(use, nowMs))
      made.set(subject, made.get(subject) ?? data['role']);
  }
  const all = await Promise.all(
    [...made].map(async ([name, role]) => ({ name, role: await roleNow(store, name, role) })),
  );
  return all
    .flatMap(({ name, role }) => (role === null ? [] : [{ name, role }]))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}
