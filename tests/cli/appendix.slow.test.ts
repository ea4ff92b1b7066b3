import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { escapeHtml } from "../../src/blocks/html.js";
import { reportMeta } from "../../src/cli/reportChoices.js";
import { openStyle } from "../../src/cli/reportCommand.js";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import { render } from "../../src/words/render.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "../report/chromium.js";
import type { FullResult } from "../support/exampleResult.js";
import { type CliRun, ROOT, runCli, startCli } from "../support/runCli.js";
import { copyStudy } from "../support/studyCopy.js";

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

/** Markup of every kind, to be printed as the text it is. */
const TITLE = `<script>alert(1)</script> #panic() "q" 'q' \\ $x$ *b*`;

interface Case {
  readonly name: "reading-room" | "bus-shelter";
  readonly standard: "a-2a" | "ua-1";
  /** Returns the folder of the study. */
  study(): string;
  make(study: string, out: string): Promise<CliRun>;
}

/** Each appendix is made once: one as a person would, the other of a study whose title is markup. */
const CASES: readonly Case[] = [
  {
    name: "reading-room",
    standard: "a-2a",
    study: () => "data-examples/reading-room",
    make: (study, out) => startCli(["appendix", study, "--out", out]),
  },
  {
    name: "bus-shelter",
    standard: "ua-1",
    study() {
      const copy = copyStudy("bus-shelter", afterAll);
      copy.edit("study.yaml", /title: .*/, `title: ${JSON.stringify(TITLE)}`);
      return copy.folder;
    },
    make: (study, out) => runCli(["appendix", study, "--out", out, "--standard", "ua-1"]),
  },
];

describe.each(CASES)("the appendix of $name", ({ standard, study, make }) => {
  const parent = mkdtempSync(join(tmpdir(), "loambook-appendix-"));
  const folder = join(parent, "out");
  const read = (file: string) => readFileSync(join(folder, file), "utf8");
  let place = "";
  let result: FullResult;
  beforeAll(async () => {
    place = study();
    const run = await make(place, folder);
    expect(run.code, run.stderr).toBe(0);
    expect(run.stderr).toBe("");
    expect(run.stdout).toContain(join(folder, "appendix.html"));
    result = JSON.parse(read("result.json"));
  });
  afterAll(() => rmSync(parent, { recursive: true, force: true }));

  it("is four files without a path of this machine", () => {
    expect(readdirSync(folder).sort()).toEqual([
      "appendix.html",
      "appendix.ipynb",
      "appendix.pdf",
      "result.json",
    ]);
    for (const file of ["appendix.html", "appendix.ipynb", "result.json"]) {
      const text = read(file);
      expect(text.includes(ROOT) || text.includes(tmpdir()), file).toBe(false);
    }
  });

  it("has the same bytes when its notebook is rendered again, and when its study is computed again", async () => {
    const notebook: object = JSON.parse(read("appendix.ipynb"));
    const { style } = await openStyle(place, result);
    const document = notebookToDocument(notebook, {
      ...reportMeta(result),
      layout: "permit",
      style,
    });
    expect(renderHtml(document) === read("appendix.html")).toBe(true);
    const { pdf } = await renderPdf(document, { standard });
    expect(readFileSync(join(folder, "appendix.pdf")).equals(pdf)).toBe(true);
    const computed = await runCli(["compute", place, "--json"]);
    expect(computed.stdout === read("result.json")).toBe(true);
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
        expect(await page.locator("figure svg").count()).toBeGreaterThanOrEqual(5);
        await page.close();
      }
    } finally {
      await browser.close();
    }
  });

  it("has a PDF with text, tags, and words for every figure", async () => {
    const { pages, title, tags, figuresWithoutAlt } = await readPdf(join(folder, "appendix.pdf"));
    const { config, strength } = result;
    const text = pages.join(" ").replace(/\s+/g, " ");
    expect(title).toBe(config.title);
    expect(text.includes(config.title)).toBe(true);
    expect(text).toContain(`page 2 of ${pages.length}`);
    expect(text).toContain("Invented demonstration data");
    expect(text).toContain(`${strength.chosenCementPct?.toFixed(1)} %`);
    for (const part of [
      "Purpose and scope",
      "Wet cement burns",
      "Limits of validity",
      "Signature",
    ]) {
      expect(text).toContain(part);
    }
    expect(/undefined|NaN|\[object|Infinity/.exec(text)).toBeNull();
    expect([...tags]).toEqual(expect.arrayContaining(["H1", "P", "Figure", "Table", "TH", "TD"]));
    expect(figuresWithoutAlt).toBe(0);
  });

  it("shows every warning and every excluded block", async () => {
    const shown = read("appendix.html").replace(/<[^>]*>/g, " ");
    const { findings, strength } = result;
    expect(findings.length).toBeGreaterThan(0);
    for (const { message } of findings) expect(shown).toContain(escapeHtml(render(message)));
    const excluded = strength.specimens.filter((block) => block.excluded);
    expect(excluded.length).toBeGreaterThan(0);
    for (const block of excluded) expect(shown).toContain(`Excluded: ${block.excluded}`);
  });

  it("shows a title of markup as text", () => {
    const html = read("appendix.html");
    expect(html.includes(`<h1>${escapeHtml(result.config.title)}</h1>`)).toBe(true);
    expect(html.includes("<script>alert(1)")).toBe(false);
  });
});
