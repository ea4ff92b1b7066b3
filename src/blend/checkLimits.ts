import type { Finding } from "../lab/finding.js";
import { phrase, say, sayOf } from "../words/say.js";
import type { BlendLimit, BlendTarget } from "./blendTarget.js";
import type { BlendInput } from "./designBlend.js";

const NEEDS = {
  cost: ["costPerT", phrase`a price`],
  carbon: ["carbonKgPerT", phrase`a carbon factor`],
  "plasticity-index": ["plasticityIndexPct", phrase`a plasticity index (0 if it is not plastic)`],
  "linear-shrinkage": ["linearShrinkagePct", phrase`a linear shrinkage (0 if it does not shrink)`],
} as const;

/** Numbers of target and limits that are none or the wrong way round, and what materials do not tell. */
export function checkLimits(
  { materials, target, limits = [] }: BlendInput,
  file: string,
): Finding[] {
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
        message: say`The limit of ${limit.kind} is no range of numbers.`,
        expected: say`numbers from 0, smallest first`,
        wayOut: say`Correct the limit.`,
      },
    ];
  });
  const kinds: (keyof typeof NEEDS)[] = limits.flatMap(({ kind }) => (isNeed(kind) ? [kind] : []));
  if (target.kind === "band" && target.aim === "least-cost") kinds.push("cost");
  if (target.kind === "band" && target.aim === "least-carbon") kinds.push("carbon");
  for (const kind of new Set(kinds)) {
    const [key, need] = NEEDS[kind];
    const words = sayOf(need);
    for (const material of materials) {
      if (Number.isFinite(material[key])) continue;
      findings.push({
        ...at,
        code: "blend-missing-property",
        column: "materials",
        value: material.id,
        message: say`${material.name ?? material.id} lacks what a limit or aim asks for: ${words}.`,
        expected: words,
        wayOut: say`Add it to the material, or leave the limit out.`,
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
      wayOut: say`Correct the target.`,
    });
  }
  return findings;
}

function isNeed(kind: BlendLimit["kind"]): kind is keyof typeof NEEDS {
  return kind in NEEDS;
}

function isSoundTarget(target: BlendTarget): boolean {
  if (target.kind === "power") {
    const [exponent, top] = [target.exponent, target.topSizeMm].map((of) =>
      typeof of === "number" ? { min: of, max: of } : of,
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
