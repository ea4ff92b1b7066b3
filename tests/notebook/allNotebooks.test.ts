import { execFile } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { describe, expect, it, onTestFinished } from "vitest";
import { writeKernelSpec } from "../../src/notebook/kernel/spec.js";
import {
  asNotebook,
  type CellOutput,
  joinText,
  type NotebookFile,
} from "../../src/notebook/notebookFile.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { toolOrSkip } from "../support/requireTool.js";

const FOLDER = fileURLToPath(new URL("../../notebooks/", import.meta.url));
const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith(".ipynb"));

const read = (path: string) => asNotebook(JSON.parse(readFileSync(path, "utf8")));
const codeOf = ({ cells }: NotebookFile) =>
  cells.flatMap(({ cell_type, source }) => (cell_type === "code" ? [joinText(source)] : []));
const outputsOf = ({ cells }: NotebookFile) => cells.map(({ outputs }) => outputs ?? []);

/** Outputs without what runners may choose: lines as lists or as one text, and counts. */
function plain(outputs: readonly CellOutput[]): unknown[] {
  return outputs.map((output) => {
    if (output.output_type === "error") return output;
    if (output.output_type === "stream") {
      return { name: output.name, text: joinText(output.text) };
    }
    const data = Object.entries(output.data)
      .map(([type, value]) => [type, Array.isArray(value) ? value.join("") : value] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1));
    return { metadata: output.metadata ?? {}, data: Object.fromEntries(data) };
  });
}

describe.each(NAMES)("notebooks/%s", (name) => {
  const path = join(FOLDER, name);
  const committed = read(path);

  it("stands here with the outputs that it gives", { timeout: 180_000 }, async () => {
    const { status, notebook } = await runNotebook({ notebookPath: path });
    expect(status).toBe("done");
    expect(outputsOf(notebook).map(plain)).toEqual(outputsOf(committed).map(plain));
    const shown = outputsOf(committed).flat();
    expect(shown.length).toBeGreaterThan(0);
    expect(shown.filter(({ output_type }) => output_type === "stream")).toEqual([]);
  });

  it("gives the same under Jupyter's own runner", { timeout: 240_000 }, async (context) => {
    const jupyter = toolOrSkip(context, "jupyter");
    const out = mkdtempSync(join(tmpdir(), "loambook-all-"));
    onTestFinished(() => rmSync(out, { recursive: true, force: true }));
    await writeKernelSpec(out);
    const words = ["nbconvert", "--to", "notebook", "--execute", "--output-dir", out, path];
    await promisify(execFile)(jupyter, words, { env: { ...process.env, JUPYTER_PATH: out } });
    expect(outputsOf(read(join(out, name))).map(plain)).toEqual(outputsOf(committed).map(plain));
  });

  it("holds no path of a machine and no empty code cell", () => {
    const text = readFileSync(path, "utf8");
    expect(text).not.toMatch(/(^|[^A-Za-z0-9_.])\/(home|root|tmp|work|Users)\//);
    expect(codeOf(committed).filter((code) => code.trim() === "")).toEqual([]);
  });
});

it("has the appendix in Spanish with the same code but for its texts", () => {
  const texts = /"(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`/g;
  const [english, spanish] = ["permit-appendix.ipynb", "permit-appendix.es.ipynb"].map((name) =>
    codeOf(read(join(FOLDER, name))).map((code) => code.replace(texts, "…")),
  );
  expect(spanish).toEqual(english);
});
