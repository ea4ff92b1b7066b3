import type { ReportMeta } from "../reportMeta.js";

/**
 * Style of the page: one measure of text, an umber accent (9.5 : 1 on the paper, 9 : 1 in the
 * dark), numbers in tabular figures, wide things scrolling in their own box, and print rules.
 */
export const pageCss = `
:root{color-scheme:light dark;--paper:#fbf9f5;--ink:#231e19;--soft:#655c52;--line:#ddd4c8;--accent:#5b3a1e;--wash:#f3ede4;--warn:#8a3b12;--warn-wash:#fbeee4;--sheet:#fff;
--serif:"Source Serif 4","Iowan Old Style","Palatino Linotype",Palatino,Georgia,"DejaVu Serif",serif;--sans:"Source Sans 3","Segoe UI",system-ui,"Helvetica Neue",Arial,sans-serif;--mono:ui-monospace,"SF Mono",Menlo,Consolas,"DejaVu Sans Mono",monospace}
@media (prefers-color-scheme:dark){:root{--paper:#1b1714;--ink:#ece4d9;--soft:#b3a798;--line:#40372f;--accent:#e0b489;--wash:#272019;--warn:#f0a678;--warn-wash:#35231a}}
*{box-sizing:border-box}
html{font-size:17px;-webkit-text-size-adjust:100%;scroll-padding-top:1.5rem}
body{margin:0;background:var(--paper);color:var(--ink);font-family:var(--serif);line-height:1.6;overflow-wrap:break-word}
.skip{position:absolute;left:-999rem}.skip:focus{left:1rem;top:1rem;padding:.5rem 1rem;background:var(--accent);color:var(--paper);font-family:var(--sans);z-index:2}
.frame{max-width:46rem;margin:0 auto;padding:0 1.25rem 5rem}
.banner{margin:0;padding:.65rem 1.25rem;background:var(--warn-wash);color:var(--warn);font:600 .9rem/1.45 var(--sans);text-align:center;border-bottom:1px solid var(--warn)}
header.title{padding:4.5rem 0 2.25rem;border-bottom:1px solid var(--line)}
header.title::before{content:"";display:block;width:3.5rem;height:.35rem;background:var(--accent);margin-bottom:1.6rem}
h1,h2,h3,h4,h5,h6{font-family:var(--sans);line-height:1.2;text-wrap:balance;overflow-wrap:anywhere}
h1{font-size:2.35rem;font-weight:650;letter-spacing:-.015em;margin:0}
h2{font-size:1.5rem;font-weight:600;color:var(--accent);margin:3.4rem 0 .9rem;padding-top:.9rem;border-top:1px solid var(--line)}
h3{font-size:1.16rem;font-weight:600;margin:2.3rem 0 .5rem}h4,h5,h6{font-size:1rem;font-weight:600;margin:1.8rem 0 .4rem}
.number{color:var(--soft);font-weight:400;margin-right:.45em;font-variant-numeric:tabular-nums}
.subtitle{font-size:1.25rem;line-height:1.4;color:var(--soft);margin:.6rem 0 0}
main{padding-top:2rem}main>h2:first-child{margin-top:0;border-top:0}
.facts{font-family:var(--sans);font-size:.92rem;color:var(--soft);margin:1.6rem 0 0}
p,ul,ol,blockquote,pre{margin:0 0 1rem}li>p{margin-bottom:.35rem}
blockquote{padding-left:1.1rem;border-left:3px solid var(--line);color:var(--soft)}
hr{border:0;border-top:1px solid var(--line);margin:2.2rem 0}
.address{font-family:var(--sans);font-size:.86em;color:var(--soft);overflow-wrap:anywhere}
a{color:var(--accent);text-underline-offset:.2em;text-decoration-thickness:1px}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
nav.contents{font-family:var(--sans);font-size:.92rem;margin:2rem 0 0}
nav.contents h2{font-size:.8rem;letter-spacing:.09em;text-transform:uppercase;color:var(--soft);border:0;margin:0 0 .6rem;padding:0}
main nav.contents{margin:2.6rem 0}nav.contents ol{list-style:none;margin:0;padding:0}nav.contents ol ol{padding-left:1.5rem}
nav.contents a{display:block;padding:.2rem 0;text-decoration:none;color:var(--ink)}nav.contents a:hover{color:var(--accent);text-decoration:underline}
.scroll{overflow-x:auto;margin:1.7rem 0;max-width:100%}
table{border-collapse:collapse;width:100%;font:.9rem/1.4 var(--sans);font-variant-numeric:tabular-nums lining-nums}
caption,figcaption{text-align:left;font:.92rem/1.45 var(--sans);color:var(--soft)}
caption{padding:0 0 .55rem;caption-side:top}
caption>span{display:block;position:sticky;left:0;max-width:calc(min(100vw,46rem) - 2.5rem)}.long{min-width:14rem}
.label{color:var(--accent);font-weight:600;margin-right:.35em}
th,td{padding:.42rem .8rem;text-align:left;vertical-align:top;border-bottom:1px solid var(--line)}
th:first-child,td:first-child{padding-left:.15rem}th:last-child,td:last-child{padding-right:.15rem}
thead th{vertical-align:bottom;font-weight:600;border-bottom:1.5px solid var(--accent)}thead{border-top:1.5px solid var(--accent)}
tbody tr:last-child>*{border-bottom:1.5px solid var(--accent)}
tbody th{font-weight:400}.pairs{border-top:1.5px solid var(--accent)}.pairs th{color:var(--soft);width:42%}
.right{text-align:right;white-space:nowrap}thead .right{white-space:normal}.center{text-align:center}
.unit{display:block;font-weight:400;font-size:.88em;color:var(--soft)}
.table-notes{margin:-1.1rem 0 1.7rem;padding-left:1.1rem;font:.83rem/1.45 var(--sans);color:var(--soft)}
figure{margin:2.2rem 0}
.drawing{margin:0 0 .8rem;background:var(--sheet);border:1px solid var(--line);border-radius:3px}
.pair{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(20rem,100%),1fr));column-gap:1.5rem;align-items:end}figure.half{max-width:30rem}.pair figure.half{max-width:none}
.drawing svg{display:block;width:100%;height:auto;min-width:36rem}.half .drawing svg{min-width:0}.drawing svg text{font-size-adjust:.486}
.live{background:var(--sheet);border:1px solid var(--line);border-radius:3px;margin:0 0 .8rem;height:28rem;overflow:hidden}
.act{margin:0 0 .6rem}
button{font:600 .86rem/1.2 var(--sans);padding:.55rem .9rem;min-height:2.6rem;color:var(--accent);background:transparent;border:1px solid currentColor;border-radius:3px;cursor:pointer}button:hover{background:var(--wash)}
[hidden]{display:none!important}
.formula{padding:.2rem 0;text-align:center}math{font-size:1.06em}
code,pre{font-family:var(--mono);font-size:.82rem}pre{overflow-x:auto;padding:.85rem 1rem;background:var(--wash);border-radius:3px;line-height:1.5}p code,li code{background:var(--wash);padding:.1em .3em;border-radius:2px;overflow-wrap:anywhere}
h2 code,h3 code,h4 code{font-size:.85em}
details.code{margin:0 0 1.1rem;font-family:var(--sans)}summary{cursor:pointer;font-size:.84rem;color:var(--soft);padding:.3rem 0}details pre{margin:.3rem 0 0}
.note,.cautions>li,.findings>li{border-left:3px solid var(--accent);background:var(--wash);padding:.8rem 1.1rem;margin:1.3rem 0;border-radius:0 3px 3px 0;font-family:var(--sans);font-size:.94rem}
.note>:last-child,.cautions p:last-child,.findings p:last-child{margin-bottom:0}
.cautions,.findings{list-style:none;padding:0}.cautions p,.findings p{margin-bottom:.3rem}
.warning,.error,.cautions>li{border-left-color:var(--warn);background:var(--warn-wash)}.warning .tag,.error .tag,.caution-title{color:var(--warn)}
.tag{color:var(--accent);margin-right:.3em}.caution-title{font-weight:600}.detail{font-size:.88em;color:var(--soft)}
.signature{margin:2.4rem 0;padding:1.4rem 1.4rem .6rem;border:1px solid var(--line);break-inside:avoid}.signature-label{font:600 1rem/1.4 var(--sans);color:var(--accent)}
.line{margin:2.9rem 0 .9rem;padding-top:.3rem;border-top:1px solid var(--ink);font:.84rem/1.4 var(--sans);color:var(--soft)}
.references{padding-left:1.4rem;font-size:.94rem}.references li{margin-bottom:.5rem}.mark{font:.84em var(--sans);color:var(--soft)}
.digest{font-family:var(--mono);font-size:.74rem;overflow-wrap:anywhere}
footer{margin-top:4rem;padding-top:1rem;border-top:1px solid var(--line);font:.84rem/1.5 var(--sans);color:var(--soft)}
@media (min-width:76rem){.frame{display:grid;grid-template-columns:15rem minmax(0,46rem);column-gap:4rem;max-width:69rem}
.frame>*{grid-column:2}nav.contents{grid-column:1;grid-row:1/span 99;position:sticky;top:0;align-self:start;max-height:100vh;overflow-y:auto;padding:4.6rem 0 2rem;margin:0}
main nav.contents{position:fixed;left:max(1.25rem,calc(50vw - 33.25rem));width:15rem}}
@media (max-width:76rem){nav.contents>ol{columns:10rem;column-gap:1.5rem}nav.contents li{break-inside:avoid}}
@media (max-width:46rem){p>.katex,li>.katex{display:inline-block;max-width:100%;overflow-x:auto;overflow-y:hidden;vertical-align:bottom}}
@media (max-width:30rem){html{font-size:16px}.long{min-width:9.5rem}main p,main li{hyphens:auto}.address,code{hyphens:none}header.title{padding-top:3rem}h1{font-size:1.85rem}.signature{padding:1rem}th,td{padding:.4rem .5rem}}
@media print{:root{--paper:#fff;--ink:#111;--soft:#444;--line:#bbb;--accent:#5b3a1e;--wash:#f6f2ec;--warn:#8a3b12;--warn-wash:#fbf3ed}
html{font-size:10.5pt}.skip,.act,.live,nav.contents,details.code,#annex-code-section{display:none!important}.drawing[hidden]{display:block!important}.frame{display:block;max-width:none;padding:0}
.scroll{overflow:visible}.drawing svg{min-width:0}.pair{grid-template-columns:1fr 1fr}h2,h3,h4,caption{break-after:avoid}figure,.short,.note,.cautions>li,.findings>li,tr{break-inside:avoid}thead{display:table-header-group}.page-break{break-after:page}}
`;

/** Added to `pageCss` for a handout: a short head, larger type, lines to write on. */
export const handoutCss = `
.handout{font-size:1.12rem}
.handout header.title{padding:2rem 0 1rem}.handout header.title::before{display:none}
.handout h1{font-size:1.9rem}.handout .subtitle{font-size:1.1rem;margin-top:.2rem}.handout .facts{margin-top:.4rem}
.handout table{font-size:1rem}.handout h2{margin-top:2.4rem}
.writing-lines{margin:1.2rem 0 1.6rem;height:calc(var(--lines)*2.4rem);background:repeating-linear-gradient(to bottom,transparent 0 calc(2.4rem - 1px),var(--soft) calc(2.4rem - 1px) 2.4rem)}
@media print{.handout{font-size:12pt}.handout header.title{padding:0 0 .4rem}.writing-lines{break-inside:avoid;print-color-adjust:exact;-webkit-print-color-adjust:exact}}
`;

/** Added to `pageCss` for a sheet that is read at arm's length and printed: large type, lines to write on. */
export function sheetCss({ page, printScale = 1 }: ReportMeta): string {
  const smaller = printScale < 1 ? `@media print{.sheet .frame{zoom:${printScale}}}` : "";
  return `${smaller}
@page{size:${page === "A4" ? "A4" : "letter"};margin:10mm 15mm}
.sheet{font-family:var(--sans);font-size:1.2rem;line-height:1.4}
.sheet .frame{display:block;max-width:58rem}
.sheet header.title{padding:2rem 0 1rem}.sheet header.title::before{display:none}
.sheet h1{font-size:2.6rem;font-weight:700;color:var(--accent)}
.sheet .subtitle{color:var(--ink);font-weight:600}.sheet .facts{margin-top:.5rem}
.sheet main{padding-top:.5rem}.sheet .scroll{margin:1.1rem 0}
.sheet caption{font-size:1.25rem;font-weight:600;color:var(--accent)}
.sheet table{font-size:1.3rem;line-height:1.3}
.sheet th,.sheet td{border:1px solid var(--soft);padding:.5rem .6rem;white-space:pre-line}
.sheet .right{font-weight:700;white-space:nowrap}.sheet thead .right{white-space:normal}
.sheet td:empty,.sheet tbody th:empty{height:2.9rem}
.sheet td:empty{min-width:4.5rem}.sheet td:empty:nth-child(2):last-child{width:42%}
.sheet .lines{line-height:1.75}
.sheet .table-notes{margin-top:-.6rem;font-size:1rem;line-height:1.4}
.sheet .note,.sheet .cautions>li{font-size:1.08rem;line-height:1.4;padding:.6rem .9rem;margin:.8rem 0}
.sheet .detail{font-size:.78em}
.sheet caption>span{max-width:calc(min(100vw,58rem) - 2.5rem)}
@media print{html{font-size:10.7pt}
.sheet *{font-size-adjust:.486}.sheet{line-height:1.2}.sheet .frame{max-width:none;padding:0 1px}.sheet caption>span{max-width:none}
.sheet .banner{padding:.1rem;font-size:.8rem}.sheet header.title{padding:.3rem 0 .3rem}.sheet h1{font-size:2.7rem;line-height:1.1}
.sheet .subtitle{font-size:1.5rem;line-height:1.2;margin-top:.1rem}.sheet .facts{font-size:1.15rem;line-height:1.2;margin:.1rem 0 0}.sheet main{padding-top:0}
.sheet .scroll{margin:.5rem 0 .75rem}.sheet table{font-size:1.5rem;line-height:1.2}.sheet table:has(tr>:nth-child(5)){font-size:1.16rem}.sheet caption{font-size:1.4rem;line-height:1.2;padding-bottom:.25rem}.sheet th,.sheet td{padding:.16rem .5rem}.sheet .unit{font-size:.92em}
.sheet td:empty,.sheet tbody th:empty{height:2.1rem}.sheet table:has(tr>:nth-child(7)) td:empty{height:2.7rem}.sheet .lines{line-height:1.34}
.sheet .table-notes{margin:-.4rem 0 .8rem;font-size:1.04rem;line-height:1.2;padding-left:0;list-style:none}
.sheet .note,.sheet .cautions>li{font-size:1.2rem;line-height:1.2;padding:.35rem .8rem;margin:.6rem 0}
.sheet .pairs th{width:30%}.sheet .cautions{margin:0}.sheet footer{margin-top:.2rem;padding-top:.15rem;font-size:.72rem;line-height:1.2}}
`;
}

/**
 * Keeps the banner of invented data where a maker's own style sheet cannot reach it. An important rule of
 * a cascade layer wins over important rules behind the layer; this one is the first of the page, and without
 * a name nothing can be added to it. What could push, cover or hide the banner is held as well: the page
 * around it, boxes made by `::before`, scripts shown as text, and a report that leaves its frame.
 */
export function guardCss({ invented, style }: ReportMeta): string {
  if (!invented || !style?.css) return "";
  return `@layer{
html,body{display:block!important;position:static!important;visibility:visible!important;opacity:1!important;content-visibility:visible!important;overflow:visible!important;float:none!important;columns:auto!important;contain:none!important}
html,body{margin:0!important;padding:0!important;border:0!important;width:auto!important;min-width:0!important;max-width:none!important;height:auto!important;min-height:0!important;max-height:none!important}
html,body{transform:none!important;translate:none!important;rotate:none!important;scale:none!important;zoom:1!important;filter:none!important;clip-path:none!important;mask:none!important}
html::before,html::after,body::before,body::after,.banner::before,.banner::after{content:none!important}
head,script{display:none!important}
.frame{contain:layout paint!important;z-index:0!important}
.banner{all:initial!important;box-sizing:border-box!important;display:flex!important;justify-content:center!important;position:sticky!important;top:0!important;z-index:2147483647!important;padding:10px 20px!important;color:#8a3b12!important;background:#fbeee4!important;border-bottom:1px solid #8a3b12!important;font:600 15px/1.45 sans-serif!important}
}
`;
}

/** Sheets behind the page's own: paper of the report, the maker's accent, then their style sheet. */
export function styleCss({ page, layout, style }: ReportMeta): string {
  const size = page === "A4" ? "A4" : "letter";
  const paper = layout === "sheet" ? "" : `@page{size:${size};margin:18mm 20mm 20mm}\n`;
  const accent = style?.accent
    ? `:root{--accent:${style.accent.light}}@media (prefers-color-scheme:dark){:root{--accent:${style.accent.dark}}}@media print{:root{--accent:${style.accent.light}}}\n`
    : "";
  const logo = style?.logo
    ? "header.title:has(.logo)::before{display:none}.logo{margin:0 0 1.2rem}.logo svg,.logo img{display:block;height:4.2rem;width:auto;max-width:100%}.house{font:600 .92rem/1.4 var(--sans);color:var(--soft);margin:0 0 1rem}\n@media (prefers-color-scheme:dark){.logo{background:var(--sheet);padding:.6rem;border-radius:3px;width:fit-content;max-width:100%}}@media print{.logo{background:none;padding:0}.logo svg,.logo img{height:18mm}}\n"
    : ".house{font:600 .92rem/1.4 var(--sans);color:var(--soft);margin:0 0 1rem}\n";
  return `${paper}${style ? accent + logo : ""}${style?.css ?? ""}`;
}
