import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { asNotebook, joinText, type NotebookFile } from "../../src/notebook/notebookFile.js";
import { ROOT } from "../support/runCli.js";

const FOLDER = join(ROOT, "notebooks");
const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith(".ipynb"));

const read = (name: string) => asNotebook(JSON.parse(readFileSync(join(FOLDER, name), "utf8")));
const codeOf = ({ cells }: NotebookFile) =>
  cells.flatMap(({ cell_type, source }) => (cell_type === "code" ? [joinText(source)] : []));

it.each(NAMES)("notebooks/%s holds no path of a machine and no empty code cell", (name) => {
  const text = readFileSync(join(FOLDER, name), "utf8");
  expect(text).not.toMatch(/(^|[^A-Za-z0-9_.])\/(home|root|tmp|work|Users)\//);
  expect(codeOf(read(name)).filter((code) => code.trim() === "")).toEqual([]);
});

it("has the appendix in Spanish with the same code but for its texts", () => {
  const texts = /"(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`/g;
  const [english, spanish] = ["permit-appendix.ipynb", "permit-appendix.es.ipynb"].map((name) =>
    codeOf(read(name)).map((code) => code.replace(texts, "…")),
  );
  expect(spanish).toEqual(english);
});

it("keeps the designer's cells short enough to be read beside their outputs", () => {
  const names = ["mix-design.ipynb", "permit-appendix.ipynb", "permit-appendix.es.ipynb"];
  for (const code of names.flatMap((name) => codeOf(read(name)))) {
    const long = code.split("\n").filter((line) => line.length > 88);
    expect(long).toEqual([]);
    expect(code).not.toContain("flatMap");
  }
});
