import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const LIMIT_MB = 350;

/** An installation is a download of some 400 packages; nothing of it is ours to speed up. */
const INSTALL_MS = 300_000;

describe("the packed package, installed by itself", () => {
  const place = mkdtempSync(join(tmpdir(), "loambook-install-"));
  const prefix = join(place, "größer, a prefix");
  const desk = join(place, "a desk, größer");
  let env: NodeJS.ProcessEnv;

  const loambook = (...words: string[]) =>
    execFileSync(join(prefix, "bin", "loambook"), words, { cwd: desk, env, encoding: "utf8" });

  beforeAll(() => {
    mkdirSync(desk);
    const packed = execFileSync(
      "npm",
      ["pack", "--ignore-scripts", "--silent", "--pack-destination", place],
      { cwd: ROOT, encoding: "utf8" },
    ).trim();
    const global = ["install", "--global", "--prefix", prefix, "--ignore-scripts", "--no-audit"];
    execFileSync("npm", [...global, "--no-fund", join(place, packed)], { cwd: place });
    // As in a bare container: no home folder, and nothing of this checkout on the path of modules.
    const { HOME: _home, NODE_PATH: _path, ...rest } = process.env;
    env = rest;
  }, INSTALL_MS);

  afterAll(() => rmSync(place, { recursive: true, force: true }));

  it(`takes less than ${LIMIT_MB} MB, with no install script run`, () => {
    const bytes = (folder: string): number =>
      readdirSync(folder, { withFileTypes: true }).reduce((sum, entry) => {
        const path = join(folder, entry.name);
        if (entry.isSymbolicLink()) return sum;
        return sum + (entry.isDirectory() ? bytes(path) : statSync(path).size);
      }, 0);
    expect(bytes(prefix) / 1e6).toBeLessThan(LIMIT_MB);
    expect(existsSync(join(prefix, "lib/node_modules/loambook/node_modules/danfojs"))).toBe(false);
  });

  it("makes a study, checks it and prints its appendix in a folder with a space and an umlaut", () => {
    loambook("new", "wall");
    expect(loambook("check", "wall")).toMatch(/0 errors/);
    loambook("appendix", "wall", "--out", "out");
    expect(readdirSync(join(desk, "out")).sort()).toEqual(
      expect.arrayContaining(["appendix.html", "appendix.pdf", "result.json"]),
    );
  }, 120_000);
});
