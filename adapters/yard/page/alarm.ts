/// <reference lib="dom" />

/*
 * Three falling notes when someone is in danger and nobody has it yet, again every twenty seconds until somebody does,
 * and the device's own notice where it allows one. Browsers let a page sound only after a press: hence the button.
 */

const AGAIN_MS = 20_000;
const KEPT = 'yard sound';

let context: AudioContext | null = null;
let inDanger = '';
let timer: ReturnType<typeof setInterval> | undefined;

const button = document.getElementById('sound');
if (button !== null) {
  button.hidden = false;
  button.addEventListener('click', () => {
    context = new AudioContext();
    remember();
    button.textContent = 'Sound is on';
    notes(context, [660]);
    if ('Notification' in window && Notification.permission === 'default') void Notification.requestPermission();
  });
  // Whoever has switched it on before only has to touch the page.
  if (remembered()) document.addEventListener('pointerdown', () => (context ??= new AudioContext()), { once: true });
}

/** Tells the alarm who is in danger and not yet taken: pairs 'thread;name', empty for nobody. */
function tell(danger: string): void {
  const fresh = danger !== '' && danger !== inDanger;
  inDanger = danger;
  if (danger === '') {
    clearInterval(timer);
    timer = undefined;
    document.title = document.title.replace(/^DANGER /, '');
    return;
  }
  if (!document.title.startsWith('DANGER ')) document.title = `DANGER ${document.title}`;
  if (fresh) {
    sound();
    show(danger);
  }
  timer ??= setInterval(sound, AGAIN_MS);
}

function sound(): void {
  if (context !== null) notes(context, [880, 740, 587]);
}

function notes(audio: AudioContext, pitches: readonly number[]): void {
  pitches.forEach((hertz, i) => {
    const tone = audio.createOscillator();
    const loud = audio.createGain();
    const at = audio.currentTime + i * 0.28;
    tone.type = 'triangle';
    tone.frequency.value = hertz;
    loud.gain.setValueAtTime(0.0001, at);
    loud.gain.exponentialRampToValueAtTime(0.4, at + 0.02);
    loud.gain.exponentialRampToValueAtTime(0.0001, at + 0.26);
    tone.connect(loud).connect(audio.destination);
    tone.start(at);
    tone.stop(at + 0.27);
  });
}

function show(danger: string): void {
  if (!('Notification' in window) || Notification.permission !== 'granted') return;
  const names = danger.split('|').map((one) => one.split(';')[1]);
  new Notification(`Danger: ${names.join(', ')}`, {
    body: 'Nobody has it yet.',
    tag: 'danger',
    requireInteraction: true,
  });
}

function remember(): void {
  try {
    localStorage.setItem(KEPT, 'on');
  } catch {
    // Nothing is kept here; the button is pressed again next time.
  }
}

function remembered(): boolean {
  try {
    return localStorage.getItem(KEPT) === 'on';
  } catch {
    return false;
  }
}

export const alarm = { tell };
