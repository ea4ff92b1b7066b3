import { describe, expect, it } from "vitest";
import { includedSpecimens } from "../../src/strength/includedBlocks.js";
import { leastCement } from "../../src/strength/leastCement.js";
import { leastCementOfOthers } from "../../src/strength/otherBlocks.js";
import { fitStrength } from "../../src/strength/regression/fit.js";
import { blocksOf, SIXTEEN } from "./blocks.js";

const FIT = { model: "linear", ageDays: 28 } as const;
const REQUIREMENT = { strengthMpa: 2.6, statistic: "tolerance", confidence: 0.95 } as const;
/** Two blocks far below their groups, one that somebody left out, one of another age. */
const BLOCKS = blocksOf([...SIXTEEN, [6, 0.9], [10, 2.1], [8, 3.3], [8, 2.2]]).map((block) => {
  if (block.id === "B19") return { ...block, excluded: "a corner broke off" };
  return block.id === "B20" ? { ...block, ageDays: 7, excluded: "another day" } : block;
});

describe("the least cement with other blocks", () => {
  it("is what a sheet without the block, or with it, gives by itself", () => {
    const specimens = BLOCKS.filter(({ id }) => id !== "B18");
    const { far } = includedSpecimens({ file: "blocks.csv", specimens }, FIT);
    expect(far.map(({ id }) => id)).toEqual(["B17"]);
    const found = leastCementOfOthers(BLOCKS, ["B17", "B18"], {
      fit: FIT,
      requirement: REQUIREMENT,
      roundUpToPct: 0.25,
    });
    expect(found.map(({ without, withBack }) => [without, withBack])).toEqual([
      [["B17"], []],
      [["B18"], []],
      [[], ["B19"]],
      [["B17", "B18"], []],
    ]);
    const alone = (ids: readonly string[]) => {
      const blocks = BLOCKS.filter(({ id }) => !ids.includes(id));
      const { excluded: _, ...back } = BLOCKS[18];
      const sheet = ids.length === 0 ? [...BLOCKS.slice(0, 18), back] : blocks;
      const { cementPct, batchablePct } = leastCement(fitStrength(sheet, FIT), REQUIREMENT, {
        roundUpToPct: 0.25,
      });
      return [cementPct, batchablePct];
    };
    expect(found.map(({ cementPct, batchablePct }) => [cementPct, batchablePct])).toEqual(
      [["B17"], ["B18"], [], ["B17", "B18"]].map(alone),
    );
    // Both far blocks together decide whether there is an answer at all.
    expect(found.at(-1)!.status).toBe("ok");
    const { status } = leastCement(fitStrength(BLOCKS, FIT), REQUIREMENT);
    expect(status).toBe("above-range");
  });

  it("is nothing to show where no block is odd", () => {
    const asked = { fit: FIT, requirement: REQUIREMENT };
    expect(leastCementOfOthers(blocksOf(SIXTEEN), [], asked)).toEqual([]);
    // One far block is told once, and eight of a kind at the most, before all of them together.
    expect(leastCementOfOthers(blocksOf(SIXTEEN), ["B3"], asked)).toHaveLength(1);
    const nine = Array.from({ length: 9 }, (_, index) => `B${index + 1}`);
    expect(
      leastCementOfOthers(blocksOf(SIXTEEN), nine, asked).map(({ without }) => without),
    ).toEqual([...nine.slice(0, 8).map((id) => [id]), nine]);
  });
});
