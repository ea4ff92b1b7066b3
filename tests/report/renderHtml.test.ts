import { createHash } from "node:crypto";
import { JSDOM } from "jsdom";
import { beforeAll, describe, expect, test } from "vitest";
import { mathHtml } from "../../src/report/html/inlineHtml.js";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import {
  BARS,
  codeCell,
  figureOutput,
  HOSTILE,
  META,
  markdownCell,
  notebookOf,
  sampleNotebook,
} from "./sampleNotebook.js";

let html = "";
let page: Document;
beforeAll(async () => {
  html = renderHtml(notebookToDocument(await sampleNotebook(), META));
  page = new JSDOM(html).window.document;
});

describe("renderHtml", () => {
  test("gives the same bytes twice", async () => {
    expect(renderHtml(notebookToDocument(await sampleNotebook(), META))).toBe(html);
  });

  test("loads nothing from anywhere", () => {
    const loading = "[src], link[href], object, iframe, form, image, base, img";
    const found = Array.from(page.querySelectorAll(loading)).map((element) => element.outerHTML);
    expect(found).toEqual(['<link rel="icon" href="data:,">']);
    const css = page.querySelector("style")!.textContent!;
    expect(css).not.toMatch(/url\(|@import/);
    for (const link of Array.from(page.querySelectorAll("a"))) {
      expect(
        page.getElementById(link.getAttribute("href")!.slice(1)),
        link.outerHTML,
      ).not.toBeNull();
    }
  });

  test("allows only its own two scripts, by digest", () => {
    const policy = page.querySelector("meta[http-equiv]")!.getAttribute("content")!;
    expect(policy).toMatch(/default-src 'none'/);
    expect(policy).not.toMatch(/script-src[^;]*unsafe/);
    const scripts = Array.from(page.querySelectorAll('script:not([type="application/json"])'));
    expect(scripts).toHaveLength(2);
    for (const script of scripts) {
      const digest = createHash("sha256").update(script.textContent!).digest("base64");
      expect(policy).toContain(`'sha256-${digest}'`);
    }
  });

  test("has landmarks, headings in order, captions and header cells", () => {
    expect(page.documentElement.lang).toBe("en");
    for (const tag of ["main", "header", "nav", "footer", "a.skip"]) {
      expect(page.querySelectorAll(tag)).toHaveLength(1);
    }
    let last = 0;
    for (const heading of Array.from(page.querySelectorAll("h1,h2,h3,h4,h5,h6"))) {
      const level = Number(heading.tagName[1]);
      expect(level).toBeLessThanOrEqual(last + 1);
      last = level;
    }
    expect(page.querySelectorAll("h1")).toHaveLength(1);
    const captions = Array.from(page.querySelectorAll("caption")).map((cell) => cell.textContent);
    expect(captions[0]).toBe("Table 1 Published limits the blend is checked against");
    for (const cell of Array.from(page.querySelectorAll("th"))) {
      expect(cell.getAttribute("scope")).toMatch(/^(row|col)$/);
    }
    const every = Array.from(page.querySelectorAll("[id]")).map((element) => element.id);
    expect(new Set(every).size).toBe(every.length);
    expect(page.querySelector(".banner")!.textContent).toContain("invented");
    expect(page.querySelectorAll("math").length).toBe(2);
    expect(page.querySelectorAll("figure svg[role=img]")).toHaveLength(2);
  });

  test("shows hostile text as text wherever it stands", async () => {
    const figure = {
      ...BARS,
      title: HOSTILE,
      altText: HOSTILE,
      layout: { title: { text: "x" }, meta: HOSTILE },
    };
    const meta = {
      ...META,
      title: HOSTILE,
      subtitle: HOSTILE,
      place: HOSTILE,
      keywords: [HOSTILE],
    };
    const cells = [
      markdownCell(`## \`\` ${HOSTILE} \`\`\n`),
      codeCell(HOSTILE, [
        { output_type: "stream", name: "stdout", text: HOSTILE },
        await figureOutput(figure, HOSTILE),
      ]),
    ];
    const text = renderHtml(notebookToDocument(notebookOf(cells), meta));
    const document = new JSDOM(text).window.document;
    expect(document.title).toBe(HOSTILE);
    expect(document.querySelector("h1")!.textContent).toBe(HOSTILE);
    expect(document.querySelector("pre.stream")!.textContent).toBe(HOSTILE);
    expect(document.querySelector("figcaption")!.textContent).toBe(`Figure 1 ${HOSTILE}`);
    expect(document.querySelectorAll("script")).toHaveLength(3);
    const json = document.querySelector('script[type="application/json"]')!.textContent!;
    expect(JSON.parse(json).layout.meta).toBe(HOSTILE);
  });

  test("leaves plotly out when no figure can use it", () => {
    const plain = renderHtml(notebookToDocument(notebookOf([markdownCell("# T\n\nWords.")]), META));
    expect(plain.length).toBeLessThan(20_000);
    expect(plain).toContain("script-src 'none'");
  });

  test("offers no button for a figure its part of plotly cannot draw", async () => {
    const ternary = {
      title: "Texture",
      altText: "One point",
      data: [{ type: "scatterternary", a: [1], b: [1], c: [1] }],
      layout: {},
    };
    const cell = codeCell("x", [await figureOutput(ternary, "Texture")]);
    const text = renderHtml(notebookToDocument(notebookOf([cell]), META));
    expect(text).toContain("<figure");
    expect(text).not.toContain("<button");
  });

  test("shows a formula it cannot read as the TeX it is", () => {
    expect(mathHtml("\\frac{1", false)).toBe('<code class="tex">\\frac{1</code>');
    expect(mathHtml("\\href{https://a}{x}", false)).not.toContain("href=");
  });
});
