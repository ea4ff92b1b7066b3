import { escapeHtml } from "../blocks/html.js";
import type { Figure } from "../figures/figure.js";
import { GRID, PALETTE, QUIET } from "../figures/style.js";
import { powerOf } from "../numerics/powerOf.js";
import { type Locale, renderAll, withDecimalSign } from "../words/render.js";

export interface ChartOptions {
  readonly widthPx: number;
  /** Of the plot with its axes; the rows of the legend come on top. */
  readonly heightPx: number;
  readonly locale: Locale;
  /** Of the ids inside the SVG, so that two charts of one page do not share any. */
  readonly idPrefix: string;
  /** What stands for a colour of the figure; default the colour itself. A page gives its own by light. */
  readonly paint?: (color: string) => string;
}

interface Stroke {
  readonly color?: string;
  readonly width?: number;
  readonly dash?: string;
}

/** What this renderer reads of a trace of a plotly figure. */
interface Trace {
  readonly type?: string;
  readonly mode?: string;
  readonly name?: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly fill?: string;
  readonly fillcolor?: string;
  readonly fillpattern?: { readonly shape: string; readonly fgcolor: string };
  readonly line?: Stroke;
  readonly marker?: { readonly color?: string; readonly symbol?: string; readonly size?: number };
  readonly error_y?: { readonly array: readonly number[]; readonly color?: string };
  readonly showlegend?: boolean;
  readonly text?: string | readonly string[];
}

interface AxisLayout {
  readonly type?: string;
  readonly title?: { readonly text?: string };
  readonly range?: readonly [number, number];
  readonly rangemode?: string;
  readonly tickvals?: readonly number[];
  readonly ticktext?: readonly string[];
  readonly minor?: { readonly tickvals?: readonly number[] };
}

interface Shape extends Readonly<Record<"x0" | "x1" | "y0" | "y1", number>> {
  readonly xref?: string;
  readonly yref?: string;
  readonly line: Stroke;
}

interface Annotation {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly xref?: string;
  readonly yref?: string;
  readonly xanchor?: string;
  readonly yanchor?: string;
  readonly font?: { readonly size?: number; readonly color?: string };
}

interface ChartLayout {
  readonly xaxis: AxisLayout;
  readonly yaxis: AxisLayout;
  readonly shapes?: readonly Shape[];
  readonly annotations?: readonly Annotation[];
  readonly showlegend?: boolean;
}

const FONT_PX = 13;
/** Mean width of a letter of a sans-serif face, in its size; from memory. */
const LETTER = 0.54;
const KEY_PX = 30;
const RIGHT_PX = 12;
/** Where a text of a figure goes on in another line. */
const BREAK = "<br>";

/**
 * Draws a figure of lines, marks and areas as SVG, without a document: the same figure data that the report
 * hands to plotly, for a page that must stay small. It draws scatter traces (lines, marks, areas to the trace
 * before, vertical error bars), straight shapes, texts and a legend above, on linear and logarithmic axes.
 *
 * @throws RangeError for a trace of another kind: nothing is left out in silence.
 *
 * Source: own.
 */
export function chartSvg(figure: Figure, options: ChartOptions): string {
  const { locale, widthPx: width, idPrefix, paint = (color) => color } = options;
  const said = renderAll(figure, locale);
  const traces = said.data as readonly Trace[];
  const other = traces.find(({ type = "scatter" }) => type !== "scatter");
  if (other) throw new RangeError(`invalid \`type\` of a trace: ${other.type}; expected scatter`);
  const layout = said.layout as ChartLayout;
  const legend = legendOf(layout.showlegend === false ? [] : traces, width);
  const legendPx = legend.rows * legend.rowPx;
  const below = linesOf(layout.xaxis.title?.text ?? "", lettersIn(width - 16));
  const height = options.heightPx + legendPx + (below.length - 1) * FONT_PX;
  const inside = {
    left: 54,
    right: width - RIGHT_PX,
    top: 8 + legendPx,
    bottom: height - 33 - below.length * FONT_PX,
  };
  const narrow = isNarrow(width);
  const x = scaleOf(layout.xaxis, traces, "x", [inside.left, inside.right], narrow ? 5 : 9);
  const y = scaleOf(layout.yaxis, traces, "y", [inside.bottom, inside.top], 7);
  const place = { x, y, inside, paint, idPrefix, narrow };
  const patterns = traces.flatMap((trace, index) =>
    trace.fillpattern?.shape ? [hatch(trace, `${idPrefix}-h${index}`, paint)] : [],
  );
  const parts = [
    gridOf(place, locale),
    `<g clip-path="url(#${idPrefix}-plot)">`,
    ...(layout.shapes ?? []).map((shape) => shapeSvg(shape, place)),
    ...traces.map((trace, index) => areaSvg(trace, traces[index - 1], index, place)),
    ...traces.map((trace) => lineSvg(trace, place)),
    ...traces.map((trace) => marksSvg(trace, place)),
    "</g>",
    ...(layout.annotations ?? []).map((note) => noteSvg(note, place)),
    ...axisTitles(below, layout.yaxis.title?.text ?? "", height, place),
    ...legend.keys.map((key) => keySvg(key, legend, place)),
  ];
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${idPrefix}-t ${idPrefix}-d" font-family="'Source Sans 3','Segoe UI',system-ui,'Helvetica Neue',Arial,sans-serif" font-size="${FONT_PX}" fill="${paint(PALETTE.manganese)}"><title id="${idPrefix}-t">${escapeHtml(said.title)}</title><desc id="${idPrefix}-d">${escapeHtml(said.altText)}</desc><defs><clipPath id="${idPrefix}-plot"><rect x="${inside.left}" y="${inside.top}" width="${inside.right - inside.left}" height="${inside.bottom - inside.top}"/></clipPath>${patterns.join("")}</defs><g aria-hidden="true">${parts.join("")}</g></svg>`;
}

/** As wide as a phone. */
function isNarrow(width: number): boolean {
  return width < 480;
}

interface Tick {
  readonly value: number;
  readonly text?: string;
}

interface Scale {
  /** Pixel of a value. */
  readonly at: (value: number) => number;
  readonly log: boolean;
  readonly ticks: readonly Tick[];
  readonly minor: readonly number[];
}

interface Place {
  readonly x: Scale;
  readonly y: Scale;
  /** Of the plot. */
  readonly inside: Readonly<Record<"left" | "right" | "top" | "bottom", number>>;
  readonly paint: (color: string) => string;
  readonly idPrefix: string;
  readonly narrow: boolean;
}

function scaleOf(
  axis: AxisLayout,
  traces: readonly Trace[],
  side: "x" | "y",
  [from, to]: readonly [number, number],
  most: number,
): Scale {
  const log = axis.type === "log";
  const turn = log ? Math.log10 : (value: number) => value;
  const values = traces.flatMap((trace) => [...trace[side]]).filter(Number.isFinite);
  const [low, high] = axis.range ?? autoRange(values.map(turn), axis.rangemode === "tozero");
  const at = (value: number) => from + ((turn(value) - low) / (high - low)) * (to - from);
  const tickvals = axis.tickvals ?? niceTicks(low, high, most);
  const ticks = tickvals.map((value, index) => ({ value, text: axis.ticktext?.[index] }));
  const minor = axis.minor?.tickvals ?? [];
  return { at, log, ticks: side === "x" ? spaced(ticks, at) : ticks, minor };
}

/** Ticks side by side whose texts do not run into each other. */
function spaced(ticks: readonly Tick[], at: (value: number) => number): Tick[] {
  const kept: Tick[] = [];
  let free = Number.NEGATIVE_INFINITY;
  for (const tick of ticks) {
    const half = ((tick.text ?? plainNumber(tick.value)).length * LETTER * FONT_PX) / 2;
    const middle = at(tick.value);
    if (middle - half < free) continue;
    kept.push(tick);
    free = middle + half + 5;
  }
  return kept;
}

function autoRange(values: readonly number[], tozero: boolean): readonly [number, number] {
  const low = tozero ? Math.min(0, ...values) : Math.min(...values);
  const high = Math.max(...values);
  const room = (high > low ? high - low : Math.abs(high) || 1) * 0.05;
  return [tozero && low === 0 ? 0 : low - room, high + room];
}

/** Multiples of 1, 2 or 5 times a power of ten. */
function niceTicks(low: number, high: number, most: number): number[] {
  const rough = (high - low) / most;
  const decade = powerOf(10, Math.floor(Math.log10(rough)));
  const step = [1, 2, 5, 10].map((times) => times * decade).find((size) => size >= rough)!;
  const first = Math.ceil(low / step - 1e-9);
  const count = Math.floor(high / step + 1e-9) - first;
  return Array.from({ length: count + 1 }, (_, index) =>
    Number(((first + index) * step).toPrecision(12)),
  );
}

function plainNumber(value: number): string {
  return String(Number(value.toPrecision(6)));
}

function px(value: number): string {
  return value.toFixed(1);
}

/** Lines and numbers of the axes. */
function gridOf({ x, y, inside, paint, narrow }: Place, locale: Locale): string {
  const { left, right, top, bottom } = inside;
  const down = (value: number) => `M${px(x.at(value))} ${px(top)}V${px(bottom)}`;
  const across = (value: number) => `M${px(left)} ${px(y.at(value))}H${px(right)}`;
  const path = (lines: readonly string[], color: string) =>
    `<path d="${lines.join("")}" stroke="${paint(color)}" fill="none"/>`;
  const marked = [
    ...x.ticks.map(({ value }) => down(value)),
    ...y.ticks.map(({ value }) => across(value)),
  ];
  const fontPx = narrow ? FONT_PX - 1 : FONT_PX;
  const number = ({ value, text }: Tick, at: readonly [number, number], anchor: string) => {
    const shown = text ?? withDecimalSign(plainNumber(value), locale);
    return `<text x="${px(at[0])}" y="${px(at[1])}" text-anchor="${anchor}" font-size="${fontPx}">${escapeHtml(shown)}</text>`;
  };
  return [
    path(x.minor.map(down), GRID.fine),
    path(marked, GRID.line),
    path([`M${px(left)} ${px(top)}V${px(bottom)}H${px(right)}`], PALETTE.manganese),
    ...x.ticks.map((tick) => number(tick, [x.at(tick.value), bottom + 18], "middle")),
    ...y.ticks.map((tick) => number(tick, [left - 8, y.at(tick.value) + 4.5], "end")),
  ].join("");
}

/** The titles of the axes: the one below in lines, the upright one beside the plot and never above it. */
function axisTitles(
  below: readonly string[],
  upright: string,
  height: number,
  { inside, paint }: Place,
): string[] {
  const { left, right, top, bottom } = inside;
  const color = paint(QUIET.letters);
  // In a low plot the upright title goes on beside the axis below it, in letters that can still be read.
  const roomPx = height - top - 4;
  const size = Math.max(10, Math.min(FONT_PX, roomPx / (LETTER * Math.max(1, upright.length))));
  const fits = LETTER * size * upright.length <= bottom - top;
  const [at, anchor] = fits ? [(top + bottom) / 2, "middle"] : [top, "end"];
  const first = height - 8 - (below.length - 1) * FONT_PX;
  const wider = below.some(({ length }) => length > lettersIn(right - left));
  const middle = wider ? (right + RIGHT_PX) / 2 : (left + right) / 2;
  return [
    ...below.map(
      (line, index) =>
        `<text x="${px(middle)}" y="${px(first + index * FONT_PX)}" text-anchor="middle" fill="${color}">${escapeHtml(line)}</text>`,
    ),
    `<text transform="translate(14 ${px(at)}) rotate(-90)" text-anchor="${anchor}" font-size="${size.toFixed(1)}" fill="${color}">${escapeHtml(upright)}</text>`,
  ];
}

/** How many letters go into a width. */
function lettersIn(widthPx: number, fontPx = FONT_PX): number {
  return Math.floor(widthPx / (LETTER * fontPx));
}

/** A text in lines of at most so many letters, broken where the figure breaks it and between words. */
function linesOf(text: string, most: number): string[] {
  return text.split(BREAK).flatMap((part) => {
    const lines: string[] = [];
    for (const word of part.split(" ")) {
      const longer = `${lines.at(-1)} ${word}`;
      if (lines.length > 0 && longer.length <= most) lines[lines.length - 1] = longer;
      else lines.push(word);
    }
    return lines;
  });
}

/** Dashes in multiples of the line's width, as plotly names them. */
const DASHES: Readonly<Record<string, readonly number[]>> = {
  dash: [6, 4],
  dot: [1.5, 3],
  dashdot: [7, 3, 1.5, 3],
  longdash: [11, 4],
  longdashdot: [11, 3, 1.5, 3],
};

/** The dashes of a line as SVG has them; empty for a solid one. */
export function dashArray(dash = "solid"): string {
  return (DASHES[dash] ?? []).join(" ");
}

function dashes(dash: string | undefined): string {
  const lengths = dashArray(dash);
  return lengths === "" ? "" : ` stroke-dasharray="${lengths}"`;
}

function pathOf({ x, y }: Trace, place: Place): string {
  return x
    .flatMap((value, index) => {
      const at = [place.x.at(value), place.y.at(y[index])];
      return at.every(Number.isFinite) ? [`${px(at[0])} ${px(at[1])}`] : [];
    })
    .join("L");
}

/** The area between a trace and the one before it. */
function areaSvg(trace: Trace, before: Trace | undefined, index: number, place: Place): string {
  if (trace.fill !== "tonexty" || !before) return "";
  const back: Trace = { ...before, x: [...before.x].reverse(), y: [...before.y].reverse() };
  const d = `M${pathOf(trace, place)}L${pathOf(back, place)}Z`;
  const hatched = trace.fillpattern?.shape
    ? `<path d="${d}" fill="url(#${place.idPrefix}-h${index})"/>`
    : "";
  return `<path d="${d}" ${filled(trace.fillcolor ?? PALETTE.ochre, place.paint)}/>${hatched}`;
}

/** `rgba(…)` as a paint and an opacity, so that a page may change the paint by light and dark. */
function filled(color: string, paint: (color: string) => string): string {
  const parts = /^rgba\((\d+),(\d+),(\d+),([\d.]+)\)$/.exec(color);
  if (!parts) return `fill="${paint(color)}"`;
  const hex = parts.slice(1, 4).map((part) => Number(part).toString(16).padStart(2, "0"));
  return `fill="${paint(`#${hex.join("")}`)}" fill-opacity="${parts[4]}"`;
}

function hatch(trace: Trace, id: string, paint: (color: string) => string): string {
  const { shape, fgcolor } = trace.fillpattern!;
  const turn = { "/": 45, "\\": -45, ".": 0 }[shape] ?? 0;
  const colored = filled(fgcolor, paint);
  const mark =
    shape === "."
      ? `<circle cx="4" cy="4" r="1" ${colored}/>`
      : `<rect width="1.2" height="9" ${colored}/>`;
  return `<pattern id="${id}" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(${turn})">${mark}</pattern>`;
}

function lineSvg(trace: Trace, place: Place): string {
  const { mode = "lines", line = {} } = trace;
  if (!mode.includes("lines") || line.width === 0) return "";
  const d = pathOf(trace, place);
  return `<path d="M${d}" fill="none" stroke="${place.paint(line.color ?? PALETTE.umber)}" stroke-width="${line.width ?? 2}" stroke-linejoin="round"${dashes(line.dash)}/>`;
}

function marksSvg(trace: Trace, place: Place): string {
  const { mode = "lines", marker = {}, error_y: bars } = trace;
  const { color = PALETTE.umber, symbol = "circle", size = 6 } = marker;
  const at = (index: number) => [place.x.at(trace.x[index]), place.y.at(trace.y[index])] as const;
  const indexes = trace.x
    .map((_, index) => index)
    .filter((index) => at(index).every(Number.isFinite));
  const errors = (bars?.array ?? []).map((half, index) => {
    const [cx] = at(index);
    const ends = [trace.y[index] - half, trace.y[index] + half].map((value) => place.y.at(value));
    return `<path d="M${px(cx)} ${px(ends[0])}V${px(ends[1])}M${px(cx - 5)} ${px(ends[0])}h10M${px(cx - 5)} ${px(ends[1])}h10" stroke="${place.paint(bars?.color ?? color)}" stroke-width="2" fill="none"/>`;
  });
  if (!mode.includes("markers")) return errors.join("");
  const ink = place.paint(color);
  return `${errors.join("")}<path d="${indexes.map((index) => markPath(symbol, at(index), size / 2)).join("")}" ${symbol.includes("open") || symbol === "x" || symbol === "cross" ? `fill="none" stroke="${ink}" stroke-width="1.6"` : `fill="${ink}"`}/>`;
}

/** Outline of a mark about its middle. */
export function markPath(symbol: string, [cx, cy]: readonly [number, number], r: number): string {
  const [shape] = symbol.split("-open");
  const m = (dx: number, dy: number) => `${px(cx + dx)} ${px(cy + dy)}`;
  switch (shape) {
    case "square":
      return `M${m(-r, -r)}h${2 * r}v${2 * r}h${-2 * r}z`;
    case "diamond":
      return `M${m(0, -1.3 * r)}L${m(1.3 * r, 0)}L${m(0, 1.3 * r)}L${m(-1.3 * r, 0)}z`;
    case "triangle-up":
      return `M${m(0, -1.2 * r)}L${m(1.2 * r, r)}L${m(-1.2 * r, r)}z`;
    case "cross":
      return `M${m(-1.3 * r, 0)}L${m(1.3 * r, 0)}M${m(0, -1.3 * r)}L${m(0, 1.3 * r)}`;
    case "x":
    case "x-thin":
      return `M${m(-r, -r)}L${m(r, r)}M${m(-r, r)}L${m(r, -r)}`;
    default:
      return `M${m(-r, 0)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
  }
}

/** Pixel of a coordinate, which may be a part of the plot's width or height. */
function spot(value: number, ref: string | undefined, side: "x" | "y", place: Place): number {
  const { left, right, top, bottom } = place.inside;
  if (ref === "paper") {
    return side === "x" ? left + value * (right - left) : bottom - value * (bottom - top);
  }
  return place[side].at(value);
}

function shapeSvg({ xref, yref, x0, x1, y0, y1, line }: Shape, place: Place): string {
  const end = (x: number, y: number) =>
    `${px(spot(x, xref, "x", place))} ${px(spot(y, yref, "y", place))}`;
  const d = `${end(x0, y0)}L${end(x1, y1)}`;
  return `<path d="M${d}" stroke="${place.paint(line.color ?? QUIET.faint)}" stroke-width="${line.width ?? 1}" fill="none"${dashes(line.dash)}/>`;
}

const ANCHORS: Readonly<Record<string, string>> = { left: "start", right: "end" };

function noteSvg(note: Annotation, place: Place): string {
  const { text, xref, yref, xanchor = "center", yanchor = "middle", font = {} } = note;
  // On a logarithmic axis a text's place is given as a power of ten.
  const value = place.x.log && xref !== "paper" ? powerOf(10, note.x) : note.x;
  const { left, right } = place.inside;
  const most = place.narrow ? FONT_PX - 2 : FONT_PX;
  const size = Math.min(font.size ?? FONT_PX, most);
  // A text about a place near an end of the axis keeps inside the plot.
  const wide = Math.max(...text.split(BREAK).map(({ length }) => length)) * LETTER * size;
  const half = xanchor === "center" ? wide / 2 + 3 : 0;
  const x = Math.min(Math.max(spot(value, xref, "x", place), left + half), right - half);
  const y = spot(note.y, yref, "y", place);
  const drop = { top: size, middle: size / 3, bottom: -5 }[yanchor] ?? 0;
  const lines = text.split(BREAK).map((line, index) => {
    const shift = index === 0 ? "" : ` dy="${size}"`;
    return `<tspan x="${px(x)}"${shift}>${escapeHtml(line)}</tspan>`;
  });
  return `<text y="${px(y + drop)}" text-anchor="${ANCHORS[xanchor] ?? "middle"}" font-size="${size}" fill="${place.paint(font.color ?? PALETTE.manganese)}">${lines.join("")}</text>`;
}

interface LegendKey {
  readonly trace: Trace;
  readonly lines: readonly string[];
  readonly x: number;
  /** From the top, counted from 0. */
  readonly row: number;
}

/**
 * The names of the traces side by side as far as the chart is wide; a long one takes several rows, and on a
 * phone all are smaller.
 */
function legendOf(traces: readonly Trace[], width: number) {
  const [fontPx, rowPx] = isNarrow(width) ? [FONT_PX - 1, 15] : [FONT_PX, 20];
  const keys: LegendKey[] = [];
  let [x, row, rows] = [8, 0, 0];
  for (const trace of traces) {
    if (!trace.name || trace.showlegend === false) continue;
    const lines = linesOf(trace.name, lettersIn(width - KEY_PX - 20, fontPx));
    const longest = Math.max(...lines.map(({ length }) => length));
    const wide = KEY_PX + longest * LETTER * fontPx + 18;
    if (x + wide > width && x > 8) [x, row] = [8, rows];
    keys.push({ trace, lines, x, row });
    rows = Math.max(rows, row + lines.length);
    x += wide;
  }
  return { keys, rows, rowPx, fontPx };
}

function keySvg(
  { trace, lines, x, row }: LegendKey,
  { rowPx, fontPx }: ReturnType<typeof legendOf>,
  place: Place,
): string {
  const y = 6 + (row + 0.5) * rowPx;
  const onKey = { ...place, x: { ...place.x, at: () => x + 12 }, y: { ...place.y, at: () => y } };
  const { mode = "lines", line = {}, marker = {} } = trace;
  const area =
    trace.fill === "tonexty"
      ? `<rect x="${px(x)}" y="${px(y - 6)}" width="24" height="12" ${filled(trace.fillcolor ?? PALETTE.ochre, place.paint)}/>`
      : "";
  const stroke =
    mode.includes("lines") && line.width !== 0
      ? `<path d="M${px(x)} ${px(y)}h24" stroke="${place.paint(line.color ?? PALETTE.umber)}" stroke-width="${line.width ?? 2}"${dashes(line.dash)}/>`
      : "";
  const mark = mode.includes("markers")
    ? marksSvg({ ...trace, error_y: undefined, x: [0], y: [0], marker }, onKey)
    : "";
  const words = lines.map(
    (line, index) =>
      `<tspan x="${px(x + KEY_PX)}" y="${px(y + 4.5 + index * rowPx)}">${escapeHtml(line)}</tspan>`,
  );
  return `${area}${stroke}${mark}<text font-size="${fontPx}">${words.join(" ")}</text>`;
}
