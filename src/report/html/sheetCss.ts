/** Added to `pageCss` for a sheet that is read at arm's length and printed: large type, lines to write on. */
export function sheetCss(page: "A4" | "us-letter"): string {
  return `
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
.sheet .scroll{margin:.5rem 0 .75rem}.sheet table{font-size:1.5rem;line-height:1.2}.sheet table:has(tr>:nth-child(5)){font-size:1.16rem}.sheet caption{font-size:1.4rem;line-height:1.2;padding-bottom:.25rem}.sheet th,.sheet td{padding:.26rem .5rem}
.sheet td:empty,.sheet tbody th:empty{height:2.1rem}.sheet table:has(tr>:nth-child(7)) td:empty{height:2.7rem}.sheet .lines{line-height:1.34}
.sheet .table-notes{margin:-.4rem 0 .8rem;font-size:1.04rem;line-height:1.2;padding-left:0;list-style:none}
.sheet .note,.sheet .cautions>li{font-size:1.2rem;line-height:1.2;padding:.35rem .8rem;margin:.6rem 0}
.sheet .pairs th{width:30%}.sheet .cautions{margin:0}.sheet footer{margin-top:.5rem;padding-top:.3rem;font-size:.8rem}}
`;
}
