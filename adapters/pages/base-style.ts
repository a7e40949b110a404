import { BAR_INKS_CSS } from '../pictures/bar.ts';
import { COLOUR_CSS } from './colours.ts';

/**
 * What chat and yard share: type, buttons, the enamel plate, the printed conversation. Two faces, both the device's
 * own: the sign face for what is pressed and read at a glance, the book face for what was said.
 */
export const BASE_CSS = `${COLOUR_CSS}${BAR_INKS_CSS}
:root{--sign:system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans",sans-serif;
--book:ui-serif,"Iowan Old Style","Palatino Linotype",Palatino,"Noto Serif",Georgia,serif;
--gap:1rem;--radius:10px}
*{box-sizing:border-box}
html{font:400 1.125rem/1.5 var(--sign);background:var(--paper);color:var(--ink);-webkit-text-size-adjust:100%;text-size-adjust:100%;scroll-padding:7.5rem 0 7rem}
body{margin:0;min-height:100vh;min-height:100svh}
h1,h2,h3,p,ol,ul,dl,dd,figure{margin:0;padding:0}
ol,ul{list-style:none}
a{color:inherit;text-decoration-thickness:2px;text-underline-offset:.2em}
svg.icon{flex:none}
svg.van .b,.van .b{fill:currentColor}.van .c{fill:var(--van-ground)}.van .m{fill:var(--marigold);stroke:var(--van-ground);stroke-width:.6}
.van .s{fill:none;stroke:currentColor;stroke-width:1.4}
:focus-visible{outline:3px solid var(--focus);outline-offset:3px;border-radius:4px}
.hush{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.press{display:inline-flex;align-items:center;justify-content:center;gap:.6rem;min-height:48px;min-width:48px;padding:.5rem 1.1rem;
font:650 1.0625rem/1.25 var(--sign);color:var(--ink);background:transparent;border:2px solid var(--ink);border-radius:var(--radius);cursor:pointer;text-decoration:none;text-align:center}
.press.next{background:var(--marigold);color:var(--on-marigold);border-color:var(--on-marigold)}
.press:active{transform:translateY(2px)}
.press[disabled]{opacity:1;border-style:dashed;cursor:default}
@media (prefers-color-scheme:dark){.press.next,.choices .next .digit{border-color:var(--marigold)}}
input,textarea,select{max-width:100%;font:inherit;color:var(--ink);background:var(--paper);border:2px solid var(--ink);border-radius:var(--radius);padding:.6rem .8rem;min-height:48px}
textarea{resize:none;line-height:1.4}
::placeholder{color:var(--quiet);opacity:1}

.plate{position:relative;background:var(--plate);color:var(--on-plate);--van-ground:var(--plate);--focus:var(--on-plate);border-radius:14px}
.plate::before{content:"";position:absolute;inset:5px;border:2px solid var(--on-plate);border-radius:10px;pointer-events:none}

.talk{font-family:var(--book);font-size:1.1875rem;max-width:60ch;margin:0 auto;padding:1.5rem 1.25rem 1rem}
.line{margin:0 0 1.75rem;overflow-wrap:anywhere}
.line>*+*{margin-top:.7rem}
.line p{white-space:pre-line}
.line time,.line .right{font:400 1rem/1.4 var(--sign);color:var(--quiet);font-variant-numeric:tabular-nums}
.line.hirer{padding-left:2.25rem;font-style:italic}
.line.hirer p{text-indent:-.42em}
.line.hirer time{font-style:normal;display:block;margin-top:.15rem}
.line.person .name{font:700 1.0625rem/1.3 var(--sign);display:flex;gap:.6rem;align-items:baseline}
.line.person .name time{font-weight:400}
.hand-rule{display:block;color:var(--ink);margin-top:.1rem;max-width:100%}
.day{font:600 1rem/1.4 var(--sign);color:var(--quiet);display:flex;gap:1rem;align-items:center;margin:0 0 1.5rem}
.day::before,.day::after{content:"";flex:1;height:2px;background:var(--rule)}
.facts li{padding-left:1.5rem;position:relative}
.facts li::before{content:"";position:absolute;left:0;top:.72em;width:.8rem;height:2px;background:var(--ink)}
.facts li+li{margin-top:.4rem}
.steps{counter-reset:step;border-top:2px solid var(--ink)}
.steps li{border-bottom:1px solid var(--rule)}
.steps li:last-child{border-bottom:2px solid var(--ink)}
.step{display:grid;grid-template-columns:2.6rem 1fr;align-items:center;min-height:56px;padding:.5rem 0}
label.step{grid-template-columns:2.6rem 1fr 48px;cursor:pointer}
.steps .numeral{font:800 2rem/1 var(--sign);font-variant-numeric:tabular-nums;align-self:start;padding-top:.1rem}
.steps input{appearance:none;-webkit-appearance:none;width:30px;height:30px;min-height:0;padding:0;margin:0;justify-self:end;border:2px solid var(--ink);border-radius:6px;background:transparent;display:grid;place-content:center}
.steps input::before{content:"";width:22px;height:22px;background:var(--on-marigold);clip-path:path("M1 12.5l4-3.5 4.5 4.5L19 1.5l3 2.5L10 20.5z");opacity:0}
.steps input:checked{background:var(--marigold)}
.steps input:checked::before{opacity:1}
.step:has(:checked) .words{color:var(--quiet);text-decoration:line-through;text-decoration-thickness:1px}
.step:has(:checked) .numeral{color:var(--quiet)}
.care{display:grid;grid-template-columns:2.6rem 1fr;padding:.3rem 0}
.care svg{width:30px;height:30px;margin-top:-.1rem}
.care strong{font:700 1.0625rem/1.5 var(--sign)}
.care p{grid-column:2}
.picture img{display:block;max-width:100%;height:auto;border:2px solid var(--ink);border-radius:var(--radius);background:var(--sheet)}
.picture figcaption{font:400 1rem/1.4 var(--sign);color:var(--quiet);margin-top:.3rem}
.sent audio,.sent video{display:block;width:min(100%,18rem)}
.sent img{display:block;max-width:min(100%,18rem);max-height:18rem;border:2px solid var(--ink);border-radius:var(--radius)}
.calls{display:grid;gap:.6rem;justify-items:start}
.choices{display:flex;flex-wrap:wrap;gap:.6rem;font-style:normal}
.choices.many{flex-direction:column;align-items:stretch}
.choices.many .press{justify-content:flex-start;text-align:left}
.choices.many .press,.choices.many .press.next{background:var(--sheet);color:var(--ink);border-color:var(--ink);padding-left:.7rem}
.choices .digit{flex:none;display:grid;place-content:center;width:2.1rem;height:2.1rem;border:2px solid var(--ink);border-radius:50%;font-weight:800;font-size:1.1875rem;line-height:1}
.choices .next .digit{background:var(--marigold);color:var(--on-marigold);border-color:var(--on-marigold)}
.sum{max-width:30rem}
.sum svg{display:block;width:100%;height:auto;margin:.35rem 0}

.notice{background:var(--danger);color:var(--on-danger);--focus:var(--on-danger);border:4px solid var(--danger-edge);font-family:var(--sign);padding:1.25rem}
.notice .lead{font-size:1.5rem;font-weight:800;line-height:1.25}
.notice .words{font-size:1.1875rem}
.notice h3{font:800 1.75rem/1.15 var(--sign);display:flex;gap:.8rem;align-items:center}
.notice .calls{display:grid;justify-items:stretch;grid-template-columns:1fr 1fr;gap:.6rem;max-width:34rem}
.notice .press{background:var(--on-danger);color:var(--danger);border-color:var(--on-danger);font-size:1rem;font-weight:650;min-height:60px;padding:.4rem .6rem}
.notice .press svg{display:none}
.notice .press:first-child,.notice .press:last-child:nth-child(even){grid-column:1/-1}
.notice .press:first-child{font-size:1.1875rem;min-height:68px}
.notice .press:first-child svg{display:block}
.call-words{display:grid;justify-items:center}
.notice .press:first-child .call-words{display:flex;flex-wrap:wrap;gap:0 .6rem;justify-content:center;align-items:baseline}
.number{font-weight:800;font-size:1.1875rem;white-space:nowrap;font-variant-numeric:tabular-nums}
.notice .press:first-child .number{font-size:1.75rem}
.notice .steps,.notice .steps li,.notice .steps li:last-child{border-color:var(--on-danger)}
.notice .facts li::before{background:var(--on-danger)}
.notice time{color:var(--on-danger)}
@media (prefers-reduced-motion:no-preference){.line.new{animation:settle .18s ease-out}@keyframes settle{from{transform:translateY(8px)}}}

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
@media print{.box,.choices,form{display:none}}
`;
