// The mix page in Chromium: until it shows its numbers, and a slider that is moved, by the time of its processor.
import { execFileSync } from "node:child_process";
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";

const MOVES = 60;

/** The SI example with a fifth material, which is its river sand once more. */
function ofFiveMaterials(example, folder) {
  cpSync(example, folder, { recursive: true });
  const entries = join(folder, "study.yaml");
  const fifth =
    "  - id: fifth\n    name: Fifth material\n    role: sand\n    sieve: sheets/river-sand-sieve.csv\n" +
    "    particle-density: 2650 kg/m3\n    loose-bulk-density: 1460 kg/m3\n    moisture: 4 %\n";
  const text = readFileSync(entries, "utf8").replace("materials:\n", `materials:\n${fifth}`);
  writeFileSync(entries, text);
}

/**
 * Measures a page of the SI example with a fifth material; its reading errors are drawn 250 times.
 *
 * @param cli words that start the command line. @param browser path of Chromium. @param work an empty folder.
 */
export async function mixPageBench({ cli, browser, example, work }) {
  const folder = join(work, "five-materials");
  const file = join(work, "page.html");
  ofFiveMaterials(example, folder);
  execFileSync(cli[0], [...cli.slice(1), "page", folder, "--out", file]);
  const running = await chromium.launch({
    executablePath: browser,
    args: ["--headless", "--no-sandbox", "--disable-gpu"],
  });
  return {
    /** Until the largest part of the page is painted, from the start of its reading, and the work until then. */
    async open() {
      const { page, spent } = await opened(running, file);
      const cpu = await spent();
      const wall = await page.evaluate(
        () =>
          new Promise((resolve) => {
            new PerformanceObserver((list) => resolve(list.getEntries().at(-1).startTime)).observe({
              type: "largest-contentful-paint",
              buffered: true,
            });
          }),
      );
      await page.context().close();
      return { cpu, wall: wall / 1000 };
    },
    /** One step of a slider by its key, warm: the page's own script, and with what Chromium lays out and paints. */
    async move(key) {
      const { page, spent } = await opened(running, file);
      await page.focus("#share-1-slider");
      const press = async (name) => {
        for (let move = 0; move < MOVES; move++) await page.keyboard.press(name);
      };
      await press("ArrowRight");
      const before = await spent(key);
      await press("ArrowLeft");
      const cpu = ((await spent(key)) - before) / MOVES;
      await page.context().close();
      return { cpu };
    },
    close: () => running.close(),
  };
}

/** A page in a process of its own, with the seconds of processor time that its main thread has spent. */
async function opened(running, file) {
  const context = await running.newContext({
    viewport: { width: 1280, height: 900 },
    offline: true,
  });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  await page.goto(`file://${file}`);
  await page.waitForSelector("html[data-ready]");
  const spent = async (key = "TaskDuration") => {
    const { metrics } = await session.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === key).value;
  };
  return { page, spent };
}
