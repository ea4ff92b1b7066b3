import { existsSync } from "node:fs";
import type { TestContext } from "vitest";

/** Chromium as Debian installs it. */
export const CHROMIUM = "/usr/bin/chromium";

/** No request of the browser's own, so that a page's requests can be counted. */
export const CHROMIUM_ARGUMENTS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Skips the test, with the reason, where Chromium is absent; `LOAMBOOK_REQUIRE_TOOLS=1` forbids it. */
export function chromiumOrSkip(context: TestContext): void {
  if (existsSync(CHROMIUM) || process.env.LOAMBOOK_REQUIRE_TOOLS === "1") return;
  context.skip(`${CHROMIUM} is not installed`);
}
