import type { Finding } from "../lab/finding.js";
import type { LimitsRecord } from "../lab/limitsRecord.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { ConsistencyResult } from "./consistencyResult.js";

type Limits = Omit<ConsistencyResult, "findings">;

/** Ranges of the liquid limit test; the cup's after ASTM D4318, the cone's after BS 1377-2, both from memory. */
const MEASURES = {
  cup: { name: "blows", low: 15, high: 35, limit: 25 },
  cone: { name: "mm of penetration", low: 15, high: 25, limit: 20 },
};

/** What is wrong or doubtful about a limits test. */
export function checkConsistency(record: LimitsRecord, limits: Limits): Finding[] {
  return [
    ...liquidLimitPoints(record, limits),
    ...plasticLimitPoints(record),
    ...plausible(record, limits),
    ...shrinkage(record, limits),
  ];
}

function liquidLimitPoints(record: LimitsRecord, { flowLine }: Limits): Finding[] {
  const { file, liquidLimitPoints: points, liquidLimitMethod: method = "cup" } = record;
  if (points.length === 0) return [];
  const { name, low, high, limit } = MEASURES[method];
  const findings: Finding[] = points
    .filter(({ measure }) => measure < low || measure > high)
    .map(({ measure, row }) => ({
      severity: "warning",
      code: "liquid-limit-range",
      file,
      row,
      value: String(measure),
      message: `This point lies far from the limit at ${limit} ${name}.`,
      expected: `${low} to ${high} ${name}`,
      wayOut: "Dry or wet the soil a little and take another point nearer to the limit.",
    }));
  const measures = points.map(({ measure }) => measure);
  if (Math.min(...measures) > limit || Math.max(...measures) < limit) {
    findings.push({
      severity: "warning",
      code: "liquid-limit-outside",
      file,
      row: points[0].row,
      value: `${Math.min(...measures)} to ${Math.max(...measures)} ${name}`,
      message: "All points lie on one side of the limit: it is read off the line's prolongation.",
      expected: `points on both sides of ${limit} ${name}`,
      wayOut: "Take a point on the other side.",
    });
  }
  if (points.length < 3) {
    findings.push({
      severity: "warning",
      code: "few-liquid-limit-points",
      file,
      row: points[0].row,
      value: String(points.length),
      message: "The flow line has too few points to show whether it is straight.",
      expected: "at least 3 points",
      wayOut: "Take more points at other water contents.",
    });
  }
  // More water: fewer blows, deeper cone.
  const wrongWay = flowLine && (method === "cup" ? flowLine.slope >= 0 : flowLine.slope <= 0);
  if (wrongWay || !flowLine) {
    findings.push({
      severity: "error",
      code: "flow-line",
      file,
      row: points[0].row,
      message: flowLine
        ? "The flow line leans the wrong way: wetter soil should need fewer blows, or let the cone deeper in."
        : "The points do not make a line: all have the same measure.",
      expected:
        "points at different water contents that follow one falling (cup) or rising (cone) line",
      wayOut: "Check the points for exchanged columns or slips of the pen.",
    });
  }
  return findings;
}

function plasticLimitPoints({
  file,
  plasticLimitPoints: points,
  nonPlastic,
}: LimitsRecord): Finding[] {
  if (!nonPlastic || points.length === 0) return [];
  return [
    {
      severity: "warning",
      code: "non-plastic-with-limit",
      file,
      row: points[0].row,
      message: "The soil is reported as non-plastic, yet a plastic limit is given.",
      expected: "either one or the other",
      wayOut: "Keep the one that is right; non-plastic was taken here.",
    },
  ];
}

function plausible({ file }: LimitsRecord, limits: Limits): Finding[] {
  const { plasticityIndexPct: index, uLinePct, liquidLimitPct = 0 } = limits;
  if (index === undefined || uLinePct === undefined) return [];
  const told = `LL ${formatFixed(liquidLimitPct, 1)}, PI ${formatFixed(index, 1)}`;
  if (index < 0) {
    return [
      {
        severity: "error",
        code: "limits-crossed",
        file,
        value: told,
        message: "The plastic limit lies above the liquid limit.",
        expected: "a plastic limit below the liquid limit",
        wayOut: "Check the water contents; a soil that cannot be rolled is non-plastic.",
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
      message: "The point lies above the U-line, where natural soils are hardly ever found.",
      expected: `a plasticity index up to ${formatFixed(uLinePct, 1)} at this liquid limit (ASTM D2487, from memory)`,
      wayOut: "Check both limits before relying on them.",
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
      message: "The shrinkage bar is longer dry than wet.",
      expected: "a dry length up to the wet length",
      wayOut: "Check whether the two lengths were exchanged.",
    },
  ];
}
