import { execFile } from "node:child_process";
import { copyFileSync, mkdirSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { expect, it } from "vitest";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";

const PICTURES = join(ROOT, "data-examples/pictures");
const STUDY = "data-examples/reading-room";

/** Needs pdftoppm of poppler-utils; figures are painted without a browser. */
it("makes the pictures of the README's tour from the invented example", async () => {
  mkdirSync(PICTURES, { recursive: true });
  const [exported, site] = [join(temporaryFolder(), "out"), join(temporaryFolder(), "site")];
  const run = await runCli(["export", STUDY, "--out", exported]);
  expect(run.code, run.stderr).toBe(0);
  const grading = readdirSync(exported).find((name) => /^figure-01-.*\.png$/.test(name)) as string;
  copyFileSync(join(exported, grading), join(PICTURES, "tour-grading.png"));

  const sheets = await runCli(["site", STUDY, "--out", site]);
  expect(sheets.code, sheets.stderr).toBe(0);
  await promisify(execFile)("pdftoppm", [
    "-png",
    "-r",
    "60",
    "-f",
    "1",
    "-l",
    "1",
    "-singlefile",
    join(site, "bucket-card.pdf"),
    join(PICTURES, "tour-bucket-card"),
  ]);
});
