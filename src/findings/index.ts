/** What is wrong or doubtful, as data. @module */
export {
  type Finding,
  type FindingPlace,
  type FindingWords,
  finding,
  findingIf,
  hasErrors,
  limitFindings,
  type Severity,
} from "./finding.js";
export { countFindings, formatFindings } from "./format.js";
