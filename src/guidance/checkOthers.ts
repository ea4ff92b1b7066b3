import type { GradingCurve } from "../grading/gradingCurve.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { phrase, say, sayOf } from "../words/say.js";
import type { MeasuredConsistency, OtherCheck } from "./guidanceCheck.js";
import type { GuidanceEntry, OtherQuantity } from "./guidanceEntry.js";

const QUANTITIES: Readonly<Record<OtherQuantity, readonly [string, OtherCheck["unit"], number]>> = {
  organicPct: [phrase`organic matter`, "%", 1],
  saltsPct: [phrase`soluble salts`, "%", 2],
  topSizeMm: [phrase`largest grain`, "mm", 1],
  dryDensityKgM3: [phrase`dry density`, "kg/m³", 0],
  plasticLimitPct: [phrase`plastic limit`, "%", 1],
};

/** Holds organic matter, salts, top size and density against the limits of an entry. */
export function checkOthers(
  { points }: GradingCurve,
  { others = [] }: GuidanceEntry,
  measured: MeasuredConsistency,
): OtherCheck[] {
  return others.map(({ quantity, min, max }): OtherCheck => {
    const [name, unit, decimals] = QUANTITIES[quantity];
    const words = sayOf(name);
    const value =
      quantity === "topSizeMm"
        ? points.find(({ passingPct }) => passingPct >= 100)?.sizeMm
        : measured[quantity];
    const low = min === undefined ? "" : say`from ${min} `;
    const range = `${low}${max === undefined ? "" : say`up to ${max} `}${unit}`;
    const limits = { quantity, unit, min, max };
    if (value === undefined) {
      return {
        ...limits,
        verdict: "not measured",
        text: say`${words}: not measured; asked for ${range}.`,
      };
    }
    const inside = value >= (min ?? -Infinity) && value <= (max ?? Infinity);
    return {
      ...limits,
      measured: value,
      verdict: inside ? "inside" : "outside",
      text: say`${words}: ${formatFixed(value, decimals)} ${unit}, asked for ${range}: ${inside ? say`inside` : say`outside`}.`,
    };
  });
}
