/// <reference lib="dom" />
/// <reference lib="dom.iterable" />

/*
 * What scripting adds to the chat page: sending without a reload, keeping what is typed without signal, answers as
 * they come, ticks that stay. Everything else works without it.
 */

import { growWithText } from '../../pages/page/grow.ts';
import { createOutbox, newKey, type Unsent } from './outbox.ts';
import { createSender, type Sent } from './sender.ts';
import { keepTicks } from './ticks.ts';

const path = document.body.dataset.path ?? '/chat';
const talk = find<HTMLElement>('.talk');
const form = find<HTMLFormElement>('#box');
const box = find<HTMLTextAreaElement>('#text');
const photo = find<HTMLInputElement>('input[name=photo]');
const signal = find<HTMLElement>('#signal');
const outbox = createOutbox(window.localStorage, `unsent ${path}`);
/** Photos wait for signal as long as the page is open; the words with them outlive it. */
const photos = new Map<string, File>();
const grow = growWithText(box);
const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches;

let heard = true;
const sender = createSender(outbox, post, (state) => {
  heard = state.signal;
  showPending();
  tell(state.says ?? waitingWords());
});

function waitingWords(): string {
  const waiting = outbox.all().filter((message) => message.refused === undefined).length;
  if (heard || waiting === 0) return '';
  return `No signal. ${waiting === 1 ? 'Your message is' : `${waiting} messages are`} kept here and will be sent when it returns.`;
}

function find<Kind extends Element>(selector: string): Kind {
  const found = document.querySelector<Kind>(selector);
  if (found === null) throw new Error(`the page has no ${selector}`);
  return found;
}

function tell(words: string): void {
  if (signal.textContent !== words) signal.textContent = words;
}

async function post(message: Unsent): Promise<Sent> {
  const data = new FormData();
  data.set('key', message.key);
  data.set('text', message.text);
  if (message.choice !== null) data.set('choice', message.choice);
  const file = photos.get(message.key);
  if (file !== undefined) data.set('photo', file);
  try {
    const answer = await fetch(path, { method: 'POST', body: data, headers: { Accept: 'application/json' } });
    if (answer.status >= 500 || answer.status === 429 || answer.status === 408) return { kind: 'later' };
    const body = (await answer.json()) as { says?: string | null };
    photos.delete(message.key);
    return answer.ok
      ? { kind: 'taken', says: body.says ?? null }
      : { kind: 'refused', says: body.says ?? 'That was not taken.' };
  } catch {
    return { kind: 'later' };
  }
}

function send(text: string, choice: string | null): void {
  const key = newKey();
  const file = photo.files?.[0];
  if (choice === null && file !== undefined) photos.set(key, file);
  if (text.trim() === '' && choice === null && file === undefined) return;
  outbox.add({ key, text, choice, atMs: Date.now() });
  showPending();
  tell(waitingWords());
  talk.lastElementChild?.scrollIntoView({ block: 'end' });
  sender.flush();
}

/** Draws what has not arrived yet, after everything that has. */
function showPending(): void {
  for (const old of talk.querySelectorAll('.pending')) old.remove();
  for (const message of outbox.all()) {
    if (document.querySelector(`[data-key="${message.key}"]`) !== null) continue;
    const line = document.createElement('article');
    line.className = 'line hirer pending';
    const words = message.text === '' ? 'A photo' : message.text;
    line.append(paragraph(`\u2018${words}\u2019`), note(message));
    talk.append(line);
  }
}

function paragraph(text: string): HTMLElement {
  const element = document.createElement('p');
  element.textContent = text;
  return element;
}

function note(message: Unsent): HTMLElement {
  const element = document.createElement('span');
  element.className = 'note';
  element.textContent = message.refused ?? 'on its way';
  if (message.refused === undefined) return element;
  const again = document.createElement('button');
  again.className = 'press';
  again.textContent = 'Take it back into the box';
  again.onclick = () => {
    outbox.drop(message.key);
    box.value = message.text;
    tell('');
    showPending();
    box.focus();
  };
  element.append(document.createElement('br'), again);
  return element;
}

/** Lines come as the server has drawn them; one that is here already is left alone. */
function addLine(html: string): void {
  const parsed = new DOMParser().parseFromString(html, 'text/html').body.firstElementChild;
  if (!(parsed instanceof HTMLElement)) return;
  const line = document.importNode(parsed, true);
  if (talk.querySelector(`[data-line="${line.dataset.line}"]`) !== null) return;
  const key = line.dataset.key;
  if (key !== undefined) outbox.drop(key);
  talk.querySelector('[data-line="0"]')?.remove();
  if (line.classList.contains('hirer')) for (const old of talk.querySelectorAll('.choices')) old.remove();
  line.classList.add('new');
  const pending = talk.querySelector('.pending');
  talk.insertBefore(line, pending);
  showPending();
  ticks.restore(line);
  follow(line);
}

/** A person has put right what they said: the new words stand where the old did, and the page stays where it is. */
function replaceLine(html: string): void {
  const parsed = new DOMParser().parseFromString(html, 'text/html').body.firstElementChild;
  if (!(parsed instanceof HTMLElement)) return;
  const old = talk.querySelector(`[data-line="${parsed.dataset.line}"]`);
  if (old === null || old.innerHTML === parsed.innerHTML) return;
  old.replaceWith(document.importNode(parsed, true));
}

/** A notice is kept at the top of the screen until the hirer has written again; other lines are shown from their beginning. */
function follow(line: HTMLElement): void {
  const lines = [...talk.querySelectorAll<HTMLElement>('.line')];
  const lastSaid = lines.map((one) => one.classList.contains('hirer')).lastIndexOf(true);
  const since = lines.slice(lastSaid + 1);
  const notice = since.find((one) => one.classList.contains('notice'));
  const target = notice ?? since[0] ?? line;
  target.scrollIntoView({
    block: notice === undefined && target === line && line.classList.contains('hirer') ? 'end' : 'start',
    behavior: calm ? 'auto' : 'smooth',
  });
}

function listen(): void {
  const last =
    [...talk.querySelectorAll<HTMLElement>('[data-line]')].pop()?.dataset.line ?? document.body.dataset.after ?? '0';
  const stream = new EventSource(`${path}/events?after=${last}`);
  stream.addEventListener('line', (event) => addLine(event.data));
  stream.addEventListener('right', (event) => replaceLine(event.data));
  stream.addEventListener('plate', (event) => {
    find('#plate').outerHTML = event.data;
  });
  stream.onopen = () => sender.flush();
  stream.onerror = () => {
    // A stream that was refused is closed for good and has to be opened anew; others come back by themselves.
    if (stream.readyState === EventSource.CLOSED) setTimeout(listen, 4000);
  };
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  send(box.value, null);
  form.reset();
  photo.closest('.photo')?.classList.remove('chosen');
  grow();
});
talk.addEventListener('submit', (event) => {
  if (!(event instanceof SubmitEvent) || !(event.submitter instanceof HTMLButtonElement)) return;
  event.preventDefault();
  const code = event.submitter.form?.querySelector<HTMLInputElement>('#code');
  if (code != null) {
    send(code.value, null);
    return;
  }
  send(event.submitter.lastElementChild?.textContent ?? '', event.submitter.value);
});
box.addEventListener('keydown', (event) => {
  // On a phone's keyboard the return key makes a new line; 'Send' sends.
  const typed = window.matchMedia('(hover: hover) and (pointer: fine)').matches;
  if (event.key === 'Enter' && typed && !event.shiftKey && !event.isComposing) {
    event.preventDefault();
    form.requestSubmit();
  }
});
photo.addEventListener('change', () => {
  const file = photo.files?.[0];
  photo.closest('.photo')?.classList.toggle('chosen', file !== undefined);
  tell(file === undefined ? '' : `A photo goes with your next message: ${file.name}`);
});
window.addEventListener('online', sender.flush);
window.addEventListener('storage', showPending);

const ticks = keepTicks(talk, window.localStorage, path);
showPending();
listen();
sender.flush();
if (window.location.hash === '') document.getElementById('here')?.scrollIntoView();
