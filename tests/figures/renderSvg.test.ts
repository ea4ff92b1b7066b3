import { JSDOM } from "jsdom";
import { describe, expect, test } from "vitest";
import {
  pointAlong,
  polylineLength,
  svgPathPoints,
  svgTransform,
  transformedBox,
} from "../../src/figures/svg/geometry.js";
import { renderSvg } from "../../src/figures/svg/renderSvg.js";
import { measureText } from "../../src/figures/svg/sourceSans.js";
import { BARS, GRADING, HOSTILE } from "../report/sampleNotebook.js";

const window = new JSDOM("").window;

function parse(svg: string): Document {
  const document = new window.DOMParser().parseFromString(svg, "image/svg+xml");
  expect(document.querySelector("parsererror")).toBeNull();
  return document;
}

function ids(document: Document): string[] {
  return Array.from(document.querySelectorAll("[id]")).map((element) => element.id);
}

describe("renderSvg", () => {
  test("gives the same bytes in any order and leaves its input alone", async () => {
    const before = JSON.stringify(GRADING);
    const [a, b] = [await renderSvg(GRADING), await renderSvg(BARS)];
    const [c, d] = await Promise.all([renderSvg(BARS), renderSvg(GRADING)]);
    expect(c).toBe(b);
    expect(d).toBe(a);
    expect(JSON.stringify(GRADING)).toBe(before);
  });

  test("has a role, a title and a description, and nothing that runs or fetches", async () => {
    const document = parse(await renderSvg(GRADING));
    const svg = document.documentElement;
    expect(svg.getAttribute("role")).toBe("img");
    const [title, description] = svg.getAttribute("aria-labelledby")!.split(" ");
    expect(document.getElementById(title!)!.textContent).toBe(GRADING.title);
    expect(document.getElementById(description!)!.textContent).toBe(GRADING.altText);
    expect(document.querySelector("script, foreignObject, style")).toBeNull();
    expect(svg.outerHTML).not.toMatch(/\son\w+=|url\(['"]?(?!#)[^)]/);
  });

  test("holds every run of text to its measured width, whatever font draws it", async () => {
    const document = parse(await renderSvg(GRADING));
    const runs = Array.from(document.querySelectorAll("text, tspan")).filter(
      (run) => run.children.length === 0 && run.textContent?.trim() !== "",
    );
    expect(runs.length).toBeGreaterThan(10);
    for (const run of runs) {
      expect(Number(run.getAttribute("textLength")), run.textContent ?? "").toBeGreaterThan(0);
      expect(run.getAttribute("lengthAdjust")).toBe("spacingAndGlyphs");
    }
  });

  test("keeps ids of different figures apart and every reference whole", async () => {
    const [a, b] = [parse(await renderSvg(GRADING)), parse(await renderSvg(BARS))];
    const shared = ids(a).filter((id) => ids(b).includes(id));
    expect(shared).toEqual([]);
    const used = [...a.documentElement.outerHTML.matchAll(/url\(['"]?#([^)'"]+)/g)].map(
      (m) => m[1],
    );
    expect(used.length).toBeGreaterThan(0);
    for (const id of used) expect(ids(a)).toContain(id);
  });

  test("shows hostile words as text", async () => {
    const figure = { ...BARS, title: HOSTILE, altText: HOSTILE };
    const document = parse(await renderSvg(figure));
    expect(document.querySelector("title")!.textContent).toBe(HOSTILE);
    expect(document.querySelector("script")).toBeNull();
  });

  test("puts the y axis title clear of the tick labels and the legend inside the sheet", async () => {
    const wide = {
      title: "Wide",
      altText: "Wide",
      data: [{ type: "scatter", x: [1, 2], y: [1_000_000, 2_000_000], name: "M".repeat(20) }],
      layout: {
        showlegend: true,
        yaxis: { title: { text: "Title" }, tickformat: ",d" },
        legend: { x: 1.02 },
      },
    };
    const document = parse(await renderSvg(wide));
    const texts = Array.from(document.querySelectorAll("text"));
    const title = texts.find((text) => text.textContent === "Title")!;
    const tick = texts.find((text) => text.textContent === "2,000,000")!;
    /** How far the groups around an element have moved it to the right. */
    const moved = (element: Element): number => {
      let sum = 0;
      for (let at = element.parentElement; at !== null; at = at.parentElement) {
        sum += svgTransform(at.getAttribute("transform"))[4];
      }
      return sum;
    };
    const at = (element: Element): number => Number(element.getAttribute("x")) + moved(element);
    const tickLeft = at(tick) - measureText("2,000,000", 13).widthPx;
    // the title is turned: its baseline stands at x, its descent reaches right of it
    const titleRight = at(title) + measureText("Title", 16).descentPx;
    expect(titleRight).toBeLessThan(tickLeft);
    const legend = texts.find((text) => text.textContent === "M".repeat(20))!;
    expect(at(legend) + measureText("M".repeat(20), 13).widthPx).toBeLessThan(720);
  });

  test("names a size out of range", async () => {
    await expect(renderSvg(BARS, { widthPx: 0, heightPx: 300 })).rejects.toThrow(
      "invalid `size.widthPx`: 0; expected 100 to 10000",
    );
  });
});

describe("geometry answered without a browser", () => {
  test("a straight path has its length and its points", () => {
    const points = svgPathPoints("M0,0L30,40h10v-10z");
    expect(polylineLength(svgPathPoints("M0,0L30,40"))).toBeCloseTo(50, 12);
    expect(pointAlong(points, 25)).toEqual({ x: 15, y: 20 });
    expect(points.at(-1)).toEqual([0, 0]);
  });

  test("a quarter circle as a Bézier curve is within 0.1 % of its arc", () => {
    const k = 0.5522847498;
    const points = svgPathPoints(`M1,0C1,${k},${k},1,0,1`);
    expect(Math.abs(polylineLength(points) / (Math.PI / 2) - 1)).toBeLessThan(1e-3);
  });

  test("a turned box is measured around its corners", () => {
    const box = transformedBox(
      { x: 0, y: 0, width: 4, height: 2 },
      svgTransform("translate(10,20) rotate(-90)"),
    );
    expect(box.x).toBeCloseTo(10, 12);
    expect(box.y).toBeCloseTo(16, 12);
    expect([box.width, box.height].map((side) => Math.round(side * 1e9) / 1e9)).toEqual([2, 4]);
  });
});
