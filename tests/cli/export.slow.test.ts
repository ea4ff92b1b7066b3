import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { afterAll, expect, it } from "vitest";
import { runCli, temporaryFolder } from "../support/runCli.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

const xlsx = createRequire(import.meta.url)("@e965/xlsx") as typeof import("@e965/xlsx");

/** The export of an English study, which the Spanish one is held against. */
const english = mkdtempSync(join(tmpdir(), "loambook-export-"));
afterAll(() => rmSync(english, { recursive: true, force: true }));

it("export writes every table and figure of the appendix and the whole result, and no formula", async () => {
  const copy = copyStudy("reading-room");
  const title = "=cmd|' /C calc'!A0";
  copy.edit("study.yaml", /title: .*/, `title: ${JSON.stringify(title)}`);
  copy.edit("study.yaml", /name: River sand 0\/4/, `name: ${JSON.stringify("@SUM(1+1)*sand")}`);
  const out = english;
  const left = ["contents.csv", "mine.txt", "table-99-old.csv"];
  for (const name of left) writeFileSync(join(out, name), "mine");
  const words = ["export", copy.folder, "--out", out];
  // Nothing is written over without being asked.
  expect((await runCli(words)).code).toBe(7);
  expect(readdirSync(out).sort()).toEqual(left);
  expect(readFileSync(join(out, "contents.csv"), "utf8")).toBe("mine");
  const run = await runCli([...words, "--replace"]);
  expect(run.code, run.stderr).toBe(0);
  const names = readdirSync(out).filter((name) => name !== "table-99-old.csv");
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
  // What an earlier run left is named, not deleted; what is somebody else's stays.
  expect(run.stdout).toContain(
    "From an earlier export, and not part of this one:\n  table-99-old.csv\n",
  );
  expect(readFileSync(join(out, "mine.txt"), "utf8")).toBe("mine");
});

it("export of a Spanish study is in Spanish, its numbers for programs as in every language", async () => {
  const copy = copyStudy("reading-room");
  copy.edit("study.yaml", "title:", "language: es\ntitle:");
  const out = temporaryFolder();
  const run = await runCli(["export", copy.folder, "--out", out, "--replace"]);
  expect(run.code, run.stderr).toBe(0);
  const rowsOf = (folder: string) => (name: RegExp) => {
    const file = readdirSync(folder).find((each) => name.test(each)) as string;
    return parse(readFileSync(join(folder, file), "utf8")) as string[][];
  };
  const spanish = rowsOf(out);
  expect(spanish(/^contents/)[0]).toEqual(["archivo", "título", "notas o texto alternativo"]);
  const numbers = (rows: string[][]) =>
    rows.flat().filter((cell) => /^-?\d+([.,]\d+)?$/.test(cell));
  const shares = numbers(rowsOf(english)(/^table-\d\d-the-proposed-blend-beside/));
  expect(shares).toEqual(expect.arrayContaining(["54.9", "13.2", "-0.1"]));
  expect(numbers(spanish(/^table-\d\d-la-(mezcla|combinacion)-propuesta-junto/))).toEqual(shares);
});
