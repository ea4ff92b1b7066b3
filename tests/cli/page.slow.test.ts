import { existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";
import { copyStudy } from "../support/studyCopy.js";

describe("loambook page", () => {
  it("writes one file beside where it is called, and never over another without being asked", async () => {
    const folder = temporaryFolder();
    const study = join(ROOT, "data-examples", "reading-room");
    const out = join(folder, "page-reading-room.html");
    const first = await runCli(["page", study], folder);
    expect([first.code, first.stdout.split("\n")[0]]).toEqual([0, out]);
    expect(first.stdout).toContain("0 errors");
    expect(statSync(out).size).toBeLessThan(4 * 1024 * 1024);
    writeFileSync(out, "mine");
    const second = await runCli(["page", study], folder);
    expect([second.code, readFileSync(out, "utf8")]).toEqual([7, "mine"]);
    const third = await runCli(["page", study, "--replace"], folder);
    expect(third.code).toBe(0);
    expect(readFileSync(out, "utf8")).toContain(
      "<title>Reading-room wall of a village library</title>",
    );
  });

  it("writes an empty bench without a study, and a page of a sheet alone", async () => {
    const folder = temporaryFolder();
    expect((await runCli(["page"], folder)).code).toBe(0);
    expect(readFileSync(join(folder, "page.html"), "utf8")).toContain('{"files":[]}');
    const sheet = join(ROOT, "data-examples", "reading-room", "sheets", "site-soil-sieve.csv");
    const run = await runCli(["page", sheet, "--out", "sheet.html"], folder);
    expect([run.code, run.stderr]).toEqual([0, ""]);
    expect(readFileSync(join(folder, "sheet.html"), "utf8")).toContain("site-soil-sieve.csv");
  });

  it("writes nothing of a study with errors", async () => {
    const { folder, edit } = copyStudy("reading-room");
    edit("study.yaml", "exponent: 0.25", "exponent: 9");
    const out = join(temporaryFolder(), "page.html");
    const run = await runCli(["page", folder, "--out", out]);
    expect([run.code, existsSync(out)]).toEqual([3, false]);
    expect(run.stderr).toContain("exponent");
  });

  it("is the same file for the same study", async () => {
    const folder = temporaryFolder();
    const study = join(ROOT, "data-examples", "class-day");
    for (const name of ["a.html", "b.html"])
      await runCli(["page", study, "--out", join(folder, name)]);
    expect(readFileSync(join(folder, "a.html"))).toEqual(readFileSync(join(folder, "b.html")));
  });
});
