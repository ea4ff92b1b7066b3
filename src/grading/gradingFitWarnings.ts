import { say } from "../words/say.js";
import type { PointFit } from "./fitPoints.js";
import type { GradingFitParameter } from "./gradingFit.js";

/** Degrees of freedom below which a residual error is mostly luck; common practice, no source. */
const FEW = 3;

/** When not to trust a fit, in plain sentences. */
export function gradingFitWarnings(
  parameters: readonly GradingFitParameter[],
  { activeBounds, unmoved, message }: PointFit["solution"],
  {
    converged,
    degreesOfFreedom,
  }: { readonly converged: boolean; readonly degreesOfFreedom: number },
): string[] {
  const name = (index: number) => `“${parameters[index].name}”`;
  return [
    ...(converged ? [] : [say`The fit did not come to rest: ${message}`]),
    ...parameters.flatMap((_, index) =>
      activeBounds[index] === 0
        ? []
        : [
            say`${name(index)} sits on its ${activeBounds[index] < 0 ? say`lower` : say`upper`} bound: the points do not fix it, and the other errors hold it for known.`,
          ],
    ),
    ...parameters.flatMap((_, index) =>
      unmoved[index] ? [say`${name(index)} never left its start: its value is the guess.`] : [],
    ),
    ...parameters.flatMap(({ standardError }, index) =>
      standardError === undefined && degreesOfFreedom > 0 && activeBounds[index] === 0
        ? [say`The points do not settle ${name(index)}: no error can be given.`]
        : [],
    ),
    ...(degreesOfFreedom < FEW
      ? [say`Points exceed parameters by only ${degreesOfFreedom}: the errors are hardly known.`]
      : []),
  ];
}
