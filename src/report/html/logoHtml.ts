import { escapeHtml } from "../../notebook/escapeHtml.js";
import type { ReportLogo } from "../style/reportStyle.js";

/** A logo inside the page: a drawing as it was cleaned, a picture as data; nothing is fetched. */
export function logoHtml(logo: ReportLogo): string {
  if (logo.type === "svg") return `<div class="logo">${logo.svg}</div>`;
  const data = Buffer.from(logo.bytes).toString("base64");
  return `<div class="logo"><img src="data:image/png;base64,${data}" alt="${escapeHtml(logo.alt)}"></div>`;
}
