import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { formatFailure } from "../../src/notebook/notebookRun.js";
import { type RunHereOptions, runNotebookHere } from "../../src/notebook/runHere.js";
import { temporaryFolder } from "../support/runCli.js";
import { outputsOf, plainOutputs } from "./support.js";

const lend: RunHereOptions["lend"] = async (name, showIn) =>
  name === "shown" ? { showIn, show: showIn("en") } : import(name);

/** Runs cells, each a source or a source with tags. */
async function run(
  cells: readonly (string | { readonly source: string; readonly tags: readonly string[] })[],
  options: Partial<RunHereOptions> = {},
) {
  const notebookPath = join(temporaryFolder(), "cells.ipynb");
  const made = cells.map((cell, index) => ({
    cell_type: "code",
    id: `cell-${index}`,
    execution_count: null,
    outputs: [],
    source: typeof cell === "string" ? cell : cell.source,
    metadata: typeof cell === "string" ? {} : { tags: cell.tags },
  }));
  const notebook = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: made };
  writeFileSync(notebookPath, JSON.stringify(notebook));
  return runNotebookHere({ notebookPath, lend, ...options });
}

describe("runNotebookHere", () => {
  it("keeps what cells declare, lets them declare it again, and shows in order", async () => {
    const ran = await run(
      [
        'import { show } from "shown";\nimport * as path from "node:path";\nimport {\n  join as joined,\n} from "node:path";',
        { source: "let size = 1;", tags: ["parameters"] },
        "const twice = (x) => 2 * x;\nconsole.log(path.basename('a/b'), joined('a', 'b'), twice(size));\nawait show('shown');",
        "const twice = 'again';\nconsole.log('one');\nconsole.log({ two: 2 });\nconsole.error(twice);\nshow('forgotten');",
      ],
      { parameters: { size: 4 } },
    );
    expect(ran?.status).toBe("done");
    expect(outputsOf(ran!.notebook).map(plainOutputs)).toEqual([
      [],
      [],
      [],
      ["stdout: b a/b 8\n", "text/plain"],
      ["stdout: one\n{ two: 2 }\n", "stderr: again\n", "text/plain"],
    ]);
  });

  it("tells a failure in its cell and line, as the kernel does", async () => {
    const ran = await run([
      "const f = (x) => {\n  if (x > 1) throw new RangeError('no ' + x);\n};",
      "f(1);\nawait 0;\nf(2);",
      "console.log('never');",
    ]);
    if (ran?.status !== "cell-failed") throw new Error(ran?.status);
    expect(ran.failure).toMatchObject({ cellNumber: 2, line: 3, codeLine: "f(2);" });
    expect(formatFailure(ran)).toContain("> 3 | f(2);");
    const [, failed, never] = ran.notebook.cells;
    expect(failed?.outputs).toEqual([
      {
        output_type: "error",
        ename: "RangeError",
        evalue: "no 2",
        traceback: ["RangeError: no 2", "    at f, line 2 of cell [1]", "    at line 3: f(2);"],
      },
    ]);
    expect(never?.execution_count).toBeNull();
  });

  it("tells the error of a show that a cell forgot", async () => {
    const ran = await run(['import { show } from "shown";', "show({ kind: 'figure' });", "let x;"]);
    if (ran?.status !== "cell-failed") throw new Error(ran?.status);
    expect(ran.failure.cellNumber).toBe(2);
    expect(ran.failure.kernelMessage).toContain("figure.title");
  });

  it.each([
    ["waits for ever", "await new Promise(() => {});"],
    ["never waits", "while (true) {}"],
    ["never waits after it has waited", "await 0;\nwhile (true) {}"],
  ])("stops a cell that %s", async (_, source) => {
    const begun = performance.now();
    const ran = await run(["let x = 1;", source], { timeouts: { cellSeconds: 0.4 } });
    expect(ran).toMatchObject({ status: "timed-out", which: "cell", seconds: 0.4 });
    expect(ran).toMatchObject({ cell: { cellNumber: 2 } });
    expect(performance.now() - begun).toBeLessThan(5000);
  });

  it("stops a run that takes longer than the whole may", async () => {
    const wait = "await new Promise((resolve) => setTimeout(resolve, 200));";
    const ran = await run(
      Array.from({ length: 20 }, () => wait),
      {
        timeouts: { totalSeconds: 0.5 },
      },
    );
    expect(ran).toMatchObject({ status: "timed-out", which: "total", seconds: 0.5 });
  });

  it("leaves to a kernel what is more than JavaScript, or may fail", async () => {
    expect(await run(["let x: number = 1;"])).toBeUndefined();
    expect(await run(["const x = 1;", "}"])).toBeUndefined();
    expect(await run([{ source: "f();", tags: ["raises-exception"] }])).toBeUndefined();
  });
});

it("the appendix's notebooks are JavaScript, so that no kernel has to be started for them", async () => {
  for (const name of ["permit-appendix.ipynb", "permit-appendix.es.ipynb"]) {
    const notebook = JSON.parse(readFileSync(join("notebooks", name), "utf8"));
    const notebookPath = join(temporaryFolder(), name);
    // only whether they could be run is asked here
    const cells = [
      { cell_type: "code", id: "first", metadata: {}, source: "throw new Error('read');" },
    ];
    writeFileSync(
      notebookPath,
      JSON.stringify({ ...notebook, cells: [...cells, ...notebook.cells] }),
    );
    const ran = await runNotebookHere({ notebookPath, lend });
    expect(ran, name).toMatchObject({ status: "cell-failed", failure: { cellNumber: 1 } });
  }
});
