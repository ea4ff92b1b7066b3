import { execFile } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { expect, it } from "vitest";
import { parse } from "yaml";
import { toolOrSkip } from "../support/requireTool.js";
import { ROOT, temporaryFolder } from "../support/runCli.js";

it("the questions are put on a terminal, and end with nothing written where the input ends", {
  timeout: 60_000,
}, async (context) => {
  const script = toolOrSkip(context, "script");
  const folder = temporaryFolder();
  const talk = (name: string, input: string) => {
    const words = `"${process.execPath}" "${join(ROOT, "bin/loambook.cjs")}" new "${join(folder, name)}"`;
    const child = promisify(execFile)(script, ["-qec", words, "/dev/null"]);
    child.child.stdin?.end(input);
    return child.then(
      ({ stdout }) => ({ code: 0, stdout }),
      (problem: { code: number; stdout: string }) => problem,
    );
  };
  const done = await talk("wall", `SI\nGate wall\n${"\n".repeat(30)}`);
  expect(done.stdout).toContain("Title of the study");
  expect(done.code, done.stdout).toBe(0);
  expect(parse(readFileSync(join(folder, "wall/study.yaml"), "utf8")).title).toBe("Gate wall");
  const stopped = await talk("other", "SI\n\u0004");
  expect(stopped.code).toBe(2);
  expect(stopped.stdout).toContain("nothing was written");
  expect(readdirSync(folder)).toEqual(["wall"]);
});
