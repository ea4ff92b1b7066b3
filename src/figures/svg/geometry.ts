import { DrawnElement, DrawnText } from "./drawingDom.js";
import { measureText } from "./sourceSans.js";

/** A box in SVG user units, y downwards. */
export interface SvgBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const EMPTY: SvgBox = { x: 0, y: 0, width: 0, height: 0 };

/**
 * Box of an SVG element in its own user units, answered without a browser: text from font
 * metrics, `rect` and `path` from their geometry, groups as the hull of their children.
 */
export function svgElementBox(element: DrawnElement): SvgBox {
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
    case "path":
      return boxAround(svgPathPoints(element.getAttribute("d") ?? ""));
    default:
      return hull(
        Array.from(element.children).map((child) =>
          transformedBox(svgElementBox(child), svgTransform(child.getAttribute("transform"))),
        ),
      );
  }
}

/** Box of an SVG element on the page: its own box through its and its ancestors' transforms. */
export function svgPageBox(element: DrawnElement): SvgBox {
  let box = svgElementBox(element);
  for (let at: DrawnElement | null = element; at !== null; at = at.parentElement) {
    const transform = at.getAttribute("transform");
    if (transform !== null) box = transformedBox(box, svgTransform(transform));
  }
  return box;
}

function hull(boxes: readonly SvgBox[]): SvgBox {
  return boxAround(boxes.filter((box) => box.width > 0 || box.height > 0).flatMap(corners));
}

function corners({ x, y, width, height }: SvgBox): Point[] {
  return [
    [x, y],
    [x + width, y],
    [x, y + height],
    [x + width, y + height],
  ];
}

/** Upright box around points. */
function boxAround(points: readonly Point[]): SvgBox {
  if (points.length === 0) return EMPTY;
  const [xs, ys] = [points.map((point) => point[0]), points.map((point) => point[1])];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

interface TextStyle {
  readonly sizePx: number;
  readonly weight: number;
  readonly italic: boolean;
  readonly anchor: string;
}

const ROOT_STYLE: TextStyle = { sizePx: 16, weight: 400, italic: false, anchor: "start" };

function property(element: DrawnElement, name: string): string {
  return element.style.getPropertyValue(name) || element.getAttribute(name) || "";
}

function ownStyle(element: DrawnElement, parent: TextStyle): TextStyle {
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

function inheritedStyle(element: DrawnElement): TextStyle {
  const parent = element.parentElement;
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
function svgTextBox(element: DrawnElement): SvgBox {
  const layout = new TextLayout();
  layout.walk(element, inheritedStyle(element));
  return layout.box();
}

/** Lays text out run by run; a chunk is what one anchor places. */
class TextLayout {
  private left = Infinity;
  private right = -Infinity;
  private top = Infinity;
  private bottom = -Infinity;
  private chunkX = 0;
  private chunkWidth = 0;
  private y = 0;
  private anchor = "start";

  walk(node: DrawnElement, style: TextStyle): void {
    this.moveTo(node, style);
    for (const child of Array.from(node.childNodes)) {
      if (child instanceof DrawnElement) {
        this.walk(child, ownStyle(child, style));
      } else if (child instanceof DrawnText) {
        this.addRun(child.nodeValue, style);
      }
    }
  }

  box(): SvgBox {
    this.closeChunk();
    const { left: x, top: y, right, bottom } = this;
    return x > right ? EMPTY : { x, y, width: right - x, height: bottom - y };
  }

  private moveTo(node: DrawnElement, style: TextStyle): void {
    const x = node.getAttribute("x");
    if (x !== null) {
      this.closeChunk();
      this.chunkX = length(x, style.sizePx);
    }
    if (this.chunkWidth === 0) this.anchor = style.anchor;
    const y = node.getAttribute("y");
    if (y !== null) this.y = length(y, style.sizePx);
    this.y += length(node.getAttribute("dy") ?? "0", style.sizePx);
  }

  private addRun(content: string, { sizePx, weight, italic }: TextStyle): void {
    // plotly sets `white-space: pre`; the zero-width space only carries a `dy` back down
    const text = content.replaceAll("\u200b", "");
    if (text === "") return;
    const size = measureText(text, sizePx, weight, italic);
    this.chunkWidth += size.widthPx;
    this.top = Math.min(this.top, this.y - size.ascentPx);
    this.bottom = Math.max(this.bottom, this.y + size.descentPx);
  }

  private closeChunk(): void {
    if (this.chunkWidth === 0) return;
    const start = this.chunkX - (ANCHOR_PART[this.anchor] ?? 0) * this.chunkWidth;
    this.left = Math.min(this.left, start);
    this.right = Math.max(this.right, start + this.chunkWidth);
    this.chunkX += this.chunkWidth;
    this.chunkWidth = 0;
  }
}

/** The part of a chunk's width that stands before its anchor. */
const ANCHOR_PART: Readonly<Record<string, number>> = { start: 0, middle: 0.5, end: 1 };

/** Plane map (x, y) → (a x + c y + e, b x + d y + f), as SVG's `matrix(a b c d e f)`. */
type SvgMatrix = readonly [number, number, number, number, number, number];

const IDENTITY: SvgMatrix = [1, 0, 0, 1, 0, 0];

function times(m: SvgMatrix, n: SvgMatrix): SvgMatrix {
  return [
    m[0] * n[0] + m[2] * n[1],
    m[1] * n[0] + m[3] * n[1],
    m[0] * n[2] + m[2] * n[3],
    m[1] * n[2] + m[3] * n[3],
    m[0] * n[4] + m[2] * n[5] + m[4],
    m[1] * n[4] + m[3] * n[5] + m[5],
  ];
}

function single(name: string, values: readonly number[]): SvgMatrix {
  const [a = 0, b = 0, c = 0] = values;
  if (name === "translate") return [1, 0, 0, 1, a, b];
  if (name === "scale") return [a, 0, 0, values.length > 1 ? b : a, 0, 0];
  if (name === "matrix" && values.length === 6) return values as unknown as SvgMatrix;
  if (name !== "rotate") return IDENTITY;
  const [cos, sin] = [Math.cos((a * Math.PI) / 180), Math.sin((a * Math.PI) / 180)];
  return [cos, sin, -sin, cos, b - cos * b + sin * c, c - sin * b - cos * c];
}

/** Reads an SVG `transform` attribute (SVG 1.1, clause 7.6; skews are not used by plotly). */
export function svgTransform(attribute: string | null): SvgMatrix {
  let matrix = IDENTITY;
  for (const [, name, values] of (attribute ?? "").matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const numbers = values!.split(/[\s,]+/).filter((part) => part !== "");
    matrix = times(matrix, single(name!, numbers.map(Number)));
  }
  return matrix;
}

/** Upright box around a box after a transform. */
export function transformedBox(box: SvgBox, [a, b, c, d, e, f]: SvgMatrix): SvgBox {
  return boxAround(corners(box).map(([x, y]) => [a * x + c * y + e, b * x + d * y + f]));
}

/** How many numbers a path command takes. */
const ARGUMENTS: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};
const STEPS_PER_CURVE = 24;

type Point = readonly [x: number, y: number];

function bezier(points: readonly Point[], t: number): Point {
  if (points.length === 1) return points[0]!;
  const shorter = points.slice(1).map((point, index): Point => {
    const before = points[index]!;
    return [before[0] + (point[0] - before[0]) * t, before[1] + (point[1] - before[1]) * t];
  });
  return bezier(shorter, t);
}

/**
 * Flattens the `d` attribute of an SVG path to points, so that its length and the point at a
 * distance can be answered without a browser. Curves of Bézier kind become 24 chords; elliptical
 * arcs one chord, which is enough for what plotly asks (arrow shafts and labels on lines).
 */
export function svgPathPoints(d: string): readonly Point[] {
  const points: Point[] = [];
  let at: Point = [0, 0];
  let start: Point = at;
  let control: Point | undefined;
  for (const { command, relative, part, first } of pathCommands(d)) {
    const curve =
      command === "Z" ? [start] : controlPoints(command, part, at, relative ? at : [0, 0], control);
    control = curve.length > 1 ? curve[curve.length - 2] : undefined;
    const steps = curve.length > 1 ? STEPS_PER_CURVE : 1;
    for (let step = 1; step <= steps; step++) points.push(bezier([at, ...curve], step / steps));
    at = curve[curve.length - 1]!;
    if (command === "M" && first) start = at;
  }
  return points;
}

interface PathCommand {
  readonly command: string;
  readonly relative: boolean;
  readonly part: readonly number[];
  /** A letter may be followed by several sets of numbers. */
  readonly first: boolean;
}

function pathCommands(d: string): PathCommand[] {
  return Array.from(d.matchAll(/([MLHVCSQTAZ])([^MLHVCSQTAZ]*)/gi)).flatMap(([, letter, tail]) => {
    const command = letter!.toUpperCase();
    const relative = letter !== command;
    const size = ARGUMENTS[command]!;
    if (size === 0) return [{ command, relative, part: [], first: true }];
    const numbers = (tail!.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? []).map(Number);
    return Array.from({ length: Math.floor(numbers.length / size) }, (_, set) => ({
      command,
      relative,
      part: numbers.slice(set * size, (set + 1) * size),
      first: set === 0,
    }));
  });
}

/** The points after the current one that a path command names, its end last. */
function controlPoints(
  command: string,
  part: readonly number[],
  at: Point,
  origin: Point,
  control: Point | undefined,
): Point[] {
  const pair = (index: number): Point => [origin[0] + part[index]!, origin[1] + part[index + 1]!];
  const mirrored: Point = control ? [2 * at[0] - control[0], 2 * at[1] - control[1]] : at;
  switch (command) {
    case "H":
      return [[origin[0] + part[0]!, at[1]]];
    case "V":
      return [[at[0], origin[1] + part[0]!]];
    case "C":
      return [pair(0), pair(2), pair(4)];
    case "S":
      return [mirrored, pair(0), pair(2)];
    case "Q":
      return [pair(0), pair(2)];
    case "T":
      return [mirrored, pair(0)];
    default:
      return [pair(part.length - 2)];
  }
}

/** Length of the polyline through the points. */
export function polylineLength(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    sum += Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1]);
  }
  return sum;
}

/** Point at a distance along the polyline, held to its ends. */
export function pointAlong(points: readonly Point[], distance: number): { x: number; y: number } {
  let left = Math.max(0, distance);
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const step = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= step && step > 0) {
      return { x: a[0] + ((b[0] - a[0]) * left) / step, y: a[1] + ((b[1] - a[1]) * left) / step };
    }
    left -= step;
  }
  const [x, y] = points[points.length - 1] ?? [0, 0];
  return { x, y };
}
