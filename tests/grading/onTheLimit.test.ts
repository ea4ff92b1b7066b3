import { describe, expect, it } from "vitest";
import { combineGrading } from "../../src/grading/combinedGrading.js";
import { type GradingPoint, passingAtSize } from "../../src/grading/curve.js";
import { fitGrading } from "../../src/grading/models/fit.js";
import { GRADING_MODELS } from "../../src/grading/models/gradingModels.js";
import { chooseModel } from "../../src/grading/models/modelChoice.js";
import { sizesFit } from "../../src/grading/models/sizesFit.js";
import { analyseHydrometer } from "../../src/grading/sedimentation/hydrometer.js";
import { analyseJar, jarComparison } from "../../src/grading/sedimentation/jar.js";
import { analysePipette } from "../../src/grading/sedimentation/pipette.js";
import {
  suspensionFindings,
  temperatureFindings,
} from "../../src/grading/sedimentation/suspension.js";
import { analyseSieve, minimumSieveMass } from "../../src/grading/sieveAnalysis.js";
import { resampleFits } from "../../src/grading/uncertainty/fitBand.js";
import { quantityIntervals } from "../../src/grading/uncertainty/intervals.js";
import {
  DEFAULT_READING_ERRORS,
  resampleReadings,
} from "../../src/grading/uncertainty/readingErrors.js";
import { say } from "../../src/words/message.js";
import { render, renderAll } from "../../src/words/render.js";
import { curveOf, hydrometerRecord, sieveRecord } from "./gradingCases.js";

/** A value exactly on a limit, and one beside it: what a sheet with round numbers hits. */
const file = "sheets/soil.csv";
const codes = (findings: readonly { readonly severity: string; readonly code: string }[]) =>
  findings.map(({ severity, code }) => `${severity} ${code}`);

describe("the ends of a curve", () => {
  it("below its finest point nothing is known, unless nothing passes there", () => {
    expect(passingAtSize(curveOf([0.1, 0.5], [1, 90]), 0.05)).toBeUndefined();
    expect(passingAtSize(curveOf([0.1, 0], [1, 90]), 0.05)).toBe(0);
    expect(passingAtSize(curveOf([0.1, 20], [1, 90]), 0.1)).toBe(20);
    // The line between the first two points, in the middle on the logarithm.
    expect(passingAtSize(curveOf([0.1, 20], [10, 90]), 1)).toBeCloseTo(55, 9);
  });

  it("above its coarsest point nothing is known, unless everything passes there", () => {
    expect(passingAtSize(curveOf([0.1, 20], [1, 99.9]), 2)).toBeUndefined();
    expect(passingAtSize(curveOf([0.1, 20], [1, 100]), 2)).toBe(100);
  });
});

describe("a sample for a sieve analysis", () => {
  it("has the least mass of the table, a second copy by hand", () => {
    const sizes = [4.75, 6.3, 9.5, 12.5, 16, 19, 25, 31.5, 37.5, 50, 63, 75, 90];
    const kilograms = [0.5, 1, 1, 2, 2, 3, 6, 7.5, 9, 10, 12, 15, 20];
    expect(sizes.map(minimumSieveMass)).toEqual(kilograms);
    const coarser = sizes.map((sizeMm) => minimumSieveMass(1.001 * sizeMm));
    expect(coarser).toEqual([...kilograms.slice(1), undefined]);
  });

  /** Percent retained on 19, 9.5 and 4.75 mm. */
  const sample = (massG: number, ...retainedPct: number[]) => {
    const retained = retainedPct.map((pct) => (pct * massG) / 100);
    const pan = massG - retained.reduce((sum, each) => sum + each, 0);
    return analyseSieve(sieveRecord([19, 9.5, 4.75], retained, pan)).findings;
  };

  it("is judged by the sieve above the first that retains more than 10 %", () => {
    // 10 % exactly: the next finer one is the first to retain more, and 9.5 mm asks for 1 kg.
    expect(sample(1000, 0, 10, 20)).toEqual([]);
    expect(codes(sample(999, 0, 10, 20))).toEqual(["warning small-sample"]);
    const [found] = sample(2999, 0, 10.1, 20);
    expect(renderAll(found)).toMatchObject({ row: 4, value: "2999 g" });
    expect(render(found.expected)).toContain("at least 3 kg");
    expect(sample(3000, 0, 10.1, 20)).toEqual([]);
  });

  it("needs none of the table below 4.75 mm, where all sieves retain less, or without a mass", () => {
    const fine = (top: number, massG: number) =>
      analyseSieve(sieveRecord([top, 2], [0, 0.2 * massG], 0.8 * massG)).findings;
    expect(codes(fine(4.75, 499))).toEqual(["warning small-sample"]);
    expect(fine(4.75, 500)).toEqual([]);
    expect(fine(4, 50)).toEqual([]);
    // Nothing retains more than 10 %: the finest sieve names the size.
    expect(codes(sample(499, 0, 1, 1))).toEqual(["warning small-sample"]);
    expect(sample(500, 0, 1, 1)).toEqual([]);
    const shares = sieveRecord([19, 9.5], [0, 40], 60, { massesUnknown: true });
    expect(analyseSieve(shares).findings).toEqual([]);
    expect(analyseSieve(shares).massesUnknown).toBe(true);
  });

  it("has an open top as soon as anything stays on the coarsest sieve", () => {
    const top = (retainedG: number) =>
      analyseSieve(sieveRecord([2, 1], [retainedG, 30], 70)).findings;
    expect(top(0)).toEqual([]);
    expect(renderAll(top(0.1))).toMatchObject([
      { code: "top-size-unknown", row: 4, value: "0.1 g" },
    ]);
  });
});

describe("the joint of sieve and sedimentation", () => {
  const points = (origin: GradingPoint["origin"], ...pairs: [number, number][]): GradingPoint[] =>
    pairs.map(([sizeMm, passingPct]) => ({ sizeMm, passingPct, origin }));
  const joined = (sedimentationPct: number) =>
    combineGrading({
      sieve: points("sieve", [0.063, 30], [2, 100]),
      sedimentation: points("sedimentation", [0.002, 10], [0.063, sedimentationPct]),
      file,
    }).findings;

  it("is in doubt beyond 3 points, with a reason for either side", () => {
    expect(joined(33)).toEqual([]);
    expect(joined(27)).toEqual([]);
    const [more] = joined(33.1);
    expect(renderAll(more)).toMatchObject({ code: "grading-overlap", value: "3.1 points" });
    expect(render(more.remedy)).toContain("clung to coarse grains");
    expect(render(joined(26.9)[0].remedy)).toContain("were not dispersed");
  });

  it("a repair of more than 1 point is a warning, a smaller one a note", () => {
    const repaired = (passingPct: number) =>
      combineGrading({
        sieve: points("sieve", [0.063, 30], [2, 100]),
        sedimentation: points("sedimentation", [0.01, 20], [0.05, passingPct]),
        file,
      }).findings;
    expect(repaired(30)).toEqual([]);
    expect(renderAll(repaired(32))).toMatchObject([
      { severity: "note", code: "grading-repaired", value: "1.0 points at most" },
    ]);
    expect(codes(repaired(32.1))).toEqual(["warning grading-repaired"]);
  });
});

describe("a suspension", () => {
  /** From row 7 on: size in mm, percent in suspension. */
  const suspended = (...given: readonly (readonly [number, number])[]) =>
    suspensionFindings(
      given.map(([sizeMm, finerOfDispersedPct], i) => ({
        row: 7 + i,
        sizeMm,
        finerOfDispersedPct,
      })),
      {
        file,
        column: "solids",
        slackPct: 3,
        below: say`below`,
        remedy: say`remedy`,
        before: "sample",
        riseRemedy: say`rising`,
      },
    );

  it("may hold up to the slack more than all or less than nothing", () => {
    const found = (finerPct: number) => suspended([0.02, finerPct]);
    expect([found(103), found(-3), found(50)]).toEqual([[], [], []]);
    expect(renderAll(found(103.1))).toMatchObject([
      {
        code: "finer-over-100",
        value: "103.1 %",
        message: "More is in suspension than was put in.",
      },
    ]);
    expect(renderAll(found(-3.1))).toMatchObject([
      { code: "finer-below-0", value: "−3.1 %", message: "below" },
    ]);
    expect(render(found(104)[0].expected)).toContain("within 3 ");
  });

  it("of a pipette has 2 points of slack", () => {
    const share = (solidsG: number) =>
      analysePipette(
        {
          file,
          dryMassG: 25,
          separatingSizeMm: 0.063,
          cylinderVolumeCm3: 500,
          pipetteVolumeCm3: 10,
          dispersantG: 0,
          samples: [{ timeMin: 5, depthMm: 100, temperatureC: 20, solidsG, row: 7 }],
        },
        { particleDensityKgM3: 2650, passingSeparatingPct: 100 },
      );
    expect(share(0.51).rows[0].finerOfDispersedPct).toBe(102);
    expect(share(0.51).findings).toEqual([]);
    expect(codes(share(0.511).findings)).toEqual(["error finer-over-100"]);
    expect(share(0.51).points[0].passingPct).toBe(100);
  });

  it("does not rise, but for rounding", () => {
    const rise = (finerPct: number, beforePct: number) =>
      suspended([0.02, beforePct], [0.01, finerPct]);
    expect([rise(50, 50), rise(50 + 1e-10, 50), rise(40, 50)]).toEqual([[], [], []]);
    expect(renderAll(rise(50.4, 50))).toMatchObject([
      { code: "finer-rises", row: 8, value: "50.4 %", remedy: "rising" },
    ]);
    // Grains of the same size cannot come back, coarser ones from a lower depth may.
    expect(suspended([0.02, 50], [0.02, 51])).toHaveLength(1);
    expect(suspended([0.02, 50], [0.021, 51])).toEqual([]);
    expect(render(rise(50.4, 50)[0].message)).toContain(
      "rises by 0.4 points from the sample before",
    );
  });

  it("is read between 10 and 30 °C", () => {
    const found = (temperatureC: number) => temperatureFindings(file, 7, temperatureC);
    expect([found(10), found(30)]).toEqual([[], []]);
    expect([found(9.99), found(30.01)].map((each) => codes(each))).toEqual([
      ["error temperature-outside-table"],
      ["error temperature-outside-table"],
    ]);
  });

  it("is read within a fiftieth of the calibrated marks beyond them", () => {
    const depths = [
      { reading: 0, depthCm: 16 },
      { reading: 50, depthCm: 8 },
    ];
    const at = (reading: number) =>
      analyseHydrometer(
        hydrometerRecord([[1, reading, reading - 20, 20]], {
          meniscusCorrection: 0,
          calibration: { depths },
        }),
        { particleDensityKgM3: 2650, passingSeparatingPct: 100 },
      ).findings;
    expect([at(-1), at(0), at(50), at(51)]).toEqual([[], [], [], []]);
    const [above] = at(51.1);
    expect(renderAll(above)).toMatchObject({
      code: "outside-calibration",
      row: 6,
      value: "51.1",
      expected: "readings from 0 to 50, meniscus added",
    });
    expect(codes(at(-1.1))).toEqual(["warning outside-calibration"]);
  });
});

describe("a jar", () => {
  const jar = (...times: readonly [number, number, number]) => ({
    file,
    waterDepthMm: 200,
    temperatureC: 20,
    layers: (["sand and gravel", "silt", "clay"] as const).map((name, index) => ({
      name,
      timeMin: times[index],
      topMm: [60, 80, 100][index],
      row: index + 4,
    })),
  });
  // Stokes at 20 °C in 200 mm: grains of 0.063 and 0.002 mm settle in 0.9347 and 927.5 min.
  const [SAND, SILT] = [0.9347, 927.5];
  const doubts = (...times: readonly [number, number, number]) =>
    analyseJar(jar(...times)).findings.flatMap(({ code, row }) =>
      code === "jar-first-guide" ? [] : [`${code} ${row}`],
    );

  it("is read at the right time within a factor of 2 in size, which is 4 in time", () => {
    expect(doubts(SAND, SILT, 2880)).toEqual([]);
    expect(doubts(3.99 * SAND, SILT, 2880)).toEqual([]);
    expect(doubts(4.01 * SAND, SILT, 2880)).toEqual(["jar-reading-time 4"]);
    expect(doubts(SAND / 3.99, SILT, 2880)).toEqual([]);
    expect(doubts(SAND / 4.01, SILT, 2880)).toEqual(["jar-reading-time 4"]);
    expect(doubts(SAND, SILT / 3.99, 2880)).toEqual([]);
    expect(doubts(SAND, SILT / 4.01, 2880)).toEqual(["jar-reading-time 5"]);
  });

  it("says which layer the misread part counts with", () => {
    const told = (...times: readonly [number, number, number]) =>
      render(analyseJar(jar(...times)).findings[1].message);
    expect(told(SAND / 5, SILT, 2880)).toContain(
      "part of the sand and gravel counts with the layer above it",
    );
    expect(told(5 * SAND, SILT, 2880)).toContain(
      "part of the silt counts with the sand and gravel",
    );
  });

  it("stands for a day at least", () => {
    expect(doubts(SAND, SILT, 1440)).toEqual([]);
    expect(doubts(SAND, SILT, 1439)).toEqual(["jar-still-cloudy 6"]);
  });

  it("agrees with a laboratory's share at the very end of its interval", () => {
    const curve = curveOf([0.002, 20], [0.063, 40], [2, 100]);
    const shares = (low: number, high: number) => ({
      shares: (["sand and gravel", "silt", "clay"] as const).map((name) => ({
        name,
        heightMm: 1,
        heightSharePct: 1,
        lowPct: low,
        highPct: high,
      })),
    });
    const agrees = (low: number, high: number) =>
      jarComparison(jar(1, 60, 1440), shares(low, high), curve).rows.map((row) => row.agrees);
    expect(agrees(20, 60)).toEqual([true, true, true]);
    expect(agrees(20.1, 59.9)).toEqual([false, false, false]);
  });
});

describe("a fit", () => {
  const powers = (...sizes: number[]) =>
    curveOf(...sizes.map((size): [number, number] => [size, 90 * (size / 16) ** 0.3 + size / 8]));

  it("is very uncertain below three degrees of freedom, and has no criterion without one to spare", () => {
    const [four, five] = [
      [0.1, 0.5, 2, 8],
      [0.1, 0.5, 2, 4, 8],
    ].map((sizes) => fitGrading(powers(...sizes), "power"));
    expect([four.degreesOfFreedom, five.degreesOfFreedom]).toEqual([2, 3]);
    expect(four.warnings.map((each) => render(each))).toEqual([
      "Only 2 degrees of freedom: the standard errors are very uncertain.",
    ]);
    expect(five.warnings).toEqual([]);
    expect(four.aicc).toBeUndefined();
    // n ln(RSS / n) + 2 k + 2 k (k + 1) / (n − k − 1) with n 5 and k 3, variance counted.
    const rss = five.fitted.reduce((sum, at) => sum + (at.measuredPct - at.fittedPct) ** 2, 0);
    expect(five.aicc).toBeCloseTo(5 * Math.log(rss / 5) + 6 + 24, 9);
    expect(five.residualSdPct).toBeCloseTo(Math.sqrt(rss / 3), 9);
  });

  it("is tried with two points fewer between the ends than it needs in all", () => {
    const reason = (...pairs: [number, number][]) =>
      chooseModel(curveOf(...pairs), ["power"]).leftOut.map((out) => render(out.reason));
    expect(reason([0.1, 0], [1, 40], [4, 70], [16, 100])).toEqual([
      "2 points; at least 5 are needed to judge it.",
    ]);
    expect(reason([0.1, 0], [0.5, 30], [1, 40], [4, 70], [16, 100])).toEqual([]);
    expect(reason([0.5, 30], [1, 40], [4, 70], [16, 100])).toEqual([
      "4 points; at least 5 are needed to judge it.",
    ]);
  });
});

describe("what is taken where nothing is said", () => {
  it("is 500 curves, 200 fits, and the errors of a usual laboratory", () => {
    const sieve = sieveRecord([2, 0.5, 0.063], [0, 60, 30], 10);
    expect(resampleReadings({ sieve }, { seed: 1 })).toHaveLength(500);
    const fit = fitGrading(curveOf([0.1, 12], [0.5, 31], [2, 52], [8, 83], [16, 100]), "weibull");
    expect(resampleFits(fit, { seed: 1 }).values).toHaveLength(200);
    expect(DEFAULT_READING_ERRORS).toEqual({
      balanceG: 0.1,
      pipetteBalanceG: 0.001,
      pipetteVolumePct: 0.5,
      sievingPct: 1,
      hydrometerUnits: 0.5,
      temperatureC: 0.5,
      timeS: 2,
      particleDensityKgM3: 20,
    });
    expect(() => resampleReadings({ sieve }, { seed: 1, resamples: 1 })).toThrow("`resamples`: 1");
    expect(resampleReadings({ sieve }, { seed: 1, resamples: 2 })).toHaveLength(2);
    expect(() => resampleFits(fit, { seed: 1, resamples: 1 })).toThrow("`resamples`: 1");
    expect(resampleFits(fit, { seed: 1, resamples: 2 }).values).toHaveLength(2);
  });
});

describe("an interval", () => {
  it("is given where nine curves of ten reach, and not below", () => {
    const reaching = curveOf([0.063, 5], [2, 80], [20, 100]);
    const short = curveOf([0.063, 15], [2, 80], [20, 100]);
    const known = (reach: number, not: number) =>
      quantityIntervals([...Array(reach).fill(reaching), ...Array(not).fill(short)]).find(
        ({ quantity }) => quantity === "d10",
      )?.known;
    expect([known(9, 1), known(8, 1)]).toEqual([0.9, undefined]);
  });
});

describe("the grading models", () => {
  it("seek each parameter within its bounds, sizes on their logarithm", () => {
    const bounds = Object.values(GRADING_MODELS).map(({ name, parameters }) => [
      name,
      parameters
        .map((one) =>
          `${one.name} ${one.lower}–${one.upper}${one.scale === "logarithm" ? " log" : ""} ${one.unit}`.trim(),
        )
        .join(", "),
    ]);
    expect(Object.fromEntries(bounds)).toEqual({
      power: "topSize 0.001–1000 log mm, exponent 0.01–5",
      lognormal: "median 0.000001–10000 log mm, spread 0.02–15",
      weibull: "size63 0.000001–10000 log mm, exponent 0.02–20",
      "haverkamp-parlange": "dg 0.000001–10000 log mm, N 0.05–30, M 0.005–30",
      fredlund: "a 0.00001–10000 log mm, n 0.05–20, m 0.02–20, residualSize 0.000001–10 log mm",
      skaggs: "clayShare 0.0005–0.999, u 1e-8–1000 log, c 0.02–5",
      "bimodal-lognormal":
        "fineShare 0.001–0.999, fineMedian 0.000001–10000 log mm, fineSpread 0.05–10, coarseMedian 0.000001–10000 log mm, coarseSpread 0.05–10",
      "fredlund-bimodal":
        "fineShare 0.001–0.999, fineA 0.00001–10000 log mm, fineN 0.05–20, fineM 0.02–20, coarseA 0.00001–10000 log mm, coarseN 0.05–20, coarseM 0.02–20, residualSize 0.000001–10 log mm",
    });
  });

  it.each([
    ["power", [16, 0.3]],
    ["lognormal", [0.4, 1.6]],
    ["weibull", [0.7, 0.6]],
    ["skaggs", [0.2, 0.77, 0.27]],
  ] as const)(
    "%s starts from the line that its own curve is in its own measure",
    (name, values) => {
      const model = GRADING_MODELS[name];
      const sizes = [0.002, 0.01, 0.05, 0.2, 0.6, 2, 6, 12];
      const curve = curveOf(
        ...sizes.map((size): [number, number] => [size, model.evaluate(size, values)]),
      );
      const [start] = model.starts(curve);
      values.forEach((value, index) => {
        expect(start[index] / value).toBeCloseTo(1, 9);
      });
    },
  );

  it("start from the middle and the spread of a curve that has no line to tell", () => {
    // Nothing between 0.5 and 99.5 %: d50 is 1 mm, and from d16 to d84 it is 0.68 decades.
    const bare = curveOf([0.1, 0], [10, 100]);
    expect(GRADING_MODELS.lognormal.starts(bare)).toEqual([
      [expect.closeTo(1, 9), expect.closeTo((0.68 * Math.log(100)) / 2, 9)],
    ]);
    expect(GRADING_MODELS.weibull.starts(bare)).toEqual([
      [expect.closeTo(0.1 * 100 ** 0.632, 9), 1],
    ]);
  });

  it("start from a spread of 1 where all of a curve is one size, and are flat beyond all numbers", () => {
    expect(GRADING_MODELS.lognormal.starts(curveOf([1, 50]))).toEqual([[1, 1]]);
    // (10²⁰ / 10⁻⁶)²⁰ is beyond a double: everything has long since passed.
    const slopes = new Float64Array(2).fill(Number.NaN);
    expect(GRADING_MODELS.weibull.evaluate(1e20, [1e-6, 20], slopes)).toBe(100);
    expect([...slopes]).toEqual([0, 0]);
    const three = new Float64Array(3).fill(Number.NaN);
    expect(GRADING_MODELS["haverkamp-parlange"].evaluate(1e-20, [1e4, 30, 1], three)).toBe(0);
    expect([...three]).toEqual([0, 0, 0]);
  });

  it("are judged by their misses, each in parts of its own error", () => {
    const values = [16, 0.5];
    const at = (size: number) => 100 * Math.sqrt(size / 16);
    const passing = [at(1) + 3, at(4) - 2];
    const misfit = (sdPct?: number[]) =>
      sizesFit(GRADING_MODELS.power, [1, 4], sdPct).misfit(passing, values);
    expect(misfit()).toBeCloseTo(9 + 4, 9);
    expect(misfit([0.5, 4])).toBeCloseTo(36 + 0.25, 9);
  });

  it("start from the sizes at which so much passes, where they have no line of their own", () => {
    // Even on the logarithm of size: 10 % a factor of 2, from 0.0625 mm to 64 mm.
    const even = curveOf(
      ...Array.from({ length: 11 }, (_, step): [number, number] => [2 ** (step - 4), 10 * step]),
    );
    const at = (pct: number) => 2 ** (pct / 10 - 4);
    const first = (name: keyof typeof GRADING_MODELS) => GRADING_MODELS[name].starts(even);
    expect(first("haverkamp-parlange")).toHaveLength(18);
    expect(first("haverkamp-parlange")[0]).toEqual([expect.closeTo(at(40), 9), 0.7, 0.15]);
    expect(first("haverkamp-parlange").at(-1)).toEqual([expect.closeTo(at(75), 9), 4, 1.5]);
    expect(first("fredlund")).toHaveLength(18);
    expect(first("fredlund")[0]).toEqual([expect.closeTo(at(60), 9), 0.8, 0.4, 0.001]);
    expect(first("fredlund").at(-1)).toEqual([expect.closeTo(at(85), 9), 4, 2, 0.001]);
    const two = first("bimodal-lognormal");
    expect(two).toHaveLength(10);
    expect(two[0]).toEqual([0.2, expect.closeTo(at(10), 9), 0.7, expect.closeTo(at(60), 9), 0.7]);
    expect(two.at(-1)).toEqual([0.8, expect.closeTo(at(40), 9), 2, expect.closeTo(at(90), 9), 2]);
    const both = first("fredlund-bimodal");
    expect(both).toHaveLength(16);
    expect(both[0]).toEqual([
      0.25,
      expect.closeTo(at(17.5), 9),
      1.5,
      0.7,
      expect.closeTo(at(77.5), 9),
      1.5,
      0.7,
      0.001,
    ]);
    expect(both.at(-1)).toEqual([
      0.75,
      expect.closeTo(at(52.5), 9),
      3,
      1.5,
      expect.closeTo(at(92.5), 9),
      3,
      1.5,
      0.001,
    ]);
    // The last of power: the top, then where 95 % pass.
    expect(
      first("power")
        .slice(1)
        .map(([top]) => top),
    ).toEqual([64, expect.closeTo(at(95), 9)]);
  });
});
