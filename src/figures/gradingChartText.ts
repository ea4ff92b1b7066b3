import { type BoundarySystem, SIZE_BOUNDARIES } from "../grading/sizeBoundaries.js";
import { formatNumber } from "../quantities/formatNumber.js";
import { say, sayOf } from "../words/say.js";
import type { CharacteristicMark } from "./characteristicMarks.js";
import type { ChartBand } from "./chartBand.js";
import type { ChartCurve } from "./chartCurve.js";
import type { SizeDirection } from "./sizeAxis.js";

/** The words of a grading chart: its curves, bands and marked sizes in numbers. */
export function gradingChartText(
  title: string,
  curves: readonly ChartCurve[],
  bands: readonly ChartBand[],
  marks: readonly CharacteristicMark[],
  {
    direction,
    boundaries,
  }: { readonly direction: SizeDirection; readonly boundaries: BoundarySystem },
): string {
  const system = sayOf(SIZE_BOUNDARIES[boundaries].name);
  return [
    direction === "fine-to-coarse"
      ? say`${title}. Percent passing against grain size on a logarithmic axis, fine at the left; fractions by ${system}.`
      : say`${title}. Percent passing against grain size on a logarithmic axis, coarse at the left; fractions by ${system}.`,
    ...curves.map(({ name, curve: { points } }) => {
      const at = [points[0], points[Math.floor(points.length / 2)], points[points.length - 1]];
      const reading = at.map(
        ({ sizeMm, passingPct }) =>
          say`${formatNumber(passingPct, 3)} % at ${formatNumber(sizeMm, 2)} mm`,
      );
      const sizes = marks.filter(({ curveName }) => curveName === name).map(({ text }) => text);
      return sizes.length > 0
        ? say`${name}: passing ${reading.join(", ")}; ${sizes.join(", ")}.`
        : say`${name}: passing ${reading.join(", ")}.`;
    }),
    ...bands.map(({ name, aboutCurve, points }) => {
      if (aboutCurve !== undefined) {
        const widest = points.reduce((a, b) =>
          b.highPct - b.lowPct > a.highPct - a.lowPct ? b : a,
        );
        return say`${name}: widest at ${formatNumber(widest.sizeMm, 2)} mm, ${formatNumber(widest.lowPct, 3)} to ${formatNumber(widest.highPct, 3)} %.`;
      }
      const limits = points.map(
        ({ sizeMm, lowPct, highPct }) =>
          say`${formatNumber(lowPct, 3)} to ${formatNumber(highPct, 3)} % at ${formatNumber(sizeMm, 2)} mm`,
      );
      return say`Band (${name}): ${limits.join(", ")}.`;
    }),
  ].join(" ");
}
