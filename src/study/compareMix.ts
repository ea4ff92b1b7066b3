import { carbonSaving } from "../batch/carbonSaving.js";
import { elementQuantities } from "../batch/elementQuantities.js";
import { mixSaving } from "../batch/mixSaving.js";
import { recipe } from "../batch/recipe.js";
import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import type { ComparedMix } from "./comparedMix.js";
import { mixEmission, mixMoney, pricesOf } from "./mixSupply.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyConfig } from "./studyConfig.js";
import type { MixStudy } from "./studyResult.js";

/** Ids of `compare-blend` that no material has. */
export function compareFindings(config: StudyConfig): Finding[] {
  const { compareBlend, materials } = config;
  const known = materials.map(({ id }) => id);
  return Object.keys(compareBlend?.sharesPct ?? {}).flatMap((id): Finding[] =>
    known.includes(id)
      ? []
      : [
          {
            severity: "error",
            code: "unknown-material",
            file: STUDY_FILE,
            column: `compare-blend.shares.${id}`,
            value: id,
            message: say`No material of the study has this id.`,
            expected: say`one of ${known.join(", ")}`,
            wayOut: say`Correct the id, or add the material.`,
          },
        ],
  );
}

/** Works out the other mix at the element's size, with the same prices and factors. */
export function compareMix(
  config: StudyConfig,
  mix: Pick<MixStudy, "recipe" | "density" | "quantities" | "cost" | "carbon">,
): ComparedMix | undefined {
  const { compareBlend: other, materials, cement, element } = config;
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
    file: STUDY_FILE,
  });
  const { amounts } = elementQuantities(element, {
    recipe: batch,
    density: { best: other.densityKgM3 ?? mix.density.valueKgM3 },
    bagMassKg: cement.bagMassKg,
    file: STUDY_FILE,
  });
  if (!amounts) return undefined;
  const carbon = mixEmission(config, amounts.mix);
  const cost = mixMoney(config, amounts.mix);
  // By load each mix has its own count, so each is priced with its own.
  const saving =
    mix.cost && cost
      ? mixSaving({
          ...{ mix: mix.quantities.mix, other: amounts.mix },
          ...{ prices: pricesOf(config, mix.quantities.mix), file: STUDY_FILE },
          otherPrices: pricesOf(config, amounts.mix),
        })
      : undefined;
  return {
    ...{ name: other.name, basis: other.basis, quantities: amounts, cost, carbon, saving },
    savedCementKg: amounts.mix.cement.dryMassKg - mix.quantities.mix.cement.dryMassKg,
    savedCarbonKg: carbonSaving(mix.carbon, carbon),
  };
}
