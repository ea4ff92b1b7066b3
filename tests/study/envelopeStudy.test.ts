import { describe, expect, it } from "vitest";
import { openStudy } from "../../src/study/openStudy.js";
import { envelopeTables } from "../../src/tables/guidance.js";
import { render, renderAll } from "../../src/words/render.js";
import { copyStudy } from "../support/studyCopy.js";

const BAND = "target: { band: guidance, objective: nearest-middle }\n";

describe("a study that aims at a band", () => {
  it("takes power curves between two exponents of its own, and says where the blend leaves them", async () => {
    const study = copyStudy("reading-room");
    study.edit("study.yaml", /^target:\n(?: .*\n)+/m, BAND);
    study.edit("study.yaml", /^guidance: .*\n/m, "guidance: power-20mm-0.2-0.25\n");
    const result = await openStudy(study.folder);
    const { blend, guidance } = result;
    expect(blend!.target!.kind).toBe("band");
    expect(guidance!.at(-1)!.check.entry).toMatchObject({ id: "power-20mm-0.2-0.25", own: true });
    const [table] = envelopeTables(result).map((each) => renderAll(each));
    expect(table.caption).toBe(
      "The blend against the envelope of Power curves between the exponents 0.2 and 0.25, maximum size 20 mm",
    );
    // What the solver left outside is what the table says is outside, size by size.
    const outside = blend!.points.map(({ differencePct }) => Math.abs(differencePct).toFixed(1));
    table.rows.forEach((row, index) => {
      const verdict = `${row[4]}`;
      expect(verdict === "inside" ? "0.0" : /by (\S+) points/.exec(verdict)?.[1]).toBe(
        outside[index],
      );
      expect(row[5] === "–").toBe(verdict === "inside");
    });
  });

  it("does not take limits of the part finer than 2 mm for limits of the whole", async () => {
    const study = copyStudy("reading-room");
    study.edit("study.yaml", /^target:\n(?: .*\n)+/m, BAND);
    study.edit("study.yaml", /^guidance: .*\n/m, "guidance: fdot-sand-clay\n");
    await expect(openStudy(study.folder)).rejects.toMatchObject({
      findings: expect.arrayContaining([
        expect.objectContaining({ severity: "error", code: "no-band" }),
      ]),
    });
  });

  it("counts the sizes of its own sheet by their weights", async () => {
    const study = copyStudy("reading-room");
    study.edit("study.yaml", /^target:\n(?: .*\n)+/m, BAND);
    study.edit("study.yaml", /^limits:\n(?: .*\n)+/m, "");
    study.edit("study.yaml", /^compaction: /m, "envelope: sheets/envelope.csv\ncompaction: ");
    const sheet = (...weights: readonly number[]) => {
      const rows = ["0.063,8,9", "0.5,60,61", "2,61,65"];
      const table = rows.map((row, index) => `${row},${weights[index]}\n`).join("");
      study.write(
        "sheets/envelope.csv",
        `title,Our pit\nsource,trial walls\nsieve (mm),low (%),high (%),weight\n${table}`,
      );
    };
    sheet(50, 1, 1);
    const fines = await openStudy(study.folder);
    sheet(1, 50, 1);
    const sand = await openStudy(study.folder);
    const missedAt = ({ blend }: typeof fines, sizeMm: number) =>
      Math.abs(blend!.points.find((point) => point.sizeMm === sizeMm)!.differencePct);
    expect(missedAt(fines, 0.063)).toBeLessThan(missedAt(sand, 0.063));
    expect(missedAt(sand, 0.5)).toBeLessThan(missedAt(fines, 0.5));
    expect(render(sand.guidance![0].check.entry.title)).toBe("Our pit");
    const told = sand.findings.filter(({ code }) => code === "blend-outside-band");
    expect(told.length).toBeGreaterThan(0);
    expect(render(told[0].message)).toMatch(/points outside the band; .+ causes most of it\.$/);
  });
});
