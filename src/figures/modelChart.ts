import type { ChosenModel } from "../grading/chosenModel.js";
import type { GradingCurve } from "../grading/gradingCurve.js";
import { GRADING_MODELS } from "../grading/models/gradingModels.js";
import { powerOf } from "../numerics/powerOf.js";
import { say, sayOf } from "../words/say.js";
import type { ChartBand } from "./chartBand.js";
import type { Figure } from "./figure.js";
import { gradingChart } from "./gradingChart.js";

/** Points of the drawn model. */
const STEPS = 80;

/**
 * A measured curve with the best of its models as a smooth line and, where given, a band behind them:
 * the doubt of the readings (`uncertaintyBand`) or of the fitted model (`modelBand`).
 */
export function modelChart(
  title: string,
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
      { name: sayOf(best.title), curve: { points: smooth }, smooth: true },
    ],
    bands,
  );
}
