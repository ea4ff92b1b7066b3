import type { Finding } from "../lab/finding.js";
import { formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { BlendMaterial } from "./blendMaterial.js";
import { checkCurveReach } from "./checkCurveReach.js";
import { checkLimits } from "./checkLimits.js";
import type { BlendInput } from "./designBlend.js";

/**
 * All that stands in the way of a blend, told at once: a material without a curve, a number that is
 * none, shares that exclude one another, the same material twice, sizes beyond what was measured, and
 * limits about what a material does not tell. Without an `error` among them, `designBlend` does not throw.
 *
 * A curve read below its finest measured size is an assumption. It is refused where the size is below
 * a fifth of the finest one and more than 5 % passes the finest, since the blend could then be wrong by
 * that much; else it is told as a warning (limits of our own choice, common practice, no source).
 *
 * @param file the study's file that the findings point to; default `study.yaml`.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve, minSharePct: 60, maxSharePct: 100 }, { id: "sand", curve: { points: [] }, minSharePct: 50, maxSharePct: 100 }];
 * const findings = checkBlend({ materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 20 }] } });
 * findings.map(({ code }) => code) // => ["blend-no-curve", "blend-shares-exclude"]
 */
export function checkBlend(input: BlendInput, file = "study.yaml"): Finding[] {
  const { materials } = input;
  const at = { severity: "error", file, column: "materials" } as const;
  if (materials.length === 0) {
    return [
      {
        ...at,
        code: "blend-no-material",
        message: say`There is nothing to blend.`,
        expected: say`at least one material`,
        wayOut: say`Name the soil and what may be added to it.`,
      },
    ];
  }
  const findings = materials.flatMap((material): Finding[] => [
    ...curveFindings(material, file),
    ...shareFindings(material, file),
  ]);
  const sum = (key: "minSharePct" | "maxSharePct") =>
    materials.reduce((total, material) => total + material[key], 0);
  const [least, most] = [sum("minSharePct"), sum("maxSharePct")];
  if (least > 100 + 1e-9 || most < 100 - 1e-9) {
    const [what, total] = least > 100 ? ["smallest", least] : ["largest", most];
    findings.push({
      ...at,
      code: "blend-shares-exclude",
      value: `${formatNumber(total, 4)} %`,
      message: say`The ${what} allowed shares add up to ${formatNumber(total, 4)} %, so no shares sum to 100 %.`,
      expected: say`smallest shares of at most 100 % in all, largest of at least 100 %`,
      wayOut:
        what === "smallest"
          ? say`Lower them by ${formatNumber(total - 100, 3)} points in all.`
          : say`Raise them by ${formatNumber(100 - total, 3)} points in all, or add a material.`,
    });
  }
  materials.forEach((material, j) => {
    const before = materials.slice(0, j);
    const sameId = before.find(({ id }) => id === material.id);
    const sameCurve = before.find(
      ({ curve }) =>
        curve.points.length > 0 &&
        JSON.stringify(pairs(curve.points)) === JSON.stringify(pairs(material.curve.points)),
    );
    if (!sameId && !sameCurve) return;
    findings.push({
      ...at,
      severity: sameId ? "error" : "warning",
      code: "blend-duplicate",
      value: material.id,
      message: sameId
        ? say`Two materials are both called ${material.id}.`
        : say`${material.name ?? material.id} has the same curve as ${sameCurve!.name ?? sameCurve!.id}: how much of each cannot be told from the grading.`,
      expected: say`each material once`,
      wayOut: sameId
        ? say`Give each its own id.`
        : say`Leave one out, or limit its share by what there is.`,
    });
  });
  // The rest reads the curves, which must be sound for it.
  if (findings.some(({ code }) => code === "blend-no-curve" || code === "blend-bad-curve")) {
    return findings;
  }
  const limits = checkLimits(input, file);
  const reach = limits.some(({ code }) => code === "blend-bad-target")
    ? []
    : checkCurveReach(input, file);
  return [...findings, ...limits, ...reach];
}

function pairs(points: BlendMaterial["curve"]["points"]) {
  return points.map(({ sizeMm, passingPct }) => [sizeMm, passingPct]);
}

function curveFindings({ id, curve }: BlendMaterial, file: string): Finding[] {
  const at = { severity: "error", file, column: "materials", value: id } as const;
  if (curve.points.length === 0) {
    return [
      {
        ...at,
        code: "blend-no-curve",
        message: say`${id} has no grading curve.`,
        expected: say`at least one size with its passing`,
        wayOut: say`Add its sieve sheet.`,
      },
    ];
  }
  const bad = curve.points.find(({ sizeMm, passingPct }, i) => {
    const before = curve.points[i - 1];
    const sound = sizeMm > 0 && Number.isFinite(sizeMm) && passingPct >= 0 && passingPct <= 100;
    return !sound || (before && !(sizeMm > before.sizeMm && passingPct >= before.passingPct));
  });
  return bad
    ? [
        {
          ...at,
          code: "blend-bad-curve",
          message: say`${id} has a point of ${bad.passingPct} % at ${bad.sizeMm} mm.`,
          expected: say`sizes that grow, passing 0 to 100 that does not fall`,
          wayOut: say`Correct the sheet.`,
        },
      ]
    : [];
}

function shareFindings({ id, minSharePct, maxSharePct }: BlendMaterial, file: string): Finding[] {
  if (minSharePct >= 0 && minSharePct <= maxSharePct && maxSharePct <= 100) return [];
  return [
    {
      severity: "error",
      code: "blend-bad-share",
      file,
      column: "materials",
      value: id,
      message: say`${id} may have a share of ${minSharePct} to ${maxSharePct} %.`,
      expected: say`0 to 100, smallest first`,
      wayOut: say`Correct the shares.`,
    },
  ];
}
