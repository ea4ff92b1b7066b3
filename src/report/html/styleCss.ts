import type { ReportMeta } from "../reportMeta.js";

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
