import type { Finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { CellRule, SheetValues } from "./sheet/layout.js";

/** What was done to the soil before it was dispersed. */
export interface Pretreatment {
  /** In the laboratory's words, for example organic matter removed with hydrogen peroxide. */
  readonly text: string;
  /** Of the dry mass before the treatment. */
  readonly lossPct?: number;
}

/** Lines of a sedimentation sheet about what was done before dispersing. */
export const PRETREATMENT_FACTS: readonly CellRule[] = [
  { key: "pretreatment", names: ["pretreatment"], kind: "text" },
  {
    ...{ key: "pretreatmentLossPct", names: ["pretreatment loss"], kind: "number" },
    ...{ dimension: "ratio", min: 0, max: 100 },
  },
];

const EXAMPLE = say`“pretreatment” with what was done, for example organic matter removed with hydrogen peroxide`;

/** The pretreatment that a sheet tells of; a finding where it gives a loss and no treatment. */
export function readPretreatment(
  { file, facts, factRows }: SheetValues,
  findings: Finding[],
): Pretreatment | undefined {
  const text = typeof facts.pretreatment === "string" ? facts.pretreatment.trim() : "";
  const lossPct = facts.pretreatmentLossPct;
  if (text === "") {
    if ("pretreatmentLossPct" in factRows || "pretreatment" in factRows) {
      findings.push({
        severity: "error",
        code: "pretreatment-unnamed",
        file,
        row: factRows.pretreatmentLossPct ?? factRows.pretreatment,
        column: "pretreatment",
        value: text,
        message: say`The sheet does not say how the soil was treated before it was dispersed.`,
        expected: EXAMPLE,
        remedy: say`Write the treatment, or take both lines out where there was none.`,
      });
    }
    return undefined;
  }
  return { text, ...(typeof lossPct === "number" ? { lossPct } : {}) };
}
