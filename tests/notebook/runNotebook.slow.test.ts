import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it, onTestFinished } from "vitest";
import { LANGUAGE_INFO } from "../../src/notebook/kernel/spec.js";
import { joinText } from "../../src/notebook/notebookFile.js";
import {
  formatFailure,
  type NotebookProgress,
  type NotebookRun,
} from "../../src/notebook/notebookRun.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { FIXTURES, fixture, isAlive, outputsOf, plainOutputs, until } from "./support.js";

const PATIENCE = 120_000;

function expectStatus<S extends NotebookRun["status"]>(run: NotebookRun, status: S) {
  expect(run.status, run.status === "done" ? "" : formatFailure(run)).toBe(status);
  return run as Extract<NotebookRun, { status: S }>;
}

describe("runNotebook with a kernel", { timeout: PATIENCE }, () => {
  it("runs every cell and gives the same notebook each time, without touching the file", async () => {
    const before = readFileSync(fixture("done"), "utf8");
    const progress: NotebookProgress[] = [];
    const options = { notebookPath: fixture("done") };
    const first = await runNotebook({ ...options, onProgress: (step) => progress.push(step) });
    const { notebook } = expectStatus(first, "done");
    expect(progress.map(({ cell, cells, phase }) => `${phase} ${cell}/${cells}`)).toEqual([
      "starting 0/2",
      "running 1/2",
      "running 2/2",
      "finished 2/2",
    ]);
    const [printed, shown] = outputsOf(notebook);
    expect(plainOutputs(printed)).toEqual([
      "stdout: a\nb\n",
      "stderr: to stderr\n",
      "stdout: fixtures\n",
    ]);
    expect(plainOutputs(shown)).toEqual(["stdout: 42\n"]);
    expect(notebook.cells.map(({ id }) => id)).toEqual([1, 2, 3, 4].map((n) => `done-${n}`));
    expect(notebook.cells.flatMap((cell) => cell.execution_count ?? [])).toEqual([1, 2]);
    expect(notebook.metadata).toEqual({
      authors: [{ name: "kept" }],
      kernelspec: {
        display_name: "TypeScript (loambook)",
        language: "typescript",
        name: "loambook",
      },
      language_info: LANGUAGE_INFO,
    });
    const second = await runNotebook(options);
    expect(JSON.stringify(second.notebook)).toBe(JSON.stringify(notebook));
    expect(JSON.stringify(notebook)).not.toContain(dirname(FIXTURES));
    expect(readFileSync(fixture("done"), "utf8")).toBe(before);
  });

  it("loses no reply in many runs of many short cells, several at a time", {
    timeout: 3_600_000,
  }, async () => {
    // more runs than the other tests have patience for: LOAMBOOK_RUNS=200
    const runs = Number(process.env.LOAMBOOK_RUNS ?? 3);
    const folder = mkdtempSync(join(tmpdir(), "loambook-many-"));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const cells = Array.from({ length: 40 }, (_, index) => ({
      cell_type: "code",
      id: `cell-${index}`,
      source: `const value${index} = ${index};`,
      metadata: {},
      execution_count: null,
      outputs: [],
    }));
    const notebookPath = join(folder, "many-cells.ipynb");
    const notebook = { cells, metadata: {}, nbformat: 4, nbformat_minor: 5 };
    writeFileSync(notebookPath, JSON.stringify(notebook));
    const ends: string[] = [];
    const oneAfterTheOther = async (count: number) => {
      for (let run = 0; run < count; run += 1) {
        const { status } = await runNotebook({ notebookPath, timeouts: { cellSeconds: 30 } });
        ends.push(status);
        if (status !== "done") console.log(`run ${ends.length}: ${status}`);
      }
    };
    await Promise.all([0, 1, 2].map((row) => oneAfterTheOther(Math.ceil((runs - row) / 3))));
    expect(ends).toEqual(Array.from({ length: runs }, () => "done"));
  });

  it("loses no line of a cell that prints more than the sockets take at a stretch", async () => {
    const run = await runNotebook({ notebookPath: fixture("many-lines") });
    const { notebook } = expectStatus(run, "done");
    const lines = Array.from({ length: 5000 }, (_, index) => `line ${index}\n`).join("");
    expect(plainOutputs(outputsOf(notebook)[0])).toEqual([`stdout: ${lines}`]);
  });

  it("stops at a cell that does not compile and names its line", async () => {
    const run = await runNotebook({ notebookPath: fixture("compile-error") });
    const { failure, notebook } = expectStatus(run, "cell-failed");
    expect(failure).toMatchObject({ cellNumber: 2, cellPosition: 3, line: 2, injected: false });
    expect(failure.codeLine).toBe("const b: number =");
    expect(failure.kernelMessage).toBe("2:7 - Type 'string' is not assignable to type 'number'.");
    expect(notebook.cells.map((cell) => cell.execution_count)).toEqual([1, undefined, 2, null]);
    expect(outputsOf(notebook)[2]).toEqual([]);
    expect(outputsOf(notebook)[1]).toMatchObject([{ output_type: "error", ename: "CompileError" }]);
  });

  it("finds the line of an exception, also below a function of an earlier cell", async () => {
    const run = await runNotebook({ notebookPath: fixture("throw-sync") });
    const { failure, notebook } = expectStatus(run, "cell-failed");
    expect(failure).toMatchObject({ cellNumber: 2, line: 9 });
    expect(failure.codeLine).toBe("const checked: number = check(");
    expect(failure.kernelMessage).toBe("RangeError: invalid `x`: 3; expected at most 2");
    expect(plainOutputs(outputsOf(notebook)[1])).toEqual([`error: ${failure.kernelMessage}`]);
    expect(formatFailure(run as Exclude<NotebookRun, { status: "done" }>)).toBe(
      [
        "The notebook stopped in code cell 2 (cell 2 of the notebook), line 9.",
        "",
        "   7 | const point: Point = { x: 3 };",
        '   8 | const name: string = join("a", "b");',
        ">  9 | const checked: number = check(",
        "  10 |   point.x,",
        "  11 | );",
        "",
        "The kernel says:",
        "RangeError: invalid `x`: 3; expected at most 2",
      ].join("\n"),
    );
  });

  it("finds the line of an exception after an await", async () => {
    const run = await runNotebook({ notebookPath: fixture("throw-async") });
    const { failure } = expectStatus(run, "cell-failed");
    expect(failure).toMatchObject({ cellNumber: 2, line: 5, codeLine: 'await step("third");' });
    expect(failure.kernelMessage).toBe("Error: the third step failed");
  });

  it("names no line where the kernel tells none", async () => {
    const run = await runNotebook({ notebookPath: fixture("throw-text") });
    const { failure } = expectStatus(run, "cell-failed");
    expect(failure).not.toHaveProperty("line");
    expect(failure.kernelMessage).toBe("only a text");
  });

  it("goes on behind a cell that is meant to fail", async () => {
    const folder = mkdtempSync(join(tmpdir(), "loambook-meant-"));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const cell = (source: string, tags: string[] = []) => ({
      cell_type: "code",
      id: `cell-${source.length}`,
      source,
      metadata: { tags },
      execution_count: null,
      outputs: [],
    });
    const cells = [
      cell("const a: number = 'no';", ["raises-exception"]),
      cell("throw new Error('meant')", ["raises-exception"]),
      cell("console.log('after')"),
    ];
    const notebookPath = join(folder, "meant.ipynb");
    writeFileSync(
      notebookPath,
      JSON.stringify({ cells, metadata: {}, nbformat: 4, nbformat_minor: 5 }),
    );
    const { notebook } = expectStatus(await runNotebook({ notebookPath }), "done");
    expect(outputsOf(notebook).map(plainOutputs)).toEqual([
      ["error: CompileError: Type 'string' is not assignable to type 'number'."],
      ["error: Error: meant"],
      ["stdout: after\n"],
    ]);
  });

  it("finds the package, with its types, for a notebook anywhere", async () => {
    const folder = mkdtempSync(join(tmpdir(), "loambook-anywhere-"));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const cell = (source: string, at: number) => ({
      cell_type: "code",
      id: `cell-${at}`,
      source,
      metadata: {},
      execution_count: null,
      outputs: [],
    });
    const cells = [
      'import * as loam from "loambook";\nconst text: string = loam.render(loam.formatFixed(1.5, 1), "es");\nconsole.log(text);',
      "const wrong: number = loam.render(loam.formatFixed(1.5, 1));",
    ].map(cell);
    const notebookPath = join(folder, "anywhere.ipynb");
    writeFileSync(
      notebookPath,
      JSON.stringify({ cells, metadata: {}, nbformat: 4, nbformat_minor: 5 }),
    );
    const { failure, notebook } = expectStatus(await runNotebook({ notebookPath }), "cell-failed");
    expect(outputsOf(notebook).map(plainOutputs)[0]).toEqual(["stdout: 1,5\n"]);
    // a package without types would be taken in silence
    expect(failure.kernelMessage).toBe("1:7 - Type 'string' is not assignable to type 'number'.");
  });

  it("tells when the kernel ends, with its exit code and what was shown before", async () => {
    const run = await runNotebook({ notebookPath: fixture("exit") });
    const died = expectStatus(run, "kernel-died");
    expect(died).toMatchObject({ exitCode: 7, signal: null, cell: { cellNumber: 2 } });
    expect(plainOutputs(outputsOf(died.notebook)[0])).toEqual(["stdout: before\n"]);
    expect(formatFailure(died)).toContain("code cell 2 (cell 2 of the notebook) (exit code 7)");
  });

  it("stops a cell that does not end", async () => {
    const timeouts = { cellSeconds: 1 };
    const run = await runNotebook({ notebookPath: fixture("endless"), timeouts });
    const late = expectStatus(run, "timed-out");
    expect(late).toMatchObject({ which: "cell", seconds: 1, cell: { cellNumber: 1 } });
    expect(formatFailure(late)).toContain("longer than the 1 s allowed for a cell");
  });

  it("stops when the kernel does not start in time, and when the whole takes too long", async () => {
    const soon = { notebookPath: fixture("done"), timeouts: { startSeconds: 0.05 } };
    const start = expectStatus(await runNotebook(soon), "timed-out");
    expect(start).toMatchObject({ which: "start", seconds: 0.05 });
    expect(start.cell).toBeUndefined();
    const short = { notebookPath: fixture("done"), timeouts: { totalSeconds: 0.05 } };
    expect(expectStatus(await runNotebook(short), "timed-out").which).toBe("total");
  });

  it("sets parameters, which the cells below see, and leaves the others", async () => {
    const parameters = { studyFolder: 'a "b" \\ $c', count: 41, limit: "none" };
    const run = await runNotebook({ notebookPath: fixture("parameters"), parameters });
    const { notebook } = expectStatus(run, "done");
    expect(plainOutputs(outputsOf(notebook)[2])).toEqual(['stdout: a "b" \\ $c|42|true|string\n']);
  });

  it("leaves no process behind, not even those that cells start", async () => {
    const run = await runNotebook({ notebookPath: fixture("spawns") });
    const { notebook } = expectStatus(run, "done");
    const [output] = outputsOf(notebook)[0] ?? [];
    const pids = joinText(output?.output_type === "stream" ? output.text : "")
      .trim()
      .split(" ")
      .map(Number);
    expect(pids).toHaveLength(2);
    expect(await until(() => !pids.some(isAlive), 5000)).toBe(true);
  });

  it("ends the kernel when it is aborted", async () => {
    const stop = new AbortController();
    const run = runNotebook({
      notebookPath: fixture("waits"),
      signal: stop.signal,
      onProgress: ({ phase }) => {
        if (phase === "running") stop.abort(new Error("enough"));
      },
    });
    await expect(run).rejects.toThrow("enough");
  });

  it.each([
    ["SIGTERM", "waits"],
    ["SIGINT", "waits"],
    ["SIGKILL", "waits"],
    ["SIGKILL", "endless"],
  ] as const)(
    "takes its kernel along when it is ended by %s while a cell is one that %s",
    async (signal, cell) => {
      const temporary = mkdtempSync(join(tmpdir(), "lb-"));
      onTestFinished(() => rmSync(temporary, { recursive: true, force: true }));
      const built = fileURLToPath(new URL("../../dist/notebook/runNotebook.js", import.meta.url));
      const code = `
        const { runNotebook } = require(${JSON.stringify(built)});
        const { readdirSync, readFileSync } = require("node:fs");
        const children = () => readdirSync("/proc").filter((pid) => /^\\d+$/.test(pid)).filter((pid) => {
          try { return readFileSync("/proc/" + pid + "/stat", "utf8").split(") ")[1].split(" ")[1] === String(process.pid); }
          catch { return false; }
        });
        runNotebook({ notebookPath: ${JSON.stringify(fixture(cell))}, onProgress: ({ phase }) => {
          if (phase === "running") console.log(children().join(" "));
        } });`;
      const parent = spawn(process.execPath, ["-e", code], {
        stdio: ["ignore", "pipe", "inherit"],
        env: { ...process.env, TMPDIR: temporary },
      });
      const ended = new Promise((resolve) => parent.once("exit", (_, by) => resolve(by)));
      let text = "";
      parent.stdout.setEncoding("utf8").on("data", (part) => {
        text += part;
      });
      expect(await until(() => text.includes("\n"), 60_000)).toBe(true);
      const pids = text.trim().split(" ").map(Number);
      expect(pids.length).toBeGreaterThan(0);
      expect(pids.every(isAlive)).toBe(true);
      expect(readdirSync(temporary)).toHaveLength(1);
      parent.kill(signal);
      expect(await ended).toBe(signal);
      expect(await until(() => !pids.some(isAlive), 10_000)).toBe(true);
      expect(await until(() => readdirSync(temporary).length === 0, 5000)).toBe(true);
    },
  );
});

describe("runNotebook before a kernel starts", () => {
  it("refuses what is no notebook, a limit that is none, and parameters that are not there", async () => {
    const path = createRequire(import.meta.url).resolve("tslab/package.json");
    await expect(runNotebook({ notebookPath: path })).rejects.toThrow("notebook.nbformat");
    const notebookPath = fixture("parameters");
    const timeouts = { cellSeconds: 0 };
    await expect(runNotebook({ notebookPath, timeouts })).rejects.toThrow("timeouts.cellSeconds");
    await expect(runNotebook({ notebookPath, parameters: { nope: 1 } })).rejects.toThrow(
      "unknown parameter: nope; expected one of: studyFolder, count, strict, limit",
    );
  });
});
