import type { GradingCurve } from "../grading/gradingCurve.js";
import type { BlendStudy } from "../study/studyResult.js";
import { say } from "../words/say.js";
import type { ChartBand } from "./chartBand.js";
import type { ChartCurve } from "./chartCurve.js";
import type { Figure } from "./figure.js";
import { gradingChart } from "./gradingChart.js";

/**
 * The blended curve against what it was to be (a curve, or a band), and a recommended band and the
 * materials' own curves where given.
 */
export function blendChart(
  title: string,
  blend: Pick<BlendStudy, "curve" | "points" | "target">,
  band?: ChartBand | readonly ChartBand[],
  components: readonly ChartCurve[] = [],
): Figure {
  const { kind, topSizeMm } = blend.target;
  const target: GradingCurve = {
    points: [
      ...blend.points.map(({ sizeMm, targetPct }) => ({
        sizeMm,
        passingPct: targetPct,
        origin: "sieve" as const,
      })),
      ...(topSizeMm === null
        ? []
        : [{ sizeMm: topSizeMm, passingPct: 100, origin: "sieve" as const }]),
    ],
  };
  return gradingChart(
    title,
    [
      { name: say`blend`, curve: blend.curve },
      // Against a band the target is the band itself.
      ...(kind === "band" ? [] : [{ name: say`target`, curve: target, smooth: true }]),
      ...components,
    ],
    band,
  );
}
