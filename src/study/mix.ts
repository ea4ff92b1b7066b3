import { carbonComparison, carbonSaving, type MixCarbon, mixCarbon } from "../batch/carbon.js";
import { CEMENT_CARBON_FACTORS, MATERIAL_CARBON_FACTORS } from "../batch/carbonFactors.js";
import { cementComparison } from "../batch/cementComparison.js";
import { type CostRange, costRange, type MaterialPriceRange, mixSaving } from "../batch/cost.js";
import { elementsFindings, elementsQuantities } from "../batch/element.js";
import { type Recipe, recipe } from "../batch/recipe.js";
import type { BuildableConfig } from "../entries/buildable.js";
import type { MaterialConfig } from "../entries/studyConfig.js";
import type { Finding } from "../findings/finding.js";
import type { SourcedRange } from "../quantities/sourcedRange.js";
import type { CompactionAnalysis } from "../soil/compaction/compactionTest.js";
import { curveDoubts } from "../strength/modelFindings.js";
import { say, type Text } from "../words/message.js";
import { type Shared, sharesOf } from "./blend.js";
import { leftTested, noMixFinding, refusals } from "./mixGuard.js";
import { leavesTests, mixDensity, toleranceFindings } from "./specifiedMix.js";
import {
  bagInMixKg,
  type DesignedMix,
  recordFindings,
  studyRecord,
  supplyTerms,
} from "./studyRecord.js";
import type { ComparedMix, MixStudy, StrengthStudy } from "./studyResult.js";

/** The mix to specify, and what the element needs of it; or findings that say what is missing for it. */
export function computeMix(
  config: BuildableConfig,
  blend: Shared,
  strength: StrengthStudy,
  compaction: CompactionAnalysis | undefined,
  {
    reasons = [],
    doubts = [],
    trialKey,
  }: Partial<Pick<DesignedMix, "reasons" | "doubts">> & { readonly trialKey?: string } = {},
): { readonly mix?: MixStudy; readonly findings: readonly Finding[] } {
  const entered = elementsFindings(config.elements);
  if (entered.length > 0) return { findings: entered };
  const density = mixDensity(strength, compaction);
  const { chosenCementPct } = strength;
  if (!compaction?.peak || !density || chosenCementPct === undefined) {
    return { findings: [noMixFinding(compaction, trialKey)] };
  }
  const sharesPct = sharesOf(blend);
  const { peak } = compaction;
  const { cementPct = chosenCementPct, moisturePct = peak.optimumWaterPct } =
    config.specified ?? {};
  const tests = { strength, compaction, peak, density, cementPct };
  const refused = refusals(config, sharesPct, tests);
  if (refused.length > 0) return { findings: refused };
  const design = { sharesPct, cementPct, moisturePct, density, reasons, doubts };
  const { record: made, water } = studyRecord(config, design, { compaction, strength });
  const { batch, total: amounts, parts } = made;
  const stated = { config, mix: { recipe: batch, water, density }, compaction, strength };
  const tolerances = toleranceFindings(stated);
  const beside = leftTested(moisturePct, strength, peak.optimumWaterPct);
  const findings = [...recordFindings(config, made), ...tolerances, ...beside];
  if (!amounts) return { findings };
  const { requirement } = config.strength;
  const open = [
    ...doubts,
    ...curveDoubts({ ...strength, requirement, cementPct }),
    ...[...beside, ...tolerances.filter(leavesTests)].map(({ message }) => message),
  ];
  const record = { ...made, doubts: open.length > 0 ? [DO_NOT_BUILD, ...open] : [] };
  const cost = mixMoney(config, amounts.mix);
  const carbon = mixEmission(config, amounts.mix);
  const { netVolumeM3, cementKgM3 } = amounts;
  const { concreteVolumeM3 = netVolumeM3, concreteCement } = config.carbon;
  const comparison = cementComparison({
    earthVolumeM3: netVolumeM3,
    earthCementKg: cementKgM3 * netVolumeM3,
    concreteVolumeM3,
    concreteCement,
    carbonFactor: cementFactor(config),
  });
  const mix = { record, recipe: batch, density, quantities: amounts, cost, carbon };
  return {
    mix: {
      ...mix,
      parts,
      water,
      comparison,
      carbonComparison: carbonComparison({
        carbon,
        wastePct: 100 * (amounts.madeVolumeM3 / amounts.netVolumeM3 - 1),
        concreteVolumeM3,
        concreteCementCarbonKg: comparison.concreteCementCarbonKg,
        aggregate: AGGREGATE,
      }),
      compared: compareMix(config, mix),
    },
    findings: [...findings, ...(cost?.findings ?? [])],
  };
}

/** Stands before the doubts about a mix, wherever they are printed. */
const DO_NOT_BUILD: Text = say`Do not build from this mix until the responsible person has settled in writing what follows.`;

/** The aggregate is that of the concrete that is compared with, too. */
const [SITE_SOIL, AGGREGATE, ROAD_HAUL] = MATERIAL_CARBON_FACTORS;

/** The factor of the cement: the user's own, or the first of the general ones. */
function cementFactor({ cement }: BuildableConfig): SourcedRange {
  return cement.carbon
    ? { ...cement.carbon, id: "own-cement", name: cement.name }
    : CEMENT_CARBON_FACTORS[0];
}

/** Prices and terms of supply by material. */
function pricesOf(config: BuildableConfig): Record<string, MaterialPriceRange> {
  const terms = supplyTerms(config);
  const bought = [...config.materials, { ...config.cement, id: "cement" }];
  return Object.fromEntries(
    bought.map(({ id, price, haul }) => [id, { price, haul, ...terms[id] }]),
  );
}

/** What a mix costs; undefined where nothing has a price. */
function mixMoney(config: BuildableConfig, mix: Recipe): CostRange | undefined {
  const { materials, cement } = config;
  const priced = [...materials, cement].some(({ price, haul }) => price ?? haul);
  return priced ? costRange(mix, pricesOf(config)) : undefined;
}

/** Carbon of a mix with the user's factors, the general ones where none was entered. */
function mixEmission(config: BuildableConfig, mix: Recipe): MixCarbon {
  const { materials, cement, carbon } = config;
  const general = ({ role }: MaterialConfig) => (role === "soil" ? SITE_SOIL : AGGREGATE);
  const own = materials.map((material) => {
    const { id, name, carbon: factor } = material;
    return [id, factor ? { ...factor, id: `own-${id}`, name } : general(material)];
  });
  const ways = [...materials, { ...cement, id: "cement" }].map(({ id, haulKm }) => [id, haulKm]);
  return mixCarbon(mix, {
    factors: { ...Object.fromEntries(own), cement: cementFactor(config) },
    haulKm: Object.fromEntries(ways),
    haulFactor: carbon.haul ?? ROAD_HAUL,
  });
}

/** Rammed as the mix itself the other has its range too; of another density no range is known. */
function comparedDensity(
  otherKgM3: number | undefined,
  { density: { valueKgM3 }, quantities }: Pick<MixStudy, "density" | "quantities">,
) {
  if (otherKgM3 !== undefined && otherKgM3 !== valueKgM3) return { best: otherKgM3 };
  const { cementKg, mix } = quantities;
  const at = (kilograms: number) => (valueKgM3 * kilograms) / mix.cement.dryMassKg;
  return { best: valueKgM3, low: at(cementKg.low), high: at(cementKg.high) };
}

/** Works out the other mix at the element's size, with the same prices and factors. */
function compareMix(
  config: BuildableConfig,
  mix: Pick<MixStudy, "recipe" | "density" | "quantities" | "cost" | "carbon">,
): ComparedMix | undefined {
  const { compareMix: other, materials, cement, elements } = config;
  if (!other) return undefined;
  const batch = recipe({
    materials: materials.map((material) => ({
      ...material,
      sharePct: other.sharesPct[material.id] ?? 0,
    })),
    cementPct: other.cementPct,
    cementBulkDensityKgM3: cement.looseBulkDensityKgM3,
    targetMoisturePct: other.moisturePct ?? mix.recipe.targetMoisturePct,
    batchDryMassKg: config.batchDryMassKg,
  });
  const { total: amounts } = elementsQuantities(elements, {
    recipe: batch,
    density: comparedDensity(other.densityKgM3, mix),
    bagMassKg: bagInMixKg(cement),
  });
  if (!amounts) return undefined;
  const carbon = mixEmission(config, amounts.mix);
  const cost = mixMoney(config, amounts.mix);
  const saving =
    mix.cost && cost
      ? mixSaving({ mix: mix.quantities.mix, other: amounts.mix, prices: pricesOf(config) })
      : undefined;
  return {
    name: other.name,
    basis: other.basis,
    quantities: amounts,
    cost,
    carbon,
    saving,
    savedCementKg: amounts.mix.cement.dryMassKg - mix.quantities.mix.cement.dryMassKg,
    savedCarbonKg: carbonSaving(mix.carbon, carbon),
  };
}
