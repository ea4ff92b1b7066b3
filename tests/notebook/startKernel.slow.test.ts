import { describe, expect, it } from "vitest";
import { startKernel } from "../../src/notebook/kernel/client.js";
import { FIXTURES, plainOutputs } from "./support.js";

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

  it("runs what is queued behind a cell that may fail, which is told by an error message", async () => {
    const kernel = await startKernel(FIXTURES);
    try {
      await kernel.ready(60_000);
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
    } finally {
      await kernel.close();
    }
  });

  it("replaces what a cell updates, also in an earlier cell", async () => {
    const kernel = await startKernel(FIXTURES);
    try {
      await kernel.ready(60_000);
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
    } finally {
      await kernel.close();
    }
  });
});
