import { describe, expect, it } from "vitest";
import { strengthBands } from "../../src/strength/regression/bounds.js";
import { fitStrength } from "../../src/strength/regression/fit.js";
import { strengthByAge } from "../../src/strength/strengthByAge.js";
import { render } from "../../src/words/render.js";
import { blocksOf, SIXTEEN } from "./blocks.js";
import { near } from "./near.js";

const BLOCKS = [7, 28, 56].flatMap((ageDays) =>
  blocksOf(SIXTEEN).map((block) => ({
    ...block,
    id: `${block.id}-${ageDays}`,
    ageDays,
    strengthMpa: block.strengthMpa + 0.4 * Math.log(ageDays / 28),
  })),
);
const OPTIONS = { model: "linear", ageDays: 28, covariates: ["ln age"] } as const;

describe("strengthByAge", () => {
  it("rises by its coefficient a unit of ln age, and is the curve at the age of the requirement", () => {
    const { ages, status } = strengthByAge(BLOCKS, OPTIONS, 6);
    expect([status, ages.map(({ ageDays, blocks }) => [ageDays, blocks])]).toEqual([
      "ok",
      [
        [7, 4],
        [28, 4],
        [56, 4],
      ],
    ]);
    near(ages[2].meanMpa - ages[0].meanMpa, 0.4 * Math.log(8), { rel: 1e-9, abs: 0 }, "rise");
    const [band] = strengthBands(fitStrength(BLOCKS, OPTIONS), { cementPct: [6] });
    expect(ages[1]).toMatchObject({
      meanMpa: band.meanMpa,
      predictionLowMpa: band.predictionLowMpa,
    });
  });

  it("has no curve with a block of age 0, whose logarithm is none", () => {
    const fresh = { ...BLOCKS[0], id: "N", ageDays: 0 };
    const found = strengthByAge([...BLOCKS, fresh], OPTIONS, 6);
    expect(found.status).toBe("no-fit");
    expect(render(found.message)).toContain("block N was crushed at 0 days");
    expect(strengthByAge([...BLOCKS, { ...fresh, ageDays: 1 }], OPTIONS, 6).status).toBe("ok");
  });

  it("tells why there is no curve, and refuses a regression without age", () => {
    expect(strengthByAge(BLOCKS.slice(0, 2), OPTIONS, 6).status).toBe("no-fit");
    expect(() => strengthByAge(BLOCKS, { ...OPTIONS, covariates: [] }, 6)).toThrow("`ln age`");
  });
});
