import type { GradingCurve } from "../../grading/curve.js";
import type { GradingFit } from "../../grading/models/fit.js";
import { GRADING_MODELS } from "../../grading/models/gradingModels.js";
import type { ChosenModel } from "../../grading/models/modelChoice.js";
import { powerOf } from "../../numerics/powerOf.js";
import { formatFixed, formatNumber } from "../../quantities/format.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type Figure, figureOf } from "../figure.js";
import { baseLayout, PALETTE, seriesStyle } from "../style.js";
import type { ChartBand } from "./band.js";
import { gradingChart, sizeAxis } from "./gradingChart.js";

/** Points of the drawn model. */
const STEPS = 80;

/**
 * A measured curve with the best of its models as a smooth line and, where given, a band behind them:
 * the uncertainty of the readings (`uncertaintyBand`) or of the fitted model (`modelBand`).
 */
export function modelChart(
  title: Text,
  curve: GradingCurve,
  models: ChosenModel,
  bands: readonly ChartBand[] = [],
): Figure {
  const { points } = curve;
  const [first, last] = [points[0].sizeMm, points[points.length - 1].sizeMm];
  const best = models.ranking[0]?.fit;
  if (!best) return gradingChart(title, [{ name: say`measured`, curve }], bands);
  const parameters = best.parameters.map(({ value }) => value);
  const smooth = Array.from({ length: STEPS + 1 }, (_, step) => {
    const sizeMm = step === STEPS ? last : first * powerOf(last / first, step / STEPS);
    return {
      sizeMm,
      passingPct: GRADING_MODELS[best.model].evaluate(sizeMm, parameters),
      origin: "sieve" as const,
    };
  });
  return gradingChart(
    title,
    [
      { name: say`measured`, curve },
      { name: best.title, curve: { points: smooth }, smooth: true },
    ],
    bands,
  );
}

/**
 * What the models leave of a grading curve: measured less fitted, in percentage points, on the
 * logarithm of size. Residuals that come in runs of one sign say that the model has the wrong shape.
 *
 * @throws RangeError without a fit.
 *
 * @example
 * const curve = { points: [0.063, 0.25, 1, 4, 16].map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 16) ** 0.3, origin: "sieve" })) };
 * gradingResidualsChart("Residuals", [fitGrading(curve, "power")]).data.length // => 2
 */
export function gradingResidualsChart(title: Text, fits: readonly GradingFit[]): Figure {
  if (fits.length === 0) throw new RangeError("invalid `fits`: none; expected at least one");
  const sizes = fits.flatMap(({ fitted }) => fitted.map(({ sizeMm }) => sizeMm));
  const [minMm, maxMm] = [0.75 * Math.min(...sizes), 1.35 * Math.max(...sizes)];
  const residuals = fits.flatMap(residualsOf);
  const reach = 1.15 * Math.max(0.5, ...residuals.map(Math.abs));
  return figureOf(
    title,
    say`${title}. Measured less fitted passing against grain size on a logarithmic axis. ${joinTexts(fits.map(describe), " ")}`,
    [
      {
        type: "scatter",
        mode: "lines",
        x: [minMm, maxMm],
        y: [0, 0],
        line: { color: PALETTE.manganese, width: 1 },
        showlegend: false,
        hoverinfo: "skip",
      },
      ...fits.map((fit, index) => {
        const { color, dash, symbol } = seriesStyle(index);
        return {
          type: "scatter",
          mode: "lines+markers",
          name: fit.title,
          x: fit.fitted.map(({ sizeMm }) => sizeMm),
          y: residualsOf(fit),
          line: { color, dash, width: 1.5 },
          marker: { color, symbol, size: 7 },
        };
      }),
    ],
    baseLayout(sizeAxis(minMm, maxMm), {
      title: say`Measured − fitted (% passing)`,
      range: [-reach, reach],
    }),
  );
}

function residualsOf({ fitted }: GradingFit): number[] {
  return fitted.map(({ measuredPct, fittedPct }) => measuredPct - fittedPct);
}

function describe(fit: GradingFit): Text {
  const residuals = residualsOf(fit);
  const worst = residuals.reduce(
    (best, value, index) => (Math.abs(value) > Math.abs(residuals[best]) ? index : best),
    0,
  );
  const changes = residuals.filter(
    (value, index) => index > 0 && Math.sign(value) !== Math.sign(residuals[index - 1]),
  ).length;
  return say`${fit.title}: ${residuals.length} points, largest residual ${formatFixed(residuals[worst], 1)} points at ${formatNumber(fit.fitted[worst].sizeMm, 2)} mm, ${changes} changes of sign.`;
}
