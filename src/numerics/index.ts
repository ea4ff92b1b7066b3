/** Least squares, quadratic programmes, distributions, seeded random numbers. @module */
export type { ConstrainedFit, ConstrainedProblem } from "./constrainedLeastSquares.js";
export { constrainedLeastSquares } from "./constrainedLeastSquares.js";
export { fCdf, normalCdf, normalQuantile, tCdf, tQuantile } from "./distributions.js";
export { findRoot } from "./findRoot.js";
export { type LeastSquaresFit, leastSquares } from "./leastSquares.js";
export type { NonlinearFit, NonlinearProblem } from "./levenbergMarquardt.js";
export { levenbergMarquardt } from "./levenbergMarquardt.js";
export { noncentralTCdf, noncentralTQuantile, toleranceFactor } from "./noncentralT.js";
export { createRandom, type Random } from "./random.js";
