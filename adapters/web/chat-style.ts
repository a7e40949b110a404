/** The chat page alone: the sign on top, the printed page, the box at the foot. */
export const CHAT_CSS = `
body.chat{display:flex;flex-direction:column;min-height:100dvh}
.chat .plate{position:sticky;top:0;z-index:2;display:flex;align-items:center;gap:1.1rem;min-height:5.25rem;padding:.9rem 1.4rem}
.chat .plate h1{font:800 1.75rem/1.05 var(--sign);letter-spacing:.01em}
.chat .plate p{font-size:1.0625rem;line-height:1.3}
.chat .plate .holder{font-weight:700}
.chat .plate svg.van{flex:0 1 auto;width:auto;height:56px;max-width:44%}
.chat main{flex:1}
.earlier,.ended{font-family:var(--sign);margin-bottom:1.5rem}
.line.notice{margin-inline:calc(50% - 50vw);padding-inline:max(1.25rem,calc(50vw - 30ch));min-height:calc(100svh - 11.5rem);display:flex;flex-direction:column;justify-content:center;border-inline:0}
.line.notice .calls{justify-items:stretch}
.line.pending{opacity:1}
.line.pending .note{font:600 1rem/1.4 var(--sign);font-style:normal;text-indent:0;color:var(--quiet);display:block}
.line.pending .note .press{font-size:1rem;margin-top:.3rem}
.box{position:sticky;bottom:0;z-index:2;background:var(--sheet);border-top:3px solid var(--ink);padding:.7rem .9rem calc(.7rem + env(safe-area-inset-bottom))}
.box form{display:grid;grid-template-columns:1fr auto auto;gap:.5rem;max-width:44rem;margin:0 auto;align-items:end}
.box textarea{width:100%;max-height:9.5rem;padding:.65rem .8rem}
.box .press{min-height:52px}
.box .photo{padding:.5rem;min-width:52px;position:relative}
.box .photo:focus-within{outline:3px solid var(--focus);outline-offset:3px}
.box .photo.chosen{background:var(--marigold);color:var(--on-marigold)}
.box .signal{font:600 1rem/1.35 var(--sign);max-width:44rem;margin:0 auto .5rem}
.box .signal:empty{display:none}
.box noscript p{max-width:44rem;margin:.4rem auto 0;font-size:1rem}
@media (min-width:760px){
.chat .plate{justify-content:center;padding-block:1.1rem;gap:1.75rem}
.chat .plate svg.van{height:76px}
.chat .plate h1{font-size:2.4rem}
.talk{padding-top:2.5rem}
}
@media (max-height:480px){.chat .plate{position:relative}}
`;
