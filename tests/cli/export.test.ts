import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { runCli, temporaryFolder } from "../support/runCli.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

const xlsx = createRequire(import.meta.url)("@e965/xlsx") as typeof import("@e965/xlsx");

describe("export", () => {
  it("writes every table and figure of the appendix and the whole result, and no formula", {
    timeout: 180_000,
  }, async () => {
    const copy = copyStudy("bus-shelter");
    const title = "=cmd|' /C calc'!A0";
    copy.edit("study.yaml", /title: .*/, `title: ${JSON.stringify(title)}`);
    copy.edit("study.yaml", /name: Mason sand/, `name: ${JSON.stringify("@SUM(1+1)*sand")}`);
    const out = join(temporaryFolder(), "out");
    const run = await runCli(["export", copy.folder, "--out", out]);
    expect(run.code, run.stderr).toBe(0);
    const names = readdirSync(out);
    const like = (pattern: RegExp) => names.filter((name) => pattern.test(name));
    const svgs = like(/^figure-\d\d-[a-z0-9-]+\.svg$/);
    expect(svgs.length).toBeGreaterThanOrEqual(8);
    expect(like(/\.png$/)).toEqual(svgs.map((name) => name.replace(".svg", ".png")));
    const tables = like(/^(table|list)-.*\.csv$/);
    expect(tables.length).toBeGreaterThanOrEqual(30);
    // Every file is listed, and every listed file is there.
    const [, ...contents]: string[][] = parse(readFileSync(join(out, "contents.csv"), "utf8"));
    expect(contents.map(([file]) => file).sort()).toEqual(like(/^(table|list|figure)-/).sort());
    let cells = 0;
    for (const file of tables) {
      for (const cell of (parse(readFileSync(join(out, file), "utf8")) as string[][]).flat()) {
        cells += 1;
        if (!/^-\d+(\.\d+)?$/.test(cell)) expect(cell, file).not.toMatch(/^[=+\-@\t\r]/);
      }
    }
    expect(cells).toBeGreaterThan(500);
    const book = xlsx.read(readFileSync(join(out, "tables.xlsx")));
    expect(book.SheetNames).toHaveLength(tables.length + 1);
    const kinds = book.SheetNames.flatMap((name) =>
      Object.entries(book.Sheets[name]).flatMap(([place, cell]) =>
        place.startsWith("!") ? [] : [cell.f === undefined ? cell.t : "formula"],
      ),
    );
    expect(kinds).toContain("n");
    expect(kinds).not.toContain("formula");
    const { study, findings } = await readStudy(copy.folder);
    const { result } = computeStudy(study as NonNullable<typeof study>, findings);
    expect(JSON.parse(readFileSync(join(out, "result.json"), "utf8"))).toEqual(
      JSON.parse(JSON.stringify(result)),
    );
    // Nothing is written over without being asked; what an earlier run left is named, not deleted.
    expect((await runCli(["export", copy.folder, "--out", out])).code).toBe(7);
    writeFileSync(join(out, "table-99-old.csv"), "old");
    writeFileSync(join(out, "mine.txt"), "mine");
    writeFileSync(join(out, tables[0]), "broken");
    const again = await runCli(["export", copy.folder, "--out", out, "--replace"]);
    expect(again.code, again.stderr).toBe(0);
    expect(again.stdout).toContain(
      "From an earlier export, and not part of this one:\n  table-99-old.csv\n",
    );
    expect(readdirSync(out).sort()).toEqual([...names, "mine.txt", "table-99-old.csv"].sort());
    expect(readFileSync(join(out, tables[0]), "utf8")).not.toBe("broken");
  });

  it("writes nothing for a study with errors", async () => {
    const copy = copyStudy("reading-room");
    copy.remove("sheets/blocks.csv");
    const folder = temporaryFolder();
    const { code, stdout } = await runCli(["export", copy.folder], folder);
    expect(code).toBe(3);
    expect(stdout).toBe("");
    expect(readdirSync(folder)).toEqual([]);
  });

  it("tells a place that cannot be written to", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "a-file"), "mine");
    const words = ["export", "data-examples/bus-shelter", "--out", join(folder, "a-file")];
    expect((await runCli(words)).code).toBe(7);
    expect(readFileSync(join(folder, "a-file"), "utf8")).toBe("mine");
  });
});

describe("schema", () => {
  it("prints the schemas of what goes in and what comes out", async () => {
    const study = await runCli(["schema", "study"]);
    expect(study.code).toBe(0);
    expect(JSON.parse(study.stdout).properties.format.const).toBe("loambook-study/1");
    const result = await runCli(["schema", "result"]);
    expect(JSON.parse(result.stdout).$defs.StudyResult.properties.format.const).toBe(
      "loambook-result/1",
    );
  });

  it("writes a file, and none over another", async () => {
    const out = join(temporaryFolder(), "s.json");
    const words = ["schema", "study", "--draft", "7", "--out", out];
    expect((await runCli(words)).code).toBe(0);
    expect(JSON.parse(readFileSync(out, "utf8")).$schema).toContain("draft-07");
    expect((await runCli(words)).code).toBe(7);
  });

  it.each([
    [["schema"]],
    [["schema", "sheet"]],
    [["schema", "study", "--draft", "4"]],
    [["schema", "result", "--draft", "7"]],
  ])("refuses %j", async (words) => expect((await runCli(words)).code).toBe(2));
});
