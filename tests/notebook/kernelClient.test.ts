import { existsSync, readFileSync, statSync } from "node:fs";
import { dirname } from "node:path";
import { describe, expect, it } from "vitest";
import { openConnection } from "../../src/notebook/connection.js";
import { startKernel } from "../../src/notebook/kernelClient.js";
import { FIXTURES, plainOutputs } from "./support.js";

describe("openConnection", () => {
  it.each(["ipc", "tcp"] as const)("writes a %s file that only the user reads", async (way) => {
    const connection = await openConnection(way);
    try {
      const content = JSON.parse(readFileSync(connection.file, "utf8"));
      expect(content).toMatchObject({ transport: way, signature_scheme: "hmac-sha256" });
      expect(content.key).toMatch(/^[0-9a-f]{64}$/);
      expect(connection.address("iopub")).toBe(`${way}://${content.ip}:${content.iopub_port}`);
      const names = ["shell", "iopub", "stdin", "control", "hb"].map((name) => `${name}_port`);
      expect(new Set(names.map((name) => content[name])).size).toBe(5);
      if (process.platform !== "win32") {
        expect(statSync(connection.file).mode & 0o777).toBe(0o600);
        expect(statSync(dirname(connection.file)).mode & 0o777).toBe(0o700);
      }
    } finally {
      await connection.remove();
    }
    expect(existsSync(dirname(connection.file))).toBe(false);
  });
});

describe("startKernel", { timeout: 120_000 }, () => {
  it("works by TCP, answers in order, and judges by the reply", async () => {
    const kernel = await startKernel(FIXTURES, "tcp");
    try {
      expect(await kernel.ready(60_000)).toEqual({ outcome: "replied", status: "ok" });
      const good = await kernel.execute("let a = 20;\na + 1", 60_000);
      expect(await good.answer).toEqual({ outcome: "replied", status: "ok" });
      expect(plainOutputs(good.outputs())).toEqual(["stdout: 21\n"]);
      const bad = await kernel.execute("a.nope", 60_000);
      // sent at once after a failing cell: the kernel refuses to run it
      const next = await kernel.execute("console.log('not run')", 60_000);
      expect(await bad.answer).toEqual({ outcome: "replied", status: "error" });
      expect(plainOutputs(bad.outputs()).join()).toContain("Property 'nope' does not exist");
      expect(await next.answer).toEqual({ outcome: "replied", status: "abort" });
      expect(next.outputs()).toEqual([]);
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
