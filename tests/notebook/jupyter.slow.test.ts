import { execFile } from "node:child_process";
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { promisify } from "node:util";
import { expect, it } from "vitest";
import { kernelSpec, writeKernelSpec } from "../../src/notebook/kernel/spec.js";
import {
  asNotebook,
  joinText,
  type NotebookFile,
  notebookText,
} from "../../src/notebook/notebookFile.js";
import { toolOrSkip } from "../support/requireTool.js";
import { runCli, temporaryFolder } from "../support/runCli.js";
import { fixture, outputsOf, plainOutputs } from "./support.js";

it("writes the kernel description whole, and over an older one", async () => {
  const folder = temporaryFolder();
  expect(await writeKernelSpec(folder)).toBe(folder);
  await writeKernelSpec(folder);
  const written = JSON.parse(readFileSync(join(folder, "kernels/loambook/kernel.json"), "utf8"));
  expect(written).toEqual(kernelSpec());
  expect(written.argv[0]).toBe(process.execPath);
  const program = written.argv.find((word: string) => word.endsWith("main.js"));
  expect(statSync(program).isFile()).toBe(true);
});

it("the kernel written for Jupyter is listed by Jupyter itself", {
  timeout: 60_000,
}, async (context) => {
  const jupyter = toolOrSkip(context, "jupyter");
  const data = join(temporaryFolder(), "data");
  const env = { ...process.env, JUPYTER_DATA_DIR: data, JUPYTER_PATH: "" };
  const run = await runCli(["kernel", "--for-jupyter"], undefined, env);
  expect(run.code, run.stderr).toBe(0);
  expect(run.stdout).toContain(`Writing ${join(data, "kernels/loambook/kernel.json")}`);
  const words = ["kernelspec", "list", "--json"];
  const { stdout } = await promisify(execFile)(jupyter, words, { env });
  const { loambook } = JSON.parse(stdout).kernelspecs;
  expect(loambook.resource_dir).toBe(join(data, "kernels/loambook"));
  expect(loambook.spec.argv).toEqual(kernelSpec().argv);
});

it("Jupyter's runner shows what ours shows, tells an error that it allows, and runs what follows, outside of the clone", {
  timeout: 180_000,
}, async (context) => {
  const jupyter = toolOrSkip(context, "jupyter");
  const folder = temporaryFolder();
  await writeKernelSpec(folder);
  const done = JSON.parse(readFileSync(fixture("done"), "utf8")) as NotebookFile;
  const sources = [
    ...done.cells.flatMap((cell) => (cell.cell_type === "code" ? [joinText(cell.source)] : [])),
    'import { formatPlain } from "loambook";\nimport { mean } from "simple-statistics";',
    "const f = () => {\n  throw new RangeError('no ' + mean([1, 3]));\n};\nf();",
    "await 0;\nconsole.log(formatPlain(2).number);",
  ];
  const cells = sources.map((source, index) => ({
    cell_type: "code",
    id: `cell-${index}`,
    metadata: {},
    source: [source],
    execution_count: null,
    outputs: [],
  }));
  const kernelspec = { display_name: "TypeScript (loambook)", name: "loambook" };
  const notebook = { cells, metadata: { kernelspec }, nbformat: 4, nbformat_minor: 5 };
  writeFileSync(join(folder, "errors.ipynb"), JSON.stringify(notebook));
  const words = ["nbconvert", "--to", "notebook", "--execute", "--inplace", "errors.ipynb"];
  const env = { ...process.env, JUPYTER_PATH: folder };
  const run = promisify(execFile);
  await expect(run(jupyter, words, { env, cwd: folder })).rejects.toThrow("RangeError: no 2");
  await run(jupyter, [...words, "--allow-errors"], { env, cwd: folder });
  const text = readFileSync(join(folder, "errors.ipynb"), "utf8");
  const executed = asNotebook(JSON.parse(text));
  // for the first two see “runs every cell” of our runner; Jupyter's joins only what comes at once
  const [printed = [], ...others] = outputsOf(executed).map(plainOutputs);
  const told = (name: string) =>
    printed.flatMap((text) => (text.startsWith(name) ? [text.slice(name.length)] : [])).join("");
  expect(told("stdout: ")).toBe(`a\nb\n${basename(folder)}\n`);
  expect(told("stderr: ")).toBe("to stderr\n");
  expect(others).toEqual([["stdout: 42\n"], [], ["error: RangeError: no 2"], ["stdout: 2\n"]]);
  // what Jupyter writes is what we write
  expect(notebookText(executed)).toBe(text);
});
