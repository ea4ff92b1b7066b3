import type { Finding } from "../lab/finding.js";
import { formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { BlendLimit } from "./blendTarget.js";
import type { BlendInput } from "./designBlend.js";
import { targetSizes } from "./resolveTarget.js";

/** How many times finer than its finest measured size a curve may be read where it matters. */
const FARTHEST_FACTOR = 5;
/** With no more passing its finest size, a curve cannot be wrong by more, however far it is read. */
const HARMLESS_PCT = 5;

/** Sizes of target and limits that lie beyond what a material was measured at, and how far. */
export function checkCurveReach(input: BlendInput, file: string): Finding[] {
  const { materials, target, limits = [] } = input;
  const sizes = [...targetSizes(target, materials), ...limits.flatMap(limitSizes)].filter(
    (size) => size > 0,
  );
  if (sizes.length === 0) return [];
  const [finest, coarsest] = [Math.min(...sizes), Math.max(...sizes)];
  const at = { file, column: "materials" } as const;
  return materials.flatMap(({ id, name, curve }): Finding[] => {
    const [first, last] = [curve.points[0], curve.points[curve.points.length - 1]];
    const found: Finding[] = [];
    if (finest < first.sizeMm && first.passingPct > 0) {
      const factor = first.sizeMm / finest;
      const refused = factor > FARTHEST_FACTOR && first.passingPct > HARMLESS_PCT;
      found.push({
        ...at,
        severity: refused ? "error" : "warning",
        code: "blend-extrapolated",
        value: id,
        message: say`${name ?? id} was measured down to ${formatNumber(first.sizeMm, 3)} mm, ${formatNumber(factor, 2)} times coarser than the ${formatNumber(finest, 3)} mm asked for; ${formatNumber(first.passingPct, 3)} % of it is finer than was measured.`,
        expected: say`at most ${FARTHEST_FACTOR} times, or at most ${HARMLESS_PCT} % finer than measured`,
        wayOut: say`Add a hydrometer test, or leave the finest sizes out of the target and limits.`,
      });
    }
    if (coarsest > last.sizeMm && last.passingPct < 100 - 1e-9) {
      found.push({
        ...at,
        severity: "error",
        code: "blend-curve-ends-early",
        value: id,
        message: say`The coarsest sieve of ${name ?? id}, ${formatNumber(last.sizeMm, 3)} mm, passes ${formatNumber(last.passingPct, 3)} %, and the blend is judged up to ${formatNumber(coarsest, 3)} mm, ${formatNumber(coarsest / last.sizeMm, 2)} times coarser.`,
        expected: say`a coarsest sieve that everything passes`,
        wayOut: say`Add the next coarser sieve, with 0 g retained.`,
      });
    }
    return found;
  });
}

function limitSizes(limit: BlendLimit): number[] {
  switch (limit.kind) {
    case "passing":
    case "top-size":
      return [limit.sizeMm];
    case "clay":
      return [limit.clayMm ?? 0.002];
    case "silt":
      return [limit.clayMm ?? 0.002, limit.siltMm ?? 0.063];
    case "fines":
      return [limit.siltMm ?? 0.063];
    case "plasticity-index":
    case "linear-shrinkage":
      return [0.425];
    default:
      return [];
  }
}
