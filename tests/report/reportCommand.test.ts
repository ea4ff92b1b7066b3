import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { JSDOM } from "jsdom";
import { beforeAll, describe, expect, test } from "vitest";
import { runCli, temporaryFolder } from "../support/runCli.js";
import { readPdf } from "./readPdf.js";
import { sampleNotebook } from "./sampleNotebook.js";

let notebook = "";
beforeAll(async () => {
  notebook = JSON.stringify(await sampleNotebook());
});
function place(): { folder: string; file: string } {
  const folder = temporaryFolder();
  const file = join(folder, "lesson.ipynb");
  writeFileSync(file, notebook);
  return { folder, file };
}

describe("loambook report", () => {
  test("makes a handout of any executed notebook, and the same bytes again", async () => {
    const { folder, file } = place();
    const words = ["report", file, "--date", "2024-05-02", "--template", "handout"];
    const first = await runCli([...words, "--page", "us-letter", "--out", "made"], folder);
    expect([first.code, first.stderr]).toEqual([0, ""]);
    expect(readdirSync(join(folder, "made")).sort()).toEqual(["lesson.html", "lesson.pdf"]);
    const html = readFileSync(join(folder, "made", "lesson.html"));
    const page = new JSDOM(html).window.document;
    expect(page.title).toBe("Notebook title that gives way");
    expect(page.body.className).toBe("handout");
    const pdf = readFileSync(join(folder, "made", "lesson.pdf"));
    expect((await readPdf(new Uint8Array(pdf))).size).toEqual([0, 0, 612, 792]);
    const more = ["--page", "us-letter", "--out", "made", "--replace"];
    expect((await runCli([...words, ...more], folder)).code).toBe(0);
    expect(readFileSync(join(folder, "made", "lesson.html")).equals(html)).toBe(true);
    expect(readFileSync(join(folder, "made", "lesson.pdf")).equals(pdf)).toBe(true);
  });

  test("speaks the language asked for", async () => {
    const { folder, file } = place();
    const words = ["report", file, "--date", "2024-05-02", "--language", "es", "--title", "Muro"];
    expect((await runCli(words, folder)).code).toBe(0);
    const html = readFileSync(join(folder, "report-lesson", "lesson.html"), "utf8");
    expect(html).toContain('<html lang="es">');
    expect(html).toContain("2 de mayo de 2024");
    expect(html).toContain("<h1>Muro</h1>");
  });

  test("makes the report of a notebook with a failed cell, and ends with its code", async () => {
    const { folder, file } = place();
    const failed = JSON.parse(notebook);
    const cell = failed.cells.find(({ cell_type }: { cell_type: string }) => cell_type === "code");
    cell.outputs = [{ output_type: "error", ename: "Error", evalue: "no sheet", traceback: [] }];
    writeFileSync(file, JSON.stringify(failed));
    const run = await runCli(["report", file, "--date", "2024-05-02", "--out", "made"], folder);
    expect([run.code, run.stderr]).toEqual([4, ""]);
    expect(readdirSync(join(folder, "made")).sort()).toEqual(["lesson.html", "lesson.pdf"]);
  });

  test("says what a wrong call lacks, and writes nothing", async () => {
    const { folder, file } = place();
    const day = ["--date", "2024-05-02"];
    for (const [code, words, said] of [
      [2, [file], "--date"],
      [2, [file, "--date", "2024-13-01"], "2024-13-01"],
      [2, [file, ...day, "--template", "poster"], "permit or handout"],
      [2, [file, ...day, "--page", "A3"], "A4 or us-letter"],
      [2, [file, ...day, "--standard", "a-9"], "a-2a, a-3a, ua-1, none"],
      [2, [file, ...day, "--attach"], "--study"],
      [2, [file, ...day, "--attach", "--standard", "ua-1"], "a-3a"],
      [3, [join(folder, "none.ipynb"), ...day], "none.ipynb"],
      [3, [join(folder, "words.txt"), ...day], "no notebook"],
    ] as const) {
      writeFileSync(join(folder, "words.txt"), "{}");
      const run = await runCli(["report", ...words], folder);
      expect([run.code, run.stdout], words.join(" ")).toEqual([code, ""]);
      expect(run.stderr, words.join(" ")).toContain(said);
    }
    expect(readdirSync(folder).sort()).toEqual(["lesson.ipynb", "words.txt"]);
  });
});
