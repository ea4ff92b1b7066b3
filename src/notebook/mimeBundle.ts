import { inspect } from "node:util";
import type { TableBlock, TableColumn } from "../blocks/block.js";
import { readBlock } from "../blocks/kinds.js";
import { blockHtml } from "../blocks/partHtml.js";
import { blockText } from "../blocks/partText.js";
import type { Figure } from "../figures/figure.js";
import { isMessage, say, type Text } from "../words/message.js";
import { type Locale, render, renderAll, type Said } from "../words/render.js";
import { isRecord } from "./notebookFile.js";

/** One block of a report as data (`ReportBlock`), which the report reads in place of its HTML. */
export const NODE_MIME = "application/vnd.loambook.node+json";
/** Plotly's figure JSON, drawn where a front end has a renderer for it. */
export const PLOTLY_MIME = "application/vnd.plotly.v1+json";
export const SVG_MIME = "image/svg+xml";
const PNG_MIME = "image/png";
export const HTML_MIME = "text/html";
export const MARKDOWN_MIME = "text/markdown";
export const TEXT_MIME = "text/plain";

/** One thing to show, in several forms by MIME type, and what is to be known of each form. */
export interface MimeBundle {
  readonly data: Readonly<Record<string, unknown>>;
  readonly metadata: Readonly<Record<string, unknown>>;
}

/**
 * Makes what a notebook shows of a value. A figure and the blocks of a report are known by their
 * `kind`; danfo.js frames and lists of flat objects become tables; a message is said; all else is shown
 * as text. Nothing in the bundle is left to be said: it speaks one language.
 *
 * Every text of the value is escaped where it stands in HTML.
 *
 * @param value anything; not changed
 * @param locale default `en`
 * @throws TypeError or RangeError when the `kind` is known but the value has not the fields of it
 *
 * @example
 * const { data } = await toBundle([{ sizeMm: 2, passingPct: 78 }]);
 * Object.keys(data) // => ["application/vnd.loambook.node+json", "text/html", "text/plain"]
 */
export async function toBundle(value: unknown, locale: Locale = "en"): Promise<MimeBundle> {
  const figure = asFigure(value, locale);
  if (figure !== undefined) return figureBundle(figure);
  const block = readBlock(value) ?? tableOf(value);
  if (block === undefined) {
    const text = isMessage(value) ? render(value, locale) : plainText(value);
    return { data: { [TEXT_MIME]: text }, metadata: {} };
  }
  return {
    data: {
      [NODE_MIME]: renderAll(block, locale),
      [HTML_MIME]: blockHtml(block, "cell", locale),
      [TEXT_MIME]: blockText(block, locale),
    },
    metadata: {},
  };
}

function plainText(value: unknown): string {
  if (typeof value === "string") return value;
  return inspect(value, { depth: 4, breakLength: 100, maxArrayLength: 100, colors: false });
}

/** A figure whose messages are said, perhaps drawn already. */
type SaidFigure = Said<Figure> & { readonly svg?: string };

/** Takes a value as a figure by its shape; `undefined` where it is none. */
function asFigure(value: unknown, locale: Locale): SaidFigure | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  if (!("kind" in value) || value.kind !== "figure") return undefined;
  const figure = renderAll(value as Partial<SaidFigure>, locale);
  const { title, altText, data, layout } = figure;
  const wrong = (name: string, found: unknown, expected: string): never => {
    throw new TypeError(
      `invalid \`figure.${name}\`: ${JSON.stringify(found)}; expected ${expected}`,
    );
  };
  if (typeof title !== "string") wrong("title", title, "a text");
  if (typeof altText !== "string" || altText === "") wrong("altText", altText, "a text");
  if (!Array.isArray(data)) wrong("data", data, "a list of plotly traces");
  if (typeof layout !== "object" || layout === null) wrong("layout", layout, "a plotly layout");
  return figure as SaidFigure;
}

/** Pixels of the picture to one of the drawing: sharp enough for most screens, and half the size of twice. */
const PNG_ZOOM = 1.5;

/**
 * Makes the bundle of a figure: plotly's JSON for front ends that draw it, the drawing as SVG, a picture
 * for those that trust no SVG, and the title with the text alternative. No HTML: a notebook that is not
 * trusted would take the drawing out of it and show its numbers as text.
 */
async function figureBundle(figure: SaidFigure): Promise<MimeBundle> {
  const { title, altText, data, layout } = figure;
  // drawing takes plotly and a painter: loaded only when there is something to draw
  const { figurePng } = await import("../figures/svg/figurePng.js");
  const svg = figure.svg ?? (await (await import("../figures/svg/renderSvg.js")).renderSvg(figure));
  const png = figurePng(svg, PNG_ZOOM);
  const words = {
    alt: altText,
    caption: title,
    ...(figure.key === undefined ? {} : { key: figure.key }),
    ...(figure.half ? { half: true } : {}),
  };
  return {
    data: {
      [PLOTLY_MIME]: { data, layout, config: { displaylogo: false, responsive: true } },
      [SVG_MIME]: svg,
      [PNG_MIME]: Buffer.from(png).toString("base64"),
      [TEXT_MIME]: `${title}\n${altText}`,
    },
    metadata: {
      [PLOTLY_MIME]: words,
      [SVG_MIME]: words,
      [PNG_MIME]: { ...words, width: Math.round(pngWidth(png) / PNG_ZOOM) },
      [TEXT_MIME]: words,
    },
  };
}

/** Width of a picture, from its header: PNG specification, section 11.2.2 (from memory). */
function pngWidth(png: Uint8Array): number {
  return new DataView(png.buffer, png.byteOffset).getUint32(16);
}

const MAX_ROWS = 50;
const DIGITS = 6;

/**
 * Makes a table of a danfo.js frame or of a list of flat objects; `undefined` of anything else.
 *
 * Columns are the keys in the order of their first appearance. Numbers are shown with six significant
 * digits and missing values as a dash; of more than 50 rows the first 50. What was left out is noted
 * below the table.
 */
function tableOf(value: unknown): TableBlock | undefined {
  if (isRecord(value)) return tableOfFrame(value);
  if (!Array.isArray(value) || value.length === 0) return undefined;
  if (!value.every((row) => isRecord(row) && Object.values(row).every(isFlat))) return undefined;
  const headers = [...new Set(value.flatMap((row) => Object.keys(row)))];
  if (headers.length === 0) return undefined;
  const rows = value.map((row) => headers.map((header) => row[header]));
  return tableOfRows(headers, rows);
}

/** A danfo.js frame by its shape, since the library must not be loaded to look at a value. */
function tableOfFrame(value: Record<string, unknown>): TableBlock | undefined {
  const { columns, values, index } = value;
  if (!Array.isArray(columns) || !Array.isArray(values) || !Array.isArray(index)) return undefined;
  if (!values.every((row) => Array.isArray(row) && row.length === columns.length)) return undefined;
  const headers = columns.map(String);
  const counted = index.every((label, place) => label === place);
  if (counted) return tableOfRows(headers, values);
  const labelled = values.map((row: unknown[], place) => [index[place], ...row]);
  return tableOfRows(["index", ...headers], labelled);
}

function tableOfRows(
  headers: readonly string[],
  values: readonly (readonly unknown[])[],
): TableBlock {
  const columns = headers.map((header, index): TableColumn => {
    const own = values.map((row) => row[index]).filter((value) => !isMissing(value));
    const numeric = own.length > 0 && own.every((value) => typeof value === "number");
    return { header, align: numeric ? "right" : "left" };
  });
  const shown = values.slice(0, MAX_ROWS);
  const notes: Text[] = [];
  if (shown.length < values.length) {
    notes.push(say`The first ${shown.length} of ${values.length} rows.`);
  }
  if (shown.flat().some((value) => Number.isFinite(value) && rounded(value as number) !== value)) {
    notes.push(say`Numbers rounded to ${DIGITS} significant digits.`);
  }
  return {
    kind: "table",
    caption: say`${values.length}{0, plural, one { row} other { rows}}, ${headers.length}{1, plural, one { column} other { columns}}`,
    columns,
    rows: shown.map((row) => headers.map((_, index) => cellOf(row[index]))),
    notes,
  };
}

function isFlat(value: unknown): boolean {
  return value === null || value instanceof Date || !["object", "function"].includes(typeof value);
}

function isMissing(value: unknown): boolean {
  return value === null || value === undefined || Number.isNaN(value);
}

function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}

function cellOf(value: unknown): Text {
  if (isMissing(value)) return "–";
  if (typeof value === "number") return { number: String(rounded(value)) };
  return value instanceof Date ? value.toISOString() : String(value);
}
