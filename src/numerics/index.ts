/** Least squares, quadratic programmes, distributions, seeded random numbers. @module */
export {
  type ConstrainedFit,
  type ConstrainedProblem,
  constrainedLeastSquares,
} from "./constrainedLeastSquares.js";
export { fCdf, normalCdf, normalQuantile, tCdf, tQuantile } from "./distributions.js";
export { findRoot } from "./findRoot.js";
export { type LeastSquaresFit, leastSquares } from "./leastSquares.js";
export {
  levenbergMarquardt,
  type NonlinearFit,
  type NonlinearProblem,
} from "./levenbergMarquardt.js";
export { noncentralTCdf, noncentralTQuantile, toleranceFactor } from "./noncentralT.js";
export { createRandom, type Random } from "./random.js";
