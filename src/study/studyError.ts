import type { Finding } from "../lab/finding.js";
import { formatFindings } from "../lab/formatFindings.js";
import { say } from "../words/say.js";

/** A study cannot be computed: the message lists every finding. */
export class StudyError extends Error {
  readonly findings: readonly Finding[];

  constructor(findings: readonly Finding[]) {
    super(say`The study has errors.\n\n${formatFindings(findings)}`);
    this.name = "StudyError";
    this.findings = findings;
  }
}
