/** The mix page: its state, what it works out, and its file. @module */
export {
  type Bench,
  type BenchAction,
  type BenchMix,
  changeBench,
  isSameMix,
  newBench,
  startingMix,
  withShare,
} from "./bench.js";
export { type ChartOptions, chartSvg } from "./chartSvg.js";
export {
  classFigure,
  classTables,
  type GroupResult,
  type GroupSheets,
  groupResults,
} from "./classGroups.js";
export { type BenchTrace, benchOfLink, linkOf, mixOfLink, traceOf } from "./link.js";
export { type PageHtmlOptions, pageHtml } from "./pageHtml.js";
export { type Solved, solveBench, type Wish } from "./solve.js";
export { type PlacedSheet, placeSheet, type StudyFiles, withMix } from "./studyFiles.js";
export {
  type BenchStrength,
  type BlendEstimate,
  type OpenStudy,
  openOnBench,
  type TunedBlend,
  type TunedMix,
  tuneBlend,
  tuneMix,
} from "./tune.js";
export {
  csvOfTyped,
  rowsOfTyped,
  TYPED_FORMS,
  type TypedForm,
  type TypedKind,
} from "./typedSheet.js";
