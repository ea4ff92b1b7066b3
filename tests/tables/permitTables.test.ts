import { describe, expect, it } from "vitest";
import type { ReportBlock } from "../../src/blocks/block.js";
import { renderSite, writeSite } from "../../src/report/writeSite.js";
import { toleranceTable } from "../../src/tables/mix.js";
import { qualityChecksTable, qualityPlanTable, siteBlocksTable } from "../../src/tables/quality.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import { checklistBlock, decisionsTable, samplingTable } from "../../src/tables/studyEntries.js";
import { render, renderAll } from "../../src/words/render.js";
import { EXAMPLE_NAMES, exampleResult } from "../support/exampleResult.js";

function rowsOf(shown: ReportBlock): readonly (readonly string[])[] {
  const block = renderAll(shown);
  if (block.kind !== "table") throw new Error(`${block.kind} is no table`);
  for (const row of block.rows) expect(row).toHaveLength(block.columns.length);
  return block.rows;
}

describe("the tables of a submission", () => {
  it("prints tolerances in the study's units, and never less cement than is needed", async () => {
    const us = await exampleResult("bus-shelter");
    const rows = rowsOf(toleranceTable(us));
    const cement = rows.find(([name]) => name === us.config.cement.name);
    // 5.4085 % is needed: 5.40 would print less.
    expect(cement?.slice(1, 4)).toEqual(["5.50 %", "5.41 %", "5.78 %"]);
    expect(rows.find(([name]) => name === "Compacted lift thickness")?.[1]).toBe("4.00 in");
    expect(rows.find(([name]) => name.startsWith("Dry density"))?.[2]).toContain("lb/ft³");
  });

  it("says plainly what nobody entered", async () => {
    const { config, ...rest } = await exampleResult("bus-shelter");
    const bare = { ...rest, config };
    expect(qualityPlanTable(bare)).toMatchObject({ kind: "note" });
    expect(qualityChecksTable(bare)).toMatchObject({ kind: "note" });
    expect(siteBlocksTable(bare)).toMatchObject({ kind: "note" });
    expect(checklistBlock(config)).toMatchObject({ kind: "note" });
    expect(decisionsTable(config)).toMatchObject({ kind: "note" });
    expect(rowsOf(samplingTable(config)).every((row) => row[1] === "not stated")).toBe(true);
    expect(toleranceTable({ ...bare, mix: undefined })).toMatchObject({ tone: "warning" });
  });

  it("puts decisions into the order of their dates", () => {
    const entry = (date: string, what: string) => ({ date, what, why: "x" });
    const decisions = [
      entry("2026-05-02", "b"),
      entry("2026-04-30", "a"),
      entry("2026-05-02", "c"),
    ];
    const rows = rowsOf(decisionsTable({ decisions }));
    expect(rows.map(([, what]) => what)).toEqual(["a", "b", "c"]);
    expect(decisions[0].what).toBe("b");
  });

  it("gives the plan, the checks and the lots of the example", async () => {
    const result = await exampleResult("reading-room");
    const plan = renderAll(qualityPlanTable(result));
    if (plan.kind !== "keyValues") throw new Error("no plan");
    expect(plan.items.find(({ label }) => label === "Blocks in all")?.value).toBe("36");
    expect(rowsOf(qualityChecksTable(result)).map(([check]) => check)).toContain("Trial wall");
    const lots = rowsOf(siteBlocksTable(result));
    expect(lots).toHaveLength(5);
    // Mean of 2.12, 2.30, 2.35, 1.85 and 2.15.
    expect(lots[1][2]).toBe("2.15");
  });

  it("shows the steps of a lot that fails", async () => {
    const result = await exampleResult("reading-room");
    const { quality } = result;
    const [first, ...others] = quality!.site!.lots;
    const judgement = {
      ...first.judgement,
      status: "rejected" as const,
      steps: ["Stop.", "Look."],
    };
    const site = { ...quality!.site!, lots: [{ ...first, judgement }, ...others] };
    const table = renderAll(siteBlocksTable({ ...result, quality: { ...quality!, site } }));
    expect(table).toMatchObject({ notes: expect.arrayContaining(["Step 2: Look."]) });
  });
});

describe("the mix card", () => {
  it.each(EXAMPLE_NAMES)("of %s is one page, with cement, water, lifts and parts", async (name) => {
    const result = await exampleResult(name);
    const { files, findings } = await renderSite([mixCard(result)], result);
    expect(findings).toEqual([]);
    // Loaded late: it adds globals that jsdom must not see when it starts.
    const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
    const pdf = (files["mix-card.pdf"] as Uint8Array).slice();
    const read = await getDocument({ data: pdf, verbosity: 0 }).promise;
    expect(read.numPages).toBe(1);
    const { items } = await (await read.getPage(1)).getTextContent();
    // A name may stand on two lines.
    const words = items.map((item) => ("str" in item ? item.str : "")).join(" ");
    const text = words.replace(/\s+/g, " ");
    for (const { name: material, dryMassKg } of result.mix!.recipe.materials) {
      expect(text.includes(render(material))).toBe(dryMassKg > 0);
    }
    expect(text).toContain(`${result.mix!.record.elements[0].amounts.lifts}`);
    expect(text).toContain("Wet cement burns");
    expect(text).toContain("Silica dust");
    expect(text).toContain("Nothing here is an approval");
    await read.destroy();
  });

  it("says that there is no mix", async () => {
    const result = await exampleResult("bus-shelter");
    const { blocks } = mixCard({ ...result, mix: undefined });
    expect(blocks).toMatchObject([{ tone: "warning" }]);
  });

  it("does not overwrite what it was not told to", async () => {
    const { mkdtemp, readdir, rm, writeFile } = await import("node:fs/promises");
    const { join } = await import("node:path");
    const { tmpdir } = await import("node:os");
    const folder = await mkdtemp(join(tmpdir(), "loambook-card-"));
    const result = await exampleResult("bus-shelter");
    await writeFile(join(folder, "mine.txt"), "kept");
    await expect(writeSite(result, { outFolder: folder, card: true })).rejects.toThrow(RangeError);
    const { paths } = await writeSite(result, { outFolder: folder, replace: true, card: true });
    const card = ["mix-card.html", "mix-card.pdf"];
    expect(paths).toEqual(expect.arrayContaining(card.map((name) => join(folder, name))));
    expect(await readdir(folder)).toEqual(expect.arrayContaining(["mine.txt", ...card]));
    await rm(folder, { recursive: true });
  });
});
