/// <reference lib="dom" />
/// <reference lib="dom.iterable" />

/*
 * What scripting adds to the yard's pages: they follow the day by themselves, say aloud who is new, sound when someone
 * is in danger, and do not lose what is being typed. Everything else works without it.
 */

import { growWithText } from '../../pages/page/grow.ts';
import { alarm } from './alarm.ts';
import { offerPasskeys } from './passkeys.ts';

const live = document.getElementById('live');
const stream = document.body.dataset.live;
const box = document.querySelector<HTMLTextAreaElement>('#text');
const spoken = document.getElementById('spoken');

if (live !== null && stream !== undefined) follow(live, stream);
if (box !== null) easeBox(box);
offerPasskeys();
alarm.tell(document.getElementById('facts')?.dataset.danger ?? '');

function follow(part: HTMLElement, path: string): void {
  let known = new Set(waitingIn(part).map(([id]) => id));
  const events = new EventSource(path);
  events.addEventListener('live', (event) => {
    const held = document.activeElement?.id ?? '';
    part.innerHTML = event.data;
    // The same thing has the focus again, unless it is gone.
    if (held !== '' && document.activeElement === document.body) document.getElementById(held)?.focus();
    const waiting = waitingIn(part);
    const fresh = waiting.filter(([id]) => !known.has(id)).map(([, name]) => name);
    known = new Set(waiting.map(([id]) => id));
    if (spoken !== null && fresh.length > 0)
      spoken.textContent = `${fresh.join(', ')} ${fresh.length === 1 ? 'waits' : 'wait'} for us`;
    alarm.tell(part.querySelector<HTMLElement>('#facts')?.dataset.danger ?? '');
  });
  events.onerror = () => {
    if (events.readyState === EventSource.CLOSED) setTimeout(() => follow(part, path), 4000);
  };
}

/** Pairs of thread id and first name. */
function waitingIn(part: HTMLElement): [string, string][] {
  const listed = part.querySelector<HTMLElement>('#facts')?.dataset.waiting ?? '';
  return listed === ''
    ? []
    : listed.split('|').map((one): [string, string] => [one.split(';')[0] ?? '', one.split(';')[1] ?? '']);
}

function easeBox(text: HTMLTextAreaElement): void {
  const grow = growWithText(text);
  // 'Change it first': the suggestion moves into the box without a reload.
  document.addEventListener('click', (event) => {
    if (!(event.target instanceof HTMLElement) || event.target.id !== 'change') return;
    event.preventDefault();
    text.value = document.getElementById('suggested')?.textContent ?? '';
    grow();
    text.focus();
  });
}
