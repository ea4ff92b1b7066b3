import { describe, expect, it } from "vitest";
import { computeMaterial } from "../../src/study/material.js";
import { jarTable, pipetteTable } from "../../src/tables/grading.js";
import { renderAll } from "../../src/words/render.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy, type StudyCopy } from "../support/studyCopy.js";

const HYDROMETER = "sheets/site-soil-hydrometer.csv";
const PIPETTE = "sheets/site-soil-pipette.csv";
const JAR = "sheets/site-soil-jar.csv";

/**
 * One suspension: percent finer is straight on the logarithm of size, so that any interpolation is
 * exact, and at 0.063 mm it is what the sieves of the example give of what passed 2 mm.
 */
const finerPct = (sizeMm: number) =>
  Math.min(100, Math.max(0, 12 + (40.16 * Math.log(sizeMm / 0.001)) / Math.log(63)));
/** Stokes' law at 20 °C by hand: 1.0016 mPa·s (IAPWS, from memory) and 998.23 kg/m³ (ICT table, read). */
const stokesMm = (depthMm: number, timeMin: number, density = 2680) =>
  1000 *
  Math.sqrt((18 * 1.0016e-3 * (depthMm / 1000)) / ((density - 998.23) * 9.80665 * timeMin * 60));

const TIMES = [1, 2, 4, 8, 15, 30, 60, 240, 1440];

/** What a 152H reads in it: 50 g, control 5, no meniscus; the depth follows the reading. */
function hydrometerSheet(): string {
  const a = (1.65 * 2.68) / (2.65 * 1.68);
  const rows = TIMES.map((timeMin) => {
    let reading = 20;
    for (let round = 0; round < 200; round++) {
      const depthMm = 10 * (16.3 - 0.1641 * reading);
      reading = 5 + (finerPct(stokesMm(depthMm, timeMin)) * 50) / (100 * a);
    }
    return `${timeMin},${reading},5,20`;
  });
  return [
    "hydrometer,152H",
    "dry mass (g),50",
    "separating sieve (mm),2",
    "meniscus correction,0",
    "time (min),reading,control,temperature (C)",
    ...rows,
    "",
  ].join("\n");
}

/** What a pipette draws from it at 100 mm: 20 ml of a litre, 2 g of dispersant. */
function pipetteSheet(): string {
  const rows = TIMES.map((timeMin) => {
    const solids = ((finerPct(stokesMm(100, timeMin)) / 100) * 50 + 2) * (20 / 1000);
    return `${timeMin},100,20,${solids}`;
  });
  return [
    "dry mass (g),50",
    "separating sieve (mm),2",
    "cylinder volume (l),1",
    "pipette volume (ml),20",
    "dispersant mass (g),2",
    "time (min),depth (mm),temperature (C),solids (g)",
    ...rows,
    "",
  ].join("\n");
}

function withPipette(): StudyCopy {
  const copy = copyStudy("reading-room");
  copy.write(PIPETTE, pipetteSheet());
  copy.edit("study.yaml", `hydrometer: ${HYDROMETER}`, `pipette: ${PIPETTE}`);
  return copy;
}

async function compute(copy: StudyCopy) {
  const { study, findings } = await readStudy(copy.folder);
  if (!study) throw new Error(JSON.stringify(findings));
  return computeStudy(study, findings);
}

async function soilOf(copy: StudyCopy) {
  const { study, findings } = await readStudy(copy.folder);
  if (!study) throw new Error(JSON.stringify(findings));
  const { material, findings: computed } = computeMaterial(study.materials[0], study.config);
  return { soil: material, computed };
}

async function errorsOf({ folder }: StudyCopy) {
  const { findings } = await readStudy(folder);
  return findings.filter(({ severity }) => severity === "error");
}

describe("pipette and hydrometer", () => {
  it("agree on one suspension through whole study folders", async () => {
    const other = copyStudy("reading-room");
    other.write(HYDROMETER, hydrometerSheet());
    const [withHydrometer, drawn] = [await compute(other), await compute(withPipette())];
    const [a, b] = [withHydrometer, drawn].map(({ result }) => result);
    if (!a || !b) throw new Error(JSON.stringify([withHydrometer, drawn]));
    const [first, second] = [a.materials[0], b.materials[0]];
    expect(first.pipette).toBeUndefined();
    expect(second.sedimentation).toBeUndefined();
    // The suspension has a clay content of its own: 12 % and the part up to 2 µm, of what passed 2 mm.
    const passing = 82.99034768749338;
    expect(first.fractions.clayPct).toBeCloseTo((passing * finerPct(0.002)) / 100, 3);
    expect(second.fractions.clayPct).toBeCloseTo((passing * finerPct(0.002)) / 100, 3);
    expect(second.fractions.siltPct).toBeCloseTo(first.fractions.siltPct ?? NaN, 3);
    expect(second.sizes.d10 ?? 0).toBeCloseTo(first.sizes.d10 ?? 0, 6);
    for (const [index, share] of a.blend.shares.entries()) {
      expect(b.blend.shares[index].sharePct).toBeCloseTo(share.sharePct, 1);
    }
  });

  it("the pipette's errors give the intervals where it was used", async () => {
    const { soil } = await soilOf(withPipette());
    const clay = soil.uncertainty?.quantities.find(({ quantity }) => quantity === "clayPct");
    if (!clay) throw new Error("no interval");
    expect(clay.high).toBeGreaterThan(clay.low);
    expect(soil.fractions.clayPct).toBeGreaterThan(clay.low);
    expect(soil.fractions.clayPct).toBeLessThan(clay.high);
    if (!soil.pipette) throw new Error("no pipette");
    const { rows, caption, notes } = renderAll(pipetteTable("soil", soil.pipette));
    expect(rows).toHaveLength(TIMES.length);
    expect(caption).toContain("pipette");
    expect(notes?.[0]).toMatch(/^Viscosity of water: IAPWS/);
  });

  it("are not both taken, and their sheets stand in the annex", async () => {
    const copy = copyStudy("reading-room");
    copy.write(PIPETTE, pipetteSheet());
    copy.edit(
      "study.yaml",
      `hydrometer: ${HYDROMETER}`,
      `hydrometer: ${HYDROMETER}\n    pipette: ${PIPETTE}`,
    );
    expect(await errorsOf(copy)).toMatchObject([
      {
        file: "study.yaml",
        column: "materials.0.pipette",
        row: copy.rowOf("study.yaml", "pipette:"),
      },
    ]);
    const { study } = await readStudy(withPipette().folder);
    expect(study?.sheets.map(({ file }) => file)).toContain(PIPETTE);
    expect(study?.inputs.map(({ file }) => file)).toContain(PIPETTE);
  });

  it("bad pipette sheets are told with file, row, column and value, all at once", async () => {
    const copy = withPipette();
    copy.write(
      PIPETTE,
      [
        "dry mass (g),none",
        "separating sieve (mm),2",
        "cylinder volume (l),1",
        "pipette volume (ml),2000",
        "time (min),depth (mm),temperature (C),solids (g)",
        "1,100,20,0.9",
        "0.5,100,20,0.8",
        "4,,20,-1",
        "8,100,90,0.5",
        "",
      ].join("\n"),
    );
    const errors = await errorsOf(copy);
    expect(
      errors.every(
        ({ file, expected, remedy }) => file === PIPETTE && expected !== "" && remedy !== "",
      ),
    ).toBe(true);
    expect(errors).toMatchObject([
      { code: "not-a-number", row: 1, value: "none" },
      { code: "missing-fact" },
      { code: "missing-value", row: 8, column: "depth (mm)" },
      { code: "out-of-range", row: 8, column: "solids (g)", value: "-1" },
      { code: "out-of-range", row: 9, column: "temperature (C)", value: "90" },
      { code: "time-order", row: 7, column: "time (min)", value: "0.5" },
      { code: "pipette-volume", row: 4 },
    ]);
  });

  it("a separating sieve that was not sieved is told for the pipette too", async () => {
    const copy = withPipette();
    copy.edit(PIPETTE, "separating sieve (mm),2", "separating sieve (mm),0.02");
    const { soil, computed } = await soilOf(copy);
    expect(soil.pipette).toBeUndefined();
    expect(computed).toContainEqual(
      expect.objectContaining({ code: "separating-sieve-unmeasured", file: PIPETTE }),
    );
    expect((await compute(copy)).result).toBeUndefined();
  });
});

describe("jar", () => {
  it("stands beside the laboratory and moves nothing", async () => {
    const without = copyStudy("reading-room");
    without.edit("study.yaml", /\n {4}jar: .*/, "");
    const [a, b] = [await soilOf(copyStudy("reading-room")), await soilOf(without)];
    const { jar, ...rest } = a.soil;
    expect(b.soil.jar).toBeUndefined();
    expect(rest).toEqual(b.soil);
    if (!jar) throw new Error("no jar");
    expect(jar.laboratory.map(({ agrees }) => agrees)).toEqual([true, true, true]);
    const { rows, notes } = renderAll(jarTable("soil", jar));
    expect(rows.map(([layer, , , , laboratory]) => [layer, laboratory])).toEqual([
      ["sand and gravel", "52.2"],
      ["silt", "38.1"],
      ["clay", "9.7"],
    ]);
    expect(notes?.join(" ")).toContain("Heights are not masses");
    // That a laboratory should settle the soil is said until it has, and then no more.
    const guide = expect.objectContaining({ code: "jar-first-guide", file: JAR });
    expect(a.computed).not.toContainEqual(guide);
    const unsettled = copyStudy("reading-room");
    unsettled.edit("study.yaml", /\n {4}hydrometer: .*/, "");
    expect((await soilOf(unsettled)).computed).toContainEqual(guide);
  });

  it("a note tells where jar and laboratory disagree", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(JAR, "960,74", "960,45");
    copy.edit(JAR, "2880,95", "2880,60");
    const { computed } = await soilOf(copy);
    expect(computed.filter(({ code }) => code === "jar-against-laboratory")).toMatchObject([
      { severity: "note", file: JAR, row: 7, value: "sand and gravel" },
      { severity: "note", file: JAR, row: 8, value: "silt" },
    ]);
  });

  it("of a sand without sedimentation is compared as far as the curve reaches", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(
      "study.yaml",
      "sieve: sheets/pit-sand-sieve.csv",
      `sieve: sheets/pit-sand-sieve.csv\n    jar: ${JAR}`,
    );
    const { study } = await readStudy(copy.folder);
    if (!study) throw new Error("not read");
    const { jar } = computeMaterial(study.materials[2], study.config).material;
    expect(jar?.laboratory.map(({ name, agrees }) => [name, agrees])).toEqual([
      ["sand and gravel", false],
      ["silt", undefined],
      ["clay", undefined],
    ]);
  });

  it("bad jar sheets are told all at once", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(JAR, "passed sieve (mm),4", "passed sieve (mm),wide");
    copy.edit(JAR, "960,74", "960,30");
    copy.edit(JAR, "clay,2880,95", "clay,2880,250");
    expect(await errorsOf(copy)).toMatchObject([
      { code: "unknown-sieve", file: JAR, row: 4, value: "wide" },
      { code: "layer-sinks", file: JAR, row: 8, column: "top (mm)", value: "30" },
      { code: "jar-full-of-soil", file: JAR, row: 9 },
    ]);
  });
});
