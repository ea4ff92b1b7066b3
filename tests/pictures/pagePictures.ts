import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { expect, it } from "vitest";
import { CHROMIUM, CHROMIUM_ARGUMENTS } from "../report/chromium.js";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";

const PICTURES = join(ROOT, "data-examples/pictures");

/** Needs Chromium and a build. */
it("makes the pictures of the mix page from the invented example", async () => {
  const out = join(temporaryFolder(), "page.html");
  const run = await runCli(["page", "data-examples/reading-room", "--out", out]);
  expect(run.code, run.stderr).toBe(0);
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
  for (const [name, width, height, colorScheme] of [
    ["page-desk", 1440, 1000, "light"],
    ["page-phone", 390, 844, "dark"],
  ] as const) {
    const tab = await browser.newPage({ viewport: { width, height }, colorScheme });
    await tab.goto(pathToFileURL(out).href);
    await tab.waitForSelector("html[data-ready]");
    await tab.fill("#cement", "7");
    await tab.keyboard.press("Enter");
    await tab.waitForSelector("text=the study’s mix");
    await tab.evaluate("document.activeElement.blur(), scrollTo(0, 0)");
    // On a phone the curve stays in sight while the sheet is scrolled under it.
    if (name === "page-phone") await tab.mouse.wheel(0, 620);
    await tab.waitForTimeout(300);
    await tab.screenshot({ path: join(PICTURES, `${name}.png`) });
    await tab.close();
  }
  await browser.close();
});
