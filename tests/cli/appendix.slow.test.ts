import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { JSDOM } from "jsdom";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { escapeHtml } from "../../src/blocks/html.js";
import { reportMeta } from "../../src/cli/reportChoices.js";
import { openStyle } from "../../src/cli/reportCommand.js";
import type { ReportDocument } from "../../src/report/document.js";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import { render } from "../../src/words/render.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "../report/chromium.js";
import { readPdf } from "../report/readPdf.js";
import type { FullResult } from "../support/exampleResult.js";
import { ROOT, runCli, startCli } from "../support/runCli.js";
import { copyStudy, EXAMPLES } from "../support/studyCopy.js";

interface PdfWord {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface PdfPage {
  readonly text: string;
  readonly words: readonly PdfWord[];
  /** Links into the same file. */
  readonly links: number;
}

async function pagesOf(pdf: Uint8Array): Promise<PdfPage[]> {
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  const read = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= read.numPages; number++) {
    const page = await read.getPage(number);
    const { items } = await page.getTextContent();
    const words = items.flatMap((item) => {
      if (!("str" in item) || item.str.trim() === "") return [];
      const [, , , size, x, y] = item.transform as number[];
      return [{ text: item.str, x, y, width: item.width, height: Math.abs(size) }];
    });
    const text = words
      .map((word) => word.text)
      .join(" ")
      .replace(/\s+/g, " ");
    const annotations = (await page.getAnnotations()) as { dest?: unknown }[];
    pages.push({ text, words, links: annotations.filter(({ dest }) => dest).length });
  }
  await read.destroy();
  return pages;
}

/** Points by which the boxes of two words may touch. */
const TOUCH = 0.6;

/** Words of a page that lie over each other. */
function overprints({ words }: PdfPage): string[] {
  const rows = [...words].sort((a, b) => a.y - b.y);
  return rows.flatMap((word, at) => {
    const found: string[] = [];
    for (const other of rows.slice(at + 1)) {
      if (other.y - word.y > 0.5 * Math.min(word.height, other.height)) break;
      const shared =
        Math.min(word.x + word.width, other.x + other.width) - Math.max(word.x, other.x);
      if (shared > TOUCH) found.push(`“${word.text}” and “${other.text}”`);
    }
    return found;
  });
}

/** Markup of every kind, to be printed as the text it is. */
const TITLE = `<script>alert(1)</script> #panic() "q" 'q' \\ $x$ *b*`;

/** Each appendix is made once: one as a person would, one of a study whose title is markup. */
const CASES = [
  { name: "reading-room", language: "en", standard: "a-2a", start: startCli },
  { name: "bus-shelter", language: "en", standard: "ua-1", start: runCli },
  { name: "reading-room", language: "es", standard: "a-2a", start: runCli },
  { name: "bus-shelter", language: "es", standard: "a-2a", start: runCli },
] as const;

/** The folder of a study as it is, as a copy in another language, or as a copy with a title of markup. */
function studyOf({ name, language, standard }: (typeof CASES)[number]): string {
  if (language === "en" && standard === "a-2a") return join(EXAMPLES, name);
  const copy = copyStudy(name, afterAll);
  if (standard === "ua-1") copy.edit("study.yaml", /title: .*/, `title: ${JSON.stringify(TITLE)}`);
  copy.edit("study.yaml", /^units: /m, `language: ${language}\nunits: `);
  return copy.folder;
}

const WORDS = {
  en: {
    contents: "Contents",
    annex: "Annex A",
    references: "References",
    verdicts: "Verdicts, limits and review",
  },
  es: {
    contents: "Índice",
    annex: "Anexo A",
    references: "Referencias",
    verdicts: "Veredictos, límites y revisión",
  },
} as const;

describe.each(CASES)("the appendix of $name in $language", (made) => {
  const { language, standard, start } = made;
  const parent = mkdtempSync(join(tmpdir(), "loambook-appendix-"));
  const folder = join(parent, "out");
  const read = (file: string) => readFileSync(join(folder, file), "utf8");
  let place = "";
  let result: FullResult;
  let document: ReportDocument;
  let pages: PdfPage[];
  let html: Document;
  const words = WORDS[language];

  beforeAll(async () => {
    place = studyOf(made);
    const asked = standard === "a-2a" ? [] : ["--standard", standard];
    const run = await start(["appendix", place, "--out", folder, ...asked]);
    expect(run.code, run.stderr).toBe(0);
    expect(run.stderr).toBe("");
    expect(run.stdout).toContain(join(folder, "appendix.html"));
    result = JSON.parse(read("result.json"));
    const meta = { ...reportMeta(result), layout: "permit" as const };
    document = notebookToDocument(JSON.parse(read("appendix.ipynb")), meta);
    // read before pdf.js, whose globals jsdom must not see when it starts
    html = new JSDOM(read("appendix.html")).window.document;
    pages = await pagesOf(new Uint8Array(readFileSync(join(folder, "appendix.pdf"))));
  });
  afterAll(() => rmSync(parent, { recursive: true, force: true }));

  /** What the first page holds, and where the list of contents begins. */
  const answersFirst = ([first, second]: readonly PdfPage[]) => {
    const sign = language === "es" ? "," : ".";
    for (const { sharePct } of result.blend?.shares ?? []) {
      if (sharePct > 0) expect(first.text).toContain(`${sharePct.toFixed(1).replace(".", sign)} %`);
    }
    const cement = `${result.strength?.chosenCementPct?.toFixed(1).replace(".", sign)} %`;
    expect(first.text).toContain(cement);
    expect(first.text).toContain(words.verdicts);
    const warnings = result.findings.filter(({ severity }) => severity === "warning");
    expect(warnings.length).toBeGreaterThan(0);
    for (const { message } of warnings) {
      // a long word may be parted at the end of a line
      const [start] = render(message, language).split(/[(:–-]/);
      expect(first.text).toContain(start.trim());
    }
    expect(first.text).not.toContain(words.contents);
    expect(second.text).toContain(words.contents);
    expect(second.text.indexOf(words.contents)).toBeLessThan(150);
  };

  it("answer on the first page, on both papers", async () => {
    answersFirst(pages);
    const page = result.config.page === "A4" ? "us-letter" : "A4";
    const { pdf, findings } = await renderPdf({ ...document, meta: { ...document.meta, page } });
    expect(findings).toEqual([]);
    answersFirst(await pagesOf(pdf));
  });

  it("have a body of at most twelve, from the answer to the references; annexes follow", () => {
    const holding = (title: string) =>
      pages.findIndex(({ text }, at) => at > 1 && new RegExp(`(\\d+|^.*) ${title} `).test(text)) +
      1;
    const references = holding(words.references);
    expect(references).toBeGreaterThan(6);
    const annex = holding(words.annex);
    expect(annex).toBeGreaterThan(references);
    // the first annex begins a page
    expect(annex - 1).toBeLessThanOrEqual(12);
  });

  it("print no word over another", () => {
    expect(pages.flatMap(overprints)).toEqual([]);
  });

  it("cite every table and figure", () => {
    const cited = new Set(
      document.nodes.flatMap((node) =>
        node.kind === "paragraph" ? Object.values(node.places ?? {}).map(({ id }) => id) : [],
      ),
    );
    const numbered = document.nodes.flatMap((node) => {
      if (!("number" in node) || typeof node.number !== "number") return [];
      return [node.kind === "figure" ? `figure-${node.number}` : `table-${node.number}`];
    });
    expect(numbered.length).toBeGreaterThan(30);
    expect(numbered.filter((id) => !cited.has(id))).toEqual([]);
  });

  it("lead from each number of the first page to its reading", () => {
    const section = html.querySelector("main > h2");
    expect(section).not.toBeNull();
    const values = [...html.querySelectorAll("#table-1 a[href^='#table-']")];
    expect(values.length).toBeGreaterThanOrEqual(8);
    const idsOf = (place: Element) =>
      [...place.querySelectorAll("a")].map((link) => link.getAttribute("href")?.slice(1) ?? "");
    for (const link of html.querySelectorAll("main a")) {
      const to = link.getAttribute("href") ?? "";
      expect(html.getElementById(to.slice(1)), to).not.toBeNull();
    }
    // each table that gives a number leads on, in three steps at most, to a row of a sheet
    for (const value of values) {
      let reached = [value.getAttribute("href")?.slice(1) ?? ""];
      const seen = new Set(reached);
      for (let step = 0; step < 4; step++) {
        reached = reached.flatMap((id) => {
          const place = html.getElementById(id);
          return place ? idsOf(place) : [];
        });
        for (const id of reached) seen.add(id);
      }
      const entered = /^(Elem|Req|Res)/.test(value.closest("tr")?.textContent ?? "");
      if (!entered) {
        expect(
          [...seen].some((id) => id.startsWith("row-")),
          value.textContent ?? "",
        ).toBe(true);
      }
    }
    expect(pages[0].links).toBeGreaterThanOrEqual(values.length);
  });

  it("hold no code, no parameters and no price", () => {
    const text = html.querySelector("main")?.textContent ?? "";
    expect(text).not.toMatch(/studyFolder|permitAppendix|Code of cell|Código de la celda/);
    expect(document.annex).toEqual([]);
    expect(text).not.toContain(result.config.currency ?? "EUR");
  });

  // What holds in one language is not asked for again in another.
  if (language === "es") return;

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
    const read = await readPdf(new Uint8Array(readFileSync(join(folder, "appendix.pdf"))));
    const { config, strength } = result;
    const text = read.pages.join(" ");
    expect(read.info.Title).toBe(config.title);
    expect(text.includes(config.title)).toBe(true);
    expect(text).toContain(`page 2 of ${read.pages.length}`);
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
    const tags = read.roles.map(({ role }) => role);
    expect(tags).toEqual(expect.arrayContaining(["H1", "P", "Figure", "Table", "TH", "TD"]));
    expect(read.roles.filter(({ role, alt }) => role === "Figure" && !alt)).toEqual([]);
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
