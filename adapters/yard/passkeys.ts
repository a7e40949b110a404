import { createHash } from 'node:crypto';
import { isIP } from 'node:net';
import type {
  AuthenticationResponseJSON,
  PublicKeyCredentialCreationOptionsJSON,
  PublicKeyCredentialRequestOptionsJSON,
  RegistrationResponseJSON,
} from '@simplewebauthn/server';
import { z } from 'zod';
import type { Token } from '../../src/index.ts';
import { createChallenges } from './challenges.ts';
import { roleNow } from './members.ts';
import type { Session } from './session.ts';
import { type Role, YARD, type YardWorld } from './world.ts';

/** One device's key to the yard, as people see it. `hash` names it. */
export type Passkey = {
  readonly hash: string;
  readonly owner: string;
  readonly label: string;
  readonly addedMs: number;
  readonly usedMs: number | null;
};

export type Passkeys = {
  /** The host that keys are bound to; null where browsers allow none, such as an address in digits. */
  readonly host: string | null;
  readonly askToAdd: (session: Session) => Promise<PublicKeyCredentialCreationOptionsJSON>;
  /** @param answer What the browser made of {@link Passkeys.askToAdd}, as JSON. */
  readonly add: (session: Session, answer: string, label: string) => Promise<'added' | 'refused' | 'too-many'>;
  readonly askToSignIn: () => Promise<PublicKeyCredentialRequestOptionsJSON>;
  /** @returns Whose key it was, or null: not ours, removed, replayed, another site's, not confirmed by its owner. */
  readonly signIn: (answer: string) => Promise<{ name: string; role: Role; passkey: string } | null>;
  /** One person's, or (left out) everybody's. */
  readonly list: (owner?: string) => Promise<readonly Passkey[]>;
  /** Ends the key and every session it began. Others' keys only for operators. */
  readonly remove: (session: Session, hash: string) => Promise<'removed' | 'not-yours'>;
};

const MOST_EACH = 10;
const LONGEST_ANSWER = 16_000;
const NEVER_MS = 8.64e15;
const SIGN_IN = 'sign in';

/** Read when a passkey is first asked for: it would add a fifth to every command's start. */
const library = () => import('@simplewebauthn/server');

const answerForm = z.object({
  id: z.string().min(1).max(2_000),
  rawId: z.string(),
  type: z.literal('public-key'),
  clientExtensionResults: z.object({}).default({}),
});
const signedForm = answerForm.extend({
  response: z.object({
    clientDataJSON: z.string(),
    authenticatorData: z.string(),
    signature: z.string(),
    userHandle: z.string().default(''),
  }),
});
const madeForm = answerForm.extend({
  response: z.object({ clientDataJSON: z.string(), attestationObject: z.string() }),
});

type Counted = { readonly counter: number; readonly atMs: number };

/**
 * Keys for return visits (WebAuthn level 2). A key is bound to the firm's host, asks its owner for finger, face or PIN
 * each time, and lies in the store as a token; how often it was used lies beside it, so that noting a use can never
 * bring a removed key back.
 */
export function createPasskeys(world: YardWorld): Passkeys {
  const { store, clock, tokens } = world;
  const challenges = createChallenges();
  const site = new URL(world.url);
  const expected = { expectedOrigin: site.origin, expectedRPID: site.hostname, requireUserVerification: true };
  const hashOf = (id: string): string => tokens.hashOf(`passkey ${id}`);
  const purposeOf = (session: Session): string => `add ${session.hash}`;
  const counted = async (hash: string): Promise<Counted | null> => {
    const note = await store.note(noteName(hash));
    return note === null ? null : (JSON.parse(note) as Counted);
  };
  /** Runs a check of the library's; anything it throws is a no. Of two that come with one challenge, one is heard. */
  const once = async <T>(
    purpose: string,
    check: (expectedChallenge: (challenge: string) => boolean) => Promise<T | null>,
  ): Promise<T | null> => {
    let signed = '';
    const checked = await check((challenge) => {
      signed = challenge;
      return challenges.stands(challenge, purpose, clock.nowMs());
    }).catch(() => null);
    return checked !== null && challenges.spend(signed, clock.nowMs()) ? checked : null;
  };

  return {
    host: canHoldKeys(site) ? site.hostname : null,

    askToAdd: async (session) => {
      const own = await store.tokens('passkey', clock.nowMs(), session.name);
      return (await library()).generateRegistrationOptions({
        rpName: world.firm.yard,
        rpID: site.hostname,
        userName: session.name,
        userID: handleOf(session.name),
        challenge: challenges.ask(purposeOf(session), clock.nowMs()),
        attestationType: 'none',
        excludeCredentials: own.map(({ data }) => ({ id: data['id'] ?? '' })),
        authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
      });
    },

    add: async (session, answer, label) => {
      const response = parsed(answer, madeForm) as RegistrationResponseJSON | null;
      if (response === null) return 'refused';
      const made = await once(purposeOf(session), async (expectedChallenge) => {
        const { verified, registrationInfo } = await (await library()).verifyRegistrationResponse({
          ...expected,
          response,
          expectedChallenge,
        });
        return verified && registrationInfo !== undefined ? registrationInfo.credential : null;
      });
      if (made === null) return 'refused';
      const nowMs = clock.nowMs();
      const hash = hashOf(made.id);
      // A key that is known already stays its owner's.
      if ((await store.token(hash, 'passkey', nowMs)) !== null) return 'refused';
      if ((await store.tokens('passkey', nowMs, session.name)).length >= MOST_EACH) return 'too-many';
      await store.putNote(noteName(hash), JSON.stringify({ counter: made.counter, atMs: 0 } satisfies Counted));
      await store.putToken({
        hash,
        use: 'passkey',
        subject: session.name,
        data: {
          id: made.id,
          key: Buffer.from(made.publicKey).toString('base64url'),
          role: session.role,
          label,
          added: String(nowMs),
        },
        expiresMs: NEVER_MS,
      });
      return 'added';
    },

    askToSignIn: async () =>
      (await library()).generateAuthenticationOptions({
        rpID: site.hostname,
        challenge: challenges.ask(SIGN_IN, clock.nowMs()),
        userVerification: 'required',
      }),

    signIn: async (answer) => {
      const response = parsed(answer, signedForm) as AuthenticationResponseJSON | null;
      if (response === null) return null;
      const hash = hashOf(response.id);
      const token = await store.token(hash, 'passkey', clock.nowMs());
      const { userHandle } = response.response;
      if (token === null || userHandle !== Buffer.from(handleOf(token.subject)).toString('base64url')) return null;
      const counter = (await counted(hash))?.counter ?? 0;
      const used = await once(SIGN_IN, async (expectedChallenge) => {
        const { verified, authenticationInfo } = await (await library()).verifyAuthenticationResponse({
          ...expected,
          response,
          expectedChallenge,
          credential: { id: response.id, publicKey: keyOf(token), counter },
        });
        return verified ? authenticationInfo : null;
      });
      const role = await roleNow(store, token.subject, token.data['role']);
      if (used === null || role === null) return null;
      const noted: Counted = { counter: used.newCounter, atMs: clock.nowMs() };
      await store.putNote(noteName(hash), JSON.stringify(noted));
      return { name: token.subject, role, passkey: hash };
    },

    list: async (owner) => {
      const all = await store.tokens('passkey', clock.nowMs(), owner);
      return Promise.all(all.map(async (token) => passkeyOf(token, await counted(token.hash))));
    },

    remove: async (session, hash) => {
      const nowMs = clock.nowMs();
      const token = await store.token(hash, 'passkey', nowMs);
      if (token === null || (token.subject !== session.name && session.role !== 'operator')) return 'not-yours';
      await store.dropToken(hash);
      const begun = await store.tokens('session', nowMs, token.subject);
      await Promise.all(begun.filter(({ data }) => data['passkey'] === hash).map((each) => store.dropToken(each.hash)));
      world.wakes.wake(YARD);
      return 'removed';
    },
  };
}

/** Browsers make keys for names only, over https or on this very machine. */
function canHoldKeys(site: URL): boolean {
  const address = site.hostname.replace(/^\[|\]$/g, '');
  return isIP(address) === 0 && (site.protocol === 'https:' || address === 'localhost');
}

function noteName(hash: string): string {
  return `passkey/${hash}`;
}

/** What the device files a person's keys under: the same for all of them, and no name in clear. */
function handleOf(name: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(createHash('sha256').update(`passkeys of ${name}`).digest());
}

function keyOf(token: Token): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Buffer.from(token.data['key'] ?? '', 'base64url'));
}

function passkeyOf({ hash, subject, data }: Token, counted: Counted | null): Passkey {
  const usedMs = counted === null || counted.atMs === 0 ? null : counted.atMs;
  return { hash, owner: subject, label: data['label'] ?? '', addedMs: Number(data['added']), usedMs };
}

function parsed<T>(answer: string, form: z.ZodType<T>): T | null {
  if (answer.length > LONGEST_ANSWER) return null;
  try {
    return form.parse(JSON.parse(answer));
  } catch {
    return null;
  }
}
