import { expect, it } from "vitest";
import { recipe } from "../../src/batch/recipe.js";
import { scaleRecipe } from "../../src/batch/scaleRecipe.js";
import { toMassShares } from "../../src/batch/volumeParts.js";
import { parseSieve } from "../../src/quantities/sieves.js";

// Common practice, no source: seven parts of soil, two of sand, one of cement; soil screened at a
// quarter inch; half the recipe is three and a half to one to a half.

it("half the recipe is three and a half to one to a half", () => {
  const parts = [
    { id: "soil", name: "Soil", parts: 7, looseBulkDensityKgM3: 1200 },
    { id: "sand", name: "Sand", parts: 2, looseBulkDensityKgM3: 1500 },
  ];
  const { materials, cementPct } = toMassShares(parts, { parts: 1, looseBulkDensityKgM3: 1200 });
  const whole = recipe({
    materials: materials.map((material, index) => ({
      ...material,
      name: parts[index].name,
      looseBulkDensityKgM3: parts[index].looseBulkDensityKgM3,
      moisturePct: 0,
    })),
    cementPct,
    cementBulkDensityKgM3: 1200,
    targetMoisturePct: 9,
    batchDryMassKg: 100,
  });
  const half = scaleRecipe(whole, 0.5);
  const volumes = [...half.materials, half.cement].map(
    ({ looseVolumeL }) => looseVolumeL as number,
  );
  const unit = (whole.cement.looseVolumeL as number) / 1;
  expect(volumes.map((litres) => litres / unit)).toEqual([
    expect.closeTo(3.5, 9),
    expect.closeTo(1, 9),
    expect.closeTo(0.5, 9),
  ]);
});

it("a quarter inch is the 6.3 mm sieve", () => {
  expect(parseSieve("1/4 in")).toBe(6.3);
});
