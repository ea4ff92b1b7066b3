/** Added to `pageCss` for a handout: a short head, larger type, lines to write on. */
export const handoutCss = `
.handout{font-size:1.12rem}
.handout header.title{padding:2rem 0 1rem}.handout header.title::before{display:none}
.handout h1{font-size:1.9rem}.handout .subtitle{font-size:1.1rem;margin-top:.2rem}.handout .facts{margin-top:.4rem}
.handout table{font-size:1rem}.handout h2{margin-top:2.4rem}
.writing-lines{margin:1.2rem 0 1.6rem;height:calc(var(--lines)*2.4rem);background:repeating-linear-gradient(to bottom,transparent 0 calc(2.4rem - 1px),var(--soft) calc(2.4rem - 1px) 2.4rem)}
@media print{.handout{font-size:12pt}.handout header.title{padding:0 0 .4rem}.writing-lines{break-inside:avoid;print-color-adjust:exact;-webkit-print-color-adjust:exact}}
`;
