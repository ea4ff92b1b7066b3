import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type KernelClient, startKernel } from "../../src/notebook/kernel/client.js";
import { temporaryFolder } from "../support/runCli.js";
import { FIXTURES, plainOutputs, until } from "./support.js";

async function isInterrupted(kernel: KernelClient, code: string): Promise<void> {
  const running = await kernel.execute(`console.log("on");\n${code}`, 60_000);
  await until(() => running.outputs().length > 0, 60_000);
  await kernel.interrupt();
  expect(await running.answer).toEqual({ outcome: "replied", status: "error" });
  expect(running.outputs().at(-1)).toMatchObject({ ename: "Interrupted" });
  const next = await kernel.execute("console.log(1 + 1)", 60_000);
  expect(await next.answer).toEqual({ outcome: "replied", status: "ok" });
  expect(plainOutputs(next.outputs())).toEqual(["stdout: 2\n"]);
}

describe("startKernel", { timeout: 120_000 }, () => {
  it("works by TCP, answers in order, and judges by the reply", async () => {
    const kernel = await startKernel(FIXTURES, "tcp");
    try {
      expect(await kernel.ready(60_000)).toEqual({ outcome: "replied", status: "ok" });
      const good = await kernel.execute("let a = 20;\na + 1", 60_000);
      expect(await good.answer).toEqual({ outcome: "replied", status: "ok" });
      expect(plainOutputs(good.outputs())).toEqual(["stdout: 21\n"]);
      const bad = await kernel.execute("a.nope", 60_000);
      // sent at once after a failing cell, so it is in the queue when that fails
      const next = await kernel.execute("console.log('not run')", 60_000);
      expect(await bad.answer).toEqual({ outcome: "replied", status: "error" });
      expect(plainOutputs(bad.outputs()).join()).toContain("Property 'nope' does not exist");
      expect(await next.answer).toEqual({ outcome: "replied", status: "aborted" });
      expect(next.outputs()).toEqual([]);
      // sent when the failure is known: it runs at once
      const later = await kernel.execute("console.log('run')", 60_000);
      expect(await later.answer).toEqual({ outcome: "replied", status: "ok" });
      expect(plainOutputs(later.outputs())).toEqual(["stdout: run\n"]);
    } finally {
      await kernel.close();
    }
  });

  it("is interrupted in a loop that begins in a turn of its own, after a timer", async () => {
    const kernel = await startKernel(FIXTURES);
    try {
      await kernel.ready(60_000);
      const code = "await new Promise((done) => setTimeout(done, 50));\nwhile (true) {}";
      await isInterrupted(kernel, code);
    } finally {
      await kernel.close();
    }
  });

  it("goes on when packages change beside an open notebook", async () => {
    const folder = temporaryFolder();
    const other = join(folder, "node_modules", "other");
    mkdirSync(other, { recursive: true });
    const manifest = (version: string) =>
      writeFileSync(join(other, "package.json"), `{ "name": "other", "version": "${version}" }`);
    manifest("1.0.0");
    writeFileSync(join(other, "index.js"), "exports.one = 1;\n");
    writeFileSync(join(other, "index.d.ts"), "export declare const one: number;\n");
    const kernel = await startKernel(folder);
    try {
      await kernel.ready(60_000);
      const status = async (code: string) => (await kernel.execute(code, 60_000)).answer;
      const ok = { outcome: "replied", status: "ok" };
      expect(await status('import { one } from "other"; let a = one;')).toEqual(ok);
      manifest("1.0.1");
      // so long the compiler may take to look at its files again
      await new Promise((done) => setTimeout(done, 6000));
      expect(await status("a += 1;")).toEqual(ok);
      expect(await status("a += one;")).toEqual(ok);
    } finally {
      await kernel.close();
    }
  });
});

/** One kernel, for one test after another, as in a session at a notebook. */
describe("a kernel at work", { timeout: 120_000 }, () => {
  let kernel: KernelClient;
  beforeAll(async () => {
    kernel = await startKernel(FIXTURES);
    await kernel.ready(60_000);
  });
  afterAll(() => kernel.close());

  it("runs what is queued behind a cell that may fail, which is told by an error message", async () => {
    const code = "const f = (n: number) => {\n  throw new RangeError('no ' + n);\n};";
    await (await kernel.execute(code, 60_000)).answer;
    const bad = await kernel.execute("\nf(2);", 60_000, false);
    const next = await kernel.execute(
      "await 0;\nawait Promise.reject(new Error('late'))",
      60_000,
      false,
    );
    const last = await kernel.execute("throw 'a text'", 60_000, false);
    for (const { answer } of [bad, next, last]) {
      expect(await answer).toEqual({ outcome: "replied", status: "error" });
    }
    expect(bad.outputs()).toEqual([
      {
        output_type: "error",
        ename: "RangeError",
        evalue: "no 2",
        traceback: ["RangeError: no 2", "    at f, line 2 of cell [1]", "    at line 2: f(2);"],
      },
    ]);
    expect([bad.errorLine(), next.errorLine(), last.errorLine()]).toEqual([2, 2, undefined]);
    expect(next.outputs()).toMatchObject([{ ename: "Error", evalue: "late" }]);
    expect(last.outputs()).toMatchObject([{ evalue: "a text", traceback: ["a text"] }]);
  });

  it("replaces what a cell updates, also in an earlier cell", async () => {
    const code =
      'import { newDisplay } from "tslab";\nconst d = newDisplay();\nd.text("old");\nd.text("newer");';
    const first = await kernel.execute(code, 60_000);
    await first.answer;
    expect(first.outputs()).toMatchObject([{ data: { "text/plain": "newer" } }]);
    expect(first.outputs()).toHaveLength(1);
    const second = await kernel.execute('d.text("newest");', 60_000);
    expect(await second.answer).toEqual({ outcome: "replied", status: "ok" });
    expect(second.outputs()).toEqual([]);
    expect(first.outputs()).toMatchObject([{ data: { "text/plain": "newest" } }]);
  });

  it.each(["while (true) {}", "await 0;\nwhile (true) {}", "await new Promise(() => {});"])(
    "an interrupt stops %j, and the next cell runs",
    (code) => isInterrupted(kernel, code),
  );

  it("takes what an earlier cell declared in the short form too", async () => {
    const run = async (code: string) => {
      const cell = await kernel.execute(code, 60_000);
      await cell.answer;
      return plainOutputs(cell.outputs());
    };
    await run('let units = "SI";\nimport { sep } from "node:path";');
    expect(await run("const f = () => ({ units, sep: sep.length });\nf().units")).toEqual([
      "stdout: SI\n",
    ]);
    expect(await run("await 0;\n({ units } = { units: 'US' });\nunits")).toEqual(["stdout: US\n"]);
    expect(await run("typeof { sep }.sep")).toEqual(["stdout: string\n"]);
    expect(await run("console.log({ units }.units); missing.x;")).toEqual([
      "error: CompileError: Cannot find name 'missing'.",
    ]);
  });

  it("gives a cell what it forgot to wait for, and its error", async () => {
    await (await kernel.execute('import { show } from "loambook";', 60_000)).answer;
    const cells = [
      'show([{ size: 2 }]);\nshow("last")',
      'console.log("second");',
      'show({ kind: "table", caption: "c", columns: [], rows: [["x"]] });\n1 + 1;',
      'Promise.reject(new Error("lost"));\nundefined;',
      'console.log("fifth");',
    ];
    const runs = [];
    for (const cell of cells) runs.push(await kernel.execute(cell, 60_000, false));
    for (const { answer } of runs) await answer;
    expect(runs.map((run) => plainOutputs(run.outputs()))).toEqual([
      ["application/vnd.loambook.node+json, text/html, text/plain", "text/plain"],
      ["stdout: second\n"],
      ["stdout: 2\n", "error: RangeError: invalid `table.rows[0]`: 1 cells; expected 0"],
      ["error: Error: lost"],
      ["stdout: fifth\n"],
    ]);
    expect(runs[2]?.errorLine()).toBe(1);
  });
});
