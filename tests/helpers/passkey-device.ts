import { createServer } from 'node:net';
import type { CDPSession, Page } from 'playwright-core';

export type PasskeyDevice = {
  /** Whether the next confirmation by finger, face or PIN succeeds. */
  readonly confirms: (yes: boolean) => Promise<void>;
  readonly count: () => Promise<number>;
  readonly remove: () => Promise<void>;
};

/** A device that holds passkeys, plugged into a page of a real Chromium by its own test interface. */
export async function passkeyDevice(page: Page): Promise<PasskeyDevice> {
  const cdp: CDPSession = await page.context().newCDPSession(page);
  await cdp.send('WebAuthn.enable');
  const { authenticatorId } = await cdp.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      protocol: 'ctap2',
      transport: 'internal',
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
  return {
    confirms: async (yes) => {
      await cdp.send('WebAuthn.setUserVerified', { authenticatorId, isUserVerified: yes });
    },
    count: async () => (await cdp.send('WebAuthn.getCredentials', { authenticatorId })).credentials.length,
    remove: async () => {
      await cdp.send('WebAuthn.removeVirtualAuthenticator', { authenticatorId });
    },
  };
}

/** A port nobody listens on now. Passkeys are bound to an address, so it must be known before the server is made. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => (typeof address === 'object' && address !== null ? resolve(address.port) : reject(address)));
    });
  });
}
