import { describe, expect, it } from "vitest";
import { computeStudy } from "../../src/study/computeStudy.js";
import { studyFromFiles } from "../../src/study/studyFromFiles.js";
import { sizesTable } from "../../src/tables/grading.js";
import { render } from "../../src/words/render.js";
import ngi from "../reference/ngiSieves.json" with { type: "json" };

const encode = (text: string) => new TextEncoder().encode(text);

async function studyOf(curve: (typeof ngi.curves)[number], entry: string) {
  const rows = curve.sizesMm.map((size, index) => `${size},${curve.passingPct[index]}\n`);
  const { study, findings } = await studyFromFiles(
    new Map([
      [
        "study.yaml",
        encode(
          `format: loambook-study/1\n${entry}materials:\n  - { id: sand, name: Sand, role: sand, sieve: sand.csv }\n`,
        ),
      ],
      ["sand.csv", encode(`sieve (mm),passing (%)\n${rows.join("")}`)],
    ]),
  );
  if (!study) throw new Error(JSON.stringify(findings));
  const { result } = computeStudy(study, findings);
  if (!result) throw new Error("not computed");
  return result.materials[0];
}

describe("how a study reads its D-sizes", () => {
  it.each(ngi.curves)("on size, published curve $name to the last digit", async (published) => {
    const { sizes, fractions } = await studyOf(published, "d-sizes: size\n");
    for (const key of ["d10", "d30", "d60"] as const) {
      expect(sizes[key]).toBeCloseTo(published[key], 6);
    }
    expect(sizes.cu).toBeCloseTo(published.cu, 4);
    const { notes = [] } = sizesTable("Sizes", [{ name: "Sand", sizes, fractions }]);
    expect(notes.map((note) => render(note)).join(" ")).toContain("on size.");
  });

  it("on the logarithm of size where it says nothing", async () => {
    const [published] = ngi.curves;
    const { sizes, fractions } = await studyOf(published, "");
    expect((sizes.d10 as number) / published.d10).toBeLessThan(0.97);
    const { notes = [] } = sizesTable("Sizes", [{ name: "Sand", sizes, fractions }]);
    expect(notes.map((note) => render(note)).join(" ")).toContain("on the logarithm of size.");
  });
});
