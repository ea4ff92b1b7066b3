import { type GradingCurve, passingAtSize } from "../../grading/curve.js";
import { say, type Text } from "../../words/message.js";
import { classifyAashto } from "./aashto.js";
import { classifyBs5930 } from "./bs5930.js";
import { classifyIso14688 } from "./iso14688.js";
import { type CurveLimits, sizeShares } from "./sizeClass.js";
import { classifyUscs } from "./uscs.js";
import { usdaFromCurve, usdaTexture } from "./usdaTexture.js";

export type ClassSystem = "uscs" | "aashto" | "usda" | "iso14688" | "bs5930";

export interface CurveClass {
  /** Symbol, group or texture; absent where the curve or the limits do not tell. */
  readonly label?: string;
  readonly name?: string;
  readonly path: readonly Text[];
}

const SHORT = say`The measured curve does not reach the sizes that this system requires.`;

/**
 * Class of a soil by a named system, read off its whole curve and its limits.
 *
 * @param system `uscs` (ASTM D2487), `aashto` (M 145), `usda` texture, `iso14688` or `bs5930`.
 * @throws RangeError for another system.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 12, origin: "sedimentation" }, { sizeMm: 0.05, passingPct: 38, origin: "sedimentation" }, { sizeMm: 0.075, passingPct: 42, origin: "sieve" }, { sizeMm: 4.75, passingPct: 90, origin: "sieve" }, { sizeMm: 75, passingPct: 100, origin: "sieve" }] };
 * const limits = { liquidLimitPct: 30, plasticityIndexPct: 12 };
 * classifyCurve(curve, "uscs", limits).label // => "SC"
 * classifyCurve(curve, "aashto", limits).label // => "A-6(2)"
 * classifyCurve(curve, "usda").label // => "sandy loam"
 */
export function classifyCurve(
  curve: GradingCurve,
  system: ClassSystem,
  limits: CurveLimits = {},
): CurveClass {
  switch (system) {
    case "uscs": {
      const shares = sizeShares(curve, "astm");
      if (!shares) return { path: [SHORT] };
      const { symbol, groupName, path } = classifyUscs({ ...shares, ...limits });
      return { label: symbol, name: groupName, path };
    }
    case "aashto": {
      const [f10, f40, f200] = [2, 0.425, 0.075].map((size) => passingAtSize(curve, size));
      if (f10 === undefined || f40 === undefined || f200 === undefined) return { path: [SHORT] };
      const { label, group, path } = classifyAashto({
        passing2Pct: f10,
        passing0425Pct: f40,
        passing0075Pct: f200,
        ...limits,
      });
      return { label, name: group, path };
    }
    case "usda": {
      const parts = usdaFromCurve(curve);
      if (!parts) return { path: [SHORT] };
      const { texture, name, path } = usdaTexture(parts);
      return { label: texture, name, path };
    }
    case "iso14688":
    case "bs5930": {
      const shares = sizeShares(curve, system);
      if (!shares) return { path: [SHORT] };
      const classify = system === "bs5930" ? classifyBs5930 : classifyIso14688;
      const { symbol, name, path } = classify({ ...shares, ...limits });
      return { label: symbol, name, path };
    }
    default:
      throw new RangeError(
        `invalid \`system\`: ${system}; expected uscs, aashto, usda, iso14688 or bs5930`,
      );
  }
}
