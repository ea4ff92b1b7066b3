import type { BlendFitPoint } from "../blend/blendMaterials.js";
import type { GradingCurve } from "../grading/gradingCurve.js";
import type { Figure } from "./figure.js";
import { type ChartBand, gradingChart } from "./gradingChart.js";

/** The blended curve against its target and, where given, a recommended band. */
export function blendChart(
  title: string,
  blended: GradingCurve,
  target: readonly BlendFitPoint[],
  topSizeMm: number,
  band?: ChartBand,
): Figure {
  const targetCurve: GradingCurve = {
    points: [
      ...target.map(({ sizeMm, targetPct }) => ({
        sizeMm,
        passingPct: targetPct,
        origin: "sieve" as const,
      })),
      { sizeMm: topSizeMm, passingPct: 100, origin: "sieve" },
    ],
  };
  return gradingChart(
    title,
    [
      { name: "blend", curve: blended },
      { name: "target", curve: targetCurve, smooth: true },
    ],
    band,
  );
}
