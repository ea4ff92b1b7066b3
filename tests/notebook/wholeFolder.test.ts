import { spawn, spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { onSignal } from "../../src/notebook/onSignal.js";
import { filesAlreadyIn, writeFilesWhole } from "../../src/notebook/wholeFolder.js";

let root = "";
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "loambook-whole-"));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const read = (folder: string) =>
  Object.fromEntries(
    readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), "utf8")]),
  );
const write = async (folder: string, files: Record<string, string>, replace = false) =>
  writeFilesWhole(folder, files, await filesAlreadyIn(folder, replace));

/** A process that has ended, so that its number is nobody's. */
const endedPid = () => spawnSync(process.execPath, ["-e", ""]).pid;

describe("a folder that is written whole", () => {
  it("is made, or filled where it is empty, and keeps its place on the disk", async () => {
    const out = join(root, "out");
    await write(out, { "a.txt": "1" });
    expect(read(out)).toEqual({ "a.txt": "1" });
    const empty = join(root, "empty");
    mkdirSync(empty);
    const within = process.cwd();
    process.chdir(empty);
    try {
      await write(".", { "a.txt": "2" });
      // The folder that a shell stands in is still there.
      expect(readdirSync(".")).toEqual(["a.txt"]);
    } finally {
      process.chdir(within);
    }
    expect(readdirSync(root).sort()).toEqual(["empty", "out"]);
  });

  it("is followed where a link names it", async () => {
    const [real, named] = [join(root, "real"), join(root, "named")];
    mkdirSync(real);
    symlinkSync(real, named);
    await write(named, { "a.txt": "1" });
    await write(named, { "a.txt": "2", "b.txt": "3" }, true);
    expect(read(real)).toEqual({ "a.txt": "2", "b.txt": "3" });
    expect(readdirSync(root).sort()).toEqual(["named", "real"]);
  });

  it("keeps what stood there where a file cannot be written", async () => {
    const out = join(root, "out");
    await write(out, { "a.txt": "old", "b.txt": "old" });
    mkdirSync(join(out, "c.txt"));
    const present = new Set(["a.txt", "b.txt"]);
    await expect(
      writeFilesWhole(out, { "a.txt": "new", "c.txt": "new", "b.txt": "new" }, present),
    ).rejects.toThrow(/EEXIST/);
    rmSync(join(out, "c.txt"), { recursive: true });
    expect(read(out)).toEqual({ "a.txt": "old", "b.txt": "old" });
    expect(readdirSync(root)).toEqual(["out"]);
  });

  it("gets back what a killed run had set aside, on the next run", async () => {
    const out = join(root, "out");
    await write(out, { "a.txt": "old a", "b.txt": "old b" });
    // Killed after the first file was exchanged and the second only taken away.
    const work = join(root, `.out-${endedPid()}-abc123`);
    mkdirSync(join(work, "old"), { recursive: true });
    mkdirSync(join(work, "new"));
    writeFileSync(join(work, "old/a.txt"), "old a");
    writeFileSync(join(work, "old/b.txt"), "old b");
    writeFileSync(join(out, "a.txt"), "half a run");
    rmSync(join(out, "b.txt"));
    await expect(filesAlreadyIn(out, false)).rejects.toThrow(/expected an empty or new folder/);
    expect(read(out)).toEqual({ "a.txt": "old a", "b.txt": "old b" });
    expect(readdirSync(root)).toEqual(["out"]);
  });

  it("leaves alone what a run that still goes on has set aside", async () => {
    const out = join(root, "out");
    await write(out, { "a.txt": "old" });
    const work = join(root, `.out-${process.pid}-abc123`);
    mkdirSync(join(work, "old"), { recursive: true });
    writeFileSync(join(work, "old/b.txt"), "of the other run");
    await write(out, { "a.txt": "new" }, true);
    expect(existsSync(join(work, "old/b.txt"))).toBe(true);
    expect(read(out)).toEqual({ "a.txt": "new" });
  });
});

describe("a signal", () => {
  it.each(["SIGTERM", "SIGINT", "SIGHUP"] as const)(
    "%s ends the program by itself, tidied",
    async (signal) => {
      const draft = join(root, "draft.part");
      const program = `
        import { rmSync, writeFileSync } from "node:fs";
        const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"];
        const onSignal = ${onSignal};
        writeFileSync(${JSON.stringify(draft)}, "half");
        onSignal(() => rmSync(${JSON.stringify(draft)}));
        process.stdout.write("ready");
        setInterval(() => {}, 1000);`;
      const child = spawn(process.execPath, ["--input-type=module", "-e", program]);
      await new Promise((resolve) => child.stdout.once("data", resolve));
      expect(existsSync(draft)).toBe(true);
      child.kill(signal);
      const [, ended] = await new Promise<[unknown, unknown]>((resolve) =>
        child.once("exit", (code, by) => resolve([code, by])),
      );
      expect(ended).toBe(signal);
      expect(existsSync(draft)).toBe(false);
    },
  );

  it("is heard no longer once the work is done", () => {
    const before = process.listenerCount("SIGTERM");
    const end = onSignal(() => {});
    expect(process.listenerCount("SIGTERM")).toBe(before + 1);
    end();
    expect(process.listenerCount("SIGTERM")).toBe(before);
  });

  it("leaves the end to whoever else listens, and sends no second signal", async () => {
    const [tidied, heard] = [vi.fn(), vi.fn()];
    process.on("SIGHUP", heard);
    onSignal(tidied);
    process.emit("SIGHUP", "SIGHUP");
    await new Promise((resolve) => setTimeout(resolve, 50));
    process.off("SIGHUP", heard);
    expect([tidied.mock.calls.length, heard.mock.calls.length]).toEqual([1, 1]);
  });
});
