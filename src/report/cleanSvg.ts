import { SaxesParser, type SaxesTagNS } from "saxes";
import {
  DrawnDocument,
  type DrawnElement,
  SVG_NAMESPACE,
  serializedXml,
} from "../figures/svg/drawingDom.js";

/** Elements a still drawing needs; whatever else stands in an SVG is taken out. */
const ALLOWED = new Set(
  (
    "svg g defs title desc path rect circle ellipse line polyline polygon text tspan textPath " +
    "clipPath mask pattern marker symbol use image linearGradient radialGradient stop"
  ).split(" "),
);
const OUTSIDE = /url\(\s*['"]?(?!['"]?#)/i;
/** What drawing programs leave behind: gone without a word, because nobody sees it. */
const HARMLESS = /^(metadata$|sodipodi:|inkscape:)/;
const ID_LIST = new Set(["aria-labelledby", "aria-describedby"]);

const XLINK_NAMESPACE = "http://www.w3.org/1999/xlink";
/** No drawing nests its groups so deep; what is written to exhaust its reader does. */
const DEEPEST = 500;
/** Characters that are read before it is looked whether to go on. */
const CHUNK = 16_384;
const XML_NAMESPACE = "http://www.w3.org/XML/1998/namespace";

/**
 * Takes from an SVG all that could run or be fetched (scripts, event handlers, foreign content,
 * style sheets, outside addresses), starts every id with `idPrefix` so that several figures can
 * stand in one page, and gives it a name and a description when it has none.
 *
 * @returns the SVG and the names of elements and attributes that were taken out; undefined when the text
 * is not a well-formed SVG document
 */
export function cleanSvg(
  text: string,
  idPrefix: string,
  alt: string,
): { readonly svg: string; readonly removed: ReadonlySet<string> } | undefined {
  const removed = new Set<string>();
  const document = new DrawnDocument();
  const parser = new SaxesParser({ xmlns: true });
  let root: DrawnElement | undefined;
  let at: DrawnElement | undefined;
  /** How deep the parser stands in a part that is left out. */
  let skipped = 0;
  let wellFormed = true;
  let depth = 0;
  parser.on("error", () => {
    wellFormed = false;
  });
  parser.on("opentag", (tag) => {
    depth += 1;
    if (skipped > 0 || !isAllowed(tag)) {
      if (skipped === 0 && !HARMLESS.test(tag.name)) removed.add(tag.name);
      skipped += 1;
      return;
    }
    const element = document.createElementNS(SVG_NAMESPACE, tag.local);
    for (const name of takeAttributes(tag, element, idPrefix)) removed.add(name);
    if (at === undefined) root = element;
    else at.appendChild(element);
    at = element;
  });
  parser.on("closetag", () => {
    depth -= 1;
    if (skipped > 0) skipped -= 1;
    else at = at?.parentElement ?? undefined;
  });
  const write = (words: string) => {
    if (skipped === 0) at?.appendChild(document.createTextNode(words));
  };
  parser.on("text", write);
  parser.on("cdata", write);
  for (let from = 0; from < text.length && wellFormed && depth <= DEEPEST; from += CHUNK) {
    parser.write(text.slice(from, from + CHUNK));
  }
  if (depth > DEEPEST) return undefined;
  parser.close();
  if (!wellFormed || root?.localName !== "svg") return undefined;

  root.setAttribute("role", "img");
  if (!root.hasAttribute("aria-labelledby")) root.setAttribute("aria-label", alt);
  return { svg: serializedXml(root), removed };
}

/** Some write none of the namespaces: here they get them. */
function isAllowed({ uri, local }: SaxesTagNS): boolean {
  return (uri === SVG_NAMESPACE || uri === "") && ALLOWED.has(local);
}

/** Gives an element the attributes that neither run nor fetch, and tells the names of the others. */
function takeAttributes(tag: SaxesTagNS, element: DrawnElement, idPrefix: string): string[] {
  return Object.values(tag.attributes).flatMap(({ name, prefix, local, uri, value }) => {
    // declared where it is needed; what a drawing program notes for itself under a name of its own is no loss
    if (prefix === "xmlns" || name === "xmlns") return [];
    if (uri !== "" && uri !== XLINK_NAMESPACE && uri !== XML_NAMESPACE) return [];
    const plain = uri === XLINK_NAMESPACE ? `xlink:${local}` : name;
    if (!safeAttribute(element, plain, value)) return [name];
    element.setAttribute(plain, withPrefix(plain, value, idPrefix));
    return [];
  });
}

function safeAttribute({ localName }: DrawnElement, name: string, value: string): boolean {
  if (/^on/i.test(name)) return false;
  if (name === "href" || name === "xlink:href") {
    const picture = localName === "image" && /^data:image\/(png|jpeg);base64,/.test(value);
    return value.startsWith("#") || picture;
  }
  return !OUTSIDE.test(value) && !/expression\(|@import/i.test(value);
}

/** The value of an attribute, every id in it with the prefix. */
function withPrefix(name: string, value: string, idPrefix: string): string {
  if (name === "id") return `${idPrefix}${value}`;
  if (ID_LIST.has(name)) {
    const ids = value.trim().split(/\s+/);
    return ids.map((id) => `${idPrefix}${id}`).join(" ");
  }
  if (/href$/.test(name) && value.startsWith("#")) return `#${idPrefix}${value.slice(1)}`;
  return value.replace(/url\((\s*['"]?)#/g, `url($1#${idPrefix}`);
}
