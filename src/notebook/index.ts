/** Showing results in a notebook; running notebooks. @module */
export {
  KERNEL_NAME,
  type KernelSpec,
  kernelSpec,
  writeKernelSpec,
} from "./kernel/spec.js";
export { toBundle } from "./mimeBundle.js";
export type {
  CellOutput,
  DisplayOutput,
  NotebookCell,
  NotebookFile,
  NotebookText,
  StreamOutput,
} from "./notebookFile.js";
export { asNotebook, notebookText, openNotebook } from "./notebookFile.js";
export type {
  CellFailure,
  CellPlace,
  NotebookProgress,
  NotebookRun,
} from "./notebookRun.js";
export { formatFailure } from "./notebookRun.js";
export {
  INJECTED_TAG,
  injectParameters,
  ParameterError,
  type ParameterValue,
} from "./parameters.js";
export type { Timeouts } from "./runNotebook.js";
export { type RunNotebookOptions, runNotebook } from "./runNotebook.js";
export { type Show, show, showIn } from "./show.js";
