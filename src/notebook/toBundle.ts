import { inspect } from "node:util";
import { asBlock } from "./asBlock.js";
import { asTable } from "./asTable.js";
import { blockHtml } from "./blockHtml.js";
import { blockText } from "./blockText.js";
import { asFigure, figureBundle } from "./figureBundle.js";
import { HTML_MIME, type MimeBundle, NODE_MIME, TEXT_MIME } from "./mimeBundle.js";

function plainText(value: unknown): string {
  if (typeof value === "string") return value;
  return inspect(value, { depth: 4, breakLength: 100, maxArrayLength: 100, colors: false });
}

/**
 * Makes what a notebook shows of a value. A figure and the blocks of a report are known by their
 * `kind`; danfo.js frames and lists of flat objects become tables; all else is shown as text.
 *
 * Every text of the value is escaped where it stands in HTML.
 *
 * @param value anything; not changed
 * @throws TypeError or RangeError when the `kind` is known but the value has not the fields of it
 *
 * @example
 * const { data } = await toBundle([{ sizeMm: 2, passingPct: 78 }]);
 * Object.keys(data) // => ["application/vnd.loambook.node+json", "text/html", "text/plain"]
 */
export async function toBundle(value: unknown): Promise<MimeBundle> {
  const figure = asFigure(value);
  if (figure !== undefined) return figureBundle(figure);
  const block = asBlock(value) ?? asTable(value);
  if (block === undefined) return { data: { [TEXT_MIME]: plainText(value) }, metadata: {} };
  return {
    data: { [NODE_MIME]: block, [HTML_MIME]: blockHtml(block), [TEXT_MIME]: blockText(block) },
    metadata: {},
  };
}
