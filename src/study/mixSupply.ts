import { CEMENT_CARBON_FACTORS, type SourcedRange } from "../batch/carbonFactors.js";
import { type CostRange, costRange } from "../batch/costRange.js";
import { lorryLoads } from "../batch/lorryLoads.js";
import { MATERIAL_CARBON_FACTORS } from "../batch/materialCarbonFactors.js";
import { type MixCarbon, mixCarbon } from "../batch/mixCarbon.js";
import type { MaterialPriceRange } from "../batch/priceRange.js";
import type { Recipe } from "../batch/recipeResult.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyConfig } from "./studyConfig.js";

const [SITE_SOIL, AGGREGATE, ROAD_HAUL] = MATERIAL_CARBON_FACTORS;

/** Sand and stone of the concrete that is compared with. */
export const CONCRETE_AGGREGATE = AGGREGATE;

/** The factor of the cement: the user's own, or the first of the general ones. */
export function cementFactor({ cement }: StudyConfig): SourcedRange {
  return cement.carbon
    ? { ...cement.carbon, id: "own-cement", name: cement.name }
    : CEMENT_CARBON_FACTORS[0];
}

/** Prices by material; loads are counted where haul is by load and the study knows the lorry. */
export function pricesOf(
  config: StudyConfig,
  mix: Recipe,
): Record<string, MaterialPriceRange | undefined> {
  const { materials, cement, site } = config;
  const lines = [...mix.materials, mix.cement];
  const bought = [...materials, { ...cement, id: "cement" }];
  return Object.fromEntries(
    bought.map(({ id, price, haul, lossPct = 0 }) => {
      const line = lines.find((one) => one.id === id);
      const more = 1 + lossPct / 100;
      const loads =
        line && site.lorry
          ? lorryLoads(
              {
                moistMassKg: line.moistMassKg * more,
                looseVolumeL: line.looseVolumeL === null ? null : line.looseVolumeL * more,
              },
              site.lorry,
            ).loads
          : undefined;
      const bagMassKg = id === "cement" ? cement.bagMassKg : undefined;
      return [id, { price, haul, wastePct: lossPct, bagMassKg, loads }];
    }),
  );
}

/** What a mix costs; undefined where nothing has a price. */
export function mixMoney(config: StudyConfig, mix: Recipe): CostRange | undefined {
  const { materials, cement } = config;
  const priced = [...materials, cement].some(({ price, haul }) => price ?? haul);
  return priced ? costRange(mix, pricesOf(config, mix), { file: STUDY_FILE }) : undefined;
}

/** Carbon of a mix with the user's factors, the general ones where none was entered. */
export function mixEmission(config: StudyConfig, mix: Recipe): MixCarbon {
  const { materials, cement, carbon } = config;
  const own = materials.map(({ id, name, role, carbon: factor }) => [
    id,
    factor ? { ...factor, id: `own-${id}`, name } : role === "soil" ? SITE_SOIL : AGGREGATE,
  ]);
  const ways = [...materials, { ...cement, id: "cement" }].map(({ id, haulKm }) => [id, haulKm]);
  return mixCarbon(mix, {
    factors: { ...Object.fromEntries(own), cement: cementFactor(config) },
    haulKm: Object.fromEntries(ways),
    haulFactor: carbon.haul ?? ROAD_HAUL,
  });
}
