import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { toMassShares } from "../../src/batch/volumeParts.js";
import { isBuildable } from "../../src/entries/buildable.js";
import type { ElementConfig } from "../../src/entries/element.js";
import type { SiteConfig, StudyConfig } from "../../src/entries/studyConfig.js";
import { computeMix } from "../../src/study/mix.js";
import { siteMix } from "../../src/tables/site/crewMix.js";
import { near } from "../strength/near.js";
import { exampleResult, type FullResult } from "../support/exampleResult.js";
import { parseStudyYaml } from "../support/saidStudy.js";
import { EXAMPLES } from "../support/studyCopy.js";

const EXACT = { rel: 1e-9, abs: 1e-9 };
let base: FullResult;
beforeAll(async () => {
  base = await exampleResult("bus-shelter");
}, 60_000);

function mixOf(config: StudyConfig) {
  if (!isBuildable(config)) throw new Error("not all is told");
  return computeMix(config, base.blend, base.strength, base.compaction);
}

const YAML = readFileSync(join(EXAMPLES, "bus-shelter/study.yaml"), "utf8");
/** The study with other lines under `element`. */
function withElement(lines: string) {
  const element = /\nelement:\n(?: {2}.*\n)+/;
  expect(YAML).toMatch(element);
  return parseStudyYaml(YAML.replace(element, `\nelement:\n${lines}\n`));
}

const SHARED = "  name: It\n  height: 2 m\n  compacted-lift: 100 mm\n  waste: 0 %";
const KINDS: [string, string, number, number][] = [
  ["wall without a kind", "  length: 4 m\n  thickness: 400 mm", 3.2, 2 * 8.8],
  ["wall", "  kind: wall\n  length: 4 m\n  thickness: 400 mm", 3.2, 2 * 8.8],
  ["bench", "  kind: bench\n  length: 4 m\n  thickness: 400 mm", 3.2, 2 * 8.8],
  ["pier", "  kind: pier\n  width: 600 mm\n  depth: 400 mm\n  count: 3", 1.44, 3 * 2 * 2],
  [
    "round pier",
    "  kind: pier\n  diameter: 600 mm\n  count: 2",
    2 * 2 * Math.PI * 0.09,
    2 * 2 * Math.PI * 0.6,
  ],
  // Outside 6 × 4, inside 5.2 × 3.2.
  [
    "ring",
    "  kind: ring\n  length: 6 m\n  width: 4 m\n  thickness: 400 mm",
    2 * (24 - 5.2 * 3.2),
    2 * (20 + 16.8),
  ],
  [
    "round ring",
    "  kind: ring\n  diameter: 5 m\n  thickness: 400 mm",
    2 * Math.PI * (2.5 ** 2 - 2.1 ** 2),
    2 * Math.PI * (5 + 4.2),
  ],
];

describe("element of study.yaml", () => {
  it.each(KINDS)("a %s is measured as geometry says", (_, lines, volumeM3, formM2) => {
    const { config, findings } = withElement(`${SHARED}\n${lines}`);
    expect(findings).toEqual([]);
    const { mix, findings: found } = mixOf(config!);
    expect(found.filter(({ severity }) => severity === "error")).toEqual([]);
    near(mix!.quantities.netVolumeM3, volumeM3, EXACT, "volume");
    near(mix!.quantities.formAreaM2, formM2, EXACT, "forms");
    expect(mix!.record.elements[0].amounts.lifts).toBe(20);
    near(mix!.quantities.mix.dryMassWithCementKg, volumeM3 * mix!.density.valueKgM3, EXACT, "mass");
  });

  it.each<[string, string, string, string]>([
    ["of no known kind", "  kind: dome\n  length: 4 m", "element.kind", "dome"],
    [
      "pier with a wall's key",
      "  kind: pier\n  diameter: 1 m\n  thickness: 1 m",
      "element.thickness",
      "1 m",
    ],
    [
      "pier both round and square",
      "  kind: pier\n  diameter: 1 m\n  width: 1 m",
      "element.width",
      "1 m",
    ],
    [
      "ring without its width",
      "  kind: ring\n  length: 4 m\n  thickness: 300 mm",
      "element.width",
      "",
    ],
    ["half a pier", "  kind: pier\n  diameter: 1 m\n  count: 1.5", "element.count", "1.5"],
    [
      "negative length",
      "  kind: wall\n  length: -4 m\n  thickness: 300 mm",
      "element.length",
      "-4 m",
    ],
    ["zero diameter", "  kind: pier\n  diameter: 0 m", "element.diameter", "0 m"],
    ["length without unit", "  length: 4\n  thickness: 300 mm", "element.length", "4"],
  ])("is refused: %s", (_, lines, column, value) => {
    const { config, findings } = withElement(`${SHARED}\n${lines}`);
    expect(config).toBeUndefined();
    const found = findings.find((finding) => finding.column === column);
    expect(found, JSON.stringify(findings)).toBeDefined();
    expect(found!.value ?? "").toBe(value);
    expect(found!.row).toBeGreaterThan(1);
  });

  it.each<[string, string, string]>([
    [
      "an opening wider than the ring",
      "  kind: ring\n  diameter: 3 m\n  thickness: 300 mm\n  openings:\n    - { width: 3.2 m, height: 1 m }",
      "element.openings[0]",
    ],
    [
      "openings that leave nothing",
      "  length: 4 m\n  thickness: 300 mm\n  openings:\n    - { width: 2 m, height: 2 m, count: 2 }",
      "element.openings",
    ],
    [
      "a ring with nothing inside",
      "  kind: ring\n  diameter: 1 m\n  thickness: 500 mm",
      "element.thickness",
    ],
    [
      "a lift above the top",
      "  kind: pier\n  diameter: 1 m\n  compacted-lift: 500 mm",
      "element.compacted-lift",
    ],
  ])("is found: %s", (_, lines, column) => {
    const shared = lines.includes("compacted-lift")
      ? SHARED.replace("  compacted-lift: 100 mm\n", "").replace("height: 2 m", "height: 0.4 m")
      : SHARED;
    const { config } = withElement(`${shared}\n${lines}`);
    const { mix, findings } = mixOf(config!);
    expect(mix).toBeUndefined();
    expect(findings).toMatchObject([{ severity: "error", code: "element-geometry", column }]);
  });
});

const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const opening = fc.record({
  widthM: metres(0.1, 0.4),
  heightM: metres(0.1, 0.4),
  count: fc.integer({ min: 1, max: 2 }),
});
const element: fc.Arbitrary<ElementConfig> = fc
  .record({
    name: fc.constant("It"),
    heightM: metres(1, 4),
    compactedLiftM: metres(0.05, 0.2),
    wastePct: metres(0, 20),
  })
  .chain((shared) =>
    fc.oneof(
      fc.record({
        ...spread(shared),
        kind: fc.constantFrom("wall" as const, "bench" as const),
        lengthM: metres(1, 12),
        thicknessM: metres(0.2, 0.6),
        openings: fc.array(opening, { maxLength: 1 }),
      }),
      fc.record({
        ...spread(shared),
        kind: fc.constant("pier" as const),
        section: fc.oneof(
          fc.record({ shape: fc.constant("round" as const), diameterM: metres(0.3, 1.2) }),
          fc.record({
            shape: fc.constant("rectangle" as const),
            widthM: metres(0.3, 1.2),
            depthM: metres(0.3, 1.2),
          }),
        ),
        count: fc.integer({ min: 1, max: 9 }),
      }),
      fc.record({
        ...spread(shared),
        kind: fc.constant("ring" as const),
        plan: fc.oneof(
          fc.record({ shape: fc.constant("round" as const), diameterM: metres(1.5, 9) }),
          fc.record({
            shape: fc.constant("rectangle" as const),
            lengthM: metres(1.5, 9),
            widthM: metres(1.5, 9),
          }),
        ),
        thicknessM: metres(0.2, 0.6),
        openings: fc.array(opening, { maxLength: 1 }),
      }),
    ),
  );

function spread<T extends Record<string, unknown>>(
  values: T,
): { [K in keyof T]: fc.Arbitrary<T[K]> } {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]) => [key, fc.constant(value)]),
  ) as { [K in keyof T]: fc.Arbitrary<T[K]> };
}

const site: fc.Arbitrary<SiteConfig> = fc.record(
  {
    bucketL: metres(4, 20),
    bucketStep: fc.constantFrom(1 as const, 0.5 as const),
    cementBy: fc.constantFrom("bucket" as const, "scale" as const),
    batchFills: fc.constant("lift" as const),
  },
  { requiredKeys: [] },
);

describe("a study's mix, there and back, for every kind of element and option of the site", () => {
  it("mass to loose parts to mass, and the parts of the element to the whole", () => {
    fc.assert(
      fc.property(
        element,
        site,
        fc.array(metres(0, 40), { minLength: 4, maxLength: 4 }),
        (element, site, bulking) => {
          const materials = base.config.materials.map((material, index) => ({
            ...material,
            bulkingPct: bulking[index],
          }));
          const config = { ...base.config, elements: [element], site, materials };
          const { mix } = mixOf(config);
          const { recipe, quantities, density } = mix!;
          const back = toMassShares(
            recipe.materials.map(({ id, looseVolumeL }) => {
              const { looseBulkDensityKgM3, bulkingPct } = materials.find((one) => one.id === id)!;
              return { id, parts: looseVolumeL!, looseBulkDensityKgM3, bulkingPct };
            }),
            {
              parts: recipe.cement.looseVolumeL!,
              looseBulkDensityKgM3: config.cement.looseBulkDensityKgM3,
            },
          );
          near(back.cementPct, recipe.cementPct, EXACT, "cement");
          back.materials.forEach(({ sharePct }, index) => {
            near(sharePct, recipe.materials[index].sharePct, EXACT, "share");
          });
          const whole = [...quantities.mix.materials, quantities.mix.cement];
          const dryKg = whole.reduce((sum, { dryMassKg }) => sum + dryMassKg, 0);
          near(dryKg, quantities.madeVolumeM3 * density.valueKgM3, EXACT, "solids");
          near(quantities.batches * recipe.dryMassWithCementKg, dryKg, EXACT, "batches");
          near(
            quantities.netVolumeM3 * (1 + element.wastePct / 100),
            quantities.madeVolumeM3,
            EXACT,
            "waste",
          );
          const crew = siteMix({ ...base, config, mix }, {})!;
          for (const line of crew.record.buckets?.materials ?? []) {
            const index = materials.findIndex(({ id }) => id === line.id);
            const litres = line.measure! * crew.bucketL;
            const kilograms =
              ((litres / 1000) * materials[index].looseBulkDensityKgM3) /
              (1 + bulking[index] / 100);
            near(line.dryMassKg, kilograms, EXACT, "buckets");
          }
        },
      ),
      { seed: 44, numRuns: 60 },
    );
  });
});
