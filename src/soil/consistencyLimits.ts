import type { LimitsRecord } from "../lab/limitsRecord.js";
import { aLine } from "./aLine.js";
import { checkConsistency } from "./checkConsistency.js";
import type { ConsistencyResult } from "./consistencyResult.js";
import { liquidLimit } from "./liquidLimit.js";
import { longBoxShrinkage } from "./longBoxShrinkage.js";
import { onePointLiquidLimit } from "./onePointLiquidLimit.js";
import { plasticLimitRepeats } from "./plasticLimitRepeats.js";
import { uLine } from "./uLine.js";

/**
 * Liquid limit, plastic limit, plasticity index and linear shrinkage from a limits sheet.
 *
 * Formula: plastic limit: mean of the threads; PI = LL − PL (0 for a non-plastic soil is not claimed:
 * it has none); linear shrinkage = 100 (1 − dry length / wet length) of the bar (IS 2720 part 20,
 * civilblog, read; there rounded to a whole number, here not). The long field box is kept apart from it
 * ({@link longBoxShrinkage}).
 *
 * @throws RangeError where a blow count, penetration or bar length is not positive.
 *
 * @example
 * const liquidLimitPoints = [{ measure: 15, waterContentPct: 42, row: 2 }, { measure: 20, waterContentPct: 40.8, row: 3 }, { measure: 28, waterContentPct: 39.1, row: 4 }];
 * const plasticLimitPoints = [{ waterContentPct: 18.6, row: 5 }, { waterContentPct: 18.8, row: 6 }];
 * const limits = consistencyLimits({ file: "l.csv", liquidLimitMethod: "cup", liquidLimitPoints, plasticLimitPoints, nonPlastic: false, shrinkageBar: { wetLengthMm: 140, dryLengthMm: 133 } });
 * limits.plasticityIndexPct // => 20.97
 * limits.linearShrinkagePct // => 5
 */
export function consistencyLimits(record: LimitsRecord): ConsistencyResult {
  const liquid = liquidLimit(record);
  const threads = record.plasticLimitPoints.map(({ waterContentPct }) => waterContentPct);
  const plastic = record.nonPlastic ? undefined : plasticLimitRepeats(threads);
  const plasticLimitPct = plastic?.plasticLimitPct;
  const single = liquid ? undefined : onePoint(record);
  const liquidLimitPct = liquid?.liquidLimitPct ?? single;
  const plasticityIndexPct =
    liquidLimitPct !== undefined && plasticLimitPct !== undefined
      ? liquidLimitPct - plasticLimitPct
      : undefined;
  const aLinePct = liquidLimitPct === undefined ? undefined : aLine(liquidLimitPct);
  const result: Omit<ConsistencyResult, "findings"> = {
    nonPlastic: record.nonPlastic,
    liquidLimitPct,
    liquidLimitInterval95: liquid?.interval95,
    ...(single === undefined ? {} : { onePoint: true as const }),
    plasticLimitPct,
    ...(plastic ? { plasticLimitRangePct: plastic.rangePct } : {}),
    ...(plastic?.interval95 ? { plasticLimitInterval95: plastic.interval95 } : {}),
    plasticityIndexPct,
    ...plasticityDoubt(liquid?.interval95, plastic?.interval95),
    aLinePct,
    uLinePct: liquidLimitPct === undefined ? undefined : uLine(liquidLimitPct),
    aboveALine:
      aLinePct === undefined || plasticityIndexPct === undefined
        ? undefined
        : plasticityIndexPct >= aLinePct,
    linearShrinkagePct: linearShrinkage(record),
    ...(record.longBox
      ? { longBox: longBoxShrinkage(record.longBox.shrinkageMm, record.longBox.lengthMm) }
      : {}),
    flowLine: liquid?.flowLine,
  };
  return { ...result, findings: checkConsistency(record, result) };
}

function onePoint({
  liquidLimitPoints: [first, ...others],
  liquidLimitMethod = "cup",
}: LimitsRecord): number | undefined {
  // Cone: no rule for a single point was read, and none is guessed.
  if (!first || others.length > 0 || liquidLimitMethod !== "cup") return undefined;
  return onePointLiquidLimit(first.waterContentPct, first.measure);
}

/** Half widths of both limits together, as for independent errors: √(h1² + h2²). */
function plasticityDoubt(
  liquid: readonly [number, number] | undefined,
  plastic: readonly [number, number] | undefined,
): Pick<ConsistencyResult, "plasticityIndexInterval95"> {
  if (!liquid || !plastic) return {};
  const middle = (liquid[0] + liquid[1] - plastic[0] - plastic[1]) / 2;
  const half = Math.hypot(liquid[1] - liquid[0], plastic[1] - plastic[0]) / 2;
  return { plasticityIndexInterval95: [middle - half, middle + half] };
}

function linearShrinkage({ shrinkageBar }: LimitsRecord): number | undefined {
  if (!shrinkageBar) return undefined;
  const { wetLengthMm, dryLengthMm } = shrinkageBar;
  if (!(wetLengthMm > 0 && dryLengthMm > 0)) {
    throw new RangeError(
      `invalid \`shrinkageBar\`: ${wetLengthMm} and ${dryLengthMm} mm; expected above 0`,
    );
  }
  return 100 * (1 - dryLengthMm / wetLengthMm);
}
