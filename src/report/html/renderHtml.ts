import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { escapeHtml, textDir } from "../../blocks/html.js";
import { scrollBox } from "../../blocks/partHtml.js";
import { say, type Text } from "../../words/message.js";
import { type Locale, render } from "../../words/render.js";
import {
  type DocumentNode,
  type FigurePair,
  type HeadingNode,
  pairedFigures,
  plainText,
  type ReportDocument,
} from "../document.js";
import {
  INVENTED,
  longDate,
  NO_APPROVAL,
  type ReportLogo,
  type ReportMeta,
} from "../reportMeta.js";
import { isInteractive, nodeHtml, wordsHtml } from "./nodeHtml.js";
import { guardCss, handoutCss, pageCss, sheetCss, styleCss } from "./pageCss.js";

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

/** What stands behind the body: the files read and the computation, each with its line of the contents. */
function annexHtml({ meta, annex }: ReportDocument): { html: string; entries: string[] } {
  const { inputs = [], language } = meta;
  const [html, entries]: string[][] = [[], []];
  const add = (id: string, title: Text, body: string) => {
    const words = wordsHtml(title, language);
    html.push(`<section id="${id}-section">\n<h2 id="${id}">${words}</h2>\n${body}\n</section>`);
    entries.push(`<a href="#${id}">${words}</a>`);
  };
  if (inputs.length > 0) add("annex-inputs", say`Annex: files read`, inputsHtml(inputs, language));
  if (annex.length > 0) {
    const body = annex.map((node) => nodeHtml(node, language)).join("\n");
    add("annex-code", say`Annex: the computation`, body);
  }
  return { html: html.join("\n"), entries };
}

function inputsHtml(inputs: NonNullable<ReportMeta["inputs"]>, locale: Locale): string {
  const rows = inputs.map(
    ({ file, sha256 }) =>
      `<tr><th scope="row">${escapeHtml(file)}</th><td class="digest">${escapeHtml(sha256)}</td></tr>`,
  );
  const head = [say`File`, say`SHA-256 digest`].map(
    (header) => `<th scope="col">${wordsHtml(header, locale)}</th>`,
  );
  return scrollBox(
    render(say`Files read`, locale),
    `<table><thead><tr>${head.join("")}</tr></thead><tbody>${rows.join("\n")}</tbody></table>`,
    rows.length,
  );
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
  const locale = meta.language;
  const annex = annexHtml(document);
  const contents = sheet ? "" : contentsHtml(nodes, annex.entries, locale);
  const facts = [meta.place, longDate(meta.date, locale)].filter(Boolean) as string[];
  const subtitle = meta.subtitle
    ? `\n<p class="subtitle"${textDir(meta.subtitle)}>${escapeHtml(meta.subtitle)}</p>`
    : "";
  const keywords = meta.keywords?.length
    ? `\n<meta name="keywords" content="${escapeHtml(meta.keywords.join(", "))}">`
    : "";
  return `<!doctype html>
<html lang="${locale}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">${keywords}
<link rel="icon" href="data:,">
<title>${escapeHtml(meta.title)}</title>
<style>${guardCss(meta)}${pageCss}${sheet ? sheetCss(meta) : ""}${handout ? handoutCss : ""}${styleCss(meta)}</style>
</head>
<body${sheet || handout ? ` class="${meta.layout}"` : ""}>
<a class="skip" href="#main">${wordsHtml(sheet ? say`Skip to the sheet` : say`Skip to the report`, locale)}</a>
${meta.invented ? `<p class="banner" role="note">${wordsHtml(INVENTED.long, locale)}</p>\n` : ""}<div class="frame">
<header class="title">
${style.logo ? `${logoHtml(style.logo)}\n` : ""}${style.header ? `<p class="house"${textDir(style.header)}>${escapeHtml(style.header)}</p>\n` : ""}<h1${textDir(meta.title)}>${escapeHtml(meta.title)}</h1>${subtitle}
<p class="facts">${facts.map((fact) => `<span${textDir(fact)}>${escapeHtml(fact)}</span>`).join(" · ")}</p>
</header>
${bodyHtml(nodes, contents, locale)}
${annex.html}
</main>
<footer>${footHtml(meta)}</footer>
</div>
${interactive ? `<script type="text/plain" id="plotly-source">${plotly}</script>\n<script>${pageScript}</script>\n` : ""}</body>
</html>
`;
}

/** The list of contents stands where the report has it, so that what is read first comes first; else before all. */
function bodyHtml(nodes: readonly DocumentNode[], contents: string, locale: Locale): string {
  const body = pairedFigures(nodes).map((node) => {
    if (node.kind === "contents") return contents;
    return node.kind === "pair" ? pairHtml(node, locale) : nodeHtml(node, locale);
  });
  const placed = nodes.some(({ kind }) => kind === "contents");
  const before = placed || contents === "" ? "" : `${contents}\n`;
  return `${before}<main id="main" tabindex="-1">\n${body.join("\n")}`;
}

/** What stands at the foot of the page; on a sheet for a crew first that it approves of nothing. */
function footHtml(meta: ReportMeta): string {
  const { layout, style, madeWith, date, language } = meta;
  const approval = layout === "sheet" ? `${wordsHtml(NO_APPROVAL, language)} ` : "";
  const footer = style?.footer;
  const own = footer ? `<span${textDir(footer)}>${escapeHtml(footer)}</span> · ` : "";
  const made = madeWith ? `${wordsHtml(say`Made with ${madeWith}.`, language)} ` : "";
  return `${approval}${own}${made}${longDate(date, language)}.`;
}

/** Side by side where there is room, one below the other on a phone. */
function pairHtml({ figures }: FigurePair, locale: Locale): string {
  return `<div class="pair">\n${figures.map((figure) => nodeHtml(figure, locale)).join("\n")}\n</div>`;
}

function entry(heading: Pick<HeadingNode, "id" | "number" | "inlines">): string {
  const number = heading.number ? `<span class="number">${heading.number}</span> ` : "";
  return `<a href="#${heading.id}">${number}${escapeHtml(plainText(heading.inlines))}</a>`;
}

/** List of contents with links: main sections and the sections one level below them. */
function contentsHtml(
  nodes: readonly DocumentNode[],
  annexes: readonly string[],
  locale: Locale,
): string {
  const items: { readonly head: string; readonly under: string[] }[] = [];
  for (const node of nodes) {
    if (node.kind !== "heading") continue;
    if (node.level === 1) items.push({ head: entry(node), under: [] });
    else if (node.level === 2) items.at(-1)?.under.push(`<li>${entry(node)}</li>`);
  }
  const heads = items.map(({ head, under }) =>
    under.length > 0 ? `${head}<ol>${under.join("")}</ol>` : head,
  );
  const list = [...heads, ...annexes].map((item) => `<li>${item}</li>`).join("\n");
  return `<nav class="contents" aria-labelledby="contents"><h2 id="contents">${wordsHtml(say`Contents`, locale)}</h2>\n<ol>\n${list}\n</ol></nav>`;
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
      delete drawn.layout.title;
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
