import { type BoundarySystem, SIZE_BOUNDARIES } from "../grading/sizeBoundaries.js";
import { formatPlain } from "../quantities/formatNumber.js";
import { phrase, say, sayOf } from "../words/say.js";
import type { AxisOptions } from "./baseLayout.js";
import { QUIET } from "./quietColours.js";

/** Which way a grading chart runs from left to right. */
export type SizeDirection = "fine-to-coarse" | "coarse-to-fine";

/** Ticks stand at the fraction boundaries of the system, and at rounder sizes between them. */
const ISO_TICKS = [0.002, 0.0063, 0.02, 0.063, 0.2, 0.63, 2, 6.3, 20, 63];
const TICKS: Readonly<Record<BoundarySystem, readonly number[]>> = {
  iso14688: ISO_TICKS,
  bs5930: ISO_TICKS,
  astm: [0.002, 0.005, 0.02, 0.075, 0.2, 0.425, 2, 4.75, 19, 75],
  usda: [0.002, 0.005, 0.02, 0.05, 0.25, 0.5, 2, 5, 20, 75],
};

/**
 * A logarithmic axis of grain size with ticks at the limits of the grain-size classes.
 *
 * Class limits: ISO 14688-1 (0.002, 0.0063, 0.02, 0.063 … 63 mm), from memory; the boundaries of
 * fractions as in `SIZE_BOUNDARIES`; sieves of ASTM between them, from memory.
 */
export function sizeAxis(
  smallestMm: number,
  largestMm: number,
  system: BoundarySystem = "iso14688",
  direction: SizeDirection = "fine-to-coarse",
): AxisOptions {
  const range = [Math.log10(smallestMm), Math.log10(largestMm)];
  const ticks = TICKS[system].filter(
    (tick) => tick >= smallestMm * 0.999 && tick <= largestMm * 1.001,
  );
  return {
    title: say`Grain size (mm)`,
    type: "log",
    range: direction === "fine-to-coarse" ? range : range.reverse(),
    tickmode: "array",
    tickvals: ticks,
    ticktext: ticks.map((tick) => formatPlain(tick, 3)),
    tickangle: 0,
    tickfont: { size: 12 },
  };
}

/** Names of the fractions along the top of a grading chart, and light lines between them. */
export function sizeClassMarks(
  smallestMm: number,
  largestMm: number,
  system: BoundarySystem = "iso14688",
): { annotations: object[]; shapes: object[] } {
  const { clayMm, siltMm, sandMm, gravelMm } = SIZE_BOUNDARIES[system];
  const inside = [
    { name: phrase`clay`, fromMm: 0, toMm: clayMm },
    { name: phrase`silt`, fromMm: clayMm, toMm: siltMm },
    { name: phrase`sand`, fromMm: siltMm, toMm: sandMm },
    { name: phrase`gravel`, fromMm: sandMm, toMm: gravelMm },
    { name: phrase`cobbles`, fromMm: gravelMm, toMm: Infinity },
  ]
    .map(({ name, fromMm, toMm }) => ({
      name,
      from: Math.max(fromMm, smallestMm),
      to: Math.min(toMm, largestMm),
    }))
    // A name needs about a quarter of a decade; a fraction that the chart does not reach has none.
    .filter(({ from, to }) => Math.log10(to / from) > 0.25);
  return {
    annotations: inside.map(({ name, from, to }) => ({
      text: sayOf(name),
      xref: "x",
      yref: "paper",
      x: (Math.log10(from) + Math.log10(to)) / 2,
      y: 1,
      yanchor: "bottom",
      showarrow: false,
      font: { size: 12, color: QUIET.letters },
    })),
    shapes: inside.slice(1).map(({ from }) => ({
      type: "line",
      xref: "x",
      yref: "paper",
      x0: from,
      x1: from,
      y0: 0,
      y1: 1,
      layer: "below",
      line: { color: QUIET.faint, width: 1 },
    })),
  };
}
