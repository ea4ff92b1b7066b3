import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { JSDOM } from "jsdom";
import { beforeAll, describe, expect, test } from "vitest";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import type { ReportFont, ReportMeta, ReportStyle } from "../../src/report/reportMeta.js";
import { readLogo } from "../../src/report/style/logo.js";
import { say } from "../../src/words/message.js";
import { render } from "../../src/words/render.js";
import { readPdf } from "./readPdf.js";
import {
  codeCell,
  HOSTILE,
  META,
  markdownCell,
  notebookOf,
  sampleNotebook,
} from "./sampleNotebook.js";

const require = createRequire(import.meta.url);
const WORDS = notebookOf([markdownCell("# T\n\n## Soil\n\nSandy.")]);
const logo = readLogo(
  "logo.svg",
  new TextEncoder().encode(
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>',
  ),
  "Sign of a demonstration",
).style.logo!;
const dressed = (style: ReportStyle, more: Partial<ReportMeta> = {}) =>
  notebookToDocument(WORDS, { ...META, ...more, style });

function font(place: string, family: string): ReportFont {
  const path = require.resolve(`@expo-google-fonts/${place}`);
  return { file: `fonts/${family}.ttf`, family, bytes: new Uint8Array(readFileSync(path)) };
}
const FONTS = [
  font("noto-sans-arabic/400Regular/NotoSansArabic_400Regular.ttf", "Noto Sans Arabic"),
  font("noto-sans-devanagari/400Regular/NotoSansDevanagari_400Regular.ttf", "Noto Sans Devanagari"),
  font("zcool-xiaowei/400Regular/ZCOOLXiaoWei_400Regular.ttf", "ZCOOL XiaoWei"),
];

describe("a report in its maker's dress", () => {
  const style = {
    logo,
    accent: { light: "#1f5f8b", dark: "#4a8ec0" },
    header: `Head ${HOSTILE}`,
    footer: "Foot of the maker",
    css: "h2{letter-spacing:.05em}",
  };

  test("HTML: logo, colour and sheet stand behind ours, texts as text", () => {
    const html = renderHtml(dressed(style));
    const page = new JSDOM(html).window.document;
    expect(page.querySelector(".logo svg")!.getAttribute("aria-label")).toBe(logo.alt);
    const css = page.querySelector("style")!.textContent!;
    expect(css.trimEnd().endsWith(style.css)).toBe(true);
    expect(css.lastIndexOf("--accent:#1f5f8b")).toBeGreaterThan(css.indexOf("--accent:#5b3a1e"));
    expect(css).toContain("--accent:#4a8ec0");
    expect(page.querySelector(".house")!.textContent).toBe(style.header);
    expect(page.querySelector("footer")!.textContent).toContain(style.footer);
    expect(page.querySelectorAll("script")).toHaveLength(0);
    expect(renderHtml(dressed(style))).toBe(html);
  });

  test("HTML: a PNG stands in the page as data", () => {
    const picture = { type: "png", bytes: new Uint8Array([1, 2, 3]), alt: 'a "sign"' } as const;
    const page = new JSDOM(renderHtml(dressed({ logo: picture }))).window.document;
    const image = page.querySelector("img")!;
    expect(image.getAttribute("src")).toBe("data:image/png;base64,AQID");
    expect(image.alt).toBe(picture.alt);
  });

  test("PDF: logo with its words, running head and foot, same bytes twice", async () => {
    const { pdf, findings } = await renderPdf(dressed(style));
    expect(findings).toEqual([]);
    const { pages, roles } = await readPdf(pdf);
    expect(roles.filter(({ role }) => role === "Figure")).toEqual([
      { role: "Figure", alt: logo.alt },
    ]);
    expect(pages.at(-1)).toContain("Head <script>");
    expect(pages.at(-1)).toContain(style.footer);
    expect(Buffer.compare(pdf, (await renderPdf(dressed(style))).pdf)).toBe(0);
  });

  test("PDF: a Typst file's names stand in place of ours, with the data", async () => {
    const typst = `#let accent = rgb("#004000")
#let title-page(doc, logo) = { logo; title(doc.meta.title); [Own page for #doc.meta.place]; pagebreak() }
#let running-head(doc, page) = [Own head #page]
#let running-foot(doc, page, pages) = [Own foot #page/#pages]
#let styling(body) = { show heading.where(level: 1): it => block[Dressed #it.body]; body }`;
    const { pdf, findings } = await renderPdf(dressed({ logo, typst }));
    expect(findings).toEqual([]);
    const { pages } = await readPdf(pdf);
    expect(pages[0]).toContain("Own page for Demonstration site");
    expect(pages[0]).not.toContain("Contents");
    expect(pages[2]).toContain("Own head 3");
    expect(pages[2]).toContain(`Own foot 3/${pages.length}`);
    expect(pages[2]).toContain("Dressed Soil");
    // what a maker changes, the warning stays
    for (const page of pages) expect(page).toContain("Invented demonstration data");
  });

  test("PDF: a Typst file that fails is left out, and told with Typst's reason", async () => {
    for (const [typst, reason] of [
      ["#let accent = nothing-of-the-kind", "unknown variable: nothing-of-the-kind"],
      ["#let title-page(doc, logo) = image(bytes((1, 2)))", "unknown image format"],
    ] as const) {
      const { pdf, findings } = await renderPdf(dressed({ typst }));
      expect(findings).toMatchObject([{ severity: "error", code: "typst-template-failed" }]);
      expect(render(findings[0]!.message)).toContain(reason);
      expect((await readPdf(pdf)).pages[0]).toContain("Contents");
    }
  });
});

test("PDF: a Typst file that does not end is left out, and told", async () => {
  const typst =
    "#let styling(body) = { let n = 0; for i in range(100000) { for j in range(100000) { n += 1 } }; body }";
  const began = performance.now();
  const { pdf, findings } = await renderPdf(dressed({ typst }), { ownTypstSeconds: 1 });
  expect(performance.now() - began).toBeLessThan(20_000);
  expect(findings).toMatchObject([{ severity: "error", code: "typst-template-failed" }]);
  expect(render(findings[0]!.message)).toContain("not finished after 1 s");
  expect((await readPdf(pdf)).pages[0]).toContain("Contents");
});

describe("other scripts", () => {
  const title = "Wall 夯土墙 دیوار गाँव";

  test("are printed with fonts that the study brings", async () => {
    const report = dressed({ fonts: FONTS }, { title, place: "قرية" });
    const { pdf, findings } = await renderPdf(report);
    expect(findings).toEqual([]);
    const { pages, info } = await readPdf(pdf);
    expect(info.Title).toBe(title);
    expect(pages[0]).toContain("夯土墙");
    expect(pages[0]).toMatch(/\p{Script=Devanagari}/u);
    expect(pages[0]).not.toContain("‹U+");
    const names = Buffer.from(pdf)
      .toString("latin1")
      .match(/\+(NotoSans\w+|ZCOOL\w+)/g);
    expect(new Set(names).size).toBe(3);
    expect(Buffer.compare(pdf, (await renderPdf(report)).pdf)).toBe(0);
  });

  test("without a font, the finding says which would help", async () => {
    const { pdf, findings } = await renderPdf(dressed({ fonts: [FONTS[0]!] }, { title }));
    expect(findings).toMatchObject([{ code: "characters-not-in-font", severity: "warning" }]);
    expect(render(findings[0]!.remedy)).toContain(
      "Noto Sans Devanagari, Noto Sans SC, TC, JP or KR",
    );
    expect(render(findings[0]!.remedy)).not.toContain("Arabic");
    expect((await readPdf(pdf)).pages[0]).toContain("‹U+5899›");
  });

  test("a font under a name that the typesetter does not know is told", async () => {
    const stranger = { ...FONTS[0]!, family: "No Such Family" };
    const { findings } = await renderPdf(dressed({ fonts: [stranger] }));
    expect(findings).toMatchObject([{ code: "font-not-used", value: stranger.file }]);
  });

  test("HTML: a right-to-left text decides its own direction", () => {
    const cell = markdownCell("# T\n\n## Soil\n\nمرحبا\n\n| a | b |\n| - | - |\n| x | مرحبا |\n");
    const meta = { ...META, title: "دیوار", place: "قرية" };
    const html = renderHtml(notebookToDocument(notebookOf([cell]), meta));
    const page = new JSDOM(html).window.document;
    const found = Array.from(page.querySelectorAll("[dir=auto]"), ({ localName }) => localName);
    expect(found).toEqual(["h1", "span", "p", "td"]);
  });
});

describe("files inside the PDF", () => {
  const attachments = [
    {
      name: "sheets/sand.csv",
      bytes: new TextEncoder().encode("size,mass\n2,10\n"),
      mimeType: "text/csv",
      description: "Sieve sheet",
      relationship: "source",
    },
    {
      name: "result.json",
      bytes: new TextEncoder().encode("{}"),
      mimeType: "application/json",
      description: "Result",
      relationship: "data",
    },
  ] as const;

  test("come back as they went in, under PDF/A-3a", async () => {
    const report = notebookToDocument(WORDS, META);
    const { pdf } = await renderPdf(report, { standard: "a-3a", attachments });
    const seen = await readPdf(pdf);
    expect(
      seen.attachments.map(({ name, text, description }) => [name, text, description]),
    ).toEqual(
      expect.arrayContaining([
        ["sheets/sand.csv", "size,mass\n2,10\n", "Sieve sheet"],
        ["result.json", "{}", "Result"],
      ]),
    );
    expect(seen.attachments).toHaveLength(2);
    const text = Buffer.from(pdf).toString("latin1");
    expect(text).toMatch(/pdfaid:part>3<[\s\S]*pdfaid:conformance>A</);
    const again = await renderPdf(report, { standard: "a-3a", attachments });
    expect(Buffer.compare(pdf, again.pdf)).toBe(0);
  });

  test("are refused where the standard forbids them, and are none by default", async () => {
    const report = notebookToDocument(WORDS, META);
    for (const standard of [undefined, "ua-1", "none"] as const) {
      await expect(renderPdf(report, { standard, attachments })).rejects.toThrow(RangeError);
    }
    const { pdf } = await renderPdf(report, { standard: "a-3a" });
    expect((await readPdf(pdf)).attachments).toEqual([]);
  });
});

describe("the handout", () => {
  let notebook: { cells: object[] };
  beforeAll(async () => {
    notebook = (await sampleNotebook()) as { cells: object[] };
    notebook.cells.splice(
      3,
      0,
      { ...markdownCell("### Try it\n\nMore clay?"), metadata: { tags: ["exercise-4"] } },
      codeCell("guess()", [], ["exercise", "hide-code"]),
    );
  });

  test("has lines to write on, larger type, no checksums and no computation", async () => {
    const report = notebookToDocument(notebook, { ...META, layout: "handout" });
    const lines = report.nodes.flatMap((node) =>
      node.kind === "writingLines" ? [node.lines] : [],
    );
    expect(lines).toEqual([4, 5]);
    const page = new JSDOM(renderHtml(report)).window.document;
    expect(page.body.className).toBe("handout");
    expect(page.querySelectorAll(".writing-lines")).toHaveLength(2);
    expect(page.querySelector("#annex-code, #annex-inputs")).toBeNull();
    const { pages, outline } = await readPdf((await renderPdf(report)).pdf);
    expect(pages[0]).toContain("Soil and grading");
    expect(pages.join(" ")).not.toContain("SHA-256");
    expect(outline).not.toContain("Annex: the computation");
  });

  test("the permit template has no lines", () => {
    const report = notebookToDocument(notebook, META);
    expect(report.nodes.some(({ kind }) => kind === "writingLines")).toBe(false);
    expect(report.annex.length).toBeGreaterThan(0);
  });
});

describe("in Spanish", () => {
  test("words around the report, language, date and quotation marks follow", async () => {
    const contents = render(say`Contents`, "es");
    const cell = markdownCell('# T\n\n## Suelo\n\nLa "mejor" mezcla, pared de 6" y 8" y "otra".\n');
    const report = notebookToDocument(notebookOf([cell, codeCell("x()", [])]), {
      ...META,
      language: "es",
    });
    const page = new JSDOM(renderHtml(report)).window.document;
    expect(page.documentElement.lang).toBe("es");
    expect(page.querySelector(".facts")!.textContent).toContain("2 de mayo de 2024");
    expect(page.querySelector("main p")!.textContent).toBe(
      'La «mejor» mezcla, pared de 6" y 8" y «otra».',
    );
    expect(page.querySelector("#contents")!.textContent).toBe(contents);
    expect(contents).not.toBe("Contents");
    const { pdf } = await renderPdf(report);
    const { pages } = await readPdf(pdf);
    expect(pages[0]).toContain(contents);
    expect(pages[0]).toContain("2 de mayo de 2024");
    expect(Buffer.from(pdf).toString("latin1")).toContain("/Lang (es)");
  });
});
