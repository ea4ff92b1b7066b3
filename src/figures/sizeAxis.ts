import { phrase, say, sayOf } from "../words/say.js";
import type { AxisOptions } from "./baseLayout.js";

const TICKS = [0.001, 0.002, 0.005, 0.01, 0.02, 0.063, 0.2, 0.63, 2, 6.3, 20, 63];

/**
 * A logarithmic axis of grain size with ticks at the limits of the grain-size classes.
 *
 * Class limits: ISO 14688-1 (0.002, 0.0063, 0.02, 0.063 … 63 mm), from memory.
 */
export function sizeAxis(smallestMm: number, largestMm: number): AxisOptions {
  return {
    title: say`Grain size (mm)`,
    type: "log",
    range: [Math.log10(smallestMm), Math.log10(largestMm)],
    tickmode: "array",
    tickvals: TICKS.filter((tick) => tick >= smallestMm * 0.999 && tick <= largestMm * 1.001),
    ticktext: TICKS.filter((tick) => tick >= smallestMm * 0.999 && tick <= largestMm * 1.001).map(
      String,
    ),
  };
}

const CLASSES = [
  { name: phrase`clay`, fromMm: 0.0005, toMm: 0.002 },
  { name: phrase`silt`, fromMm: 0.002, toMm: 0.063 },
  { name: phrase`sand`, fromMm: 0.063, toMm: 2 },
  { name: phrase`gravel`, fromMm: 2, toMm: 63 },
];

/** Names of the grain-size classes along the top of a grading chart, and light lines between them. */
export function sizeClassMarks(
  smallestMm: number,
  largestMm: number,
): { annotations: object[]; shapes: object[] } {
  const inside = CLASSES.map(({ name, fromMm, toMm }) => ({
    name,
    from: Math.max(fromMm, smallestMm),
    to: Math.min(toMm, largestMm),
  })).filter(({ from, to }) => Math.log10(to / from) > 0.25);
  return {
    annotations: inside.map(({ name, from, to }) => ({
      text: sayOf(name),
      xref: "x",
      yref: "paper",
      x: (Math.log10(from) + Math.log10(to)) / 2,
      y: 1,
      yanchor: "bottom",
      showarrow: false,
      font: { size: 12, color: "#6b5d50" },
    })),
    shapes: inside.slice(1).map(({ from }) => ({
      type: "line",
      xref: "x",
      yref: "paper",
      x0: from,
      x1: from,
      y0: 0,
      y1: 1,
      layer: say`below`,
      line: { color: "#b9aa98", width: 1 },
    })),
  };
}
