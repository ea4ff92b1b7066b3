import { blendByHand, type HandBlend } from "../blend/byHand.js";
import type { BlendDesign } from "../blend/description.js";
import { designBlend } from "../blend/design.js";
import { type BlendMaterial, blendCurve, blendPassing } from "../blend/material.js";
import {
  type BucketChange,
  bucketSensitivity,
  type PracticalParts,
  practicalParts,
} from "../blend/parts.js";
import type { BlendTarget } from "../blend/target.js";
import type { TableBlock } from "../blocks/block.js";
import type { GradingCurve } from "../grading/curve.js";
import { SIZE_BOUNDARIES } from "../grading/fractions.js";
import { fixed, numberColumn, plain } from "../tables/cell.js";
import { tableOf } from "../tables/tableOf.js";
import { joinTexts, say } from "../words/message.js";
import type { NoLesson } from "./exercise.js";

export interface ClassBlendInput {
  /** The soil first, then the sand that is added by hand, then whatever else is at hand. */
  readonly materials: readonly BlendMaterial[];
  readonly target: BlendTarget;
  /** Dry mass in a loose cubic metre of each material, in the same order. */
  readonly looseDryDensityKgM3: readonly number[];
  /** What people call the materials; default their ids. */
  readonly names?: readonly string[];
}

/** A blend found on paper for one size, beside the one that least squares finds for all sizes. */
export interface ClassBlend extends Omit<ClassBlendInput, "target" | "names"> {
  readonly status: "ok";
  readonly names: readonly string[];
  /** What the target says at each size, the same for both blends. */
  readonly targetCurve: GradingCurve;
  /** Upper size of what is called fines here. */
  readonly finesMm: number;
  /** Fines of each material, percent. */
  readonly finesPct: readonly number[];
  /** Fines of the target. */
  readonly targetFinesPct: number;
  readonly byHand: HandBlend;
  /** The blend by hand held against the whole target. */
  readonly handDesign: BlendDesign;
  readonly handCurve: GradingCurve;
  readonly design: BlendDesign;
  readonly designCurve: GradingCurve;
  /** The design in whole buckets, at most twelve. */
  readonly parts: PracticalParts;
  readonly changes: readonly BucketChange[];
}

/** Upper sizes of fines: of ISO 14688-1 and of the United States; the target names one of them. */
const FINES_MM = [SIZE_BOUNDARIES.iso14688.siltMm, SIZE_BOUNDARIES.astm.siltMm];

/**
 * Blends soil and sand by hand for the fines of the target, then all materials by least squares, and
 * counts the second out in buckets. A target that leaves something free, such as a range of exponents, is
 * taken as least squares chose it, so that both blends are held against one and the same curve.
 *
 * Source: `blendByHand`, `designBlend`, `practicalParts`, `bucketSensitivity`.
 *
 * @returns status `none`, with the reason, for fewer than two materials, where sand cannot bring the soil's
 * fines to the target's, or where the target says nothing of the fines (0.063 or 0.075 mm).
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const target = { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 30 }, { sizeMm: 0.5, passingPct: 70 }] };
 * const blend = classBlend({ materials, target, looseDryDensityKgM3: [1200, 1500] });
 * [blend.byHand.sandToOneOfSoil, blend.design.shares[0].sharePct] // => [0.3333, 73.3287]
 */
export function classBlend(input: ClassBlendInput): ClassBlend | NoLesson {
  const { materials, looseDryDensityKgM3, names = materials.map(({ id }) => id) } = input;
  if (materials.length < 2) {
    return { status: "none", message: say`A blend needs two materials, a soil and a sand.` };
  }
  const design = designBlend({ materials, target: input.target });
  const fines = design.points.find(({ sizeMm }) => FINES_MM.includes(sizeMm));
  if (fines === undefined) {
    const message = say`The target says nothing of the fines, at ${joinTexts(FINES_MM.map(String), " or ")} mm.`;
    return { status: "none", message };
  }
  const { sizeMm: finesMm, targetPct: targetFinesPct } = fines;
  const finesPct = materials.map(({ curve }) => blendPassing(curve, finesMm).passingPct);
  const [soilPct, sandPct] = finesPct;
  const byHand = blendByHand({ soilPct, sandPct, targetPct: targetFinesPct });
  const { soilSharePct, sandSharePct } = byHand;
  if (byHand.status !== "ok" || soilSharePct === null || sandSharePct === null) {
    return { status: "none", message: byHand.message };
  }
  const points = design.points.map(({ sizeMm, targetPct }) => ({ sizeMm, passingPct: targetPct }));
  const designInput = { materials, target: { kind: "curve" as const, points } };
  const pinned = materials.map((material, index) => {
    const sharePct = [soilSharePct, sandSharePct][index] ?? 0;
    return { ...material, minSharePct: sharePct, maxSharePct: sharePct };
  });
  const curveOf = ({ shares }: BlendDesign) =>
    blendCurve(materials.map(({ curve }, index) => ({ curve, sharePct: shares[index].sharePct })))
      .curve;
  const handDesign = designBlend({ ...designInput, materials: pinned });
  const parts = practicalParts(designInput, design, { by: "volume", looseDryDensityKgM3 });
  const counts = parts.materials.map((line) => line.parts);
  return {
    status: "ok",
    materials,
    looseDryDensityKgM3,
    names,
    targetCurve: { points: points.map((point) => ({ ...point, origin: "sieve" as const })) },
    finesMm,
    finesPct,
    targetFinesPct,
    byHand,
    handDesign,
    handCurve: curveOf(handDesign),
    design,
    designCurve: curveOf(design),
    parts,
    changes: bucketSensitivity(designInput, design, counts, looseDryDensityKgM3),
  };
}

/**
 * The blend by hand and the blend by least squares, size by size against the same target: what each was
 * made to meet, and what it misses.
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const target = { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 30 }, { sizeMm: 0.5, passingPct: 70 }] };
 * renderAll(blendsTable(classBlend({ materials, target, looseDryDensityKgM3: [1200, 1500] })).rows[0]) // => ["0.063", "30.0", "30.0", "0.0", "29.3", "−0.7"]
 */
export function blendsTable({ handDesign, design }: ClassBlend): TableBlock {
  return tableOf(
    say`By hand and by least squares, against the same target`,
    design.points.map((point, index) => ({ ...point, hand: handDesign.points[index] })),
    [
      [numberColumn(say`Size`, "mm"), ({ sizeMm }) => plain(sizeMm)],
      [numberColumn(say`Target`, "%"), ({ targetPct }) => fixed(targetPct, 1)],
      [numberColumn(say`By hand`, "%"), ({ hand }) => fixed(hand.blendPct, 1)],
      [numberColumn(say`Off by`, say`points`), ({ hand }) => fixed(hand.differencePct, 1)],
      [numberColumn(say`Least squares`, "%"), ({ blendPct }) => fixed(blendPct, 1)],
      [numberColumn(say`Off by`, say`points`), ({ differencePct }) => fixed(differencePct, 1)],
    ],
    [
      say`Root mean square of the differences: by hand ${fixed(handDesign.rmsDifferencePct, 1)} points, by least squares ${fixed(design.rmsDifferencePct, 1)} points.`,
    ],
  );
}
