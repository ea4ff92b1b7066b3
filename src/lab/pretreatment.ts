import { type Finding, finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import { type CellRule, numberRule, type SheetValues, textRule } from "./sheet/layout.js";

/** What was done to the soil before it was dispersed. */
export interface Pretreatment {
  /** In the laboratory's words, for example organic matter removed with hydrogen peroxide. */
  readonly text: string;
  /** Of the dry mass before the treatment. */
  readonly lossPct?: number;
}

/** Lines of a sedimentation sheet about what was done before dispersing. */
export const PRETREATMENT_FACTS: readonly CellRule[] = [
  textRule("pretreatment", "pretreatment"),
  numberRule("pretreatmentLossPct", "pretreatment loss", "ratio", { min: 0, max: 100 }),
];

/** How people write that nothing was done. */
const NONE =
  /^(none|no|nothing|not treated|untreated|without|n\/?a|nil|0|[-–—]|ninguno|ninguna|nada|sin)$/i;

/** The pretreatment that a sheet tells of; a finding where it gives a loss and no treatment. */
export function readPretreatment({ file, facts, factRows }: SheetValues): {
  readonly pretreatment?: Pretreatment;
  readonly findings: readonly Finding[];
} {
  const text = typeof facts.pretreatment === "string" ? facts.pretreatment.trim() : "";
  const lossPct = facts.pretreatmentLossPct as number | undefined;
  const none = NONE.test(text);
  if (none && !lossPct) return { findings: [] };
  if (text !== "" && !none) {
    return { pretreatment: lossPct === undefined ? { text } : { text, lossPct }, findings: [] };
  }
  const row = factRows.pretreatmentLossPct ?? factRows.pretreatment;
  if (row === undefined) return { findings: [] };
  const found = finding(
    { file, row, column: "pretreatment", value: text },
    "error",
    "pretreatment-unnamed",
    {
      message: none
        ? say`The sheet says that the soil was not treated, and gives a loss.`
        : say`The sheet does not say how the soil was treated before it was dispersed.`,
      expected: say`“pretreatment” with what was done, for example organic matter removed with hydrogen peroxide`,
      remedy: say`Write the treatment, or take both lines out where there was none.`,
    },
  );
  return { findings: [found] };
}
