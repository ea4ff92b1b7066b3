import { execFile } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { chromium } from "playwright-core";
import { expect, it } from "vitest";
import { CHROMIUM, CHROMIUM_ARGUMENTS } from "../report/chromium.js";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";

const PICTURES = join(ROOT, "data-examples/pictures");

/** Needs Chromium, and pdftoppm of poppler-utils. */
it("makes the pictures of the README from the invented example", async () => {
  mkdirSync(PICTURES, { recursive: true });
  const out = join(temporaryFolder(), "out");
  const run = await runCli(["appendix", "data-examples/reading-room", "--out", out]);
  expect(run.code, run.stderr).toBe(0);

  const page = (number: number, name: string) =>
    promisify(execFile)("pdftoppm", [
      "-png",
      "-r",
      "80",
      "-f",
      String(number),
      "-l",
      String(number),
      "-singlefile",
      join(out, "appendix.pdf"),
      join(PICTURES, name),
    ]);
  await page(1, "appendix-page-1");

  const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
  const tab = await browser.newPage({ viewport: { width: 900, height: 1000 } });
  await tab.goto(pathToFileURL(join(out, "appendix.html")).href);
  const figure = (caption: string, name: string) =>
    tab
      .locator("figure", { hasText: caption })
      .first()
      .locator("svg")
      .first()
      .screenshot({ path: join(PICTURES, `${name}.png`) });
  await figure("The blend against its target", "blend");
  await figure("Strength against cement content", "strength");
  await browser.close();
});
