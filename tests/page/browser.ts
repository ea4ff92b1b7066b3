import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll } from "vitest";
import { CHROMIUM, CHROMIUM_ARGUMENTS } from "../report/chromium.js";
import { runCli } from "../support/runCli.js";
import { EXAMPLES } from "../support/studyCopy.js";

/** A page in a browser that is cut off from any network, with what it asked for and complained about. */
export interface OpenPage {
  readonly page: Page;
  readonly requests: string[];
  readonly complaints: string[];
  readonly address: string;
}

const folder = mkdtempSync(join(tmpdir(), "loambook-page-"));
let browser: Browser | undefined;
const made = new Map<string, string>();
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** The page of an example or of a folder, or of an empty bench, as the command line writes it. */
export async function pageFile(example?: string): Promise<string> {
  const name = example ?? "empty";
  const before = made.get(name);
  if (before) return before;
  const out = join(folder, `${name.replaceAll(/\W/g, "-")}.html`);
  const study = example === undefined ? [] : [resolve(EXAMPLES, example)];
  const run = await runCli(["page", ...study, "--out", out]);
  if (run.code !== 0) throw new Error(run.stderr);
  made.set(name, out);
  return out;
}

/** Opens a page and waits until it has computed. */
export async function openPage(
  example: string | undefined,
  options: BrowserContextOptions = {},
  hash = "",
): Promise<OpenPage> {
  const file = await pageFile(example);
  browser ??= await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    offline: true,
    acceptDownloads: true,
    ...options,
  });
  const page = await context.newPage();
  const requests: string[] = [];
  const complaints: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  page.on("console", (message) => complaints.push(`${message.type()}: ${message.text()}`));
  page.on("pageerror", (error) => complaints.push(String(error)));
  // What the policy stops is told, also where the page catches it.
  await page.addInitScript(`addEventListener("securitypolicyviolation", (event) => {
    console.error("stopped by the policy: " + event.violatedDirective + " " + event.blockedURI);
  })`);
  const address = pathToFileURL(file).href;
  await page.goto(`${address}${hash}`);
  await page.waitForSelector("html[data-ready]");
  return { page, requests, complaints, address };
}
