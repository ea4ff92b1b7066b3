import { createRequire } from "node:module";
import type { JSDOM } from "jsdom";

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

function safeAttribute(element: Element, name: string, value: string): boolean {
  if (/^on/i.test(name)) return false;
  if (name === "href" || name === "xlink:href") {
    const picture = element.localName === "image" && /^data:image\/(png|jpeg);base64,/.test(value);
    return value.startsWith("#") || picture;
  }
  return !OUTSIDE.test(value) && !/expression\(|@import/i.test(value);
}

/** Takes from an element what could run or be fetched, and tells the names. */
function cleanAttributes(element: Element, idPrefix: string): string[] {
  return Array.from(element.attributes).flatMap(({ name, value }) => {
    if (safeAttribute(element, name, value)) {
      element.setAttribute(name, withPrefix(name, value, idPrefix));
      return [];
    }
    element.removeAttribute(name);
    return [name];
  });
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

let window: JSDOM["window"] | undefined;

/** jsdom is large: it is loaded with the first figure, not with the package. */
function parser(): JSDOM["window"] {
  const require = createRequire(import.meta.url);
  const jsdom = require("jsdom") as { JSDOM: new (html: string) => JSDOM };
  return new jsdom.JSDOM("").window;
}

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
  window ??= parser();
  const document = new window.DOMParser().parseFromString(text, "image/svg+xml");
  const svg = document.documentElement;
  if (svg.localName !== "svg" || document.querySelector("parsererror")) return undefined;

  for (const element of [svg, ...Array.from(svg.querySelectorAll("*"))]) {
    // what stood inside a part that is gone already
    if (!svg.contains(element)) continue;
    if (!ALLOWED.has(element.localName) || element.namespaceURI !== svg.namespaceURI) {
      if (!HARMLESS.test(element.nodeName)) removed.add(element.nodeName);
      element.remove();
      continue;
    }
    for (const name of cleanAttributes(element, idPrefix)) removed.add(name);
  }
  svg.setAttribute("role", "img");
  if (!svg.hasAttribute("aria-labelledby")) svg.setAttribute("aria-label", alt);
  return { svg: new window.XMLSerializer().serializeToString(svg), removed };
}
