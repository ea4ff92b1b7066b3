import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { keyReference } from "../support/keyReference.js";
import { ROOT } from "../support/runCli.js";
import { studyConfigText } from "../support/studyConfigText.js";

/** As `npm run format` would leave it. */
function formatted(file: string, text: string): string {
  const biome = join(ROOT, "node_modules/@biomejs/biome/bin/biome");
  const words = [biome, "check", "--write", `--stdin-file-path=${file}`];
  return execFileSync(process.execPath, words, {
    input: text,
    encoding: "utf8",
    cwd: ROOT,
    maxBuffer: 1e8,
  });
}

describe("files made from the table of keys (else: npm run schema)", () => {
  it("the interfaces of the configuration", async () => {
    const file = "src/entries/studyConfig.ts";
    await expect(formatted(file, studyConfigText())).toMatchFileSnapshot(join(ROOT, file));
  });

  it("the reference of keys", async () => {
    await expect(keyReference()).toMatchFileSnapshot(join(ROOT, "docs/study-keys.md"));
  });
});
