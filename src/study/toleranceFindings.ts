import type { Finding } from "../lab/finding.js";
import { formatQuantity } from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { moistureWindow } from "../soil/moistureWindow.js";
import { say } from "../words/say.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import { type SpecifiedLine, specifiedMix } from "./specifiedMix.js";
import type { StudyResult } from "./studyResult.js";

/** A rounding's worth is no breach. */
const SLACK = 1e-9;

/**
 * Holds the entered tolerances against what was tested: a mix that keeps to them must not fall below the
 * least cement, leave the moisture window of the compaction test, or be lighter than every block.
 *
 * @returns none where the study enters no tolerances or gives no mix.
 */
export function toleranceFindings(
  result: Pick<StudyResult, "config" | "mix" | "compaction" | "strength">,
): Finding[] {
  const { config, mix, strength, compaction } = result;
  const { tolerances } = config;
  if (!tolerances || !mix) return [];
  const lines = specifiedMix(result);
  const line = (kind: SpecifiedLine["kind"]) => lines.find((one) => one.kind === kind);
  const findings: Finding[] = [];
  const add = (key: string, code: string, words: readonly [string, string, string]) => {
    const [message, expected, wayOut] = words;
    findings.push({
      ...{ severity: "warning", code, file: STUDY_FILE, column: `tolerances.${key}` },
      ...{ message, expected, wayOut },
    });
  };
  const percent = (value: number) => `${formatFixed(value, 2)} %`;
  const density = (value: number) => formatQuantity(value, "density", config.units, 4);

  const cement = line("cement")?.low;
  const least = strength.leastCement.cementPct;
  if (cement !== undefined && least !== null && cement < least - SLACK) {
    add("cement", "tolerance-below-least-cement", [
      say`With its tolerance the cement may fall to ${percent(cement)}, below the ${percent(least)} at which the blocks meet the requirement.`,
      say`a cement content that meets the requirement at the low end of its tolerance`,
      say`Narrow the tolerance, or specify more cement: strength.round-up-to rounds to larger steps.`,
    ]);
  }
  const window = compaction && moistureWindow(compaction);
  const moisture = line("moisture");
  if (
    window &&
    tolerances.moistureBelowPct !== undefined &&
    moisture?.low !== undefined &&
    moisture.high !== undefined &&
    (moisture.low < window.driestPct - SLACK || moisture.high > window.wettestPct + SLACK)
  ) {
    add("moisture", "tolerance-outside-window", [
      say`The moisture may go from ${percent(moisture.low)} to ${percent(moisture.high)}; the compaction test keeps ${window.relativePct} % of its greatest dry density from ${percent(window.driestPct)} to ${percent(window.wettestPct)} only.`,
      say`a tolerance inside the window of the compaction test`,
      say`Narrow the tolerance, or test compaction at more moistures where the window ends with the test.`,
    ]);
  }
  const lightest = line("density")?.low;
  if (tolerances.densityPct !== undefined && lightest !== undefined) {
    const { lowKgM3, highKgM3 } = mix.density;
    const weighed = lowKgM3 < highKgM3;
    if (weighed && lightest < lowKgM3 - SLACK) {
      add("density", "tolerance-below-blocks", [
        say`A wall of ${density(lightest)} would be accepted; the lightest block that the strengths rest on has ${density(lowKgM3)}.`,
        say`a least density that was tested for strength`,
        say`Raise the least density, or crush blocks that are rammed less.`,
      ]);
    }
    if (weighed && lightest > highKgM3 + SLACK) {
      add("density", "tolerance-above-blocks", [
        say`The least density asked for, ${density(lightest)}, is more than that of any block, ${density(highKgM3)} at most.`,
        say`a least density that the blocks reached`,
        say`Lower it, or see why the blocks are lighter than the compaction test.`,
      ]);
    }
  }
  if (tolerances.densityPct !== undefined && !compaction?.peak) {
    add("density", "tolerance-without-maximum", [
      say`A percentage of the maximum dry density is asked for, and no compaction test gives one.`,
      say`a compaction sheet whose points show a top`,
      say`Add the compaction sheet, or leave the key out.`,
    ]);
  }
  if (tolerances.liftM !== undefined && tolerances.liftM >= config.element.compactedLiftM) {
    add("lift", "tolerance-as-large-as-lift", [
      say`The tolerance of a lift is as large as the lift itself.`,
      say`less than ${formatQuantity(1000 * config.element.compactedLiftM, "depth", config.units)}`,
      say`Correct the value in study.yaml.`,
    ]);
  }
  const missing = lines.filter(({ basis }) => basis === "not stated");
  if (missing.length > 0) {
    add("density", "tolerance-not-stated", [
      say`No least density is stated, and no block was weighed that would give one.`,
      say`tolerances.density, percent of the maximum dry density`,
      say`Let the responsible person state it.`,
    ]);
  }
  return findings;
}
