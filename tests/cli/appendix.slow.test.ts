import { execFile } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { writeKernelSpec } from "../../src/notebook/kernel/spec.js";
import { asNotebook, type CellOutput, joinText } from "../../src/notebook/notebookFile.js";
import { outputsOf } from "../notebook/support.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "../report/chromium.js";
import { toolOrSkip } from "../support/requireTool.js";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";
import { copyStudy } from "../support/studyCopy.js";

const NOTEBOOK = join(ROOT, "notebooks/permit-appendix.ipynb");
const STUDIES = ["reading-room", "bus-shelter"] as const;

/** An output without the differences that the notebook format leaves open: line splitting. */
function normalised(output: CellOutput): unknown {
  if (output.output_type === "stream") return { ...output, text: joinText(output.text) };
  if (output.output_type === "error") return output;
  const data = Object.entries(output.data).map(([mime, value]) => [
    mime,
    Array.isArray(value) ? value.join("") : value,
  ]);
  return { type: output.output_type, data: Object.fromEntries(data), metadata: output.metadata };
}

interface PdfText {
  readonly pages: readonly string[];
  readonly title: unknown;
  readonly tags: ReadonlySet<string>;
  readonly figuresWithoutAlt: number;
}

async function readPdf(path: string): Promise<PdfText> {
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  const loading = getDocument({ data: new Uint8Array(readFileSync(path)), verbosity: 0 });
  const pdf = await loading.promise;
  const pages: string[] = [];
  const tags = new Set<string>();
  let figuresWithoutAlt = 0;
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent();
    pages.push(items.map((item) => ("str" in item ? item.str : "")).join(" "));
    const walk = (node: { role?: string; alt?: string; children?: unknown[] }): void => {
      if (node.role) tags.add(node.role);
      if (node.role === "Figure" && !node.alt) figuresWithoutAlt += 1;
      for (const child of node.children ?? []) walk(child as Parameters<typeof walk>[0]);
    };
    const tree = await page.getStructTree();
    if (tree) walk(tree as Parameters<typeof walk>[0]);
  }
  const { info } = await pdf.getMetadata();
  await loading.destroy();
  return { pages, title: (info as Record<string, unknown>).Title, tags, figuresWithoutAlt };
}

describe.each(STUDIES)("the appendix of %s", (name) => {
  const parent = mkdtempSync(join(tmpdir(), "loambook-appendix-"));
  const folder = join(parent, "out");
  beforeAll(async () => {
    const run = await runCli(["appendix", `data-examples/${name}`, "--out", folder]);
    expect(run.code, run.stderr).toBe(0);
    expect(run.stderr).toBe("");
    expect(run.stdout).toContain(join(folder, "appendix.html"));
  }, 180_000);
  afterAll(() => rmSync(parent, { recursive: true, force: true }));

  it("is four files without a path of this machine", () => {
    expect(readdirSync(folder).sort()).toEqual([
      "appendix.html",
      "appendix.ipynb",
      "appendix.pdf",
      "result.json",
    ]);
    for (const file of ["appendix.html", "appendix.ipynb", "result.json"]) {
      const text = readFileSync(join(folder, file), "utf8");
      expect(text.includes(ROOT) || text.includes(tmpdir()), file).toBe(false);
    }
  });

  it("opens offline in Chromium, wide and narrow, with no request and no complaint", async (context) => {
    chromiumOrSkip(context);
    const { chromium } = await import("playwright-core");
    const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
    try {
      for (const width of [1280, 390]) {
        const page = await browser.newPage({
          viewport: { width, height: 900 },
          offline: true,
        } as never);
        const requests: string[] = [];
        const complaints: string[] = [];
        page.on("request", (request) => requests.push(request.url()));
        page.on("console", (message) => complaints.push(message.text()));
        page.on("pageerror", (error) => complaints.push(String(error)));
        const address = pathToFileURL(join(folder, "appendix.html")).href;
        await page.goto(address);
        const button = page.locator("figure button").first();
        await button.click();
        await page.waitForSelector("figure .main-svg");
        expect(requests).toEqual([address]);
        expect(complaints).toEqual([]);
        const sideways = await page.evaluate(
          "document.documentElement.scrollWidth - document.documentElement.clientWidth",
        );
        expect(sideways).toBe(0);
        expect(await page.locator("figure svg").count()).toBeGreaterThanOrEqual(6);
        await page.close();
      }
    } finally {
      await browser.close();
    }
  });

  it("has a PDF with text, tags, and words for every figure", async () => {
    const { pages, title, tags, figuresWithoutAlt } = await readPdf(join(folder, "appendix.pdf"));
    const { config, strength } = JSON.parse(readFileSync(join(folder, "result.json"), "utf8"));
    const text = pages.join(" ").replace(/\s+/g, " ");
    expect(title).toBe(config.title);
    expect(text.includes(config.title)).toBe(true);
    expect(text).toContain(`page 2 of ${pages.length}`);
    expect(text).toContain("Invented demonstration data");
    expect(text).toContain(`${strength.chosenCementPct.toFixed(1)} %`);
    for (const part of [
      "Purpose and scope",
      "Wet cement burns",
      "Limits of validity",
      "Signature",
    ]) {
      expect(text).toContain(part);
    }
    // The code in the annex may well say "undefined"; no value may.
    const values = text.slice(0, text.lastIndexOf("Annex: the computation"));
    expect(values.length).toBeGreaterThan(text.length / 2);
    expect(/undefined|NaN|\[object|Infinity/.exec(values)).toBeNull();
    expect([...tags]).toEqual(expect.arrayContaining(["H1", "P", "Figure", "Table", "TH", "TD"]));
    expect(figuresWithoutAlt).toBe(0);
  });

  it("shows every warning and every excluded block", async () => {
    const html = readFileSync(join(folder, "appendix.html"), "utf8").replace(/<[^>]*>/g, " ");
    const { findings, strength } = JSON.parse(readFileSync(join(folder, "result.json"), "utf8"));
    expect(findings.length).toBeGreaterThan(0);
    for (const { message } of findings) expect(html).toContain(message);
    const excluded = strength.specimens.filter((block: { excluded?: string }) => block.excluded);
    expect(excluded.length).toBeGreaterThan(0);
    for (const block of excluded) expect(html).toContain(`Excluded: ${block.excluded}`);
  });
});

it("gives the same bytes for the same study", { timeout: 240_000 }, async () => {
  const copy = copyStudy("reading-room");
  const folder = temporaryFolder();
  const bytes: Buffer[][] = [];
  for (const run of ["one", "two"]) {
    const out = join(folder, run);
    expect((await runCli(["appendix", copy.folder, "--out", out])).code).toBe(0);
    bytes.push(
      readdirSync(out)
        .sort()
        .map((file) => readFileSync(join(out, file))),
    );
  }
  expect(bytes[0].map((file, index) => file.equals(bytes[1][index]))).toEqual([
    true,
    true,
    true,
    true,
  ]);
});

it("prints a title of markup as text, and to the other standard", {
  timeout: 180_000,
}, async () => {
  const copy = copyStudy("bus-shelter");
  const title = `<script>alert(1)</script> #panic() "q" 'q' \\ $x$ *b*`;
  copy.edit("study.yaml", /title: .*/, `title: ${JSON.stringify(title)}`);
  const out = join(temporaryFolder(), "out");
  const run = await runCli(["appendix", copy.folder, "--out", out, "--standard", "ua-1"]);
  expect(run.code, run.stderr).toBe(0);
  const html = readFileSync(join(out, "appendix.html"), "utf8");
  expect(html).toContain("&lt;script&gt;alert(1)&lt;/script&gt; #panic()");
  expect(html).not.toContain("<script>alert(1)");
  const pdf = await readPdf(join(out, "appendix.pdf"));
  expect(pdf.title).toBe(title);
});

it("the notebook runs the same under Jupyter's own runner", {
  timeout: 240_000,
}, async (context) => {
  const jupyter = toolOrSkip(context, "jupyter");
  const folder = temporaryFolder();
  await writeKernelSpec(folder);
  const words = ["nbconvert", "--to", "notebook", "--execute", "--output-dir", folder, NOTEBOOK];
  await promisify(execFile)(jupyter, words, { env: { ...process.env, JUPYTER_PATH: folder } });
  const ours = join(folder, "ours.ipynb");
  expect((await runCli(["run", NOTEBOOK, "--out", ours])).code).toBe(0);
  const read = (path: string) => outputsOf(asNotebook(JSON.parse(readFileSync(path, "utf8"))));
  const [theirs, own] = [join(folder, basename(NOTEBOOK)), ours].map((path) =>
    read(path).map((cell) => cell.map(normalised)),
  );
  expect(own).toEqual(theirs);
  expect(own.flat().length).toBeGreaterThan(30);
});
