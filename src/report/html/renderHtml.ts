import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { escapeHtml } from "../../blocks/escapeHtml.js";
import { say } from "../../words/message.js";
import {
  type DocumentNode,
  type HeadingNode,
  plainText,
  type ReportDocument,
} from "../document.js";
import { inventedWords, longDate, type ReportLogo } from "../reportMeta.js";
import { blockHtml, isInteractive } from "./blockHtml.js";
import { textDir } from "./inlineHtml.js";
import { handoutCss, pageCss, sheetCss, styleCss } from "./pageCss.js";

/** What a caller may change about the HTML file. */
export interface HtmlOptions {
  /** Whether figures can be made interactive (adds about 1.2 MB once); default true. */
  readonly interactive?: boolean;
}

function plotlySource(): string {
  const require = createRequire(import.meta.url);
  const source = readFileSync(require.resolve("plotly.js-basic-dist-min"), "utf8");
  if (/<\/script|<!--/i.test(source)) {
    throw new Error("plotly.js-basic-dist-min cannot stand in a page: it holds a closing tag");
  }
  return source;
}

function sha256(text: string): string {
  return `'sha256-${createHash("sha256").update(text, "utf8").digest("base64")}'`;
}

function annexHtml(document: ReportDocument): { html: string; entries: string[] } {
  const parts: string[] = [];
  const entries: string[] = [];
  const add = (id: string, title: string, body: string): void => {
    entries.push(`<a href="#${id}">${escapeHtml(title)}</a>`);
    parts.push(
      `<section id="${id}-section">\n<h2 id="${id}">${escapeHtml(title)}</h2>\n${body}\n</section>`,
    );
  };
  const { inputs = [] } = document.meta;
  if (inputs.length > 0) {
    const rows = inputs.map(
      (input) =>
        `<tr><th scope="row">${escapeHtml(input.file)}</th><td class="digest">${escapeHtml(input.sha256)}</td></tr>`,
    );
    add(
      "annex-inputs",
      say`Annex: files read`,
      `<div class="scroll" role="region" tabindex="0" aria-label="${escapeHtml(say`Files read`)}"><table><thead><tr><th scope="col">${escapeHtml(say`File`)}</th><th scope="col">${escapeHtml(say`SHA-256 digest`)}</th></tr></thead><tbody>${rows.join("\n")}</tbody></table></div>`,
    );
  }
  if (document.annex.length > 0) {
    add("annex-code", say`Annex: the computation`, document.annex.map(blockHtml).join("\n"));
  }
  return { html: parts.join("\n"), entries };
}

/**
 * Renders a report as one HTML file that opens offline and makes no request.
 *
 * Figures are inline SVG; where scripts run, a button makes one interactive with the plotly that
 * stands in the same file. Maths is MathML. A content security policy allows the page's own two
 * scripts, by their digests, and nothing from outside. All text of the report is escaped.
 *
 * @example
 * const meta = { title: "Mix <A>", date: "2024-05-02", language: "en", page: "A4" };
 * const html = renderHtml({ meta, nodes: [], annex: [], findings: [] });
 * html.includes("<h1>Mix &lt;A&gt;</h1>") // => true
 */
export function renderHtml(document: ReportDocument, options: HtmlOptions = {}): string {
  const { meta, nodes } = document;
  const { style = {} } = meta;
  const sheet = meta.layout === "sheet";
  const handout = meta.layout === "handout";
  const interactive =
    options.interactive !== false &&
    nodes.some((node) => node.kind === "figure" && isInteractive(node));
  const plotly = interactive ? plotlySource() : "";
  const script = interactive ? `${sha256(pageScript)} ${sha256(plotly)}` : "'none'";
  const policy = `default-src 'none'; style-src 'unsafe-inline'; img-src data:; script-src ${script}; base-uri 'none'; form-action 'none'`;
  const annex = annexHtml(document);
  const date = longDate(meta.date, meta.language);
  const facts = [meta.place, date].filter(Boolean) as string[];
  const subtitle = meta.subtitle
    ? `\n<p class="subtitle"${textDir(meta.subtitle)}>${escapeHtml(meta.subtitle)}</p>`
    : "";
  const keywords = meta.keywords?.length
    ? `\n<meta name="keywords" content="${escapeHtml(meta.keywords.join(", "))}">`
    : "";
  return `<!doctype html>
<html lang="${meta.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">${keywords}
<link rel="icon" href="data:,">
<title>${escapeHtml(meta.title)}</title>
<style>${pageCss}${sheet ? sheetCss(meta.page) : ""}${handout ? handoutCss : ""}${styleCss(meta)}</style>
</head>
<body${sheet || handout ? ` class="${meta.layout}"` : ""}>
<a class="skip" href="#main">${escapeHtml(sheet ? say`Skip to the sheet` : say`Skip to the report`)}</a>
${meta.invented ? `<p class="banner" role="note">${escapeHtml(inventedWords().long)}</p>\n` : ""}<div class="frame">
<header class="title">
${style.logo ? `${logoHtml(style.logo)}\n` : ""}${style.header ? `<p class="house"${textDir(style.header)}>${escapeHtml(style.header)}</p>\n` : ""}<h1${textDir(meta.title)}>${escapeHtml(meta.title)}</h1>${subtitle}
<p class="facts">${facts.map((fact) => `<span${textDir(fact)}>${escapeHtml(fact)}</span>`).join(" · ")}</p>
</header>
${sheet ? "" : `${contentsHtml(nodes, annex.entries)}\n`}<main id="main" tabindex="-1">
${nodes.map(blockHtml).join("\n")}
${annex.html}
</main>
<footer>${style.footer ? `<span${textDir(style.footer)}>${escapeHtml(style.footer)}</span> · ` : ""}${meta.madeWith ? `${escapeHtml(say`Made with ${meta.madeWith}.`)} ` : ""}${date}.</footer>
</div>
${interactive ? `<script type="text/plain" id="plotly-source">${plotly}</script>\n<script>${pageScript}</script>\n` : ""}</body>
</html>
`;
}

function entry(heading: Pick<HeadingNode, "id" | "number" | "inlines">): string {
  const number = heading.number ? `<span class="number">${heading.number}</span> ` : "";
  return `<a href="#${heading.id}">${number}${escapeHtml(plainText(heading.inlines))}</a>`;
}

/** List of contents with links: main sections and the sections one level below them. */
function contentsHtml(nodes: readonly DocumentNode[], annexes: readonly string[]): string {
  const items: { head: string; under: string[] }[] = [];
  for (const node of nodes) {
    if (node.kind !== "heading") continue;
    if (node.level === 1) items.push({ head: entry(node), under: [] });
    else if (node.level === 2) items.at(-1)?.under.push(`<li>${entry(node)}</li>`);
  }
  for (const annex of annexes) items.push({ head: annex, under: [] });
  const list = items
    .map(({ head, under }) => {
      const below = under.length > 0 ? `<ol>${under.join("")}</ol>` : "";
      return `<li>${head}${below}</li>`;
    })
    .join("\n");
  return `<nav class="contents" aria-labelledby="contents"><h2 id="contents">${escapeHtml(say`Contents`)}</h2>\n<ol>\n${list}\n</ol></nav>`;
}

/** A logo inside the page: a drawing as it was cleaned, a picture as data; nothing is fetched. */
function logoHtml(logo: ReportLogo): string {
  if (logo.type === "svg") return `<div class="logo">${logo.svg}</div>`;
  const data = Buffer.from(logo.bytes).toString("base64");
  return `<div class="logo"><img src="data:image/png;base64,${data}" alt="${escapeHtml(logo.alt)}"></div>`;
}

/**
 * Script of the page: shows the buttons, and on the first press runs the plotly source that
 * stands in the page as text. Until then plotly is not even parsed; nothing is ever fetched.
 */
const pageScript = `"use strict";
(function () {
  var source = document.getElementById("plotly-source");
  if (!source) return;
  function load() {
    if (window.Plotly) return;
    var script = document.createElement("script");
    script.textContent = source.textContent;
    document.head.appendChild(script);
  }
  function words(button, interactive) {
    var said = button.dataset;
    said.wake = said.wake || button.textContent;
    button.textContent = interactive ? said.still : said.wake;
  }
  document.querySelectorAll("button[data-figure]").forEach(function (button) {
    var figure = document.getElementById(button.dataset.figure);
    var still = figure.querySelector(".drawing");
    var live = figure.querySelector(".live");
    button.hidden = false;
    button.addEventListener("click", function () {
      var show = live.hidden;
      live.hidden = !show;
      still.hidden = show;
      words(button, show);
      if (!show) return;
      load();
      var drawn = JSON.parse(figure.querySelector('script[type="application/json"]').textContent);
      delete drawn.layout.width;
      delete drawn.layout.height;
      drawn.layout.autosize = true;
      window.Plotly.react(live, drawn.data, drawn.layout, {
        responsive: true, displaylogo: false, showSendToCloud: false, plotlyServerURL: "",
        showEditInChartStudio: false, showLink: false, modeBarButtonsToRemove: ["toImage", "sendDataToCloud"]
      });
    });
  });
})();
`;
