import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { aLine } from "./aLine.js";
import type { UscsInput } from "./uscsInput.js";

export type PlasticityGroup = "ML" | "CL" | "CL-ML" | "MH" | "CH" | "OL" | "OH";

/**
 * The fine part's place on the plasticity chart of ASTM D2487 (from memory).
 *
 * LL < 50: CL where PI > 7 on or above the A-line, CL-ML where PI is 4 to 7 on or above it, else ML.
 * LL ≥ 50: CH on or above the A-line, else MH. Organic fines OL or OH. Non-plastic fines ML.
 *
 * @returns the group with the sentence that says why; no group where a limit is missing.
 */
export function plasticityGroup({
  liquidLimitPct: liquid,
  plasticityIndexPct: index,
  nonPlastic = false,
  organic = false,
}: Pick<UscsInput, "liquidLimitPct" | "plasticityIndexPct" | "nonPlastic" | "organic">): {
  readonly group?: PlasticityGroup;
  readonly reason: string;
} {
  if (nonPlastic) return { group: "ML", reason: say`The fines are non-plastic: silt, ML.` };
  if (liquid === undefined || index === undefined) {
    return { reason: say`The fines cannot be named without liquid limit and plasticity index.` };
  }
  const high = liquid >= 50;
  const line = aLine(liquid);
  const above = index >= line;
  const place = say`LL ${formatFixed(liquid, 1)} is ${high ? say`50 or more` : say`below 50`}; PI ${formatFixed(index, 1)} lies ${above ? say`on or above` : say`below`} the A-line (${formatFixed(line, 1)})`;
  const named = (group: PlasticityGroup, why: string) => ({
    group,
    reason: `${place}${why}: ${group}.`,
  });
  if (organic) return named(high ? "OH" : "OL", say` and the fines are organic`);
  if (high) return named(above ? "CH" : "MH", "");
  if (above && index > 7) return named("CL", say` and is above 7`);
  if (above && index >= 4) return named("CL-ML", say` and is 4 to 7`);
  return named("ML", index < 4 ? say` and is below 4` : "");
}
