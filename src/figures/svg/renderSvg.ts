import { createHash } from "node:crypto";
import { isBasic, withoutTitle } from "../figure.js";
import { type DrawnElement, SVG_NAMESPACE, serializedXml } from "./drawingDom.js";
import { svgElementBox } from "./geometry.js";
import { plotlyWindow } from "./plotlyWindow.js";

/** What is drawn: plotly traces and layout, a title, and words for those who cannot see it. */
export interface DrawableFigure {
  readonly data: readonly object[];
  readonly layout: object;
  readonly title: string;
  readonly altText: string;
}

/**
 * Font list of every figure. Source Sans 3 is what the boxes are measured with and what the PDF
 * embeds; the rest is what a browser without it finds on Windows, macOS and elsewhere.
 */
const FIGURE_FONT =
  "'Source Sans 3', 'Segoe UI', 'Helvetica Neue', Arial, 'Liberation Sans', sans-serif";

// one window serves all: two figures drawn at the same time would share its random numbers
let queue: Promise<unknown> = Promise.resolve();

async function draw(figure: DrawableFigure, widthPx: number, heightPx: number): Promise<string> {
  const { document, plotly, restartRandom } = await plotlyWindow(
    isBasic(figure.data) ? "basic" : "whole",
  );
  // plotly writes into what it is given: it gets a copy, and its defaults are filled in there
  const data = structuredClone(figure.data) as object[];
  const layout = structuredClone(withoutTitle(figure.layout)) as { font?: object };
  const hash = createHash("sha256")
    .update(JSON.stringify([figure, widthPx, heightPx]))
    .digest("hex")
    .slice(0, 10);
  const target = document.createElement("div");
  document.body.append(target);
  restartRandom();
  try {
    const sized = {
      ...layout,
      font: { size: 13, color: "#2b2620", ...layout.font, family: FIGURE_FONT },
      width: widthPx,
      height: heightPx,
      autosize: false,
    };
    const graph = await plotly.newPlot(target, data, sized, { staticPlot: true });
    // prepares the main SVG for export; its text is not used, because tidying needs the nodes
    plotly.Snapshot.toSVG(graph, "svg");
    const svg = graph._fullLayout._paper.node();
    holdWidths(svg);
    tidySvg(svg, { idPrefix: `f${hash}`, title: figure.title, altText: figure.altText });
    return serializedXml(svg);
  } finally {
    plotly.purge(target);
    target.remove();
  }
}

function checkSize(name: string, value: number): void {
  if (!Number.isFinite(value) || value < 100 || value > 10_000) {
    throw new RangeError(`invalid \`${name}\`: ${value}; expected 100 to 10000`);
  }
}

/**
 * Draws a plotly figure to an SVG text without a browser.
 *
 * Text boxes come from the metrics of Source Sans 3, so legends, titles and annotations get the
 * room they need. The title is not drawn, because a caption stands beside the SVG; it is the SVG's
 * accessible name, with the text alternative as its description. The same figure gives the same bytes
 * whatever was drawn before. Loads plotly on the first call.
 *
 * @param figure plotly `data` and `layout`, a title and a text alternative; not changed
 * @param size width and height in CSS pixels, 100 to 10000; default those of the layout, or 720 × 450
 * @throws RangeError when a size is out of range
 *
 * @example
 * const bars = { data: [{ type: "bar", x: ["a"], y: [1] }], layout: {}, title: "One", altText: "One bar" };
 * const svg = await renderSvg(bars);
 * svg.includes('role="img"') // => true
 */
export async function renderSvg(
  figure: DrawableFigure,
  size?: { readonly widthPx: number; readonly heightPx: number },
): Promise<string> {
  const { width = 720, height = 450 } = figure.layout as { width?: number; height?: number };
  const { widthPx, heightPx } = size ?? { widthPx: width, heightPx: height };
  checkSize("size.widthPx", widthPx);
  checkSize("size.heightPx", heightPx);
  const result = queue.then(() => draw(figure, widthPx, heightPx));
  // a failed figure is told to its caller; it must not stop the ones behind it
  queue = result.catch(() => undefined);
  return result;
}

/**
 * States the width of every run of text as it was measured. A machine without our font draws it in one that
 * it has, mostly wider: the run is then squeezed to its room instead of running into its neighbour.
 */
function holdWidths(svg: DrawnElement): void {
  for (const run of Array.from(svg.querySelectorAll("text, tspan"))) {
    if (run.children.length > 0 || run.textContent.trim() === "") continue;
    const { width } = svgElementBox(run);
    if (width === 0) continue;
    run.setAttribute("textLength", String(Math.round(width * 10) / 10));
    run.setAttribute("lengthAdjust", "spacingAndGlyphs");
  }
}

/** What stands in a tidied SVG besides the drawing. */
interface SvgWords {
  /** Starts every id, so that several figures can stand in one page. */
  readonly idPrefix: string;
  readonly title: string;
  readonly altText: string;
}

const REFERENCE = /#([\w-]+)/g;

/**
 * Makes a drawn SVG fit to stand in a document: an accessible name and description, ids that do
 * not clash, a `viewBox` so that it scales, and none of the classes, data attributes and empty
 * groups that only an interactive graph needs. Changes the element it is given.
 */
function tidySvg(svg: DrawnElement, words: SvgWords): void {
  dropNeedless(svg);
  const renamed = renameIds(svg, words.idPrefix);
  for (const element of [svg, ...Array.from(svg.querySelectorAll("*"))]) {
    tidyAttributes(element, renamed);
  }
  const [width, height] = [svg.getAttribute("width"), svg.getAttribute("height")];
  svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
  svg.removeAttribute("style");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-labelledby", `${words.idPrefix}-title ${words.idPrefix}-desc`);
  const parts = [
    ["desc", words.altText],
    ["title", words.title],
  ] as const;
  for (const [tag, text] of parts) {
    const element = svg.ownerDocument.createElementNS(SVG_NAMESPACE, tag);
    element.setAttribute("id", `${words.idPrefix}-${tag}`);
    element.textContent = text;
    svg.insertBefore(element, svg.firstChild);
  }
}

/** Removes what an image must not hold, and groups with nothing in them. */
function dropNeedless(svg: DrawnElement): void {
  for (const element of Array.from(svg.querySelectorAll("script, foreignObject"))) element.remove();
  for (let again = true; again; ) {
    const empty = Array.from(svg.querySelectorAll("g, defs")).filter(
      ({ childNodes }) => childNodes.length === 0,
    );
    for (const element of empty) element.remove();
    again = empty.length > 0;
  }
}

/** Gives every id the prefix and a number; the result turns references in a text to the new ids. */
function renameIds(svg: DrawnElement, prefix: string): (text: string) => string {
  const ids = new Map<string, string>();
  for (const element of Array.from(svg.querySelectorAll("[id]"))) {
    const id = `${prefix}-${ids.size + 1}`;
    ids.set(element.id, id);
    element.setAttribute("id", id);
  }
  return (text) =>
    text.replace(REFERENCE, (whole, id: string) => (ids.has(id) ? `#${ids.get(id)}` : whole));
}

function tidyAttributes(element: DrawnElement, renamed: (text: string) => string): void {
  for (const { name, value } of Array.from(element.attributes)) {
    const interactive = name === "class" || name.startsWith("data-") || name.startsWith("on");
    if (interactive || (name === "style" && value === "")) {
      element.removeAttribute(name);
    } else if (value.includes("#") && !name.startsWith("xmlns")) {
      const next = renamed(value);
      if (next !== value) element.setAttribute(name, next);
    }
  }
}
