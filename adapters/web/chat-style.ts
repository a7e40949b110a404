/** The chat page alone: the sign on top, the printed page, the box at the foot. */
export const CHAT_CSS = `
body.chat{display:flex;flex-direction:column;min-height:100vh;min-height:100dvh}
.chat header{position:sticky;top:0;z-index:2;background:var(--paper);padding:8px 8px 6px}
.chat .plate{display:flex;align-items:center;justify-content:center;gap:1.1rem;min-height:5.5rem;padding:.8rem 1.3rem;max-width:38rem;margin:0 auto}
.chat .plate h1{font:800 1.75rem/1.05 var(--sign);letter-spacing:.01em}
.chat .plate p{font-size:1rem;line-height:1.3}
.chat .plate .holder{font-weight:700}
.chat .plate .home,.chat .plate.held .where{display:none}
.chat .plate svg.van{flex:none;width:auto;height:56px}
.pitch{margin:0 calc(50% - 50vw) 2rem;padding:1.5rem 0 0}
.ground{--van-ground:var(--paper);display:flex;justify-content:center;align-items:flex-end;gap:1.5rem;padding:0 1.25rem;border-bottom:2.4rem solid var(--grass);box-shadow:inset 0 -2px 0 var(--ink);overflow:hidden;color:var(--ink);position:relative}
.ground svg.van{flex:none;display:block}
.pitch.one .ground{gap:1rem}
.pitch.one svg.van{width:min(78%,22rem);height:auto;flex:0 1 auto}
.peg{font:800 1.25rem/1 var(--sign);color:var(--on-plate);background:var(--plate);padding:.45rem .6rem;border-radius:6px 6px 0 0;margin-bottom:0}
.code{font-family:var(--sign);margin-bottom:2rem}
.code label{font-weight:650;display:block;margin-bottom:.4rem}
.code div{display:flex;flex-wrap:wrap;gap:.6rem}
.code input{font:700 1.375rem/1.2 var(--sign);letter-spacing:.12em;text-transform:uppercase;flex:1 1 11rem;min-width:0;background:var(--sheet)}
.chat main{flex:1;overflow-x:hidden;overflow-x:clip}
.earlier,.ended{font-family:var(--sign);margin-bottom:1.5rem}
.line.notice{margin-inline:calc(50% - 50vw);padding-inline:max(1.25rem,calc(50vw - 30ch));min-height:calc(100vh - 11.5rem);min-height:calc(100svh - 11.5rem);display:flex;flex-direction:column;justify-content:center;border-inline:0}
.line.pending{opacity:1}
.line.pending .note{font:600 1rem/1.4 var(--sign);font-style:normal;text-indent:0;color:var(--quiet);display:block}
.line.pending .note .press{font-size:1rem;margin-top:.3rem}
@media (min-width:480px){.chat .plate .home{display:inline}.chat .plate.held .where{display:block}}
@media (min-width:760px){
.chat .plate{min-height:7rem;gap:1.75rem}
.chat .plate svg.van{height:72px}
.chat .plate h1{font-size:2.25rem}
.chat .plate p{font-size:1.0625rem}
.talk{padding-top:2rem}
}
@media (max-height:480px){.chat header{position:static}}
`;
