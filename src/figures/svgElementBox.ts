import { svgPathPoints } from "./svgPathPoints.js";
import { type SvgBox, svgTextBox } from "./svgTextBox.js";
import { svgTransform, transformedBox } from "./svgTransform.js";

const EMPTY: SvgBox = { x: 0, y: 0, width: 0, height: 0 };

function hull(boxes: readonly SvgBox[]): SvgBox {
  const solid = boxes.filter((box) => box.width > 0 || box.height > 0);
  if (solid.length === 0) return EMPTY;
  const x = Math.min(...solid.map((box) => box.x));
  const y = Math.min(...solid.map((box) => box.y));
  const right = Math.max(...solid.map((box) => box.x + box.width));
  const bottom = Math.max(...solid.map((box) => box.y + box.height));
  return { x, y, width: right - x, height: bottom - y };
}

/**
 * Box of an SVG element in its own user units, answered without a browser: text from font
 * metrics, `rect` and `path` from their geometry, groups as the hull of their children.
 */
export function svgElementBox(element: SVGElement): SvgBox {
  const attribute = (name: string): number => Number(element.getAttribute(name) ?? 0);
  switch (element.localName) {
    case "text":
    case "tspan":
      return svgTextBox(element);
    case "rect":
      return {
        x: attribute("x"),
        y: attribute("y"),
        width: attribute("width"),
        height: attribute("height"),
      };
    case "path": {
      const points = svgPathPoints(element.getAttribute("d") ?? "");
      if (points.length === 0) return EMPTY;
      const [xs, ys] = [points.map((point) => point[0]), points.map((point) => point[1])];
      const [x, y] = [Math.min(...xs), Math.min(...ys)];
      return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
    }
    default:
      return hull(
        Array.from(element.children).map((child) =>
          transformedBox(
            svgElementBox(child as unknown as SVGElement),
            svgTransform(child.getAttribute("transform")),
          ),
        ),
      );
  }
}

/** Box of an SVG element on the page: its own box through its and its ancestors' transforms. */
export function svgPageBox(element: SVGElement): SvgBox {
  let box = svgElementBox(element);
  for (let at: Element | null = element; at !== null; at = at.parentElement) {
    const transform = at.getAttribute("transform");
    if (transform !== null) box = transformedBox(box, svgTransform(transform));
  }
  return box;
}
