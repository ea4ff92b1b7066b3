import {
  type Finding,
  type FindingPlace,
  finding,
  findingIf,
  hasErrors,
  STUDY_FILE,
} from "../findings/finding.js";
import { formatNumber } from "../quantities/format.js";
import { joinTexts, say, wordFor } from "../words/message.js";
import { allTargetSizes, targetSizes } from "./aims.js";
import type { BlendInput } from "./design.js";
import { limitSizes } from "./limits.js";
import { type BlendMaterial, blendPassing, measuredTopMm } from "./material.js";
import {
  asRange,
  type BlendLimit,
  type BlendTarget,
  COMPARISON_SIZES_MM,
  type PercentRange,
} from "./target.js";

/**
 * All that stands in the way of a blend, told at once: a material without a curve, a number that is
 * none, shares that exclude one another, the same material twice, sizes beyond what was measured, and
 * limits about what a material does not tell. Without an `error` among them, `designBlend` does not throw.
 *
 * A curve read below its finest measured size is an assumption. It is refused where the size is below
 * a fifth of the finest one and more than 5 % passes the finest, since the blend could then be wrong by
 * that much (limits of our own choice, common practice, no source). A target that leaves long stretches of
 * size open, where the materials differ, is told as a warning.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve, minSharePct: 60, maxSharePct: 100 }, { id: "sand", curve: { points: [] }, minSharePct: 50, maxSharePct: 100 }];
 * const findings = checkBlend({ materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 20 }] } });
 * findings.map(({ code }) => code) // => ["blend-no-curve", "blend-shares-exclude"]
 */
export function checkBlend(input: BlendInput): Finding[] {
  const { materials, target, limits = [] } = input;
  if (materials.length === 0) {
    return [
      finding({ file: STUDY_FILE, column: "materials" }, "error", "blend-no-material", {
        message: say`There is nothing to blend.`,
        expected: say`at least one material`,
        remedy: say`Enter the soil and the materials that may be added to it.`,
      }),
    ];
  }
  const ofMaterials = [
    ...materials.flatMap((material) => [...curveFindings(material), ...shareFindings(material)]),
    ...sumFindings(materials),
    ...duplicateFindings(materials),
    ...countFindings(input),
  ];
  // The rest reads the curves, which must be sound for it.
  if (ofMaterials.some(({ code }) => code === "blend-no-curve" || code === "blend-bad-curve")) {
    return ofMaterials;
  }
  const bad = targetFindings(target);
  const ofLimits = [
    ...limits.flatMap(limitFindings),
    ...propertyFindings(materials, neededBy(target, limits)),
    ...bad,
  ];
  if (bad.length > 0) return [...ofMaterials, ...ofLimits];
  const reach = checkCurveReach(input);
  // A curve that cannot be read far enough cannot be read between the target's sizes either.
  const gaps = hasErrors(reach) ? [] : gapFindings(input);
  return [...ofMaterials, ...ofLimits, ...reach, ...gaps];
}

const placeOf = ({ id }: BlendMaterial): FindingPlace => ({
  file: STUDY_FILE,
  column: "materials",
  value: id,
});

/** More materials with a smallest share than may go into the blend. */
function countFindings({ materials, maxMaterials }: BlendInput): Finding[] {
  const forced = materials.filter(({ minSharePct }) => minSharePct > 0);
  if (maxMaterials === undefined || maxMaterials >= forced.length) return [];
  const place = { file: STUDY_FILE, column: "max-materials", value: `${maxMaterials}` };
  return [
    finding(place, "error", "too-many-forced-materials", {
      message: say`${forced.length} materials have a smallest share, and only ${maxMaterials} may go into the blend.`,
      expected: say`at least ${forced.length}`,
      remedy: say`Raise max-materials, or take the smallest share off: ${joinTexts(forced.map(({ name, id }) => name ?? id))}.`,
    }),
  ];
}

/** Shares whose bounds exclude a sum of 100 %. */
function sumFindings(materials: readonly BlendMaterial[]): Finding[] {
  const sum = (key: "minSharePct" | "maxSharePct") =>
    materials.reduce((total, material) => total + material[key], 0);
  const [min, max] = [sum("minSharePct"), sum("maxSharePct")];
  const tooMuch = min > 100 + 1e-9;
  const total = formatNumber(tooMuch ? min : max, 4);
  const place = { file: STUDY_FILE, column: "materials", value: `${total.number} %` };
  return findingIf(tooMuch || max < 100 - 1e-9, place, "error", "blend-shares-exclude", {
    message: tooMuch
      ? say`The minimum shares add up to ${total} %, so no shares sum to 100 %.`
      : say`The maximum shares add up to ${total} %, so no shares sum to 100 %.`,
    expected: say`minimum shares totalling at most 100 %, maximum shares at least 100 %`,
    remedy: tooMuch
      ? say`Lower them by ${formatNumber(min - 100, 3)} points in all.`
      : say`Raise them by ${formatNumber(100 - max, 3)} points in all, or add a material.`,
  });
}

/** The same id twice, or the same curve under two names. */
function duplicateFindings(materials: readonly BlendMaterial[]): Finding[] {
  return materials.flatMap((material, index): Finding[] => {
    const before = materials.slice(0, index);
    const { id, name = id } = material;
    const place = placeOf(material);
    const expected = say`each material once`;
    if (before.some((other) => other.id === id)) {
      const message = say`Two materials are both called ${id}.`;
      const remedy = say`Give each its own id.`;
      return [finding(place, "error", "blend-duplicate", { message, expected, remedy })];
    }
    const twin = before.find((other) => hasSameCurve(other, material));
    if (!twin) return [];
    const message = say`${name} has the same curve as ${twin.name ?? twin.id}: the grading cannot tell how much of each to use.`;
    const remedy = say`Leave one out, or limit its share to what is available.`;
    return [finding(place, "warning", "blend-duplicate", { message, expected, remedy })];
  });
}

function hasSameCurve(one: BlendMaterial, other: BlendMaterial): boolean {
  const pairs = ({ curve }: BlendMaterial) =>
    JSON.stringify(curve.points.map(({ sizeMm, passingPct }) => [sizeMm, passingPct]));
  return one.curve.points.length > 0 && pairs(one) === pairs(other);
}

function curveFindings(material: BlendMaterial): Finding[] {
  const { id, curve } = material;
  const place = placeOf(material);
  if (curve.points.length === 0) {
    return [
      finding(place, "error", "blend-no-curve", {
        message: say`${id} has no grading curve.`,
        expected: say`at least one size with its passing`,
        remedy: say`Add its sieve sheet.`,
      }),
    ];
  }
  const bad = curve.points.find(({ sizeMm, passingPct }, i) => {
    const before = curve.points[i - 1];
    const sound = sizeMm > 0 && Number.isFinite(sizeMm) && passingPct >= 0 && passingPct <= 100;
    return !sound || (before && !(sizeMm > before.sizeMm && passingPct >= before.passingPct));
  });
  if (!bad) return [];
  return [
    finding(place, "error", "blend-bad-curve", {
      message: say`${id} has a point of ${bad.passingPct} % at ${bad.sizeMm} mm.`,
      expected: say`increasing sizes, and percent passing from 0 to 100 that never decreases`,
      remedy: say`Correct the sheet.`,
    }),
  ];
}

function shareFindings(material: BlendMaterial): Finding[] {
  const { id, minSharePct, maxSharePct } = material;
  const isSound = minSharePct >= 0 && minSharePct <= maxSharePct && maxSharePct <= 100;
  return findingIf(!isSound, placeOf(material), "error", "blend-bad-share", {
    message: say`${id} may have a share of ${minSharePct} to ${maxSharePct} %.`,
    expected: say`0 to 100, the minimum first`,
    remedy: say`Correct the shares.`,
  });
}

const NEEDS = {
  cost: ["costPerT", say`a price`],
  carbon: ["carbonKgPerT", say`a carbon factor`],
  "plasticity-index": ["plasticityIndexPct", say`a plasticity index (0 if it is not plastic)`],
  "linear-shrinkage": ["linearShrinkagePct", say`a linear shrinkage (0 if it does not shrink)`],
} as const;

function targetFindings(target: BlendTarget): Finding[] {
  const place = { file: STUDY_FILE, column: "target" };
  return findingIf(!isSoundTarget(target), place, "error", "blend-bad-target", {
    message: say`The target has no size, a value that is not a number, or a reversed range.`,
    expected: say`sizes and top size above 0, exponent above 0 to 1, the lower value first`,
    remedy: say`Correct the target.`,
  });
}

function limitFindings(limit: BlendLimit, index: number): Finding[] {
  const numbers = Object.entries(limit).filter(([key]) => key !== "kind") as [string, number][];
  const bad = numbers.some(([, value]) => !Number.isFinite(value) || value < 0);
  const { minPct = 0, maxPct = Infinity } = limit as PercentRange;
  const value = numbers.map(([key, number]) => `${key} ${number}`).join(", ");
  const place = { file: STUDY_FILE, column: `limits[${index}]`, value };
  return findingIf(bad || minPct > maxPct, place, "error", "blend-bad-limit", {
    message: say`The limit of ${wordFor(limit.kind)} is not a range of numbers.`,
    expected: say`numbers from 0, the minimum first`,
    remedy: say`Correct the limit.`,
  });
}

type Need = keyof typeof NEEDS;

function neededBy(target: BlendTarget, limits: readonly BlendLimit[]): Set<Need> {
  const needs = new Set<Need>(limits.flatMap(({ kind }) => (isNeed(kind) ? [kind] : [])));
  if (target.kind === "band" && target.aim === "least-cost") needs.add("cost");
  if (target.kind === "band" && target.aim === "least-carbon") needs.add("carbon");
  return needs;
}

function propertyFindings(
  materials: readonly BlendMaterial[],
  needs: ReadonlySet<Need>,
): Finding[] {
  return [...needs].flatMap((need) => {
    const [key, words] = NEEDS[need];
    return materials
      .filter((material) => !Number.isFinite(material[key]))
      .map((material) =>
        finding(placeOf(material), "error", "blend-missing-property", {
          message: say`${material.name ?? material.id} lacks a value that a limit or the objective needs: ${words}.`,
          expected: words,
          remedy: say`Add it to the material, or leave the limit out.`,
        }),
      );
  });
}

function isNeed(kind: BlendLimit["kind"]): kind is Need {
  return kind in NEEDS;
}

function isSoundTarget(target: BlendTarget): boolean {
  if (target.kind === "power") {
    const [exponent, top] = [target.exponent, target.topSizeMm].map(asRange);
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

/** How many times finer than its finest measured size a curve may be read where it matters; common practice, no source. */
const FARTHEST_FACTOR = 5;
/** With no more passing its finest size, a curve cannot be wrong by more, however far it is read; common practice, no source. */
const HARMLESS_PCT = 5;

/** Sizes of target and limits that lie too far beyond what a material was measured at. */
function checkCurveReach(input: BlendInput): Finding[] {
  const { materials, target, limits = [] } = input;
  const asked = allTargetSizes(target, materials);
  const measured = targetSizes(target, materials);
  const limited = limits.flatMap(limitSizes).filter((size) => size > 0);
  const finest = Math.min(...measured, ...limited);
  const coarsest = Math.max(...asked, ...limited);
  // A limit has to be kept where it stands; a target can be held as far as the curves go.
  const needed = measured.length === 0 ? coarsest : Math.max(...limited);
  return materials.flatMap((material) => [
    ...fineReachFindings(material, finest),
    ...droppedSizes(input, material),
    ...coarseReachFindings(material, coarsest, needed),
  ]);
}

function fineReachFindings(material: BlendMaterial, finestMm: number): Finding[] {
  const { id, name = id, curve } = material;
  const [first] = curve.points;
  const factor = first.sizeMm / finestMm;
  const isFar = factor > FARTHEST_FACTOR && first.passingPct > HARMLESS_PCT;
  return findingIf(isFar, placeOf(material), "error", "blend-extrapolated", {
    message: say`${name} was measured down to ${formatNumber(first.sizeMm, 3)} mm, ${formatNumber(factor, 2)} times coarser than the ${formatNumber(finestMm, 3)} mm needed; ${formatNumber(first.passingPct, 3)} % of it is finer than the finest size measured.`,
    expected: say`at most ${FARTHEST_FACTOR} times, or at most ${HARMLESS_PCT} % finer than measured`,
    remedy: say`Add a hydrometer test, or leave the finest sizes out of the target and limits.`,
  });
}

/** A finest sieve because of which finer sizes, that others were measured at, are not compared with a power curve. */
function droppedSizes({ materials, target }: BlendInput, material: BlendMaterial): Finding[] {
  if (target.kind !== "power" || target.sizesMm) return [];
  const { id, name = id, curve } = material;
  const [{ sizeMm, passingPct }] = curve.points;
  const finest = materials.map(({ curve: { points } }) => points[0].sizeMm);
  // Below the finest sieve a curve without a sedimentation test is assumed, which is told elsewhere.
  const further = Math.max(COMPARISON_SIZES_MM[0], Math.min(...finest));
  const isLate = sizeMm >= Math.max(...finest) && sizeMm / further > FARTHEST_FACTOR;
  return findingIf(isLate, placeOf(material), "warning", "blend-curve-starts-late", {
    message: say`The finest sieve of ${name}, ${formatNumber(sizeMm, 3)} mm, passes ${formatNumber(passingPct, 3)} %: the blend is held against its target from that size up only, though other materials were measured down to ${formatNumber(further, 3)} mm.`,
    expected: say`finest sieves at most ${FARTHEST_FACTOR} times apart (common practice, no source)`,
    remedy: say`Sieve ${name} with the finer sieves as well: the blend may come out as quite another.`,
  });
}

function coarseReachFindings(
  material: BlendMaterial,
  coarsestMm: number,
  neededMm: number,
): Finding[] {
  const { id, name = id, curve } = material;
  const last = curve.points[curve.points.length - 1];
  const isEarly = coarsestMm > measuredTopMm([curve]);
  const place = placeOf(material);
  const [lastMm, lastPct] = [formatNumber(last.sizeMm, 3), formatNumber(last.passingPct, 3)];
  const isKnown = neededMm <= last.sizeMm;
  return findingIf(isEarly, place, isKnown ? "note" : "error", "blend-curve-ends-early", {
    message: isKnown
      ? say`The coarsest sieve of ${name}, ${lastMm} mm, passes ${lastPct} %: the blend is held against its target up to that size only.`
      : say`The coarsest sieve of ${name}, ${lastMm} mm, passes ${lastPct} %, and the blend is checked up to ${formatNumber(coarsestMm, 3)} mm, ${formatNumber(coarsestMm / last.sizeMm, 2)} times coarser.`,
    expected: say`a coarsest sieve that everything passes`,
    remedy: say`Add the next coarser sieve, with 0 g retained.`,
  });
}

/** Neighbouring sizes farther apart leave the curve between them open; common practice, no source. */
const FARTHEST_APART = 10;
/** Materials that pass so nearly the same between two sizes cannot make much of the gap; common practice, no source. */
const ALIKE_PCT = 10;

/**
 * Stretches of size that neither target nor limits speak of, though the materials differ there: blends of
 * very different grading then meet the target equally well. A power curve speaks of all sizes.
 */
function gapFindings({ materials, target, limits = [] }: BlendInput): Finding[] {
  if (target.kind === "power") return [];
  const used = materials.filter(({ maxSharePct }) => maxSharePct > 0);
  const top = measuredTopMm(used.map(({ curve }) => curve));
  const wholeFrom = used.flatMap(
    ({ curve }) => curve.points.find(({ passingPct }) => passingPct >= 100 - 1e-9)?.sizeMm ?? [],
  );
  // Nothing is compared beyond what every material was measured at, nor differs where all pass whole.
  const end = Number.isFinite(top) ? top : Math.max(...wholeFrom);
  const known = [
    ...target.points.map(({ sizeMm }) => sizeMm),
    ...limits.flatMap((limit) => (limit.kind === "passing" ? [limit.sizeMm] : [])),
    end,
  ]
    .filter((sizeMm) => sizeMm <= end)
    .sort((a, b) => a - b);
  return known.slice(1).flatMap((to, index): Finding[] => {
    const from = known[index];
    if (to / from <= FARTHEST_APART) return [];
    const middle = Math.sqrt(from * to);
    const passing = used.map(({ curve }) => blendPassing(curve, middle).passingPct);
    const differ = Math.max(...passing) - Math.min(...passing) > ALIKE_PCT;
    const place = { file: STUDY_FILE, column: "target", value: `${from} to ${to} mm` };
    return findingIf(differ, place, "warning", "blend-target-gap", {
      message: say`The target does not limit the sizes between ${from} and ${to} mm, where these materials differ: blends of very different grading meet it.`,
      expected: say`sizes at most ${FARTHEST_APART} times apart`,
      remedy: say`Limit the curve there too: by more sizes in the envelope, or by a limit on the passing near ${formatNumber(middle, 2)} mm. Look at the curve of the blend before relying on it.`,
    });
  });
}
