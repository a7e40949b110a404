/** The yard's pages: the field with its strips, today's gate, one thread with its brief. */
export const YARD_CSS = `
.yard{padding:0 0 2rem}
.plate.sign{padding:1.1rem 1.6rem;display:flex;gap:1.25rem;align-items:center}
.plate.sign h1{font:800 1.6rem/1.1 var(--sign)}
.plate.sign p{font-size:1rem}
.plate.sign svg.van{height:56px;width:auto;flex:none}
.post{display:inline-block;font:800 1.125rem/1.2 var(--sign);background:var(--plate);color:var(--on-plate);padding:.5rem .9rem;border-radius:8px;box-shadow:inset 0 0 0 3px var(--plate),inset 0 0 0 4.5px var(--on-plate)}
.alarm{display:inline-flex;align-items:center;gap:.45rem;font-weight:800;color:var(--danger-edge)}
.wait{font-weight:700;font-variant-numeric:tabular-nums}

.top{display:flex;flex-wrap:wrap;gap:.75rem 1rem;align-items:center;padding:8px 8px 0}
.top nav{display:flex;flex-wrap:wrap;gap:.6rem}
.door{display:flex;flex-wrap:wrap;gap:.6rem 1rem;align-items:center;padding:2rem 1rem 0}
.at-day .plate.sign{flex-direction:column;align-items:flex-start;gap:0}

.at-day main{display:grid;grid-template-columns:minmax(0,1fr);gap:2rem;padding:1.25rem 0 0}
.strip{--label:4.1rem;--below:1.1rem;position:relative;margin-bottom:1.75rem;overflow-x:hidden;overflow-x:clip}
.strip.waits{--label:5.2rem}
.strip h2{display:flex;flex-wrap:wrap;gap:.75rem;align-items:center;padding:0 1rem;font-size:1.125rem}
.stand{display:flex;flex-wrap:wrap;align-items:stretch;column-gap:2.25rem;padding:0 1rem}
.stand li{flex:none;display:flex;min-width:9rem;max-width:100%}
.spot{display:flex;flex-direction:column;justify-content:flex-end;text-decoration:none;padding-top:1rem;--van-ground:var(--paper);color:var(--ink)}
.spot svg{display:block;position:relative;z-index:1;overflow:visible;margin-bottom:-1px}
.spot .label{display:flex;flex-direction:column;height:calc(var(--label) + var(--below));padding-top:.5rem;line-height:1.3;position:relative;white-space:nowrap}
.spot .label::before{content:"";position:absolute;z-index:-1;inset:0 -100vw 0 -100vw;background:var(--grass);border-top:2px solid var(--ink)}
.stand{position:relative;z-index:0}
.spot .label strong{font-size:1.25rem}
.spot .label span{font-size:1rem}
a.spot:hover strong{text-decoration:underline;text-decoration-thickness:3px}
.pole{stroke:currentColor;stroke-width:2;fill:none}
.aim{stroke:currentColor;stroke-width:2}
.cloth{fill:var(--marigold);stroke:currentColor;stroke-width:1.6;stroke-linejoin:round}
.spot.staff .cloth{fill:var(--paper)}
.spot.danger .cloth{fill:var(--danger);stroke:var(--danger-edge)}
.spot.danger .wait{color:var(--danger-edge)}

.strip.danger{border:6px solid var(--danger-edge);padding-top:.75rem}

.gate{padding:0 1rem}
.gate h3{font:800 1.125rem/1.3 var(--sign);margin:1.25rem 0 .35rem;border-bottom:2px solid var(--ink);padding-bottom:.25rem}
.gate li{border-bottom:1px solid var(--rule)}
.gate li>a,.gate li>span{display:flex;gap:.9rem;align-items:center;min-height:56px;padding:.4rem 0;text-decoration:none}
.gate li>a:hover strong{text-decoration:underline}
.gate li svg.van{--van-ground:var(--paper);flex:none}
.gate li strong{display:block}
.gate li span span{display:block;font-size:1rem}

.words{padding:0 1rem}
.words .post{margin:1.5rem 0 .4rem}
.words .post:first-child{margin-top:0}
.words li{border-bottom:1px solid var(--rule)}
.words li.danger{border:6px solid var(--danger-edge);padding:0 .75rem;margin:.5rem 0}
.words li>a,.words li>span{display:flex;gap:.8rem;min-height:56px;padding:.6rem 0;text-decoration:none;align-items:flex-start}
.words li.danger svg{color:var(--danger-edge)}
.words li strong{font-size:1.25rem;display:block}
.words li span span{display:block}
.words q{display:block;font:italic 1.125rem/1.45 var(--book);padding-left:1rem;margin:.15rem 0;quotes:"\\2018" "\\2019"}

.at-thread .top{flex-direction:row}
.at-thread .top .plate{flex:1 1 18rem;max-width:34rem}
.facts-table{display:flex;flex-wrap:wrap;gap:.35rem 1.75rem;padding:.25rem .75rem;width:100%}
.facts-table dt{font-size:1rem;color:var(--quiet)}
.facts-table dd{font-weight:650}
.others{padding:0 .75rem;width:100%}
.at-thread main{display:grid;gap:1.5rem;max-width:72rem;margin:0 auto;padding:1rem}
.holder{display:flex;flex-wrap:wrap;gap:.75rem 1.5rem;align-items:center;justify-content:space-between;border-block:2px solid var(--ink);padding:.8rem 0;font-weight:650}
.holder .alarm{display:flex;margin-bottom:.35rem}
.holder.danger{border:6px solid var(--danger-edge);padding:.8rem 1rem}
.brief{margin-top:1.25rem;display:grid;gap:.8rem;max-width:60ch}
.brief blockquote{margin:0;font:italic 1.5rem/1.35 var(--book)}
.brief h3{font:700 1.0625rem/1.4 var(--sign)}
.suggested{background:var(--sheet);border:2px solid var(--ink);border-radius:var(--radius);padding:1rem;display:grid;gap:.7rem}
.suggested p{white-space:pre-line;font-family:var(--book)}
.at-thread .talk{margin:1.5rem 0 0;padding:0}
.mark{font:400 1rem/1.4 var(--sign);color:var(--quiet);margin:0 0 1.25rem}
.note{border:2px dashed var(--rule);border-radius:var(--radius);padding:.6rem 1rem;margin:0 0 1.5rem;font-family:var(--sign)}
.note h3{font:650 1rem/1.4 var(--sign);color:var(--quiet)}
.offered{font:400 1rem/1.4 var(--sign);color:var(--quiet)}
.offered a{display:inline-flex;align-items:center;min-height:48px}
.at-thread .notice{border-radius:var(--radius)}
.aside{display:grid;gap:1.25rem;align-content:start}
.aside form{display:grid;gap:.5rem}
.aside label{font-weight:650}
.aside .press{justify-self:start}
.aside textarea,.aside select{width:100%}
.threads li{border-bottom:1px solid var(--rule)}
.threads a{display:flex;align-items:center;min-height:56px}
.at-thread .box{margin:0 -1rem}
.box form.righting{grid-template-columns:minmax(0,1fr);justify-items:end}
.at-thread #live>.facts-table{padding:.8rem 0}
.at-thread .box form,.at-thread .box .signal{max-width:72rem}

.at-gatehouse main{max-width:36rem;margin:0 auto;padding:8px 8px 2rem;display:grid;gap:1.5rem}
.at-gatehouse form{display:grid;grid-template-columns:minmax(0,1fr);gap:.7rem;padding:0 .75rem}
.at-gatehouse form[hidden]{display:none}
.at-gatehouse main>p,.made{padding:0 .75rem}
.at-gatehouse .plate.sign{flex-direction:column;align-items:flex-start;gap:0}
.at-gatehouse .press{justify-self:start}
.keys li{border-bottom:1px solid var(--rule)}
.at-gatehouse .keys form{grid-template-columns:minmax(0,1fr) auto;align-items:center;padding:.6rem 0}
.keys strong{display:block;overflow-wrap:anywhere}
.at-gatehouse main>section{padding-inline:.75rem}
.made{border-block:3px solid var(--ink);padding-block:.8rem}
code{overflow-wrap:anywhere;font-size:1rem}
.at-gatehouse{overflow-x:hidden;overflow-x:clip}
.fleet{margin-inline:calc(50% - 50vw);--van-ground:var(--paper);display:flex;gap:1.5rem;align-items:flex-end;overflow:hidden;justify-content:center;border-bottom:2.4rem solid var(--grass);box-shadow:inset 0 -2px 0 var(--ink);padding-top:1.5rem}
.fleet svg{flex:none;display:block}

.at-sheet main{max-width:48rem;margin:0 auto;padding:1rem}
.at-sheet section{border-top:2px solid var(--ink);padding:.75rem 0;break-inside:avoid}
.look-at li{padding-left:2.25rem;position:relative;min-height:2rem}
.look-at li::before{content:"";position:absolute;left:0;top:.2rem;width:1.3rem;height:1.3rem;border:2px solid var(--ink);border-radius:4px}

@media (max-width:699px){
.spot{max-width:100%}
.spot .label{white-space:normal;height:auto;min-height:calc(var(--label) + var(--below));padding-bottom:var(--below)}
}
@media (min-width:700px){
.strip{display:flex;align-items:flex-end}
.strip h2{flex:0 0 12.5rem;flex-direction:column;align-items:flex-start;gap:.5rem;padding-right:0;margin-bottom:calc(var(--label) + var(--below));position:relative;z-index:1}
.strip h2 .post{position:relative;margin-bottom:2.4rem}
.strip h2 .post::after{content:"";position:absolute;top:100%;left:1.5rem;right:1.5rem;height:2.4rem;border-inline:4px solid var(--ink)}
.strip h2 .alarm{order:-1}
.stand{flex:1}
}
@media (min-width:1000px){
.at-day main{grid-template-columns:minmax(0,1fr) 19rem;padding-right:1.5rem}
.at-thread main{grid-template-columns:minmax(0,1fr) 19rem;column-gap:3rem;padding:1.5rem 1.5rem 3rem}
}
@media print{.door,.top nav,.back{display:none}}
`;
