import { beforeAll, describe, expect, test } from "vitest";
import type { ReportDocument } from "../../src/report/document.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import { typstMath } from "../../src/report/pdf/typstMath.js";
import { type ReadPdf, readPdf } from "./readPdf.js";
import {
  BARS,
  codeCell,
  figureOutput,
  GRADING,
  HOSTILE,
  META,
  markdownCell,
  notebookOf,
  sampleNotebook,
} from "./sampleNotebook.js";

let report: ReportDocument;
let first: Uint8Array;
let seen: ReadPdf;
beforeAll(async () => {
  report = notebookToDocument(await sampleNotebook(), META);
  first = (await renderPdf(report)).pdf;
  seen = await readPdf(first);
});

describe("renderPdf", () => {
  test("gives the same bytes twice", async () => {
    const again = (await renderPdf(report)).pdf;
    expect(Buffer.compare(Buffer.from(first), Buffer.from(again))).toBe(0);
  });

  test("tells title, keywords and date from the report, not from the clock", () => {
    expect(seen.info.Title).toBe(META.title);
    expect(seen.info.Keywords).toBe(META.keywords!.join(", "));
    expect(String(seen.info.CreationDate)).toMatch(/^D:20240502/);
  });

  test("holds the report in order, with numbers, running head and page numbers", () => {
    const text = seen.pages.slice(1).join(" ");
    const order = [
      "Soil and grading",
      "Figure 1 Grading of the blend against the envelope",
      "Table 1 Published limits",
      "Figure 2",
      "Table 2 Recipe for one batch",
      "Table 3 Strength of each specimen",
      "wrote to its error stream",
      "add up to 1.3 % less",
      "Sulfates in the soil",
      "Reviewed by the responsible licensed person",
      "9f86d081884c7d65",
      "Code of cell 2",
    ];
    const places = order.map((words) => text.indexOf(words));
    expect(
      places.every((place) => place >= 0),
      JSON.stringify(places),
    ).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    seen.pages.forEach((page, index) => {
      expect(page).toContain(`page ${index + 1} of ${seen.pages.length}`);
      expect(page).toContain("Invented demonstration data");
      if (index > 0) expect(page).toContain(META.title);
    });
    expect(seen.pages[0]).toContain("Contents");
    // the header row of the long table stands again where the table goes on
    const withRows = seen.pages.filter((page) => /\bB\d+ \d+ 1[89]\d\d\b/.test(page));
    expect(withRows.length).toBeGreaterThan(1);
    for (const page of withRows) expect(page).toContain("Dry density");
  });

  test("is tagged: headings, table header cells and figures with their alternative", () => {
    const count = (role: string): number => seen.roles.filter((tag) => tag.role === role).length;
    for (const role of ["H1", "H2", "Table", "TH", "Caption", "L"]) {
      expect(count(role), role).toBeGreaterThan(0);
    }
    const alternatives = seen.roles.flatMap((tag) => (tag.role === "Figure" ? [tag.alt] : []));
    expect(alternatives).toEqual([GRADING.altText, BARS.altText]);
    expect(seen.outline).toEqual([
      "1 Soil and grading",
      "2 Blend",
      "3 Strength",
      "4 Findings and cautions",
      "5 Responsibility and sources",
      "Annex: files read",
      "Annex: the computation",
    ]);
  });

  test("compiles to PDF/UA-1 and without a standard, on US Letter", async () => {
    for (const standard of ["ua-1", "none"] as const) {
      const meta = { ...report.meta, page: "us-letter" } as const;
      const { pdf } = await renderPdf({ ...report, meta }, { standard });
      expect((await readPdf(pdf)).size).toEqual([0, 0, 612, 792]);
    }
    const asText = (pdf: Uint8Array): string => Buffer.from(pdf).toString("latin1");
    expect(asText(first)).toMatch(/pdfaid:part>2<[\s\S]*pdfaid:conformance>A</);
    expect(asText((await renderPdf(report, { standard: "ua-1" })).pdf)).toMatch(/pdfuaid:part>1</);
  });

  test("shows hostile text as text wherever it stands", async () => {
    const meta = { ...META, title: HOSTILE, subtitle: HOSTILE, place: HOSTILE, madeWith: HOSTILE };
    const cells = [
      markdownCell(`## \`\` ${HOSTILE} \`\`\n`),
      codeCell(HOSTILE, [
        await figureOutput({ ...BARS, title: HOSTILE, altText: HOSTILE }, HOSTILE),
      ]),
    ];
    const { pdf, findings } = await renderPdf(notebookToDocument(notebookOf(cells), meta));
    expect(findings).toEqual([]);
    const { info, pages, roles } = await readPdf(pdf);
    expect(info.Title).toBe(HOSTILE);
    const plain = (text: string): string => text.replace(/\s+/g, "");
    expect(plain(pages[0]!)).toContain(plain(HOSTILE));
    expect(plain(pages[1]!)).toContain(plain(`Figure 1 ${HOSTILE}`));
    expect(roles.find((tag) => tag.role === "Figure")!.alt).toBe(HOSTILE);
  });

  test("names characters no font has and shows their codes", async () => {
    const meta = { ...META, title: "Wall 土", subtitle: "Lehm, terre, γη" };
    const { pdf, findings } = await renderPdf(notebookToDocument(notebookOf([]), meta));
    expect(findings.map((finding) => [finding.code, finding.value])).toEqual([
      ["characters-not-in-font", "土"],
    ]);
    expect((await readPdf(pdf)).pages[0]).toContain("Wall ‹U+571F›");
  });

  test("shows a formula it cannot set as TeX and says so", async () => {
    const cell = markdownCell("# T\n\nBad $\\unknowncommand{x}$ and good $x_1$.\n");
    const { pdf, findings } = await renderPdf(notebookToDocument(notebookOf([cell]), META));
    expect(findings.map((finding) => finding.code)).toEqual(["formula-shown-as-tex"]);
    expect((await readPdf(pdf)).pages[1]).toContain("\\unknowncommand{x}");
  });
});

describe("typstMath", () => {
  test("lets common formulas through", () => {
    for (const tex of [
      "P(d) = 100\\left(\\frac{d}{D}\\right)^n",
      "\\sum_{i=1}^{m} x_i \\le 100\\,\\%",
      "R_\\mathrm{c,k} = \\bar R - k\\, s",
      "\\min_x \\|A x - b\\|_2^2 \\quad\\text{subject to}\\quad x \\ge 0",
      "\\sqrt{\\hat\\sigma^2} \\pm t_{0.95,\\nu}",
      "\\begin{pmatrix}a&b\\\\c&d\\end{pmatrix}",
    ]) {
      expect(typstMath(tex), tex).toBeTypeOf("string");
    }
  });

  test("stops whatever could reach code, files or the page", () => {
    for (const tex of [
      '\\text{a" std.read("/etc/passwd") "b}',
      "\\text{#panic()}",
      "\\#panic()",
      '\\text{\\"} std',
      '\\operatorname{a" image("x") "b}',
      "[".repeat(40),
      "x".repeat(2000),
      "\\frac{1",
    ]) {
      expect(typstMath(tex), tex).toBeUndefined();
    }
  });
});
