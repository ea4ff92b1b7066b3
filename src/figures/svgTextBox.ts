import { measureText } from "./measureText.js";

/** A box in SVG user units, y downwards. */
export interface SvgBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface TextStyle {
  readonly sizePx: number;
  readonly weight: number;
  readonly italic: boolean;
  readonly anchor: string;
}

const ROOT_STYLE: TextStyle = { sizePx: 16, weight: 400, italic: false, anchor: "start" };
const EMPTY: SvgBox = { x: 0, y: 0, width: 0, height: 0 };

function property(element: SVGElement, name: string): string {
  return element.style?.getPropertyValue(name) || element.getAttribute(name) || "";
}

function ownStyle(element: SVGElement, parent: TextStyle): TextStyle {
  const size = property(element, "font-size");
  const weight = property(element, "font-weight");
  const slant = property(element, "font-style");
  const anchor = property(element, "text-anchor");
  const weightOf: Record<string, number> = { bold: 700, normal: 400 };
  return {
    sizePx: size === "" ? parent.sizePx : length(size, parent.sizePx),
    weight: weight === "" ? parent.weight : (weightOf[weight] ?? Number(weight)),
    italic: slant === "" ? parent.italic : slant === "italic" || slant === "oblique",
    anchor: anchor === "" ? parent.anchor : anchor,
  };
}

function inheritedStyle(element: SVGElement): TextStyle {
  const parent = element.parentElement as SVGElement | null;
  return ownStyle(element, parent === null ? ROOT_STYLE : inheritedStyle(parent));
}

function length(text: string, emPx: number): number {
  const value = Number.parseFloat(text);
  if (!Number.isFinite(value)) return 0;
  if (text.endsWith("em")) return value * emPx;
  return text.endsWith("%") ? (value / 100) * emPx : value;
}

/**
 * Box of an SVG `text` or `tspan` element as a browser would lay it out in Source Sans 3:
 * lines (`tspan` with its own `x`), `dy` shifts, raised and lowered runs, `text-anchor`.
 * This is what plotly asks a browser for when it makes room for legends, titles and labels.
 */
export function svgTextBox(element: SVGElement): SvgBox {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  let [chunkX, chunkWidth, y, anchor] = [0, 0, 0, "start"];

  const closeChunk = (): void => {
    if (chunkWidth === 0) return;
    const shift = anchor === "middle" ? chunkWidth / 2 : anchor === "end" ? chunkWidth : 0;
    left = Math.min(left, chunkX - shift);
    right = Math.max(right, chunkX - shift + chunkWidth);
    chunkX += chunkWidth;
    chunkWidth = 0;
  };

  const walk = (node: SVGElement, style: TextStyle): void => {
    const x = node.getAttribute("x");
    if (x !== null) {
      closeChunk();
      chunkX = length(x, style.sizePx);
    }
    if (chunkWidth === 0) anchor = style.anchor;
    const ownY = node.getAttribute("y");
    if (ownY !== null) y = length(ownY, style.sizePx);
    y += length(node.getAttribute("dy") ?? "0", style.sizePx);
    for (const child of Array.from(node.childNodes)) {
      if (child.nodeType === 1) {
        walk(child as unknown as SVGElement, ownStyle(child as unknown as SVGElement, style));
      } else if (child.nodeType === 3) {
        // plotly sets `white-space: pre`; the zero-width space only carries a `dy` back down
        const text = (child.textContent ?? "").replaceAll("\u200b", "");
        if (text === "") continue;
        const size = measureText(text, style.sizePx, style.weight, style.italic);
        chunkWidth += size.widthPx;
        top = Math.min(top, y - size.ascentPx);
        bottom = Math.max(bottom, y + size.descentPx);
      }
    }
  };

  walk(element, inheritedStyle(element));
  closeChunk();
  if (left > right) return EMPTY;
  return { x: left, y: top, width: right - left, height: bottom - top };
}
