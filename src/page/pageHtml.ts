import { createHash } from "node:crypto";
import { escapeHtml } from "../blocks/html.js";
import { say, type Text } from "../words/message.js";
import { type Locale, render } from "../words/render.js";
import { type PageData, packFiles } from "./pageData.js";
import { pageStyle } from "./pageStyle.js";
import type { StudyFiles } from "./studyFiles.js";

export interface PageHtmlOptions {
  /** The page's own program, as the build made it. */
  readonly script: string;
  /** Of the study; empty for an empty bench. */
  readonly files: StudyFiles;
  /** Of the study; default “Mix bench”. */
  readonly title?: Text;
  readonly locale?: Locale;
}

/**
 * The mix page as one HTML file: program, style and study inside, nothing from outside. Its content security
 * policy allows the page's own script and style, by their digests, and no request of any kind.
 *
 * @example
 * pageHtml({ script: "", files: new Map() }).includes("<title>Mix bench</title>") // => true
 */
export function pageHtml({
  script,
  files,
  title = say`Mix bench`,
  locale = "en",
}: PageHtmlOptions): string {
  const data: PageData = { files: packFiles(files) };
  const policy = [
    "default-src 'none'",
    `script-src ${digest(script)}`,
    `style-src ${digest(pageStyle)}`,
    "img-src blob: data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  const said = (text: Text) => escapeHtml(render(text, locale));
  return `<!doctype html>
<html lang="${escapeHtml(locale)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<link rel="icon" href="data:,">
<title>${said(title)}</title>
<style>${pageStyle}</style>
</head>
<body>
<div id="page"><header class="head"><h1>${said(title)}</h1></header><noscript><p class="banner">${said(say`This page computes in the browser: it needs scripts to be allowed.`)}</p></noscript></div>
<div id="live" class="unseen" role="status" aria-live="polite"></div>
<script type="application/json" id="page-data">${JSON.stringify(data).replaceAll("<", "\\u003c")}</script>
<script>${script}</script>
</body>
</html>
`;
}

/** Digest of an inline script or style, as a content security policy names it. */
function digest(text: string): string {
  return `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
}
