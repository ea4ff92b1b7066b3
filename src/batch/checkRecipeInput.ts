import { checkAbove, checkNotBelow } from "./checkAmount.js";
import type { RecipeInput } from "./recipeInput.js";

/** Shares written with two decimals still count as adding up. */
const SHARE_TOLERANCE = 0.05;

/** Refuses a recipe that no batch could have, naming the entry. */
export function checkRecipeInput(input: RecipeInput): void {
  const { materials, cementPct, targetMoisturePct, batchDryMassKg, mixerVolumeL, lift } = input;
  if (materials.length === 0) {
    throw new RangeError("invalid `materials`: []; expected at least one");
  }
  const ids = new Set(["cement"]);
  materials.forEach((material, index) => {
    if (ids.has(material.id)) {
      throw new RangeError(
        `invalid \`materials[${index}].id\`: ${material.id}; expected a name of its own, not "cement"`,
      );
    }
    ids.add(material.id);
    checkNotBelow(`materials[${index}].sharePct`, material.sharePct);
    checkNotBelow(`materials[${index}].moisturePct`, material.moisturePct);
    checkNotBelow(`materials[${index}].bulkingPct`, material.bulkingPct ?? 0);
    if (material.looseBulkDensityKgM3 !== undefined) {
      checkAbove(`materials[${index}].looseBulkDensityKgM3`, material.looseBulkDensityKgM3);
    }
    if (material.particleDensityKgM3 !== undefined) {
      checkAbove(`materials[${index}].particleDensityKgM3`, material.particleDensityKgM3);
    }
  });
  const total = materials.reduce((sum, { sharePct }) => sum + sharePct, 0);
  if (Math.abs(total - 100) > SHARE_TOLERANCE) {
    throw new RangeError(`invalid \`materials\` shares: sum ${total}; expected 100`);
  }
  checkNotBelow("cementPct", cementPct);
  checkNotBelow("targetMoisturePct", targetMoisturePct);
  if (input.cementBulkDensityKgM3 !== undefined) {
    checkAbove("cementBulkDensityKgM3", input.cementBulkDensityKgM3);
  }
  const sizes = [batchDryMassKg, mixerVolumeL, lift].filter((size) => size !== undefined);
  if (sizes.length !== 1) {
    throw new TypeError(
      `invalid batch size: batchDryMassKg ${batchDryMassKg}, mixerVolumeL ${mixerVolumeL}, lift ${lift === undefined ? "undefined" : "given"}; expected one of the three`,
    );
  }
  if (batchDryMassKg !== undefined) checkAbove("batchDryMassKg", batchDryMassKg);
  if (mixerVolumeL !== undefined) checkAbove("mixerVolumeL", mixerVolumeL);
  if (lift !== undefined) {
    checkAbove("lift.planAreaM2", lift.planAreaM2);
    checkAbove("lift.compactedDepthM", lift.compactedDepthM);
    checkAbove("lift.compactedDryDensityKgM3", lift.compactedDryDensityKgM3);
  }
}
