import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runCli, temporaryFolder } from "../support/runCli.js";
import { copyStudy } from "../support/studyCopy.js";

describe("export", () => {
  it("writes nothing for a study with errors", async () => {
    const copy = copyStudy("reading-room");
    copy.remove("sheets/blocks.csv");
    const folder = temporaryFolder();
    const { code, stdout } = await runCli(["export", copy.folder], folder);
    expect(code).toBe(3);
    expect(stdout).toBe("");
    expect(readdirSync(folder)).toEqual([]);
  });

  it("tells a place that cannot be written to", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "a-file"), "mine");
    const words = ["export", "data-examples/bus-shelter", "--out", join(folder, "a-file")];
    expect((await runCli(words)).code).toBe(7);
    expect(readFileSync(join(folder, "a-file"), "utf8")).toBe("mine");
  });
});

describe("schema", () => {
  it("prints the schemas of what goes in and what comes out", async () => {
    const study = await runCli(["schema", "study"]);
    expect(study.code).toBe(0);
    expect(JSON.parse(study.stdout).properties.format.const).toBe("loambook-study/1");
    const result = await runCli(["schema", "result"]);
    expect(JSON.parse(result.stdout).$defs.StudyResult.properties.format.const).toBe(
      "loambook-result/1",
    );
  });

  it("writes a file, and none over another", async () => {
    const out = join(temporaryFolder(), "s.json");
    const words = ["schema", "study", "--draft", "7", "--out", out];
    expect((await runCli(words)).code).toBe(0);
    expect(JSON.parse(readFileSync(out, "utf8")).$schema).toContain("draft-07");
    expect((await runCli(words)).code).toBe(7);
  });

  it.each([
    [["schema"]],
    [["schema", "sheet"]],
    [["schema", "study", "--draft", "4"]],
    [["schema", "result", "--draft", "7"]],
  ])("refuses %j", async (words) => expect((await runCli(words)).code).toBe(2));
});
