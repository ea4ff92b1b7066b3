import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { jupyterFolder } from "../../src/cli/kernelCommand.js";
import { kernelSpec } from "../../src/notebook/kernel/spec.js";
import { runCli, temporaryFolder } from "../support/runCli.js";

const KERNEL = "kernels/loambook/kernel.json";
const WORDS = ["kernel", "--for-jupyter"];

/** An environment without Jupyter, whose home is a new folder. */
function bare(home: string): NodeJS.ProcessEnv {
  return { PATH: join(home, "no-programs"), HOME: home };
}

describe("kernel --for-jupyter", () => {
  it("writes to the documented place where there is no Jupyter, and says what to do", async () => {
    const home = temporaryFolder();
    const run = await runCli(WORDS, undefined, bare(home));
    expect(run.code, run.stderr).toBe(0);
    expect(run.stdout).toContain("No Jupyter was found (no program “jupyter” is on the PATH)");
    expect(run.stdout).toContain("pip install notebook");
    const { folder } = await jupyterFolder(bare(home));
    expect(JSON.parse(readFileSync(join(folder, KERNEL), "utf8"))).toEqual(kernelSpec());
  });

  it("writes over no other kernel without being asked", async () => {
    const home = temporaryFolder();
    const env = { ...bare(home), JUPYTER_DATA_DIR: join(home, "data") };
    const file = join(home, "data", KERNEL);
    mkdirSync(join(file, ".."), { recursive: true });
    writeFileSync(file, "{}");
    const refused = await runCli(WORDS, undefined, env);
    expect(refused.code).toBe(7);
    expect(refused.stderr).toContain("--replace");
    expect(readFileSync(file, "utf8")).toBe("{}");
    expect((await runCli([...WORDS, "--replace"], undefined, env)).code).toBe(0);
    expect(JSON.parse(readFileSync(file, "utf8"))).toEqual(kernelSpec());
    const again = await runCli(WORDS, undefined, env);
    expect(again).toMatchObject({ code: 0, stdout: expect.stringContaining("there already") });
  });

  it("tells a place that cannot be written to", async () => {
    const home = temporaryFolder();
    writeFileSync(join(home, "data"), "mine");
    const env = { ...bare(home), JUPYTER_DATA_DIR: join(home, "data") };
    expect((await runCli(WORDS, undefined, env)).code).toBe(7);
    expect(readFileSync(join(home, "data"), "utf8")).toBe("mine");
  });

  it.each([[["kernel", "--replace"]], [["kernel", "--for-jupyter", "--folder", "x"]]])(
    "refuses %j",
    async (words) => expect((await runCli(words, temporaryFolder())).code).toBe(2),
  );
});

describe("where Jupyter keeps a user's kernels", () => {
  it("is the documented folder of each system without Jupyter", async () => {
    const home = temporaryFolder();
    const place = async (platform: NodeJS.Platform, more: NodeJS.ProcessEnv = {}) =>
      (await jupyterFolder({ ...bare(home), ...more }, platform)).folder;
    expect(await place("linux")).toBe(join(home, ".local/share/jupyter"));
    expect(await place("linux", { XDG_DATA_HOME: "/data" })).toBe("/data/jupyter");
    expect(await place("darwin")).toBe(join(home, "Library/Jupyter"));
    expect(await place("linux", { JUPYTER_DATA_DIR: "/own" })).toBe("/own");
  });

  it.skipIf(process.platform === "win32")(
    "is what jupyter says, less the folders of one session",
    async () => {
      const home = temporaryFolder();
      const programs = join(home, "no-programs");
      mkdirSync(programs);
      const program = join(programs, "jupyter");
      const say = (text: string) => {
        writeFileSync(program, `#!/bin/sh\n${text}\n`);
        chmodSync(program, 0o755);
      };
      say(`echo '{"data": ["${home}/session", "${home}/own", "/usr/share/jupyter"]}'`);
      const env = { ...bare(home), JUPYTER_PATH: `${home}/session` };
      expect(await jupyterFolder(env)).toEqual({ folder: join(home, "own"), from: "jupyter" });
      for (const [text, problem] of [
        ["echo not json", /failed/],
        ["exit 3", /failed/],
        [`echo '{"data": []}'`, /names no data folder/],
      ] as const) {
        say(text);
        const found = await jupyterFolder(env);
        expect(found.from).toBe("documented");
        expect(found.problem).toMatch(problem);
      }
      expect(existsSync(join(home, "own"))).toBe(false);
    },
  );
});
