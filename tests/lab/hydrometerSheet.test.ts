import { describe, expect, it } from "vitest";
import { analyseHydrometer } from "../../src/grading/sedimentation/hydrometer.js";
import {
  DEFAULT_READING_ERRORS,
  perturbHydrometer,
} from "../../src/grading/uncertainty/readingErrors.js";
import { readHydrometer } from "../../src/lab/hydrometer.js";
import { readLimits } from "../../src/lab/limits.js";
import { readPipette } from "../../src/lab/pipette.js";
import { readGrid, type SheetGrid } from "../../src/lab/sheet/grid.js";
import type { SheetReading } from "../../src/lab/sheet/readSheet.js";
import { createRandom } from "../../src/numerics/random.js";
import { consistencyLimits } from "../../src/soil/consistency/limits.js";
import { sedimentationTable } from "../../src/tables/grading.js";
import { limitsTable } from "../../src/tables/soil.js";
import { render, renderAll } from "../../src/words/render.js";

type Reader<T> = (grid: SheetGrid) => SheetReading<T>;

async function read<T>(reader: Reader<T>, lines: readonly string[]) {
  const bytes = new TextEncoder().encode(lines.join("\n"));
  const { grid } = await readGrid("sheets/s.csv", bytes);
  const { record, findings } = reader(grid as SheetGrid);
  const errors = findings.filter(({ severity }) => severity === "error");
  expect(record === undefined).toBe(errors.length > 0);
  for (const { message, expected, remedy } of findings) {
    expect([message, expected, remedy].every((words) => /\S/.test(render(words)))).toBe(true);
  }
  return { record: record as T, errors, findings };
}

const FACTS = ["dry mass (g),50", "separating sieve (mm),2", "meniscus correction,0.5"];
const CONTROLLED = [
  "time (min),reading,control,temperature (C)",
  "1,40,4.5,20",
  "60,20,4.5,20",
  "1440,10,4.5,20",
];
const PLAIN = ["time (min),reading,temperature (C)", "1,40,20", "60,20,20", "1440,10,20"];
const DEPTHS = [
  "calibration 1 reading,0",
  "calibration 1 depth (mm),163",
  "calibration 2 reading,60",
  "calibration 2 depth (cm),6.454",
];
const BULB = [
  "calibration 1 reading,0",
  "calibration 1 to neck (cm),10.5",
  "calibration 2 reading,50",
  "calibration 2 to neck (cm),2.3",
  "bulb length (cm),14",
  "bulb volume (cm3),67",
  "cylinder inner diameter (mm),59.5",
];
const sheet = (type: string, ...lines: string[]) => [`hydrometer,${type}`, ...FACTS, ...lines];
const INPUT = { particleDensityKgM3: 2650, passingSeparatingPct: 80 };

describe("a hydrometer sheet in the form of ASTM D7928", () => {
  const FORM = ["method,ASTM D7928", "temperature-density constant,7.5"];
  const CENTRE = [
    "calibration 1 reading,0",
    "calibration 1 to bulb centre (cm),17.5",
    "calibration 2 reading,50",
    "calibration 2 to bulb centre (cm),6.6",
    "bulb volume (cm3),64",
    "cylinder inner diameter (mm),60.765",
  ];

  it("has its control from the equation, its depth from the middle of the bulb", async () => {
    const { record, findings } = await read(
      readHydrometer,
      sheet("152H", ...FORM, ...CENTRE, ...PLAIN),
    );
    expect(findings).toEqual([]);
    const analysis = analyseHydrometer(record, INPUT);
    // 7.5 − 0.01248 · 20 − 0.00795 · 400.
    expect(analysis.rows[0].computedControl).toBeCloseTo(4.0704, 9);
    // 17.5 − 10.9 · 40.5 / 50 − 64 / (2 · 29).
    expect(analysis.rows[0].effectiveDepthCm).toBeCloseTo(8.671 - 64 / 58, 3);
    const notes = renderAll(sedimentationTable("soil", analysis)).notes?.join(" ");
    expect(notes).toContain("Form of test, as stated: ASTM D7928.");
    expect(notes).toContain(
      "equation of ASTM D7928 (coefficients read in a worked thesis) with its constant 7.5",
    );
    expect(notes).toContain("to the middle of the bulb 17.50 cm at 0; 6.60 cm at 50");
  });

  it("moves its constant by the control's error", async () => {
    const { record } = await read(readHydrometer, sheet("152H", ...FORM, ...PLAIN));
    const moved = perturbHydrometer(record, DEFAULT_READING_ERRORS, createRandom(7));
    expect(moved.corrections).not.toEqual(record.corrections);
    expect(analyseHydrometer(moved, INPUT).rows).toHaveLength(3);
  });

  it.each<[string, string[], string]>([
    ["control readings", [...FORM, ...CONTROLLED], "control-twice"],
    ["a dispersant correction", [...FORM, "dispersant correction,5", ...PLAIN], "control-twice"],
    [
      "marks to neck and centre",
      [
        ...FORM,
        ...CENTRE.map((line, i) => (i === 1 ? line.replace("bulb centre", "neck") : line)),
        ...PLAIN,
      ],
      "two-calibrations",
    ],
  ])("is refused beside %s", async (_, lines, code) => {
    const { errors } = await read(readHydrometer, sheet("152H", ...lines));
    expect(errors.map((each) => each.code)).toEqual([code]);
  });

  it.each(["temperature-density constant", "dispersant correction"])(
    "refuses a line “%s” without a value",
    async (line) => {
      const { errors } = await read(readHydrometer, sheet("152H", `${line},`, ...PLAIN));
      expect(errors.map(({ code }) => code)).toEqual(["missing-value"]);
    },
  );

  it("has no equation for other instruments", async () => {
    const { errors } = await read(readHydrometer, sheet("BS", ...FORM, ...DEPTHS, ...PLAIN));
    expect(errors.map(({ code }) => code)).toEqual(["no-equation"]);
  });

  it("says that ASTM D422 was withdrawn where a sheet names it", async () => {
    const { record } = await read(
      readHydrometer,
      sheet("152H", "method,ASTM D 422-63", ...CONTROLLED),
    );
    const notes = renderAll(sedimentationTable("soil", analyseHydrometer(record, INPUT))).notes;
    expect(notes?.join(" ")).toContain("ASTM D422 was withdrawn in 2016");
  });
});

describe("a density hydrometer, in the form of ISO 17892-4", () => {
  const MARKS = [
    "calibration 1 reading,0.995",
    "calibration 1 depth (mm),190",
    "calibration 2 reading,1.030",
    "calibration 2 depth (mm),60",
  ];
  const READ = [
    "time (min),reading,control,temperature (C)",
    "1,1.0240,1.0005,20",
    "60,1.0120,1.0005,20",
  ];

  it("gives what the same readings in thousandths give, with the viscosity of its form", async () => {
    const facts = FACTS.map((line) => line.replace("correction,0.5", "correction,0.0005"));
    const own = ["hydrometer,g/mL", ...facts, ...MARKS, ...READ];
    const { record, findings } = await read(readHydrometer, own);
    expect(findings).toEqual([]);
    expect(record.hydrometer).toBe("g/mL");
    // A form that the sheet does not name is in no report.
    expect(record.method).toBeUndefined();
    const notes = (each: typeof record) =>
      renderAll(sedimentationTable("soil", analyseHydrometer(each, INPUT))).notes?.join(" ");
    expect(notes(record)).not.toContain("Form of test");
    expect(notes(record)).toContain("the form of ISO 17892-4 (from memory)");
    const named = { ...record, method: "BS 1377-2" };
    expect(analyseHydrometer(named, INPUT).water).toBe("modern");
    const thousandths = [
      ...sheet("BS", "method,ISO 17892-4"),
      "calibration 1 reading,-5",
      MARKS[1],
      "calibration 2 reading,30",
      MARKS[3],
      READ[0],
      "1,24,0.5,20",
      "60,12,0.5,20",
    ];
    const bs = await read(readHydrometer, thousandths);
    const [a, b] = [record, bs.record].map((each) => analyseHydrometer(each, INPUT));
    expect(a.water).toBe("ISO 17892-4");
    expect(a.rows.map(({ bsSizeMm }) => bsSizeMm)).toEqual([undefined, undefined]);
    a.points.forEach(({ sizeMm, passingPct }, index) => {
      expect(sizeMm).toBeCloseTo(b.points[index].sizeMm, 12);
      expect(passingPct).toBeCloseTo(b.points[index].passingPct, 8);
    });
    // 100 · 2.65 / (50 · 1.65) · 23.5 of what was dispersed, 80 % of that in the whole.
    expect(a.rows[0].finerOfDispersedPct).toBeCloseTo(75.4848, 3);
  });

  it("needs its own depths, and readings that it can show", async () => {
    const bare = await read(readHydrometer, sheet("g/ml", ...READ));
    expect(bare.errors.map(({ code }) => code)).toEqual(["missing-calibration"]);
    const units = READ.map((line) => line.replace("1.0240", "24.0"));
    const { errors } = await read(readHydrometer, sheet("g/mL", ...MARKS, ...units));
    expect(errors.map(({ code }) => code)).toEqual(["off-scale"]);
  });
});

describe("a hydrometer sheet with separate corrections", () => {
  it("at the calibration temperature is the sheet with the same control", async () => {
    const control = await read(readHydrometer, sheet("152H", ...CONTROLLED));
    // 5 units of dispersant less 0.5 of meniscus is the control of 4.5.
    const separate = await read(
      readHydrometer,
      sheet("152H", "dispersant correction,5", "calibration temperature (F),68", ...PLAIN),
    );
    expect(separate.findings).toEqual([]);
    expect(separate.record.corrections).toEqual({
      dispersant: 5,
      calibrationC: expect.closeTo(20, 9),
    });
    const [a, b] = [control, separate].map(({ record }) => analyseHydrometer(record, INPUT));
    expect(b.points).toEqual(a.points);
    expect(a.rows[0].computedControl).toBeUndefined();
    expect(b.rows[0].computedControl).toBeCloseTo(4.5, 9);
    const table = renderAll(sedimentationTable("soil", b));
    expect(table.columns.map(({ header }) => header)).toContain("Control, computed");
    expect(table.notes?.join(" ")).toContain("No control cylinder was read");
    expect(renderAll(sedimentationTable("soil", a)).notes).toEqual([
      expect.stringMatching(/^Viscosity of water: IAPWS.* \(from memory\)\.$/),
    ]);
  });

  it("names the form of the test, which decides whose viscosity of water is taken", async () => {
    const { record } = await read(
      readHydrometer,
      sheet("152H", "method,Hydrometer analysis ASTM D422", ...CONTROLLED),
    );
    expect(record.method).toBe("Hydrometer analysis ASTM D422");
    const { water, rows } = analyseHydrometer(record, INPUT);
    expect(water).toBe("ASTM D422");
    expect(rows[0].viscosityMPaS).toBeCloseTo(1.0087, 2);
  });

  it("warm water lowers the computed control", async () => {
    const warm = PLAIN.map((line) => line.replace(/,20$/, ",25"));
    const { record } = await read(
      readHydrometer,
      sheet("152H", "dispersant correction,5", ...warm),
    );
    const { rows } = analyseHydrometer(record, INPUT);
    expect(rows[0].computedControl).toBeCloseTo(2.83, 2);
  });

  it("has its own reading errors, the temperature's share among them", async () => {
    const { record } = await read(
      readHydrometer,
      sheet("152H", "dispersant correction,5", ...PLAIN),
    );
    const random = () => createRandom(7);
    const moved = perturbHydrometer(record, DEFAULT_READING_ERRORS, random());
    expect(moved.corrections).not.toEqual({ dispersant: 5 });
    expect(moved.readings.every(({ control }) => control === undefined)).toBe(true);
    expect(perturbHydrometer(record, DEFAULT_READING_ERRORS, random())).toEqual(moved);
    expect(analyseHydrometer(moved, INPUT).rows).toHaveLength(3);
  });

  it("refuses both, none, and an empty control", async () => {
    const both = await read(
      readHydrometer,
      sheet("152H", "dispersant correction,5", ...CONTROLLED),
    );
    expect(both.errors).toMatchObject([{ code: "control-twice", row: 5, column: "control" }]);
    const none = await read(readHydrometer, sheet("152H", ...PLAIN));
    expect(none.errors).toMatchObject([{ code: "missing-control" }]);
    const empty = CONTROLLED.map((line) => line.replace("20,4.5", "20,"));
    expect((await read(readHydrometer, sheet("152H", ...empty))).errors).toMatchObject([
      { code: "missing-value", column: "control", row: 7, value: "" },
    ]);
  });

  it("tells a calibration temperature that nothing uses, and refuses an impossible one", async () => {
    const unused = sheet("152H", "calibration temperature (C),15", ...CONTROLLED);
    expect((await read(readHydrometer, unused)).findings).toMatchObject([
      { severity: "note", code: "unused-fact" },
    ]);
    const hot = ["dispersant correction,5", "calibration temperature (C),68"];
    expect((await read(readHydrometer, sheet("152H", ...hot, ...PLAIN))).errors).toMatchObject([
      { code: "out-of-range", row: 6, value: "68" },
    ]);
  });
});

describe("a calibration in the sheet", () => {
  it("of depths that are the standard ones changes nothing", async () => {
    const standard = await read(readHydrometer, sheet("152H", ...CONTROLLED));
    const own = await read(readHydrometer, sheet("152H", ...DEPTHS, ...CONTROLLED));
    const [a, b] = [standard, own].map(({ record }) => analyseHydrometer(record, INPUT));
    b.rows.forEach(({ effectiveDepthCm, sizeMm }, index) => {
      expect(effectiveDepthCm).toBeCloseTo(a.rows[index].effectiveDepthCm, 9);
      expect(sizeMm).toBeCloseTo(a.rows[index].sizeMm, 9);
    });
    expect(renderAll(sedimentationTable("soil", b)).notes?.[0]).toContain(
      "0 at 16.30 cm; 60 at 6.45 cm",
    );
  });

  it("of the bulb gives the depth of the published formula", async () => {
    const { record } = await read(readHydrometer, sheet("152H", ...BULB, ...CONTROLLED));
    const { rows } = analyseHydrometer(record, INPUT);
    // Murthy eq. 3.28 (read): L = L1 + (L2 − Vb / A) / 2 at a stem reading of 40.5.
    const area = (Math.PI / 4) * 5.95 ** 2;
    expect(rows[0].effectiveDepthCm).toBeCloseTo(
      10.5 - (40.5 * 8.2) / 50 + (14 - 67 / area) / 2,
      9,
    );
  });

  it("warns of readings beyond its marks", async () => {
    const narrow = DEPTHS.map((line) =>
      line.replace("calibration 2 reading,60", "calibration 2 reading,30"),
    );
    const { record } = await read(readHydrometer, sheet("152H", ...narrow, ...CONTROLLED));
    expect(renderAll(analyseHydrometer(record, INPUT).findings)).toMatchObject([
      { severity: "warning", code: "outside-calibration", row: 10, value: "40" },
    ]);
  });

  it.each<[string, string[], { code: string; row?: number }[]]>([
    ["one mark", DEPTHS.slice(0, 2), [{ code: "incomplete-calibration", row: 5 }]],
    ["a mark without its depth", DEPTHS.slice(0, 3), [{ code: "incomplete-calibration", row: 7 }]],
    ["a depth without its reading", DEPTHS.slice(1), [{ code: "incomplete-calibration", row: 5 }]],
    [
      "a bulb without a volume",
      BULB.filter((line) => !line.includes("volume")),
      [{ code: "incomplete-calibration" }],
    ],
    ["a bulb without marks", BULB.slice(4), [{ code: "incomplete-calibration", row: 5 }]],
    ["depths and a bulb", [...DEPTHS, ...BULB.slice(4)], [{ code: "two-calibrations", row: 9 }]],
    [
      "depths that rise with the reading",
      DEPTHS.map((line) => line.replace("6.454", "26.4")),
      [{ code: "calibration-order", row: 7 }],
    ],
    [
      "the same reading twice",
      DEPTHS.map((line) => line.replace("reading,60", "reading,0")),
      [{ code: "calibration-order", row: 7 }],
    ],
    [
      "a negative depth and a word, both told",
      ["calibration 1 reading,none", "calibration 1 depth (mm),-3"],
      [
        { code: "not-a-number", row: 5 },
        { code: "out-of-range", row: 6 },
        { code: "incomplete-calibration" },
      ],
    ],
  ])("refuses %s", async (_, lines, expected) => {
    const { errors } = await read(readHydrometer, sheet("152H", ...lines, ...CONTROLLED));
    expect(errors).toMatchObject(expected);
  });
});

describe("a BS hydrometer", () => {
  const lines = [
    "hydrometer,BS",
    ...FACTS,
    "calibration 1 reading,0",
    "calibration 1 depth (mm),200",
    "calibration 2 reading,30",
    "calibration 2 depth (mm),85",
    "time (min),reading,control,temperature (C)",
    "8,24,0.5,20",
  ];

  it("gives what the form of BS 1377-2 gives, and its size beside", async () => {
    const { record } = await read(readHydrometer, lines);
    const analysis = analyseHydrometer(record, INPUT);
    const [row] = analysis.rows;
    // The formulas of the form by hand: Hr at 24.5, Rd = 23.5.
    const depthMm = 200 - (24.5 * 115) / 30;
    expect(row.effectiveDepthCm).toBeCloseTo(depthMm / 10, 9);
    expect(row.finerOfDispersedPct).toBeCloseTo((100 * 2.65 * 23.5) / (50 * 1.65), 6);
    expect(row.bsSizeMm).toBeCloseTo(0.005531 * Math.sqrt((1.0016 * depthMm) / (1.65 * 8)), 6);
    expect(Math.abs(row.sizeMm / (row.bsSizeMm ?? 0) - 1)).toBeLessThan(0.002);
    const { columns, rows } = renderAll(sedimentationTable("soil", analysis));
    expect(columns.map(({ header }) => header)).toContain("Size, form of BS 1377-2");
    expect(rows[0][2]).toBe("23.5");
  });

  it("needs its own depths", async () => {
    const { errors } = await read(readHydrometer, sheet("BS", ...CONTROLLED));
    expect(errors).toMatchObject([{ code: "missing-calibration", row: 1, value: "BS" }]);
    expect(
      (await read(readHydrometer, sheet("BS", ...DEPTHS.slice(0, 2), ...CONTROLLED))).errors,
    ).toMatchObject([{ code: "incomplete-calibration" }]);
  });
});

describe("a pretreatment", () => {
  const TREATED = [
    "pretreatment,organic matter removed with hydrogen peroxide",
    "pretreatment loss (%),3.2",
  ];

  it("is kept, told, and stands below the table", async () => {
    const { record } = await read(readHydrometer, sheet("152H", ...TREATED, ...CONTROLLED));
    const analysis = analyseHydrometer(record, INPUT);
    expect(renderAll(analysis.findings)).toMatchObject([
      { severity: "note", code: "pretreatment", message: expect.stringContaining("3.2 %") },
    ]);
    expect(renderAll(sedimentationTable("soil", analysis)).notes).toEqual([
      expect.stringContaining("organic matter removed with hydrogen peroxide; 3.2 %"),
      expect.stringContaining("Viscosity of water"),
    ]);
  });

  it("must be named, with a loss that can be", async () => {
    const { errors } = await read(readHydrometer, sheet("152H", TREATED[1], ...CONTROLLED));
    expect(errors).toMatchObject([{ code: "pretreatment-unnamed", row: 5 }]);
    const much = sheet("152H", TREATED[0], "pretreatment loss (%),320", ...CONTROLLED);
    expect((await read(readHydrometer, much)).errors).toMatchObject([
      { code: "out-of-range", value: "320" },
    ]);
  });

  it("may stand in a pipette sheet", async () => {
    const { record } = await read(readPipette, [
      "dry mass (g),20",
      "separating sieve (mm),0.063",
      "cylinder volume (ml),500",
      "pipette volume (ml),10",
      "dispersant mass (g),1",
      ...TREATED,
      "time (min),depth (mm),temperature (C),solids (g)",
      "4.7,100,20,0.22",
    ]);
    expect(record.pretreatment?.lossPct).toBe(3.2);
  });
});

describe("the long box", () => {
  const TEST = ["test,water content (%)", "plastic limit,18"];
  const BAR = ["shrinkage bar wet length (mm),140", "shrinkage bar dry length (mm),133"];

  it("stands apart from the bar in record, result and table", async () => {
    const { record } = await read(readLimits, [...BAR, "long box shrinkage (cm),2.7", ...TEST]);
    expect(record.longBox).toEqual({ shrinkageMm: 27, lengthMm: 600 });
    const result = consistencyLimits(record);
    expect(result.linearShrinkagePct).toBeCloseTo(5, 9);
    expect(result.longBox?.shrinkagePct).toBeCloseTo(4.5, 9);
    const items = renderAll(limitsTable("soil", result)).items;
    expect(items.find(({ label }) => label === "Linear shrinkage (bar)")?.value).toBe("5.0 %");
    expect(items.find(({ label }) => label === "Long box (field test)")?.value).toMatch(/^4\.5 %/);
    expect(items.at(-1)?.value).toContain("not comparable");
  });

  it("alone gives no linear shrinkage, and no line of it changes a table without it", async () => {
    const boxed = await read(readLimits, [
      "long box shrinkage (mm),27",
      "long box length (mm),540",
      ...TEST,
    ]);
    expect(consistencyLimits(boxed.record).linearShrinkagePct).toBeUndefined();
    expect(consistencyLimits(boxed.record).longBox?.per600Mm).toBeCloseTo(30, 9);
    const { record } = await read(readLimits, [...BAR, ...TEST]);
    expect(renderAll(limitsTable("soil", consistencyLimits(record))).items.at(-1)?.label).toBe(
      "Linear shrinkage (bar)",
    );
  });

  it.each<[string, string[], object[]]>([
    [
      "a length alone",
      ["long box length (mm),600"],
      [{ code: "incomplete-shrinkage", row: 1, value: "600" }],
    ],
    [
      "the dry length in its place",
      ["long box shrinkage (mm),610"],
      [{ code: "box-shrank-away", row: 1 }],
    ],
    ["a negative shrinkage", ["long box shrinkage (mm),-2"], [{ code: "out-of-range", row: 1 }]],
    ["no unit", ["long box shrinkage,27"], [{ code: "missing-unit", row: 1 }]],
  ])("refuses %s", async (_, lines, expected) => {
    expect((await read(readLimits, [...lines, ...TEST])).errors).toMatchObject(expected);
  });
});
