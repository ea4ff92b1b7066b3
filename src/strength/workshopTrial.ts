import type { Finding } from "../lab/finding.js";
import type { WorkshopTrial } from "../lab/workshopTrial.js";
import { say } from "../words/say.js";

export type { WorkshopTrial } from "../lab/workshopTrial.js";

const MUNSELL =
  /^(N ?\d+(\.\d+)?\/?|\d+(\.\d+)? ?(R|YR|Y|GY|G|BG|B|PB|P|RP) \d+(\.\d+)?\/\d+(\.\d+)?)$/;

/**
 * What is amiss with a log of workshop trials: colours taken before the sample was dry, colours that are
 * none, names that stand twice; and the caution that a small sample says little of strength.
 *
 * Small thin samples feel dry after an hour or so, but colour and strength are judged dry and cured.
 *
 * @param file named in the findings. Source: common practice, no source.
 *
 * @example
 * const trial = { id: "T1", mix: "3 soil : 1 sand", thicknessMm: 12, dryingHours: 1, munsell: "7.5YR 6/4", row: 2 };
 * trialFindings([trial], "trials.csv").map(({ code, severity }) => [code, severity]) // => [["colour-before-dry", "warning"], ["trial-not-strength", "note"]]
 */
export function trialFindings(trials: readonly WorkshopTrial[], file: string): Finding[] {
  const findings: Finding[] = [];
  const rowOfId = new Map<string, number>();
  for (const { id, row, lab, munsell, dryToConstantMass } of trials) {
    const earlier = rowOfId.get(id);
    if (earlier !== undefined) {
      findings.push({
        ...{ severity: "error", code: "repeated-trial", file, row, column: "trial", value: id },
        message: say`This trial's name stands already in row ${earlier}.`,
        expected: say`each trial once`,
        wayOut: say`Correct the name, or take the copy out.`,
      });
    } else rowOfId.set(id, row);
    if (munsell !== undefined && !MUNSELL.test(munsell)) {
      findings.push({
        ...{ severity: "error", code: "unknown-colour", file, row, column: "munsell" },
        value: munsell,
        message: say`This is not a Munsell colour.`,
        expected: say`hue, value and chroma, for example 7.5YR 6/4, or N 5/ for a grey`,
        wayOut: say`Read it from the chart again, in shade, beside the dry sample.`,
      });
    }
    if (lab && !(lab.l >= 0 && lab.l <= 100 && Math.abs(lab.a) <= 128 && Math.abs(lab.b) <= 128)) {
      findings.push({
        ...{ severity: "error", code: "unknown-colour", file, row, column: "L*" },
        value: `${lab.l}, ${lab.a}, ${lab.b}`,
        message: say`These numbers are not a CIELAB colour.`,
        expected: say`L* 0 to 100, a* and b* −128 to 128`,
        wayOut: say`Check the colour space of the picture program: L*a*b*, not RGB.`,
      });
    }
    if ((munsell !== undefined || lab) && !dryToConstantMass) {
      findings.push({
        ...{ severity: "warning", code: "colour-before-dry", file, row, column: "colour" },
        value: munsell ?? `L* ${lab!.l}`,
        message: say`The colour of trial ${id} was taken without knowing that it was dry; moist earth looks darker.`,
        expected: say`a mass that stands still between two weighings a day apart`,
        wayOut: say`Let it dry, weigh it twice, and take the colour again.`,
      });
    }
  }
  if (trials.length > 0) {
    findings.push({
      ...{ severity: "note", code: "trial-not-strength", file },
      message: say`Small thin samples dry in an hour or so. They show colour, texture and edges; strength is that of blocks, cured and crushed.`,
      expected: say`blocks of the chosen mix, cured to the age of the requirement`,
      wayOut: say`Choose the mixes worth testing here, then make blocks of them.`,
    });
  }
  return findings;
}
