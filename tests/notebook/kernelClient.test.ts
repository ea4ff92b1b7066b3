import { existsSync, readFileSync, statSync } from "node:fs";
import { dirname } from "node:path";
import { describe, expect, it } from "vitest";
import { openConnection } from "../../src/notebook/connection.js";
import { startKernel, trackRequests } from "../../src/notebook/kernelClient.js";
import type { KernelMessage } from "../../src/notebook/messages.js";
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
      const numbers = names.map((name) => content[name]);
      expect(new Set(numbers).size).toBe(5);
      // not of those that the system hands out, to our own sockets too
      if (way === "tcp")
        expect(numbers.filter((port) => port < 20_000 || port > 30_000)).toEqual([]);
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

describe("trackRequests", () => {
  const idle = { execution_state: "idle" };
  const about = (parentId: string, type: string, content: Record<string, unknown>) =>
    ({ id: "x", type, parentId, content }) satisfies KernelMessage;

  it("hears an answer that comes before the sending returns", async () => {
    const requests = trackRequests(async ({ id }) => {
      requests.onReply(about(id, "execute_reply", { status: "ok" }));
      await new Promise((resolve) => setTimeout(resolve, 5));
      requests.onPublished(about(id, "status", idle));
      await new Promise((resolve) => setTimeout(resolve, 5));
    });
    const { reply } = await requests.ask("execute_request", { code: "1" });
    const late = new Promise((resolve) => setTimeout(() => resolve("lost"), 500));
    expect(await Promise.race([reply, late])).toEqual({ outcome: "replied", status: "ok" });
  });

  it("waits for reply and end of outputs, in any order, each of its own request", async () => {
    const sent: string[] = [];
    const requests = trackRequests(async ({ id }) => void sent.push(id));
    const [first, second] = [await requests.ask("a", {}), await requests.ask("b", {})];
    expect(sent).toEqual([first.id, second.id]);
    requests.onPublished(about(second.id, "status", idle));
    requests.onPublished(about(first.id, "status", { execution_state: "busy" }));
    requests.onReply(about(first.id, "a_reply", { status: "error" }));
    requests.onReply(about("of another", "a_reply", { status: "ok" }));
    const soon = Promise.race([first.reply, second.reply, Promise.resolve("waiting")]);
    expect(await soon).toBe("waiting");
    requests.onReply(about(second.id, "b_reply", {}));
    requests.onPublished(about(first.id, "status", idle));
    expect(await first.reply).toEqual({ outcome: "replied", status: "error" });
    expect(await second.reply).toEqual({ outcome: "replied", status: "ok" });
  });

  it("fails what is under way and what comes later by a fault, and tells a failed sending", async () => {
    const requests = trackRequests(async () => requests.onFault(new Error("not the kernel's")));
    const { reply } = await requests.ask("a", {});
    await expect(reply).rejects.toThrow("not the kernel's");
    await expect(requests.ask("b", {})).rejects.toThrow("not the kernel's");
    const shut = trackRequests(() => Promise.reject(new Error("shut")));
    await expect(shut.ask("a", {})).rejects.toThrow("shut");
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
