import { INKS } from '../../src/index.ts';

/** The pages on which an operator teaches the bot. */
export const GROWTH_CSS = `
.at-growth main{max-width:56rem;margin:0 auto;padding:.75rem 1rem 3rem;display:grid;grid-template-columns:minmax(0,1fr);gap:1.1rem}
.at-growth h1{font:800 1.6rem/1.2 var(--sign);overflow-wrap:anywhere}
.at-growth h2{font:800 1.2rem/1.3 var(--sign);margin-top:.75rem}
.at-growth h3{font:700 1.0625rem/1.3 var(--sign)}
.at-growth p{max-width:60ch}
.paths{display:flex;flex-wrap:wrap;gap:.25rem 1.25rem}
.paths a{display:inline-flex;align-items:center;min-height:48px}
.about{display:block;font-size:1rem;color:var(--quiet)}
.at-growth q{font:italic 1.125rem/1.45 var(--book);quotes:"\\2018" "\\2019";overflow-wrap:anywhere}
.asked{border-top:2px solid var(--ink)}
.asked li{border-bottom:1px solid var(--rule)}
.asked a{display:grid;grid-template-columns:3.2rem 1fr;gap:.5rem;align-items:start;min-height:64px;padding:.7rem 0;text-decoration:none}
.asked a:hover q{text-decoration:underline}
.times{font:800 2rem/1.1 var(--sign);font-variant-numeric:tabular-nums}
.words-asked li{border-bottom:1px solid var(--rule);padding:.35rem 0}
.at-growth blockquote{margin:.4rem 0 0;padding-left:1rem;border-left:3px solid var(--ink);white-space:pre-line;font-family:var(--book);max-width:60ch}
.at-growth form{display:flex;flex-wrap:wrap;gap:.8rem;align-items:end;padding:.3rem 0}
.at-growth form .press{text-align:left}
.at-growth label{display:grid;gap:.25rem;flex:1 1 100%;max-width:36rem}
.at-growth label.tick{display:flex;align-items:center;gap:.75rem;min-height:48px}
.at-growth label.tick input{width:28px;height:28px;min-height:0;flex:none}
.at-growth input,.at-growth textarea,.at-growth select{width:100%}
.at-growth details{border-top:1px solid var(--rule)}
.at-growth details[open]{padding-bottom:1rem}
.at-growth summary{min-height:48px;display:flex;align-items:center;cursor:pointer;font-weight:650}
.at-growth summary::before{content:"+";display:inline-block;width:1.6rem;font-weight:800}
.at-growth details[open] summary::before{content:"-"}
.problems{border:3px solid var(--ink);border-radius:var(--radius);padding:1rem;display:grid;gap:.6rem}
.problems li{padding:.2rem 0;overflow-wrap:anywhere}
.verdict{font-weight:700;border-left:8px solid var(--ink);padding:.4rem 0 .4rem 1rem}
.verdict.worse,.verdict.unsafe{border-left-style:double}
.wide{overflow-x:auto;position:relative}
.wide table{min-width:34rem}
.at-growth table{border-collapse:collapse;width:100%;font-size:1rem}
.at-growth caption{text-align:left;font:700 1.0625rem/1.4 var(--sign);padding:.4rem 0}
.at-growth th,.at-growth td{text-align:left;font-weight:400;vertical-align:top;padding:.4rem .9rem .4rem 0;border-bottom:1px solid var(--rule);font-variant-numeric:tabular-nums}
.at-growth thead th{font-weight:650;border-bottom:2px solid var(--ink)}
.at-growth pre{width:max-content;min-width:100%;font:400 1rem/1.45 ui-monospace,monospace;border:2px solid var(--ink);border-radius:var(--radius);padding:.75rem;margin:0;background:var(--sheet)}
.preview{border-top:1px solid var(--rule);padding:.6rem 0}
.preview p{white-space:pre-line;font-family:var(--book)}
.taught li{border-top:1px solid var(--rule);padding:.75rem 0;display:grid;gap:.5rem}
.thin li{border-bottom:1px solid var(--rule);padding:.35rem 0;overflow-wrap:anywhere}
.at-growth progress{width:100%;max-width:36rem;height:24px;accent-color:var(--ink)}
.at-growth a[aria-current=true]{font-weight:800;text-decoration-thickness:4px}
.drawings{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,20rem),1fr));gap:1rem}
.drawings img{width:100%;height:auto;border:2px solid var(--rule);border-radius:var(--radius)}
.drawings.light img{background:${INKS.light.paper}}
.drawings.dark img{background:${INKS.dark.paper}}
.drawings figcaption{font-size:1rem;overflow-wrap:anywhere}
#picture{height:min(72vh,46rem);border:2px solid var(--ink);border-radius:var(--radius);overflow:hidden;background:var(--paper);touch-action:none}
#picture[hidden],.camera[hidden]{display:none}
.camera{display:flex;flex-wrap:wrap;gap:.6rem}
#thing{border-block:3px solid var(--ink);padding:.5rem 0 1rem;display:grid;gap:.7rem;grid-template-columns:minmax(0,1fr)}
#thing[hidden]{display:none}
.things li{border-bottom:1px solid var(--rule);font-variant-numeric:tabular-nums}
.thin a,.things a{display:inline-flex;align-items:center;min-height:48px}
.things .part a{font-weight:700}
.ended rect{stroke:none}
.ended .answered{fill:var(--ink)}.ended .chosen{fill:var(--rule)}.ended .passed{fill:var(--sheet)}
.ended .edge{fill:none;stroke:var(--ink);stroke-width:2}
.weeks{width:100%;height:auto;min-width:36rem;max-width:44rem}
.weeks .rule{stroke:var(--rule);stroke-width:1}
.weeks path{fill:none;stroke:var(--ink);stroke-width:2.5}.weeks .dashed path{stroke-dasharray:7 5}
.weeks circle{fill:var(--marigold);stroke:var(--ink);stroke-width:2}.weeks .dashed circle{fill:var(--paper)}
.weeks text{fill:var(--quiet);font:400 15px var(--sign)}
`;
