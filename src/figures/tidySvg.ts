/** What stands in a tidied SVG besides the drawing. */
export interface SvgWords {
  /** Starts every id, so that several figures can stand in one page. */
  readonly idPrefix: string;
  readonly title: string;
  readonly altText: string;
}

const XMLNS = "http://www.w3.org/2000/svg";
const REFERENCE = /#([\w-]+)/g;

function drop(element: Element): boolean {
  const empty = element.childNodes.length === 0;
  return empty && (element.localName === "g" || element.localName === "defs");
}

/**
 * Makes a drawn SVG fit to stand in a document: an accessible name and description, ids that do
 * not clash, a `viewBox` so that it scales, and none of the classes, data attributes and empty
 * groups that only an interactive graph needs. Changes the element it is given.
 */
export function tidySvg(svg: SVGSVGElement, words: SvgWords): void {
  const document = svg.ownerDocument;
  for (const element of Array.from(svg.querySelectorAll("script, foreignObject"))) element.remove();
  for (let again = true; again; ) {
    const empty = Array.from(svg.querySelectorAll("g, defs")).filter(drop);
    for (const element of empty) element.remove();
    again = empty.length > 0;
  }

  const ids = new Map<string, string>();
  for (const element of Array.from(svg.querySelectorAll("[id]"))) {
    ids.set(element.id, `${words.idPrefix}-${ids.size + 1}`);
  }
  const renamed = (value: string): string =>
    value.replace(REFERENCE, (whole, id: string) => (ids.has(id) ? `#${ids.get(id)}` : whole));
  for (const element of [svg, ...Array.from(svg.querySelectorAll("*"))]) {
    for (const { name, value } of Array.from(element.attributes)) {
      if (name === "class" || name.startsWith("data-") || name.startsWith("on")) {
        element.removeAttribute(name);
      } else if (name === "id") element.setAttribute("id", ids.get(value)!);
      else if (name === "style" && value === "") element.removeAttribute(name);
      else if (value.includes("#") && !name.startsWith("xmlns")) {
        const next = renamed(value);
        if (next !== value) element.setAttribute(name, next);
      }
    }
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
    const element = document.createElementNS(XMLNS, tag);
    element.setAttribute("id", `${words.idPrefix}-${tag}`);
    element.textContent = text;
    svg.insertBefore(element, svg.firstChild);
  }
}
