import { describe, expect, it } from "vitest";
import { notTestedTable } from "../../src/tables/guidance.js";
import { render } from "../../src/words/render.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

/** The reading room with a line under its soil. */
async function withChemistry(entries: string) {
  const copy = copyStudy("reading-room");
  const at = "    particle-density: 2680 kg/m3\n";
  if (entries !== "") copy.edit("study.yaml", at, `${at}${entries}`);
  const { study, findings } = await readStudy(copy.folder);
  return study ? computeStudy(study, findings) : { findings, result: undefined };
}

const openOf = (found: Awaited<ReturnType<typeof withChemistry>>) =>
  notTestedTable(found.result!)
    .rows.filter(([name]) => name === "Site soil, two pits mixed")
    .map(([, what]) => render(what));

describe("organic matter, sulphates and salts of a soil", () => {
  it("count as not tested until the study says a value", async () => {
    for (const entries of ["", "    chemistry: { organic-matter: not tested }\n"]) {
      const found = await withChemistry(entries);
      expect(openOf(found)).toEqual(["organic matter", "soluble salts", "sulphates"]);
      const told = found.findings.filter(({ code }) => code.endsWith("not-tested"));
      expect(told.map(({ code, message }) => [code, message])).toEqual([
        [
          "guidance-not-tested",
          expect.stringContaining("not tested here: organic matter, soluble salts"),
        ],
        [
          "chemistry-not-tested",
          "Site soil, two pits mixed was not tested, or the study does not say so, for: sulphates.",
        ],
      ]);
    }
  });

  it("are held against the recommendation once they are tested", async () => {
    const found = await withChemistry(
      "    chemistry: { organic-matter: 0.8 %, sulphates: 0.05 %, soluble-salts: 2.4 % }\n",
    );
    expect(openOf(found)).toEqual([]);
    const codes = found.findings.map(({ code }) => code);
    expect(codes.filter((code) => code.endsWith("not-tested"))).toEqual([]);
    expect(found.findings.filter(({ code }) => code === "chemistry-outside")).toMatchObject([
      {
        severity: "warning",
        column: "materials.0.chemistry",
        value: "2.4 %",
        expected: "at most 2 %",
      },
    ]);
    const allowed = await withChemistry(
      "    chemistry: { organic-matter: 0.8 %, sulphates: 0.05 %, soluble-salts: 2 % }\n",
    );
    expect(allowed.findings.map(({ code }) => code)).not.toContain("chemistry-outside");
    const { others } = found.result!.guidance[0].check;
    expect(others!.map(({ quantity, measured, verdict }) => [quantity, measured, verdict])).toEqual(
      expect.arrayContaining([
        ["organicPct", 0.8, "inside"],
        ["saltsPct", 2.4, "outside"],
      ]),
    );
    const { probability } = found.result!.guidance[0];
    const organic = probability.others!.find(({ quantity }) => quantity === "organicPct")!;
    expect([organic.verdict, organic.probability]).toEqual(["inside", 1]);
  });

  it("are judged of soils only: a sand that was tested changes nothing", async () => {
    const copy = copyStudy("reading-room");
    const at = "    role: sand\n";
    copy.edit("study.yaml", at, `${at}    chemistry: { soluble-salts: 9 % }\n`);
    const { study, findings } = await readStudy(copy.folder);
    const { result, findings: all } = computeStudy(study!, findings);
    const config = result!.config.materials.filter(({ chemistry }) => chemistry !== undefined);
    expect(config.map(({ role }) => role)).toEqual(["sand"]);
    expect(all.map(({ code }) => code)).not.toContain("chemistry-outside");
    expect(result!.guidance.map(({ name }) => render(name))).toEqual([
      "Site soil, two pits mixed",
      "Blend",
    ]);
  });

  it("are refused where they are no share of the mass", async () => {
    const { findings } = await withChemistry("    chemistry: { sulphates: none }\n");
    expect(findings).toMatchObject([
      { severity: "error", column: "materials.0.chemistry.sulphates" },
    ]);
    expect(findings[0].expected).toContain("0 to 60 %");
  });

  it("the blend's rammed density is held against a recommendation on density", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "guidance: walker-2005", "guidance: lehmbau-regeln");
    const { study, findings } = await readStudy(copy.folder);
    const { result } = computeStudy(study!, findings);
    const blend = result!.guidance.find(({ name }) => render(name) === "Blend")!;
    const density = blend.check.others!.find(({ quantity }) => quantity === "dryDensityKgM3")!;
    expect(density.measured).toBe(result!.mix!.density.valueKgM3);
    expect(density.verdict).not.toBe("not measured");
  });
});
