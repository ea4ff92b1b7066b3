import { execFile } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { expect, it } from "vitest";
import { writeKernelSpec } from "../../src/notebook/kernel/spec.js";
import {
  asNotebook,
  type CellOutput,
  joinText,
  notebookText,
} from "../../src/notebook/notebookFile.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { toolOrSkip } from "../support/requireTool.js";
import { ROOT, temporaryFolder } from "../support/runCli.js";
import { outputsOf } from "./support.js";

const FOLDER = join(ROOT, "notebooks");
/** Those of the workshop hold no results: see `tests/workshop/notebooks.slow.test.ts`. */
const NAMES = readdirSync(FOLDER).filter(
  (name) => name.endsWith(".ipynb") && !name.startsWith("workshop-"),
);
/** The one that shows every kind of block and figure. */
const COMPARED = "permit-appendix.ipynb";

const read = (path: string) => asNotebook(JSON.parse(readFileSync(path, "utf8")));

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

it.each(NAMES)("notebooks/%s stands there with the outputs that it gives", async (name) => {
  const path = join(FOLDER, name);
  const { status, notebook } = await runNotebook({ notebookPath: path });
  expect(status).toBe("done");
  expect(outputsOf(notebook).map(plain)).toEqual(outputsOf(read(path)).map(plain));
  expect(notebookText(notebook) === readFileSync(path, "utf8")).toBe(true);
  const shown = outputsOf(notebook).flat();
  expect(shown.length).toBeGreaterThan(0);
  expect(shown.filter(({ output_type }) => output_type === "stream")).toEqual([]);
});

// What stands there is what our own runner gives: see above.
it("a notebook gives the same under Jupyter's own runner", async (context) => {
  const jupyter = toolOrSkip(context, "jupyter");
  const out = temporaryFolder();
  await writeKernelSpec(out);
  const path = join(FOLDER, COMPARED);
  const words = ["nbconvert", "--to", "notebook", "--execute", "--output-dir", out, path];
  await promisify(execFile)(jupyter, words, { env: { ...process.env, JUPYTER_PATH: out } });
  const committed = outputsOf(read(path));
  expect(outputsOf(read(join(out, COMPARED))).map(plain)).toEqual(committed.map(plain));
  expect(committed.flat().length).toBeGreaterThan(30);
});
