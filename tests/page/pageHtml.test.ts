import { createHash } from "node:crypto";
import { wcagContrast } from "culori";
import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import { figureOf } from "../../src/figures/figure.js";
import { gradingChart } from "../../src/figures/grading/gradingChart.js";
import { PALETTE } from "../../src/figures/style.js";
import { chartSvg } from "../../src/page/chartSvg.js";
import { pageHtml } from "../../src/page/pageHtml.js";
import { DARK, GROUND, pageStyle } from "../../src/page/pageStyle.js";

const HOSTILE = `</script><script>alert(1)</script><img src=x onerror="alert(2)">`;

describe("the file of the page", () => {
  const html = pageHtml({
    script: "/* the program */",
    files: new Map([
      ["study.yaml", new TextEncoder().encode(`title: "${HOSTILE}"`)],
      [`sheets/${HOSTILE}.csv`, new TextEncoder().encode(HOSTILE)],
    ]),
    title: HOSTILE,
    locale: "es",
  });

  it("holds a study's text as data only", () => {
    const { document } = new JSDOM(html).window;
    expect(document.querySelectorAll("script").length).toBe(2);
    expect(document.querySelectorAll("img").length).toBe(0);
    expect(document.title).toBe(HOSTILE);
    const data = JSON.parse(document.getElementById("page-data")!.textContent!);
    expect(data.files[1][0]).toBe(`sheets/${HOSTILE}.csv`);
    expect(Buffer.from(data.files[1][1], "base64").toString()).toBe(HOSTILE);
  });

  it("lets its own script and style run, by their digests, and nothing else", () => {
    const { document } = new JSDOM(html).window;
    const policy = document.querySelector("meta[http-equiv]")!.getAttribute("content")!;
    const digest = (text: string) => createHash("sha256").update(text).digest("base64");
    expect(policy).toBe(
      `default-src 'none'; script-src 'sha256-${digest("/* the program */")}'; style-src 'sha256-${digest(pageStyle)}'; img-src blob: data:; base-uri 'none'; form-action 'none'`,
    );
    expect(document.querySelectorAll("[style]").length).toBe(0);
  });
});

describe("the colours of the page", () => {
  it("keep 3 : 1 for lines of figures in the dark", () => {
    for (const name of Object.values(PALETTE)) {
      expect(wcagContrast(DARK[name], GROUND.card[1]), name).toBeGreaterThanOrEqual(3);
    }
  });

  it("keep 4.5 : 1 for letters and 3 : 1 for borders, by light and dark", () => {
    for (const side of [0, 1] as const) {
      const ground = (name: keyof typeof GROUND) => GROUND[name][side];
      for (const letters of ["ink", "soft", "accent", "warn", "good"] as const) {
        for (const behind of ["paper", "card", "wash", "warn-wash"] as const) {
          expect(
            wcagContrast(ground(letters), ground(behind)),
            `${side} ${letters} on ${behind}`,
          ).toBeGreaterThanOrEqual(4.5);
        }
      }
      expect(wcagContrast(ground("on-accent"), ground("accent"))).toBeGreaterThanOrEqual(4.5);
      expect(wcagContrast(ground("edge"), ground("card"))).toBeGreaterThanOrEqual(3);
    }
  });
});

describe("a chart without a document", () => {
  const curve = (passing: number) => ({
    points: [
      { sizeMm: 0.063, passingPct: passing, origin: "sieve" as const },
      { sizeMm: 2, passingPct: 80, origin: "sieve" as const },
      { sizeMm: 20, passingPct: 100, origin: "sieve" as const },
    ],
  });
  const draw = (figure = gradingChart("Soil", [{ name: HOSTILE, curve: curve(30) }])) =>
    chartSvg(figure, { widthPx: 600, heightPx: 400, locale: "es", idPrefix: "c" });

  it("puts points where they belong on both axes", () => {
    const { document } = new JSDOM(draw()).window;
    const line = [...document.querySelectorAll("path[stroke-linejoin]")].at(-1)!;
    const points = line
      .getAttribute("d")!
      .slice(1)
      .split("L")
      .map((pair) => pair.split(" ").map(Number));
    // From 0.001 mm to 26 mm on a logarithmic axis between 54 and 588 px.
    const across = (sizeMm: number) => 54 + (534 * Math.log(sizeMm / 0.001)) / Math.log(26 / 0.001);
    points.forEach(([x], index) => {
      expect(x).toBeCloseTo(across([0.063, 2, 20][index]), 0);
    });
    const [a, b, c] = points.map(([, y]) => y);
    expect((a - c) / (b - c)).toBeCloseTo(70 / 20, 1);
  });

  it("has a name and a description, says numbers with the reader's sign, and takes no markup", () => {
    const { document } = new JSDOM(draw()).window;
    const svg = document.querySelector("svg")!;
    expect(svg.getAttribute("role")).toBe("img");
    expect(svg.querySelector("title")?.textContent).toBe("Soil");
    expect(svg.querySelector("desc")?.textContent).toContain("0,063");
    expect(svg.textContent).toContain("0,063");
    expect(document.querySelectorAll("script, img").length).toBe(0);
  });

  it("cuts no name of the legend and no title, and keeps them off the plot and inside the chart", () => {
    const long = "Walker 2005 (from memory; not read)<br>derived by us from fraction limits";
    const figure = gradingChart("Soil", [
      { name: long, curve: curve(30) },
      { name: "blend", curve: curve(20) },
    ]);
    const layout = figure.layout as { readonly xaxis: object; readonly yaxis: object };
    const titled = {
      ...figure,
      layout: {
        ...layout,
        xaxis: {
          ...layout.xaxis,
          title: { text: "Cement (% of the dry mass of soil and aggregate)" },
        },
      },
    };
    const options = { widthPx: 320, heightPx: 190, locale: "en", idPrefix: "c" } as const;
    const { document } = new JSDOM(chartSvg(titled, options)).window;
    const texts = [...document.querySelectorAll("text")];
    const lines = texts.flatMap((text) => {
      const spans = [...text.querySelectorAll("tspan")];
      return (spans.length > 0 ? spans : [text]).map((line) => ({
        words: line.textContent!,
        x: Number(line.getAttribute("x")),
        y: Number(line.getAttribute("y")),
      }));
    });
    const line = (words: string) => lines.find((each) => each.words === words)!;
    const first = line("Walker 2005 (from memory; not read)");
    const second = line("derived by us from fraction limits");
    expect([second.x, second.y - first.y]).toEqual([first.x, 15]);
    expect(line("blend").y).toBeGreaterThan(second.y);
    expect(line("Cement (% of the dry mass of soil and").y).toBe(line("aggregate)").y - 13);
    const plotTop = Number(document.querySelector("clipPath rect")!.getAttribute("y"));
    expect(line("blend").y).toBeLessThan(plotTop);
    // The upright title ends where the plot begins.
    const upright = texts.find((text) => text.getAttribute("transform"))!;
    const at = Number(/translate\(14 ([\d.]+)\)/.exec(upright.getAttribute("transform")!)![1]);
    const long13 = upright.textContent!.length * 0.54 * Number(upright.getAttribute("font-size"));
    const above = upright.getAttribute("text-anchor") === "end" ? 0 : long13 / 2;
    expect(at - above).toBeGreaterThanOrEqual(plotTop);
  });

  it("refuses a trace that it cannot draw", () => {
    const pie = figureOf("Pie", "", [{ type: "pie" }], { xaxis: {}, yaxis: {} });
    expect(() => draw(pie)).toThrow("invalid `type` of a trace: pie; expected scatter");
  });

  it("paints by light and dark where a page asks for it", () => {
    const figure = gradingChart("Soil", [{ name: "a", curve: curve(30) }]);
    const svg = chartSvg(figure, {
      widthPx: 600,
      heightPx: 400,
      locale: "en",
      idPrefix: "c",
      paint: () => "var(--x)",
    });
    expect(svg).not.toMatch(/"#/);
  });
});
