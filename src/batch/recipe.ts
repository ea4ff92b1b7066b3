import type { Finding } from "../lab/finding.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { checkRecipeInput } from "./checkRecipeInput.js";
import { densityFindings } from "./densityFindings.js";
import { moistureFindings } from "./moistureFindings.js";
import type { LiftSize, RecipeInput } from "./recipeInput.js";
import type { Recipe, RecipeLine } from "./recipeResult.js";

/** What is weighed out where the batch size cannot be found for want of a density. */
const FALLBACK_DRY_MASS_KG = 100;

/**
 * Turns shares and a cement content into a batch: dry and moist masses, loose volumes, parts, water.
 *
 * Formulas, for dry mass M of soil and aggregate: material M share/100; cement M c/100 (cement is not
 * part of M); moist mass = dry mass (1 + w/100); loose volume = dry mass / bulk density × (1 + bulking/100);
 * water to add = target moisture of the solids − water in the materials. Cement is taken as dry. A
 * material whose share is zero is not in the recipe.
 *
 * Missing densities leave volumes null with a finding, never a silent value. With `mixerVolumeL` and a
 * missing density the recipe is for 100 kg, status `incomplete`.
 *
 * @throws RangeError for a share, density, moisture or size out of range, or shares that do not sum to
 * 100 ± 0.05 (they are scaled to 100 within it); TypeError where not exactly one batch size (dry mass, mixer volume, lift) is given. For a lift M = area × depth ×
 * rammed dry density / (1 + c/100).
 * Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 70, looseBulkDensityKgM3: 1200, moisturePct: 6 }, { id: "sand", name: "Sand", sharePct: 30, looseBulkDensityKgM3: 1500, moisturePct: 4 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * batch.materials.map(({ moistMassKg }) => moistMassKg) // => [74.2, 31.2]
 * [batch.cement.dryMassKg, batch.water.toAddKg] // => [8, 5.4]
 * batch.materials.map(({ partsToCement }) => partsToCement) // => [8.75, 3]
 */
export function recipe(input: RecipeInput): Recipe {
  checkRecipeInput(input);
  const { cementPct, cementBulkDensityKgM3, targetMoisturePct, moistureOf = "all-solids" } = input;
  const used = input.materials.filter(({ sharePct }) => sharePct > 0);
  const total = used.reduce((sum, { sharePct }) => sum + sharePct, 0);
  const shares = used.map(({ sharePct }) => sharePct / total);
  const litresPerKg = (densityKgM3: number | undefined, bulkingPct = 0) =>
    densityKgM3 === undefined ? null : (1000 / densityKgM3) * (1 + bulkingPct / 100);
  const roomOf = (dryMassKg: number, litres: number | null) =>
    dryMassKg === 0 ? 0 : litres === null ? null : dryMassKg * litres;
  const perKg = [
    ...used.map((material, index) =>
      roomOf(shares[index], litresPerKg(material.looseBulkDensityKgM3, material.bulkingPct)),
    ),
    roomOf(cementPct / 100, litresPerKg(cementBulkDensityKgM3)),
  ];
  const known = perKg.every((litres) => litres !== null);
  const unitVolumeL = known ? perKg.reduce<number>((sum, litres) => sum + litres!, 0) : null;
  const { lift } = input;
  const dryMassKg =
    input.batchDryMassKg ??
    (lift && liftDryMassKg(lift, cementPct)) ??
    (unitVolumeL === null ? FALLBACK_DRY_MASS_KG : input.mixerVolumeL! / unitVolumeL);
  const cementPerKg = perKg[perKg.length - 1];
  const allSolids = 1 + cementPct / 100;
  const line = (
    { id, name }: { id: string; name: string },
    share: number,
    moisturePct: number,
    litres: number | null,
  ): RecipeLine => ({
    id,
    name,
    sharePct: 100 * share,
    shareOfAllPct: (100 * share) / allSolids,
    dryMassKg: dryMassKg * share,
    moistMassKg: dryMassKg * share * (1 + moisturePct / 100),
    looseVolumeL: litres === null ? null : dryMassKg * litres,
    partsToCement: unitVolumeL !== null && cementPerKg ? litres! / cementPerKg : null,
    partsOfTen: unitVolumeL === null ? null : (10 * litres!) / unitVolumeL,
  });
  const materials = used.map((material, index) =>
    line(material, shares[index], material.moisturePct, perKg[index]),
  );
  const cement = line({ id: "cement", name: say`Cement` }, cementPct / 100, 0, cementPerKg);
  const inMaterialsKg = materials.reduce((sum, part) => sum + part.moistMassKg - part.dryMassKg, 0);
  const solidsKg = dryMassKg * (moistureOf === "all-solids" ? allSolids : 1);
  const targetKg = (solidsKg * targetMoisturePct) / 100;
  const surplusKg = Math.max(0, inMaterialsKg - targetKg);
  const findings: Finding[] = [...densityFindings(input), ...moistureFindings(input)];
  // A surplus below a gram in a tonne is rounding, not wet soil.
  const wet = surplusKg > 1e-6 * dryMassKg;
  if (wet) {
    findings.push({
      severity: "error",
      code: "materials-too-wet",
      file: input.file ?? "study.yaml",
      column: "materials",
      value: `${formatFixed((100 * inMaterialsKg) / solidsKg, 1)} %`,
      message: say`The materials bring more water than the mix may have: ${formatFixed(surplusKg, 1)} kg too much in this batch.`,
      expected: say`at most ${targetMoisturePct} % moisture`,
      wayOut: say`Dry the soil before mixing, cover the heaps, and measure the moisture again.`,
    });
  }
  const status = !known ? "incomplete" : wet ? "too-wet" : "ok";
  return {
    status,
    message: messageOf(status, cementPct, unitVolumeL === null && input.mixerVolumeL !== undefined),
    materials,
    cement,
    water: {
      targetKg,
      inMaterialsKg,
      toAddKg: Math.max(0, targetKg - inMaterialsKg),
      surplusKg,
    },
    dryMassKg,
    dryMassWithCementKg: dryMassKg * allSolids,
    rammedMassKg: dryMassKg * allSolids + Math.max(targetKg, inMaterialsKg),
    looseVolumeL: unitVolumeL === null ? null : dryMassKg * unitVolumeL,
    cementPct,
    cementOfAllPct: cementPct / allSolids,
    cementByVolumePct: unitVolumeL === null ? null : (100 * cementPerKg!) / unitVolumeL,
    targetMoisturePct,
    moistureOf,
    findings,
  };
}

/** Of soil and aggregate; the density counts the cement in. */
function liftDryMassKg(lift: LiftSize, cementPct: number): number {
  const solidsKg = lift.planAreaM2 * lift.compactedDepthM * lift.compactedDryDensityKgM3;
  return solidsKg / (1 + cementPct / 100);
}

function messageOf(status: Recipe["status"], cementPct: number, fallback: boolean): string {
  if (status === "too-wet") return say`The materials are wetter than the mix may be: dry the soil.`;
  if (status === "incomplete") {
    return say`A loose bulk density is missing, so volumes are not given.${fallback ? say` The mixer's volume cannot be used; masses are for ${FALLBACK_DRY_MASS_KG} kg of dry soil and aggregate.` : ""}`;
  }
  return say`Cement ${cementPct} % of the dry mass of soil and aggregate, cement not counted in that mass.`;
}
