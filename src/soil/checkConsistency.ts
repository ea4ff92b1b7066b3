import type { Finding } from "../lab/finding.js";
import type { LimitsRecord } from "../lab/limitsRecord.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { checkLiquidLimit } from "./checkLiquidLimit.js";
import type { ConsistencyResult } from "./consistencyResult.js";
import { plasticLimitRepeats } from "./plasticLimitRepeats.js";

type Limits = Omit<ConsistencyResult, "findings">;

/** What is wrong or doubtful about a limits test. */
export function checkConsistency(record: LimitsRecord, limits: Limits): Finding[] {
  return [
    ...checkLiquidLimit(record, limits),
    ...plasticLimitPoints(record),
    ...plausible(record, limits),
    ...shrinkage(record, limits),
  ];
}

function plasticLimitPoints({
  file,
  plasticLimitPoints: points,
  nonPlastic,
}: LimitsRecord): Finding[] {
  if (points.length === 0) return [];
  if (!nonPlastic) return threadsApart(file, points);
  return [
    {
      severity: "warning",
      code: "non-plastic-with-limit",
      file,
      row: points[0].row,
      message: say`The soil is reported as non-plastic, yet a plastic limit is given.`,
      expected: say`either one or the other`,
      wayOut: say`Keep the one that is right; non-plastic was taken here.`,
    },
  ];
}

function threadsApart(file: string, points: LimitsRecord["plasticLimitPoints"]): Finding[] {
  const repeats = plasticLimitRepeats(points.map(({ waterContentPct }) => waterContentPct));
  if (!repeats?.apart) return [];
  return [
    {
      severity: "warning",
      code: "plastic-limit-apart",
      file,
      row: points[0].row,
      value: say`${formatFixed(repeats.rangePct, 1)} points`,
      message: say`The plastic limits of the threads lie far apart.`,
      expected: say`within 2 points of water (common practice, no source)`,
      wayOut: say`Roll more threads; the mean stands until then.`,
    },
  ];
}

function plausible({ file }: LimitsRecord, limits: Limits): Finding[] {
  const { plasticityIndexPct: index, uLinePct, liquidLimitPct = 0 } = limits;
  if (index === undefined || uLinePct === undefined) return [];
  const told = say`LL ${formatFixed(liquidLimitPct, 1)}, PI ${formatFixed(index, 1)}`;
  if (index < 0) {
    return [
      {
        severity: "error",
        code: "limits-crossed",
        file,
        value: told,
        message: say`The plastic limit lies above the liquid limit.`,
        expected: say`a plastic limit below the liquid limit`,
        wayOut: say`Check the water contents; a soil that cannot be rolled is non-plastic.`,
      },
    ];
  }
  if (index <= uLinePct) return [];
  return [
    {
      severity: "warning",
      code: "above-u-line",
      file,
      value: told,
      message: say`The point lies above the U-line, where natural soils are hardly ever found.`,
      expected: say`a plasticity index up to ${formatFixed(uLinePct, 1)} at this liquid limit (ASTM D2487, from memory)`,
      wayOut: say`Check both limits before relying on them.`,
    },
  ];
}

function shrinkage({ file }: LimitsRecord, { linearShrinkagePct }: Limits): Finding[] {
  if (linearShrinkagePct === undefined || linearShrinkagePct >= 0) return [];
  return [
    {
      severity: "error",
      code: "bar-grew",
      file,
      value: `${formatFixed(linearShrinkagePct, 1)} %`,
      message: say`The shrinkage bar is longer dry than wet.`,
      expected: say`a dry length up to the wet length`,
      wayOut: say`Check whether the two lengths were exchanged.`,
    },
  ];
}
