import { describe, expect, it } from "vitest";
import { passingAtSize } from "../../src/grading/curve.js";
import { render } from "../../src/words/render.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

type Edit = readonly [from: string | RegExp, to: string];

async function screened(at: string | undefined, ...edits: readonly Edit[]) {
  const copy = copyStudy("reading-room");
  if (at !== undefined) copy.edit("study.yaml", "\ntested:\n", `\ntested:\n  screened-at: ${at}\n`);
  for (const [from, to] of edits) copy.edit("study.yaml", from, to);
  const { study, findings: reading } = await readStudy(copy.folder);
  const { result, findings } = computeStudy(study!, reading);
  return { result: result!, findings, codes: findings.map(({ code }) => code) };
}

const peakOf = ({ compaction }: Awaited<ReturnType<typeof screened>>["result"]) =>
  compaction!.peak!;

describe("coarse grains that were taken out before compaction", () => {
  it("correct density and water of the test, by hand", async () => {
    const whole = await screened(undefined);
    const part = await screened("10 mm");
    const { materials } = whole.result;
    // 55 % soil, 13 % sand, 32 % gravel; only the gravel of 2670 kg/m³ has grains above 10 mm.
    const coarser = (id: string) =>
      100 - passingAtSize(materials.find((one) => one.id === id)!.curve, 10)!;
    expect([coarser("site-soil"), coarser("river-sand")]).toEqual([expect.any(Number), 0]);
    const gravel = 0.32 * coarser("gravel");
    const soil = 0.55 * coarser("site-soil");
    const share = (gravel + soil) / 100;
    expect(share).toBeGreaterThan(0.05);
    const grains = (gravel + soil) / (gravel / 2670 + soil / 2680);
    const { waterContentPct, dryDensityKgM3 } = whole.result.compaction!.points[2];
    const corrected = part.result.compaction!.points[2];
    expect(corrected.waterContentPct).toBeCloseTo((1 - share) * waterContentPct, 9);
    expect(corrected.dryDensityKgM3).toBeCloseTo(
      1 / ((1 - share) / dryDensityKgM3 + share / grains),
      6,
    );
    expect(corrected.bulkDensityKgM3).toBeCloseTo(
      corrected.dryDensityKgM3 * (1 + corrected.waterContentPct / 100),
      9,
    );
    // The mix takes less water and must be denser.
    expect(peakOf(part.result).optimumWaterPct).toBeLessThan(peakOf(whole.result).optimumWaterPct);
    expect(part.result.mix!.recipe.targetMoisturePct).toBe(peakOf(part.result).optimumWaterPct);
    expect(part.codes).toContain("compaction-corrected");
    expect(part.result.mix!.record.doubts).toEqual([]);
  });

  it("say nothing where no grain is as coarse", async () => {
    const whole = await screened(undefined);
    const none = await screened("63 mm");
    expect(none.codes).toEqual(whole.codes);
    expect(peakOf(none.result)).toEqual(peakOf(whole.result));
  });

  it("are told on every card where they are many, or where it is not known how many", async () => {
    const many = await screened("1 mm");
    expect(many.codes).toContain("much-screened-off");
    expect(many.result.mix!.record.doubts.map((text) => render(text)).join()).toMatch(
      /\d\d\.\d % of the blend was taken out before compaction\. .* makes that doubtful/,
    );
    const unknown = await screened("10 mm", [/ {4}particle-density: 2670 kg\/m3\n/, ""]);
    expect(unknown.codes).toContain("screened-not-corrected");
    expect(unknown.result.mix!.record.doubts.map((text) => render(text)).join()).toContain(
      "how many is not known",
    );
    const whole = await screened(undefined);
    expect(peakOf(unknown.result).maximumDryDensityKgM3).toBe(
      peakOf(whole.result).maximumDryDensityKgM3,
    );
  });
});
