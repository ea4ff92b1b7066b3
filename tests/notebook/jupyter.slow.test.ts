import { execFile } from "node:child_process";
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { expect, it } from "vitest";
import { kernelSpec, writeKernelSpec } from "../../src/notebook/kernel/spec.js";
import { asNotebook, notebookText } from "../../src/notebook/notebookFile.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
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

it("gives the same outputs under Jupyter's own runner", { timeout: 180_000 }, async (context) => {
  const jupyter = toolOrSkip(context, "jupyter");
  const folder = temporaryFolder();
  await writeKernelSpec(folder);
  const words = ["nbconvert", "--to", "notebook", "--execute", "--output-dir", folder];
  const env = { ...process.env, JUPYTER_PATH: folder };
  await promisify(execFile)(jupyter, [...words, fixture("done")], { env });
  const theirs = asNotebook(JSON.parse(readFileSync(join(folder, "done.ipynb"), "utf8")));
  const ours = await runNotebook({ notebookPath: fixture("done") });
  expect(ours.status).toBe("done");
  const joined = (outputs: ReturnType<typeof outputsOf>) =>
    outputs.map((cell) => {
      // Jupyter's runner joins only what comes at once
      const texts: string[] = [];
      let name = "";
      for (const text of plainOutputs(cell)) {
        const [own] = text.split(": ", 1) as [string];
        if (own === name) texts.push(`${texts.pop()}${text.slice(own.length + 2)}`);
        else texts.push(text);
        name = own;
      }
      return texts;
    });
  expect(joined(outputsOf(ours.notebook))).toEqual(joined(outputsOf(theirs)));
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

it("Jupyter's runner tells an error that it allows, and runs what follows, outside of the clone", {
  timeout: 180_000,
}, async (context) => {
  const jupyter = toolOrSkip(context, "jupyter");
  const folder = temporaryFolder();
  await writeKernelSpec(folder);
  const sources = [
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
  expect(outputsOf(executed).map(plainOutputs)).toEqual([
    [],
    ["error: RangeError: no 2"],
    ["stdout: 2\n"],
  ]);
  // what Jupyter writes is what we write
  expect(notebookText(executed)).toBe(text);
});
