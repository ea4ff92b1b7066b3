// Opens a notebook in JupyterLab or Notebook 7, looks at it as it is and after all cells ran; see otherFrontEnds.sh.
import { chromium } from "playwright-core";

const [, , page, pictures] = process.argv;
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
const tab = await browser.newPage();
const path =
  page === "lab" ? "lab/tree/workshop-grading.ipynb" : "notebooks/workshop-grading.ipynb";
for (let tries = 0; ; tries += 1) {
  try {
    await tab.goto(`http://localhost:8897/${path}`);
    break;
  } catch (problem) {
    if (tries === 30) throw problem;
    await new Promise((resolve) => setTimeout(resolve, 1000));
  }
}
await tab.locator(".jp-Notebook").waitFor({ timeout: 60_000 });
await tab.screenshot({ path: `${pictures}-first.png` });
await tab.evaluate(() => globalThis.jupyterapp.commands.execute("notebook:run-all-cells"));
await tab.locator(".jp-OutputArea-output img, .jp-OutputArea-output svg").first().waitFor({
  timeout: 120_000,
});
await tab.waitForTimeout(5000);
await tab.screenshot({ path: `${pictures}-run.png`, fullPage: true });
const errors = await tab.locator('[data-mime-type="application/vnd.jupyter.error"]').count();
process.stdout.write(`${page}: run, ${errors} cells with an error\n`);
await browser.close();
process.exitCode = errors === 0 ? 0 : 1;
