import { describe, expect, it } from "vitest";
import { designBlend } from "../../src/blend/design.js";
import { blendCurve } from "../../src/blend/material.js";
import { bucketSensitivity, practicalParts } from "../../src/blend/parts.js";
import { robustness } from "../../src/blend/robustness.js";
import { blendFrontier, relaxLimits, ternaryMap } from "../../src/blend/tradeoffs.js";
import type { TableBlock } from "../../src/blocks/block.js";
import { blendChart, robustnessChart } from "../../src/figures/blend/blendChart.js";
import { frontierChart, ternaryChart } from "../../src/figures/blend/tradeoffCharts.js";
import { renderSvg } from "../../src/figures/svg/renderSvg.js";
import {
  blendLimitsTable,
  blendPartsTable,
  blendRelaxTable,
  bucketTable,
} from "../../src/tables/blend.js";
import { render, renderAll } from "../../src/words/render.js";
import { THREE } from "../blend/materials.js";

const INPUT = {
  materials: THREE,
  target: { kind: "power", exponent: 0.3, topSizeMm: 20 },
  limits: [
    { kind: "clay", minPct: 9, maxPct: 12 },
    { kind: "plasticity-index", maxPct: 17 },
  ],
} as const;
const DESIGN = designBlend(INPUT);
const NAMES = ["Site soil", "Sand", "Gravel"] as const;
const BAND = [
  { sizeMm: 0.002, lowPct: 4, highPct: 12 },
  { sizeMm: 0.063, lowPct: 12, highPct: 24 },
  { sizeMm: 2, lowPct: 40, highPct: 65 },
];

describe("figures of the blend", () => {
  it("map: every blend has one mark, and the words say what the marks say", () => {
    const map = ternaryMap(INPUT, 20);
    const { data, altText } = renderAll(ternaryChart("Map", map, NAMES));
    const traces = data as { name: string; a: number[]; b: number[]; c: number[] }[];
    const marks = traces.filter(({ name }) => name !== "best blend").flatMap(({ a }) => a);
    expect(marks).toHaveLength(map.points.length);
    const broken = traces.find(({ name }) => name === "breaks a limit");
    const allowed = map.points.filter((point) => point.allowed).length;
    expect(broken?.a).toHaveLength(map.points.length - allowed);
    expect(altText).toContain(`${allowed} of 231 blends`);
    expect(altText).toContain(`Site soil ${DESIGN.shares[0].sharePct.toFixed(1)} %`);
  });

  it("map: says when nothing is allowed", () => {
    const map = ternaryMap({ ...INPUT, limits: [{ kind: "clay", minPct: 50 }] }, 10);
    expect(render(ternaryChart("Map", map, NAMES).altText)).toContain("No blend keeps all limits.");
  });

  it("frontier: each point of the result, in its order", () => {
    const frontier = blendFrontier(INPUT, "cost", 6);
    const figure = frontierChart("Frontier", frontier, "Cost (per tonne)", NAMES);
    const [line] = figure.data as { x: number[]; y: number[] }[];
    expect(line.x).toEqual(frontier.map(({ value }) => value));
    expect(line.y).toEqual(frontier.map(({ rmsDifferencePct }) => rmsDifferencePct));
    expect(render(frontierChart("Frontier", [], "Cost", NAMES).altText)).toContain(
      "no blend keeps",
    );
  });

  it("robustness: error bars reach the 5th and 95th of a hundred", () => {
    const of = robustness({
      materials: THREE,
      sharesPct: [33, 19, 48],
      band: BAND,
      variation: [{ id: "soil", finesPlusMinusPct: 8 }],
      draws: 500,
    });
    const { data, altText } = renderAll(robustnessChart("Robustness", of));
    const marks = data[1] as { y: number[]; error_y: { array: number[]; arrayminus: number[] } };
    of.points.forEach(({ p05Pct, p95Pct }, i) => {
      expect(marks.y[i] + marks.error_y.array[i]).toBeCloseTo(p95Pct, 10);
      expect(marks.y[i] - marks.error_y.arrayminus[i]).toBeCloseTo(p05Pct, 10);
    });
    expect(altText).toContain("500 drawn blends");
  });

  it("are drawn, also with the materials' own curves", async () => {
    const blended = blendCurve(
      THREE.map(({ curve }, j) => ({ curve, sharePct: DESIGN.shares[j].sharePct })),
    );
    const figures = [
      ternaryChart("Map", ternaryMap(INPUT, 10), NAMES),
      frontierChart("Frontier", blendFrontier(INPUT, "site-soil", 4), "Site soil (%)", NAMES),
      blendChart(
        "Blend",
        { ...DESIGN, curve: blended.curve },
        undefined,
        THREE.map(({ curve }, j) => ({ name: NAMES[j], curve })),
      ),
    ];
    for (const figure of figures) {
      const svg = await renderSvg(renderAll(figure));
      expect(svg).toContain('role="img"');
      expect(svg).toMatch(figure === figures[1] ? /Site soil \(%\)/ : /Gravel/);
    }
  }, 60_000);
});

describe("tables of the blend", () => {
  const filled = (block: TableBlock) => {
    const table = renderAll(block);
    expect(table.rows.length).toBeGreaterThan(0);
    for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
    return table;
  };

  it("say which limits hold, and what they cost", () => {
    const limits = filled(blendLimitsTable(DESIGN));
    expect(limits.rows[0]).toEqual(["clay", "at least 9 %", "9.00 %", "on the limit"]);
    expect(limits.rows[2][0]).toBe("plasticity index (estimate)");
    expect(limits.notes?.[0]).toContain("confirmed by a test");
    const relaxed = relaxLimits(INPUT, DESIGN);
    const bought = filled(blendRelaxTable(DESIGN, relaxed));
    expect(bought.rows[0].slice(0, 4)).toEqual([
      "clay",
      "at least 9 %",
      "8 %",
      relaxed[0].gainPct.toFixed(2),
    ]);
  });

  it("show parts and shares together, and miscounts", () => {
    const parts = practicalParts(INPUT, DESIGN, { by: "mass", maxTotal: 10 });
    const table = filled(blendPartsTable(parts));
    expect(table.caption).toContain("cement not included");
    const counts = parts.materials.map((line) => line.parts);
    expect(table.rows.map(([, count]) => Number(count))).toEqual(counts);
    const changes = bucketSensitivity(INPUT, DESIGN, counts, [1, 1, 1]);
    const miscounts = filled(bucketTable(changes));
    expect(miscounts.rows.map((row) => row[3])).toEqual(
      changes.map(({ keepsLimits }) => (keepsLimits ? "kept" : "broken")),
    );
  });
});
