import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { JSDOM } from "jsdom";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { reportMeta } from "../../src/cli/reportChoices.js";
import type { ReportDocument } from "../../src/report/document.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { render } from "../../src/words/render.js";
import { runCli } from "../support/runCli.js";
import { copyStudy } from "../support/studyCopy.js";

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

const CASES = [
  { name: "reading-room", language: "en" },
  { name: "reading-room", language: "es" },
  { name: "bus-shelter", language: "en" },
  { name: "bus-shelter", language: "es" },
] as const;

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

describe.each(CASES)("the pages of $name in $language", ({ name, language }) => {
  const out = mkdtempSync(join(tmpdir(), "loambook-pages-"));
  let result: StudyResult;
  let document: ReportDocument;
  let pages: PdfPage[];
  let html: Document;
  const words = WORDS[language];

  beforeAll(async () => {
    const study = copyStudy(name, afterAll);
    study.edit("study.yaml", /^units: /m, `language: ${language}\nunits: `);
    const run = await runCli(["appendix", study.folder, "--out", join(out, "pages")]);
    expect(run.code, run.stderr).toBe(0);
    const read = (file: string) => readFileSync(join(out, "pages", file));
    result = JSON.parse(read("result.json").toString());
    const meta = { ...reportMeta(result), layout: "permit" as const };
    document = notebookToDocument(JSON.parse(read("appendix.ipynb").toString()), meta);
    // read before pdf.js, whose globals jsdom must not see when it starts
    html = new JSDOM(read("appendix.html").toString()).window.document;
    pages = await pagesOf(new Uint8Array(read("appendix.pdf")));
  });
  afterAll(() => rmSync(out, { recursive: true, force: true }));

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
});
