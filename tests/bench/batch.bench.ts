import { bench, describe } from "vitest";
import { elementQuantities } from "../../src/batch/element.js";
import { type MixRecordInput, mixRecord } from "../../src/batch/mixRecord.js";
import { recipe } from "../../src/batch/recipe.js";
import { weighOut } from "../../src/batch/weighOut.js";

const input = {
  materials: [
    { id: "soil", name: "Soil", sharePct: 45, looseBulkDensityKgM3: 1180, moisturePct: 7 },
    { id: "sand", name: "Sand", sharePct: 25, looseBulkDensityKgM3: 1460, moisturePct: 4 },
    { id: "fine", name: "Fine sand", sharePct: 10, looseBulkDensityKgM3: 1370, moisturePct: 5 },
    { id: "gravel", name: "Gravel", sharePct: 20, looseBulkDensityKgM3: 1540, moisturePct: 1 },
  ],
  cementPct: 7.5,
  cementBulkDensityKgM3: 1200,
  targetMoisturePct: 9,
  mixerVolumeL: 250,
};
const batch = recipe(input);
const recordInput = (cementBy: "scale" | "bucket"): MixRecordInput => ({
  ...input,
  state: "proposed",
  reasons: [],
  water: { tolerancePct: 1 },
  tolerances: {
    shares: Object.fromEntries(
      input.materials.map(({ id, sharePct }) => [
        id,
        { low: 0.95 * sharePct, high: 1.05 * sharePct },
      ]),
    ),
    cement: { low: 7.1, high: 7.9 },
  },
  buckets: { bucketL: 10, step: 0.5, cementBy },
});

describe("a mix of four materials", () => {
  bench("recipe", () => {
    recipe(input);
  });
  bench("one record: whole parts, half buckets of 10 L, cement weighed", () => {
    mixRecord(recordInput("scale"));
  });
  bench("one record: whole parts, half buckets of 10 L, cement by bucket", () => {
    mixRecord(recordInput("bucket"));
  });
  bench("weighed to 10 g", () => {
    weighOut(batch, 0.01);
  });
  bench("quantities of a ring", () => {
    elementQuantities(
      {
        kind: "ring",
        plan: { shape: "rectangle", lengthM: 6, widthM: 4 },
        ...{ thicknessM: 0.4, heightM: 2.5, compactedLiftM: 0.1, wastePct: 5 },
      },
      { recipe: batch, density: { best: 1900, low: 1850, high: 1950 }, bagMassKg: 25 },
    );
  });
});
