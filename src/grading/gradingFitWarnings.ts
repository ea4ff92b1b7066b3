import type { PointFit } from "./fitPoints.js";
import type { GradingModel } from "./models/gradingModel.js";

/** Degrees of freedom below which a residual error is mostly luck; common practice, no source. */
const FEW = 3;

/** When not to trust a fit, in plain sentences. */
export function gradingFitWarnings(
  model: GradingModel,
  { activeBounds, unmoved, status, message }: PointFit["solution"],
  degreesOfFreedom: number,
): string[] {
  const name = (index: number) => `“${model.parameters[index].name}”`;
  return [
    ...(status === "converged" ? [] : [`The fit did not come to rest: ${message}`]),
    ...model.parameters.flatMap((_, index) =>
      activeBounds[index] === 0
        ? []
        : [
            `${name(index)} sits on its ${activeBounds[index] < 0 ? "lower" : "upper"} bound: the points do not fix it, and the other errors hold it for known.`,
          ],
    ),
    ...model.parameters.flatMap((_, index) =>
      unmoved[index] ? [`${name(index)} never left its start: its value is the guess.`] : [],
    ),
    ...(degreesOfFreedom < FEW
      ? [`Only ${degreesOfFreedom} points more than parameters: the errors are hardly known.`]
      : []),
  ];
}
