/** What is wrong or doubtful, as data. @module */
export {
  type Finding,
  type FindingPlace,
  type FindingWords,
  finding,
  hasErrors,
  limitFindings,
  type Severity,
} from "./finding.js";
export { countFindings, formatFindings } from "./format.js";
