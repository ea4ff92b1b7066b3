import type { Finding } from "../findings/finding.js";
import { formatNumber } from "../quantities/format.js";
import { say, wordFor } from "../words/message.js";
import { targetSizes } from "./aims.js";
import type { BlendInput } from "./design.js";
import type { BlendMaterial } from "./material.js";
import type { BlendLimit, BlendTarget } from "./target.js";

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
        remedy: say`Name the soil and what may be added to it.`,
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
    const tooMuch = least > 100;
    const total = formatNumber(tooMuch ? least : most, 4);
    findings.push({
      ...at,
      code: "blend-shares-exclude",
      value: `${total.number} %`,
      message: tooMuch
        ? say`The smallest allowed shares add up to ${total} %, so no shares sum to 100 %.`
        : say`The largest allowed shares add up to ${total} %, so no shares sum to 100 %.`,
      expected: say`smallest shares of at most 100 % in all, largest of at least 100 %`,
      remedy: tooMuch
        ? say`Lower them by ${formatNumber(least - 100, 3)} points in all.`
        : say`Raise them by ${formatNumber(100 - most, 3)} points in all, or add a material.`,
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
      remedy: sameId
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
        remedy: say`Add its sieve sheet.`,
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
          remedy: say`Correct the sheet.`,
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
      remedy: say`Correct the shares.`,
    },
  ];
}

const NEEDS = {
  cost: ["costPerT", say`a price`],
  carbon: ["carbonKgPerT", say`a carbon factor`],
  "plasticity-index": ["plasticityIndexPct", say`a plasticity index (0 if it is not plastic)`],
  "linear-shrinkage": ["linearShrinkagePct", say`a linear shrinkage (0 if it does not shrink)`],
} as const;

/** Numbers of target and limits that are none or the wrong way round, and what materials do not tell. */
function checkLimits({ materials, target, limits = [] }: BlendInput, file: string): Finding[] {
  const at = { severity: "error", file } as const;
  const findings = limits.flatMap((limit, index): Finding[] => {
    const numbers = Object.entries(limit).filter(([key]) => key !== "kind") as [string, number][];
    const bad = numbers.filter(([, value]) => !Number.isFinite(value) || value < 0);
    const { minPct = 0, maxPct = Infinity } = limit as { minPct?: number; maxPct?: number };
    if (bad.length === 0 && minPct <= maxPct) return [];
    return [
      {
        ...at,
        code: "blend-bad-limit",
        column: `limits[${index}]`,
        value: numbers.map(([key, value]) => `${key} ${value}`).join(", "),
        message: say`The limit of ${wordFor(limit.kind)} is no range of numbers.`,
        expected: say`numbers from 0, smallest first`,
        remedy: say`Correct the limit.`,
      },
    ];
  });
  const kinds: (keyof typeof NEEDS)[] = limits.flatMap(({ kind }) => (isNeed(kind) ? [kind] : []));
  if (target.kind === "band" && target.aim === "least-cost") kinds.push("cost");
  if (target.kind === "band" && target.aim === "least-carbon") kinds.push("carbon");
  for (const kind of new Set(kinds)) {
    const [key, need] = NEEDS[kind];
    const words = need;
    for (const material of materials) {
      if (Number.isFinite(material[key])) continue;
      findings.push({
        ...at,
        code: "blend-missing-property",
        column: "materials",
        value: material.id,
        message: say`${material.name ?? material.id} lacks what a limit or aim asks for: ${words}.`,
        expected: words,
        remedy: say`Add it to the material, or leave the limit out.`,
      });
    }
  }
  if (!isSoundTarget(target)) {
    findings.push({
      ...at,
      code: "blend-bad-target",
      column: "target",
      message: say`The target has no size, a value that is no number, or a range the wrong way round.`,
      expected: say`sizes and top size above 0, exponent above 0 to 1, the lower value first`,
      remedy: say`Correct the target.`,
    });
  }
  return findings;
}

function isNeed(kind: BlendLimit["kind"]): kind is keyof typeof NEEDS {
  return kind in NEEDS;
}

function isSoundTarget(target: BlendTarget): boolean {
  if (target.kind === "power") {
    const [exponent, top] = [target.exponent, target.topSizeMm].map((value) =>
      typeof value === "number" ? { min: value, max: value } : value,
    );
    const inOrder = exponent.min <= exponent.max && top.min <= top.max && Number.isFinite(top.max);
    const sizes = target.sizesMm ?? [1];
    const sound = sizes.length > 0 && sizes.every((size) => size > 0 && Number.isFinite(size));
    return exponent.min > 0 && exponent.max <= 1 && top.min > 0 && inOrder && sound;
  }
  if (target.points.length === 0) return false;
  return target.points.every((point) => {
    const { lowPct, highPct } =
      "lowPct" in point ? point : { lowPct: point.passingPct, highPct: point.passingPct };
    const weight = point.weight ?? 1;
    const numbers = [point.sizeMm, lowPct, highPct, weight].every(Number.isFinite);
    return numbers && point.sizeMm > 0 && weight >= 0 && lowPct <= highPct;
  });
}

/** How many times finer than its finest measured size a curve may be read where it matters. */
const FARTHEST_FACTOR = 5;
/** With no more passing its finest size, a curve cannot be wrong by more, however far it is read. */
const HARMLESS_PCT = 5;

/** Sizes of target and limits that lie beyond what a material was measured at, and how far. */
function checkCurveReach(input: BlendInput, file: string): Finding[] {
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
        remedy: say`Add a hydrometer test, or leave the finest sizes out of the target and limits.`,
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
        remedy: say`Add the next coarser sieve, with 0 g retained.`,
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
