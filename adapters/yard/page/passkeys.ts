/// <reference lib="dom" />

/*
 * Opening the yard by passkey, and adding one. Both forms are hidden until the browser is known to hold keys for this
 * very host; without scripting the way in stays the link.
 */

import { browserSupportsWebAuthn, startAuthentication, startRegistration } from '@simplewebauthn/browser';

export function offerPasskeys(): void {
  const adding = formFor('add-passkey');
  if (adding !== null) handle(adding, () => add(adding));
  const opening = formFor('open-by-passkey');
  if (opening !== null) handle(opening, open);
}

function formFor(id: string): HTMLFormElement | null {
  const form = document.querySelector<HTMLFormElement>(`#${id}`);
  return form !== null && browserSupportsWebAuthn() && form.dataset.host === location.hostname ? form : null;
}

function handle(form: HTMLFormElement, act: () => Promise<void>): void {
  const say = (text: string): void => form.querySelector('[role=status]')?.replaceChildren(text);
  form.hidden = false;
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    say('');
    act().catch((error: unknown) => say(problem(error)));
  });
}

async function add(form: HTMLFormElement): Promise<void> {
  const fields = new FormData(form);
  const csrf = String(fields.get('csrf'));
  const question = await (await post('/yard/passkeys/question', { csrf })).json();
  const answer = JSON.stringify(await startRegistration({ optionsJSON: question }));
  await post('/yard/passkeys', { csrf, answer, label: String(fields.get('label')) });
  location.assign('/yard/passkeys');
}

async function open(): Promise<void> {
  const question = await (await post('/yard/passkeys/sign-in/question', {})).json();
  const answer = JSON.stringify(await startAuthentication({ optionsJSON: question }));
  await post('/yard/passkeys/sign-in', { answer });
  location.assign('/yard');
}

/** What the server says against it is thrown as its own words. */
class Refused extends Error {}

async function post(path: string, fields: Record<string, string>): Promise<Response> {
  const answer = await fetch(path, { method: 'POST', body: new URLSearchParams(fields) });
  if (!answer.ok) throw new Refused((await answer.text()).trim());
  return answer;
}

function problem(error: unknown): string {
  if (error instanceof Refused) return error.message;
  if (!(error instanceof Error)) return 'That did not work. Try once more.';
  // The names are WebAuthn's own.
  if (error.name === 'InvalidStateError') return 'This device has a passkey for the yard already.';
  if (error.name === 'NotAllowedError') return 'The device did not confirm that it is you. Nothing was done.';
  return 'No connection, or this device holds no passkeys. Try once more, or come by a link.';
}
