import { GRID, PALETTE, QUIET } from "../figures/style.js";

/** Colours of figures in the dark, for those of the light page; lines keep 3 : 1 on the dark ground. */
export const DARK: Readonly<Record<string, string>> = {
  [PALETTE.umber]: "#cf9160",
  [PALETTE.azurite]: "#5aa9dd",
  [PALETTE.ochre]: "#e2a43d",
  [PALETTE.greenEarth]: "#92b895",
  [PALETTE.redEarth]: "#e8808b",
  [PALETTE.manganese]: "#ece4d9",
  [QUIET.letters]: "#b9ac9b",
  [QUIET.border]: "#8a7a69",
  [QUIET.faint]: "#5d5145",
  [GRID.line]: "#3d342b",
  [GRID.fine]: "#2b241e",
};

function propertyOf(color: string): string {
  return `--c${color.slice(1)}`;
}

/** A colour of a figure as the page paints it, by light and dark; a colour that is none of ours as it is. */
export function pagePaint(color: string): string {
  return Object.hasOwn(DARK, color) ? `var(${propertyOf(color)})` : color;
}

/** Ground and letters of the page itself, in the light and in the dark. */
export const GROUND = {
  paper: ["#faf7f2", "#191512"],
  card: ["#fffdfa", "#221c17"],
  ink: ["#231e19", "#ece4d9"],
  soft: ["#655c52", "#b9ac9b"],
  line: ["#d9cfc1", "#453a30"],
  edge: ["#8a7a69", "#93836f"],
  accent: ["#5b3a1e", "#e0b489"],
  "on-accent": ["#fffdfa", "#201812"],
  wash: ["#f1e9de", "#2e261f"],
  warn: ["#8a3b12", "#f0a678"],
  "warn-wash": ["#fbeee4", "#35231a"],
  good: ["#3d5f40", "#9cc7a0"],
} as const;

function properties(side: 0 | 1): string {
  const own = Object.entries(GROUND).map(([name, colors]) => `--${name}:${colors[side]}`);
  const drawn = Object.entries(DARK).map((colors) => `${propertyOf(colors[0])}:${colors[side]}`);
  return [...own, ...drawn].join(";");
}

/** Style of the mix page: a bench of cards, one measure of touch (44 px), wide things in their own box. */
export const pageStyle = `
:root{color-scheme:light;${properties(0)};--sans:"Source Sans 3","Segoe UI",system-ui,"Helvetica Neue",Arial,sans-serif}
@media screen{:root[data-light=dark]{color-scheme:dark;${properties(1)}}}
@media screen and (prefers-color-scheme:dark){:root:not([data-light=light]){color-scheme:dark;${properties(1)}}}
*{box-sizing:border-box}
[hidden]{display:none!important}
html{font-size:16px;-webkit-text-size-adjust:100%;scroll-padding-top:1rem}
@media (min-width:1700px){html{font-size:18px}}
body{margin:0;background:var(--paper);color:var(--ink);font-family:var(--sans);line-height:1.45;overflow-wrap:break-word}
h1,h2,h3{line-height:1.2;margin:0;text-wrap:balance}
h1{font-size:1.45rem}h2{font-size:1.15rem;color:var(--accent)}h3{font-size:1rem}
p,ul,ol{margin:0 0 .6rem}
a{color:var(--accent)}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
.skip{position:absolute;left:-999rem}.skip:focus{left:1rem;top:1rem;padding:.6rem 1rem;background:var(--accent);color:var(--on-accent);z-index:9}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.banner{margin:0;padding:.55rem 1rem;background:var(--warn-wash);color:var(--warn);font-weight:600;font-size:.9rem;text-align:center;border-bottom:1px solid var(--warn)}
.head{display:flex;flex-wrap:wrap;gap:.6rem 1.4rem;align-items:end;justify-content:space-between;padding:.9rem 1rem .6rem;border-bottom:1px solid var(--line)}
.head .place{margin:.15rem 0 0;color:var(--soft);font-size:.92rem}
.switches,.tools,.tabs{display:flex;flex-wrap:wrap;gap:.4rem}
.switches label{font-size:.8rem;color:var(--soft);display:grid;gap:.1rem}
.tabs{padding:.5rem 1rem;border-bottom:1px solid var(--line);background:var(--wash)}
button,.button,select,textarea,input[type=number],input[type=text]{font:inherit;color:inherit;min-height:44px;border:1px solid var(--edge);border-radius:4px;background:var(--card);padding:.3rem .8rem}
button,.button{font-weight:600;font-size:.92rem;cursor:pointer;color:var(--accent);min-width:44px}
button:not(:disabled,[aria-current=page],[aria-pressed=true],.main):hover,.button:hover{background:var(--wash)}
button:disabled{color:var(--soft);cursor:default;border-style:dashed}
button[aria-current=page],button[aria-pressed=true],button.main{background:var(--accent);color:var(--on-accent);border-color:var(--accent)}
input[type=number],input[type=text]{padding:.3rem .5rem;font-variant-numeric:tabular-nums}
input[type=number]{width:5rem;text-align:right;-moz-appearance:textfield;appearance:textfield}::-webkit-inner-spin-button{display:none}button.lock{padding:0;width:44px}.lock-picture{width:22px;height:22px;stroke-width:2;vertical-align:middle}
input[type=range]{width:100%;height:44px;margin:0;accent-color:var(--accent);touch-action:pan-y;cursor:pointer}
input[type=range]:disabled{cursor:default}
input[type=checkbox]{flex:none;width:44px;height:44px;margin:0;accent-color:var(--accent)}
.tools{padding:0 0 .7rem}.print-only{display:none;margin:.2rem 0 0;font-weight:600}
main{padding:.8rem 1rem 2rem}
.card{background:var(--card);border:1px solid var(--line);border-radius:6px;padding:.9rem 1rem;min-width:0;container-type:inline-size}
.card>h2{margin-bottom:.6rem}.card h3{margin:1rem 0 .4rem}
.bench{display:grid;gap:.9rem;grid-template-columns:minmax(0,1fr);grid-template-areas:"plot" "sheet" "verdict" "bucket"}
.plot{grid-area:plot}.sheet{grid-area:sheet}.verdict{grid-area:verdict}.bucket{grid-area:bucket}
@media (max-width:759px){html{scroll-padding-top:19rem}main{padding:.6rem .5rem 2rem}.plot{position:sticky;top:0;z-index:3;padding:.3rem .4rem;box-shadow:0 2px 6px #0003}.plot h2{display:none}.card{padding:.8rem .7rem}}
@media (max-width:759px) and (max-height:560px){.plot{position:static}}
@media (min-width:760px){.bench{grid-template-columns:minmax(19rem,2fr) minmax(0,3fr);grid-template-areas:"sheet plot" "sheet verdict" "bucket bucket";grid-template-rows:auto 1fr auto}}
@media (min-width:1240px){.bench{grid-template-columns:minmax(20rem,23rem) minmax(0,1fr) minmax(20rem,25rem);grid-template-areas:"sheet plot bucket" "sheet verdict bucket";grid-template-rows:auto 1fr}}
.chart svg{display:block;width:100%;height:auto}
.figure{margin:0}
.looks{margin-top:.9rem}.looks figure{margin:0}.looks img{display:block;max-width:100%}
.material{border-top:1px solid var(--line);padding:.4rem 0 .1rem}.material .sum{margin:-.1rem 0 .3rem}
.material:first-of-type{border-top:0}
.line{display:flex;flex-wrap:wrap;gap:.3rem .6rem;align-items:center}
.line .name{flex:1 1 8rem;font-weight:600;min-width:0}
.line .bounds{color:var(--soft);font-size:.85rem}
.swatch{flex:none;width:30px;height:14px}
.field{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:0 .6rem;align-items:center;margin-bottom:.2rem}
@media (max-width:479px){.field:not(.slid){grid-template-columns:minmax(0,1fr)}.field:not(.slid)>label{margin-top:.3rem}}
.field.three{grid-template-columns:minmax(0,1fr) auto auto}.field>label{font-weight:600}.slid>label{grid-column:1/-1}.slid>input[type=range]{order:-1}.slid>label{order:-2}
.field .swatch{margin-right:.4rem;vertical-align:middle}
.field .unit{color:var(--soft);font-weight:400}
.sum{font-size:.85rem;color:var(--soft)}
.wishes{display:grid;grid-template-columns:repeat(auto-fit,minmax(9.5rem,1fr));gap:.4rem}
.wishes button{text-align:left}
.answer:empty{display:none}.answer{margin:.6rem 0 0;padding:.5rem .7rem;border-left:3px solid var(--accent);background:var(--wash);font-size:.92rem}
.answer p:last-child{margin:0}
.checks{list-style:none;margin:0;padding:0;font-size:.93rem}
.checks li{display:grid;grid-template-columns:1.7rem minmax(0,1fr);padding:.28rem 0;border-top:1px solid var(--line)}
.checks .sure{grid-column:2;color:var(--soft);font-size:.88em}
.mark{font-weight:700}.inside .mark{color:var(--good)}.outside .mark{color:var(--warn)}.unknown .mark{color:var(--soft)}
.big{font-size:1.05rem;font-weight:600;margin:.2rem 0 .5rem}
.reason{border-left:3px solid var(--warn);background:var(--warn-wash);padding:.55rem .8rem;margin:0 0 .7rem;border-radius:0 3px 3px 0;font-size:.94rem}
.facts{display:grid;grid-template-columns:repeat(auto-fit,minmax(7.2rem,1fr));gap:.5rem;margin:0 0 .7rem}
.facts>div{border:1px solid var(--line);border-radius:4px;padding:.4rem .6rem}
.facts dt{color:var(--soft);font-size:.82rem}.facts dd{margin:0;font-weight:600;font-variant-numeric:tabular-nums}
.count{border-top:1px solid var(--line);padding:.5rem 0}
.count .much{font-weight:700;font-variant-numeric:tabular-nums}
.count .pails{display:flex;flex-wrap:wrap;gap:3px;margin-top:.25rem}
.bucket[aria-busy=true] #bucket-body{opacity:.45}.pail{width:20px;height:22px;flex:none}
.scroll{overflow-x:auto;max-width:100%;margin:.6rem 0}
table{border-collapse:collapse;width:100%;font-size:.9rem;font-variant-numeric:tabular-nums lining-nums}
caption{text-align:left;color:var(--soft);padding-bottom:.3rem;font-size:.9rem}
th,td{padding:.32rem .5rem;text-align:left;vertical-align:top;border-bottom:1px solid var(--line)}
thead th{vertical-align:bottom;border-bottom:1.5px solid var(--edge)}tbody th{font-weight:400}
.right{text-align:right}.unit{display:block;font-weight:400;color:var(--soft);font-size:.88em}
.line .unit,.field .unit,.kind .unit{display:inline}
@container (max-width:27rem){table{font-size:.8rem}th,td{padding:.3rem .2rem}}
.table-notes{font-size:.83rem;color:var(--soft);padding-left:1.1rem}
.note,.cautions>li,.findings>li{list-style:none;border-left:3px solid var(--accent);background:var(--wash);padding:.55rem .8rem;margin:0 0 .6rem;border-radius:0 3px 3px 0;font-size:.92rem}
.cautions,.findings{padding:0;margin:0}.note p:last-child,.findings p:last-child,.cautions p:last-child{margin:0}
.warning,.error,.cautions>li{border-left-color:var(--warn);background:var(--warn-wash)}
.warning .tag,.error .tag,.caution-title{color:var(--warn)}.tag{font-weight:600;margin-right:.3em}.detail{color:var(--soft);font-size:.9em}
details{margin:.6rem 0}summary{cursor:pointer;min-height:44px;display:flex;align-items:center;font-weight:600;color:var(--accent)}
summary::before{content:"▸";margin-right:.5rem}details[open]>summary::before{content:"▾"}
.drop{border:2px dashed var(--edge);border-radius:6px;padding:1rem;text-align:center;background:var(--wash)}
.drop.over{border-color:var(--accent);background:var(--card)}
.drop input{position:absolute;opacity:0;width:1px;height:1px}
.drop input:focus-visible+.button{outline:3px solid var(--accent);outline-offset:2px}
.button{display:inline-flex;align-items:center;border:1px solid var(--edge);border-radius:4px;min-height:44px}
.pair{display:grid;gap:.9rem;grid-template-columns:minmax(0,1fr)}
@media (min-width:900px){.pair{grid-template-columns:repeat(2,minmax(0,1fr))}}
textarea{width:100%;font:0.85rem/1.5 ui-monospace,Menlo,Consolas,monospace;margin-bottom:.4rem}.field>select,.field>input[type=text]{max-width:14rem;width:100%}.grid td{padding:.05rem}.grid input{width:100%;min-width:2.8rem;text-align:left}.grid .sum{text-align:right;vertical-align:middle}.grid th{padding:.3rem .25rem}
@media (max-width:479px){.field>select,.field>input[type=text]{max-width:none}}
.line:has(>input[type=checkbox]){flex-wrap:nowrap;margin-top:.7rem}
footer{padding:1rem;border-top:1px solid var(--line);font-size:.88rem;color:var(--soft)}footer>*{max-width:70rem}
@media print{@page{margin:10mm 12mm}:focus-visible{outline:0}.bucket .facts{grid-template-columns:repeat(auto-fit,minmax(5rem,1fr))}.print-only{display:block!important}body{background:#fff}.skip,.tabs,.tools,.switches,.no-print,main button,.drop,input[type=range],details,.target-box,.wishes-box,.place+*{display:none!important}
.head{padding:0 0 .3rem;border-bottom:2px solid var(--line)}.banner{padding:.15rem;margin-bottom:.3rem}main{padding:.4rem 0 0}
.bench{grid-template-columns:minmax(0,4fr) minmax(0,5fr);grid-template-areas:"sheet plot" "bucket plot" "bucket verdict";grid-template-rows:auto auto 1fr;gap:.5rem 1.2rem}
.card{border:0;padding:0}.plot{position:static;box-shadow:none}.plot h2{display:block!important}
.card>h2{margin-bottom:.2rem}.card h3{margin:.5rem 0 .15rem}.material{padding:.05rem 0}.material .sum,.checks .sure{display:none}
input[type=number]{border:0;background:none;min-height:0;padding:0;width:4rem}.slid{grid-template-columns:minmax(0,1fr) auto!important}.slid>label{grid-column:1!important}
.checks li{padding:.08rem 0}.count{padding:.15rem 0}.facts{gap:.25rem}.facts>div{padding:.15rem .35rem}.pail{width:12px;height:13px}.scroll{overflow:visible;margin:.3rem 0}table{font-size:.86em}th,td{padding:.05rem .3rem}caption{padding-bottom:.1rem}
.big{font-size:1rem}.banner,.reason,.warning,.error{print-color-adjust:exact;-webkit-print-color-adjust:exact}tr{break-inside:avoid}footer{padding:.3rem 0 0;margin-top:.4rem}footer p{margin:0}}
`;
