import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { writeReport } from "../../src/report/writeReport.js";
import { META, markdownCell, notebookOf } from "./sampleNotebook.js";

const notebook = notebookOf([markdownCell("# T\n\n## Soil\n\nSandy.")]);
let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "loambook-report-"));
});
afterAll(() => rm(folder, { recursive: true }));

describe("writeReport", () => {
  test("writes both files into a new folder, and the same bytes again", async () => {
    const outFolder = join(folder, "deep", "new");
    const { htmlPath, pdfPath, findings } = await writeReport({ notebook, meta: META, outFolder });
    expect(findings).toEqual([]);
    expect((await readdir(outFolder)).sort()).toEqual(["report.html", "report.pdf"]);
    const before = [await readFile(htmlPath), await readFile(pdfPath)];
    await writeReport({ notebook, meta: META, outFolder, replace: true });
    expect([await readFile(htmlPath), await readFile(pdfPath)]).toEqual(before);
    expect(await readdir(join(folder, "deep"))).toEqual(["new"]);
    expect(before[0]!.includes(folder)).toBe(false);
    expect(before[1]!.includes(folder)).toBe(false);
  });

  test("leaves a folder that holds something alone unless told to replace it", async () => {
    const outFolder = join(folder, "mine");
    await mkdir(outFolder);
    await writeFile(join(outFolder, "notes.txt"), "keep");
    await expect(writeReport({ notebook, meta: META, outFolder })).rejects.toThrow(RangeError);
    expect(await readdir(outFolder)).toEqual(["notes.txt"]);
    await writeReport({ notebook, meta: META, outFolder, replace: true });
    expect((await readdir(outFolder)).sort()).toEqual(["notes.txt", "report.html", "report.pdf"]);
    expect(await readFile(join(outFolder, "notes.txt"), "utf8")).toBe("keep");
  });

  test("replaces an older report", async () => {
    const outFolder = join(folder, "older");
    await mkdir(outFolder);
    await writeFile(join(outFolder, "report.html"), "old");
    const { htmlPath } = await writeReport({ notebook, meta: META, outFolder, replace: true });
    expect((await readFile(htmlPath, "utf8")).startsWith("<!doctype html>")).toBe(true);
  });

  test("writes nothing when the report cannot be made", async () => {
    const outFolder = join(folder, "never");
    const meta = { ...META, date: "2024-13-01" };
    await expect(writeReport({ notebook, meta, outFolder, replace: true })).rejects.toThrow(
      RangeError,
    );
    expect(await readdir(folder)).not.toContain("never");
    expect((await readdir(folder)).filter((name) => name.startsWith("."))).toEqual([]);
  });
});
