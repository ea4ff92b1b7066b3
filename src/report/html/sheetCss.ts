/** Added to `pageCss` for a sheet that is read at arm's length and printed: large type, lines to write on. */
export function sheetCss(page: "A4" | "us-letter"): string {
  return `
@page{size:${page === "A4" ? "A4" : "letter"};margin:14mm}
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
@media print{html{font-size:${page === "A4" ? 9 : 8.5}pt}.sheet header.title{padding:.6rem 0 .5rem}.sheet footer{margin-top:1rem;padding-top:.4rem}.sheet .banner{padding:.2rem}
.sheet .frame{max-width:none}.sheet caption>span{max-width:none}}
`;
}
