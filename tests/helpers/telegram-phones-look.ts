/** Plain on purpose: it is a bench for trying things out, not a page of the program. */
export const PHONES_STYLE = `
:root { color-scheme: light dark; font: 16px/1.4 system-ui, sans-serif; }
body { margin: 0; }
main { display: grid; gap: 1rem; grid-template-columns: repeat(auto-fit, minmax(20rem, 1fr)); padding: 1rem; height: calc(100vh - 2rem); }
section { border: 2px solid; border-radius: 1.2rem; padding: .8rem; display: flex; flex-direction: column; min-height: 24rem; overflow: hidden; }
nav { display: flex; flex-wrap: wrap; gap: .3rem .9rem; padding-bottom: .5rem; }
nav a { padding: .3rem 0; }
nav a[aria-current] { font-weight: 700; text-decoration: none; color: inherit; }
.said { flex: 1; overflow-y: auto; border-block: 1px solid; padding: .3rem 0; }
article { padding: .5rem; margin-right: 2rem; border-bottom: 1px dotted; }
article.mine { margin: 0 0 0 2rem; }
article p { margin: 0; white-space: pre-wrap; overflow-wrap: anywhere; }
article form { display: inline-block; margin: .3rem .3rem 0 0; }
article img { max-width: 100%; max-height: 14rem; }
button { font: inherit; min-height: 2.4rem; }
textarea { width: 100%; box-sizing: border-box; font: inherit; }
.toast { font-weight: 700; }
`;

/** Fetches the page again every second and shows what is new; what is being typed stays. Enter sends. */
export const PHONES_SCRIPT = `
const boxes = () => [...document.querySelectorAll('.said, #rooms')];
const down = (box) => { box.scrollTop = box.scrollHeight; };
document.querySelectorAll('.said').forEach(down);
setInterval(async () => {
  const answer = await fetch(location.href).catch(() => null);
  if (answer === null || !answer.ok) return;
  const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html');
  for (const box of boxes()) {
    const now = fresh.getElementById(box.id);
    if (now === null || now.innerHTML === box.innerHTML) continue;
    box.innerHTML = now.innerHTML;
    down(box);
  }
}, 1000);
for (const box of document.querySelectorAll('textarea'))
  box.addEventListener('keydown', (press) => {
    if (press.key !== 'Enter' || press.shiftKey) return;
    press.preventDefault();
    box.form.requestSubmit();
  });
`;
