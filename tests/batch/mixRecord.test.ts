import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type MeasuredForm,
  type MeasuredLine,
  type MixRecord,
  type MixRecordInput,
  type MixTolerances,
  mixRecord,
} from "../../src/batch/mixRecord.js";
import type { RecipeMaterial } from "../../src/batch/recipe.js";
import { render } from "../../src/words/render.js";
import { near } from "../strength/near.js";

const CLOSE = { rel: 1e-9, abs: 1e-9 };

const around = (value: number, pct: number) => ({
  low: value * (1 - pct / 100),
  high: value * (1 + pct / 100),
});

/** Tolerances of so many percent of each share and of the cement. */
function tolerancesOf(
  materials: readonly RecipeMaterial[],
  cementPct: number,
  pct: number,
): MixTolerances {
  const shares = materials.map(({ id, sharePct }) => [id, around(sharePct, pct)] as const);
  return { shares: Object.fromEntries(shares), cement: around(cementPct, pct) };
}

const SIZE = fc.oneof(
  fc.record({ batchDryMassKg: fc.integer({ min: 60, max: 400 }) }),
  fc.record({ mixerVolumeL: fc.integer({ min: 60, max: 350 }) }),
);

const MATERIAL = fc.record({
  weight: fc.oneof(
    { weight: 4, arbitrary: fc.integer({ min: 5, max: 60 }) },
    { weight: 1, arbitrary: fc.constant(0) },
  ),
  densityKgM3: fc.integer({ min: 950, max: 1700 }),
  bulkingPct: fc.constantFrom(0, 0, 12.5),
  moisturePct: fc.integer({ min: 0, max: 8 }),
});

const STUDY = fc
  .record({
    materials: fc.array(MATERIAL, { minLength: 1, maxLength: 4 }),
    noise: fc.boolean(),
    cementPct: fc.constantFrom(0, 4, 5.5, 6, 8, 11),
    cementKgM3: fc.integer({ min: 1000, max: 1500 }),
    size: SIZE,
    bucketL: fc.constantFrom(5, 10, 18.93),
    step: fc.constantFrom(1 as const, 0.5 as const),
    cementBy: fc.constantFrom("scale" as const, "bucket" as const),
    tolerancePct: fc.constantFrom(1, 3, 5, 10),
    scaleStepKg: fc.constantFrom(0.01, 0.1, 1),
    lossPct: fc.constantFrom(0, 6, 50),
  })
  .filter(({ materials }) => materials.some(({ weight }) => weight > 0));

type Study = typeof STUDY extends fc.Arbitrary<infer T> ? T : never;

function inputOf(study: Study): MixRecordInput {
  const { materials: drawn, noise, cementPct } = study;
  const total = drawn.reduce((sum, { weight }) => sum + weight, 0);
  const materials = drawn.map(
    ({ weight, densityKgM3, bulkingPct, moisturePct }, index): RecipeMaterial => ({
      id: `m${index}`,
      name: `Material ${index}`,
      sharePct: weight === 0 && noise ? 9.85e-7 : (100 * weight) / total,
      looseBulkDensityKgM3: densityKgM3,
      bulkingPct,
      moisturePct,
    }),
  );
  return {
    ...study.size,
    state: "proposed",
    reasons: [],
    materials,
    cementPct,
    cementBulkDensityKgM3: study.cementKgM3,
    targetMoisturePct: 9,
    water: { tolerancePct: 1 },
    tolerances: tolerancesOf(materials, cementPct, study.tolerancePct),
    buckets: { bucketL: study.bucketL, step: study.step, cementBy: study.cementBy },
    scaleStepKg: study.scaleStepKg,
    elements: {
      shapes: [
        {
          name: "Wall",
          kind: "wall",
          lengthM: 4,
          heightM: 2,
          thicknessM: 0.4,
          compactedLiftM: 0.1,
          wastePct: 5,
        },
      ],
      density: { best: 1950, low: 1900, high: 2000 },
      bagMassKg: 25,
    },
    supply: { m0: { lossPct: study.lossPct } },
  };
}

/** Dry kilograms in a litre as shovelled, from what the study entered. */
function densityOf({ materials, cementBulkDensityKgM3 }: MixRecordInput, id: string): number {
  if (id === "cement") return cementBulkDensityKgM3! / 1000;
  const { looseBulkDensityKgM3, bulkingPct = 0 } = materials.find((each) => each.id === id)!;
  return looseBulkDensityKgM3! / 1000 / (1 + bulkingPct / 100);
}

const formsOf = ({ buckets, parts, scale }: MixRecord) =>
  [buckets, parts, scale].filter((form): form is MeasuredForm => form !== null);

const linesOf = ({ materials, cement }: MeasuredForm) =>
  cement === null ? materials : [...materials, cement];

/** What is measured out holds what the form says, and the form says how far that is from the batch. */
function checkLine(
  line: MeasuredLine,
  form: MeasuredForm,
  { record, input }: { readonly record: MixRecord; readonly input: MixRecordInput },
): void {
  const { batch } = record;
  const asked = [...batch.materials, batch.cement].find(({ id }) => id === line.id)!;
  near(line.changeKg, line.dryMassKg - asked.dryMassKg, CLOSE, "change");
  if (form.by === "scale") {
    expect(Math.abs(line.measure! - asked.moistMassKg)).toBeLessThanOrEqual(form.size / 2 + 1e-9);
    near(line.measure!, line.moistMassKg, CLOSE, "on the scale");
  } else if (line.measure === null) {
    near(line.dryMassKg, asked.dryMassKg, CLOSE, "weighed cement");
  } else {
    expect(Number.isInteger(line.measure / form.step)).toBe(true);
    expect(line.measure).toBeGreaterThan(0);
    const heldKg = line.measure * form.size * densityOf(input, line.id);
    near(line.dryMassKg, heldKg, CLOSE, `${form.by}: what they hold`);
  }
}

/** Holds one way of measuring the batch against the record. */
function checkForm(form: MeasuredForm, record: MixRecord, input: MixRecordInput): void {
  const { batch, water } = record;
  const lines = linesOf(form);
  const soilKg = form.materials.reduce((sum, { dryMassKg }) => sum + dryMassKg, 0);
  if (form.by === "parts" || (form.by === "buckets" && form.withinTolerance)) {
    near(soilKg, batch.dryMassKg, CLOSE, `${form.by}: one batch`);
  }
  const inside = lines.every((line) => {
    checkLine(line, form, { record, input });
    const sharePct = (100 * line.dryMassKg) / soilKg;
    near(line.sharePct, sharePct, CLOSE, "share");
    const { shares, cement } = input.tolerances;
    const { low, high } = (line.id === "cement" ? cement : shares[line.id])!;
    const within = line.dryMassKg > 0 && sharePct >= low - 1e-9 && sharePct <= high + 1e-9;
    expect(line.withinTolerance, `${form.by} ${line.id} ${sharePct}`).toBe(within);
    return within;
  });
  const dryKg = lines.reduce((sum, { dryMassKg }) => sum + dryMassKg, 0);
  const wetKg = lines.reduce((sum, line) => sum + line.moistMassKg - line.dryMassKg, 0);
  const moisturePct = (100 * (wetKg + batch.water.toAddKg)) / dryKg;
  near(form.moisturePct, moisturePct, CLOSE, "moisture");
  const { low, high } = water.moisturePct;
  const moist =
    batch.status === "too-wet" || (moisturePct >= low - 1e-9 && moisturePct <= high + 1e-9);
  expect(form.withinTolerance).toBe(inside && moist);
  expect(render(form.message).startsWith("Do not use")).toBe(!form.withinTolerance);
  expect(record.messages.includes(form.message)).toBe(!form.withinTolerance);
}

/** No material without a share has a line anywhere; cement has one where there is cement. */
function checkNames(record: MixRecord, { materials, cementPct }: MixRecordInput): void {
  const none = materials.filter(({ sharePct }) => sharePct < 0.05).map(({ id }) => id);
  expect(record.notUsed.map(({ id }) => id)).toEqual(none);
  const named = [
    ...record.shares,
    ...record.batch.materials,
    ...record.total!.mix.materials,
    ...record.order!,
    ...formsOf(record).flatMap(linesOf),
  ].map(({ id }) => id);
  expect(named.filter((id) => none.includes(id))).toEqual([]);
  expect(named.includes("cement")).toBe(cementPct > 0);
}

/** The batch is the shares and the cement in one amount, and fits where it was to fit. */
function checkBatch(record: MixRecord, { cementPct, buckets }: MixRecordInput): void {
  const { batch, shares, water } = record;
  const sum = shares.reduce((all, { sharePct }) => all + sharePct, 0);
  near(sum, 100, CLOSE, "shares");
  for (const [index, { sharePct }] of shares.entries()) {
    const { dryMassKg } = batch.materials[index];
    near(dryMassKg, (batch.dryMassKg * sharePct) / 100, CLOSE, "mass of a share");
  }
  near(batch.cement.dryMassKg, (batch.dryMassKg * cementPct) / 100, CLOSE, "cement");
  if (batch.status === "ok") near(water.toAddKg.target, batch.water.toAddKg, CLOSE, "water");
  if (!record.buckets?.withinTolerance) {
    expect(record.messages.length).toBeGreaterThan(0);
    near(batch.dryMassKg, record.askedDryMassKg, CLOSE, "as asked");
    return;
  }
  const counts = linesOf(record.buckets).flatMap(({ measure }) => measure ?? []);
  const heldL = counts.reduce((all, count) => all + count * buckets!.bucketL, 0);
  const askedL = (batch.looseVolumeL! * record.askedDryMassKg) / batch.dryMassKg;
  expect(heldL).toBeLessThanOrEqual(askedL * (1 + 1e-9));
}

/** Batches and order are the batch, so many times. */
function checkElement(record: MixRecord, lossPct: number): void {
  const { batch, total, order, batches } = record;
  const madeKg = 4 * 2 * 0.4 * 1.05 * 1950;
  near(total!.batches * batch.dryMassWithCementKg, madeKg, CLOSE, "batches");
  expect(batches).toBe(Math.ceil(total!.batches - 1e-9));
  const lines = [...batch.materials, batch.cement];
  for (const { id, moistMassKg } of order!) {
    const perBatchKg = lines.find((line) => line.id === id)!.moistMassKg;
    const more = id === "m0" ? 1 + lossPct / 100 : 1;
    near(moistMassKg, total!.batches * perBatchKg * more, CLOSE, "order");
  }
}

describe("one record of the mix", () => {
  it("is one batch by every form, and says so where a form is another mix", () => {
    const seen = { buckets: 0, outside: 0, parts: 0 };
    fc.assert(
      fc.property(STUDY, (study) => {
        const input = inputOf(study);
        const record = mixRecord(input);
        checkNames(record, input);
        checkBatch(record, input);
        checkElement(record, study.lossPct);
        const forms = formsOf(record);
        for (const form of forms) checkForm(form, record, input);
        expect(record.withinTolerance).toBe(forms.every((form) => form.withinTolerance));
        if (record.buckets) seen.buckets += 1;
        if (record.parts) seen.parts += 1;
        if (!record.withinTolerance) seen.outside += 1;
      }),
      { seed: 19, numRuns: 60 },
    );
    expect(seen.buckets).toBeGreaterThan(40);
    expect(seen.parts).toBeGreaterThan(55);
    expect(seen.outside).toBeGreaterThan(8);
  }, 60_000);

  it("lets heaps be wetter than the target as far as the mix may be rammed", () => {
    const heap = (moisturePct: number) =>
      mixRecord({
        state: "tested",
        reasons: [],
        materials: [
          { id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1200, moisturePct },
        ],
        cementPct: 8,
        cementBulkDensityKgM3: 1200,
        targetMoisturePct: 9.74149147106112,
        batchDryMassKg: 100,
        water: { driestPct: 8, wettestPct: 11.5 },
        tolerances: { shares: {} },
      });
    // 12 kg in 108 kg of solids: 11.1 %, above the target and inside the window.
    const inside = heap(12);
    expect([inside.batch.status, inside.findings]).toEqual(["ok", []]);
    expect([inside.batch.water.toAddKg, inside.water.status]).toEqual([0, "ok"]);
    // 13 kg: 12.0 %, and 11.5 % of 108 kg is 12.42 kg.
    const outside = heap(13);
    expect([outside.batch.status, outside.water.status]).toEqual(["too-wet", "dry-first"]);
    const [{ value, message, expected }] = outside.findings;
    expect([value, message, expected].map((text) => render(text!))).toEqual([
      "12.0 %",
      "The materials bring more water than the mix may have: 0.6 kg too much in this batch.",
      "at most 11.5 % moisture",
    ]);
  });

  const soil = { id: "soil", name: "Soil", looseBulkDensityKgM3: 1200, moisturePct: 6 };
  const sand = { id: "sand", name: "Sand", looseBulkDensityKgM3: 1500, moisturePct: 4 };
  const gravel = { id: "gravel", name: "Gravel", looseBulkDensityKgM3: 1550, moisturePct: 1 };
  const base = (soilPct: number, sandPct: number, pct: number): MixRecordInput => {
    const materials = [
      { ...soil, sharePct: soilPct },
      { ...sand, sharePct: sandPct },
      { ...gravel, sharePct: 100 - soilPct - sandPct },
    ];
    return {
      state: "proposed",
      reasons: [],
      materials,
      cementPct: 6,
      cementBulkDensityKgM3: 1200,
      targetMoisturePct: 9,
      batchDryMassKg: 140,
      water: { tolerancePct: 1 },
      tolerances: tolerancesOf(materials, 6, pct),
    };
  };

  it("searches larger totals until the parts keep to the study's tolerances", () => {
    const wide = mixRecord(base(56, 13.2, 12)).parts!;
    const tight = mixRecord(base(56, 13.2, 1.5)).parts!;
    const total = ({ materials, cement }: MeasuredForm) =>
      materials.reduce((sum, { measure }) => sum + measure!, cement!.measure ?? 0);
    expect(wide.cement!.measure).not.toBeNull();
    expect(total(wide)).toBeLessThanOrEqual(20);
    expect(total(tight)).toBeGreaterThan(20);
    expect(total(tight)).toBeLessThanOrEqual(60);
    for (const parts of [wide, tight]) expect(parts.withinTolerance).toBe(true);
  });

  it("goes to half buckets before it leaves a tolerance", () => {
    const input = base(70, 30, 5);
    const bucketsOf = (bucketL: number) =>
      mixRecord({ ...input, buckets: { bucketL, step: 1 } }).buckets!;
    expect(bucketsOf(10)).toMatchObject({ step: 0.5, withinTolerance: true });
    expect(bucketsOf(10).materials.map(({ measure }) => measure)).toEqual([7.5, 2.5]);
    expect(bucketsOf(15)).toMatchObject({ step: 1, withinTolerance: true });
  });

  it("weighs the cement beside the parts where no ratio with it keeps to the tolerances", () => {
    const input = base(70, 30, 4);
    const tolerances = { ...input.tolerances, cement: { low: 6, high: 6.001 } };
    const { parts } = mixRecord({ ...input, tolerances });
    expect(parts!.withinTolerance).toBe(true);
    expect(parts!.materials.map(({ measure }) => measure)).toEqual([3, 1]);
    expect(parts!.cement).toMatchObject({ measure: null, sharePct: 6 });
    // By hand: 140 kg in three parts of soil and one of sand.
    near(parts!.size, 140 / (3 * 1.2 + 1.5), CLOSE, "size of a part");
    const [only] = input.materials;
    const alone = mixRecord({
      ...input,
      materials: [{ ...only, sharePct: 100 }],
      tolerances: { shares: {}, cement: tolerances.cement },
    });
    expect(alone.parts!.cement!.measure).not.toBeNull();
  });

  it("names the bucket nearest in size that would do, and sizes the batch by none that would not", () => {
    const input = base(56, 13.2, 4);
    const measured = (bucketL: number, otherL?: readonly number[]) =>
      mixRecord({ ...input, buckets: { bucketL, otherL } });
    const works = (bucketL: number) => measured(bucketL).buckets?.withinTolerance === true;
    const sizes = [4, 6, 8, 10, 12, 14, 16, 18];
    const bad = sizes.find((bucketL) => !works(bucketL))!;
    const good = sizes.filter(works);
    expect(good.length).toBeGreaterThan(1);
    const ratio = (bucketL: number) => Math.max(bucketL / bad, bad / bucketL);
    const nearest = good.reduce((best, one) => (ratio(one) < ratio(best) ? one : best));
    const record = measured(bad, sizes);
    expect(record.workingBucketL).toBe(nearest);
    expect(record.batch.dryMassKg).toBe(140);
    expect(measured(nearest, sizes).workingBucketL).toBeNull();
    expect(measured(nearest).batch.dryMassKg).toBeLessThan(140);
    expect(measured(bad, [bad]).workingBucketL).toBeNull();
  });

  it("says in plain words what no count can mend", () => {
    const input = base(56, 13.2, 0.5);
    const record = mixRecord({ ...input, buckets: { bucketL: 20, cementBy: "bucket" } });
    expect(record.withinTolerance).toBe(false);
    const { buckets } = record;
    expect(buckets!.withinTolerance).toBe(false);
    const text = render(buckets!.message);
    expect(text).toMatch(/^Do not use these buckets: they give a different mix \(/);
    expect(text).toMatch(/\d\.\d\d %, where \d+\.\d\d to \d+\.\d\d % are allowed/);
    expect(text).toContain("Weigh every material");
    expect(record.messages).toContain(buckets!.message);
    const large = mixRecord({ ...input, buckets: { bucketL: 200 } });
    expect(large.buckets).toBeNull();
    expect(render(large.messages[0])).toContain("These buckets are too large for this batch");
  });

  it("never lets cement by parts or buckets below what the tolerances allow", () => {
    const input = base(60, 20, 5);
    // The least content that the requirement asks for is the content itself.
    const tolerances = { ...input.tolerances, cement: { low: 6, high: 6.3 } };
    const record = mixRecord({
      ...input,
      tolerances,
      buckets: { bucketL: 10, cementBy: "bucket" },
    });
    const counted = mixRecord({ ...input, tolerances: { ...tolerances, shares: {} } }).parts!;
    expect(counted.cement!.measure).not.toBeNull();
    for (const form of [record.buckets!, record.parts!, counted]) {
      const { sharePct } = form.cement!;
      expect(form.withinTolerance).toBe(sharePct >= 6 - 1e-9 && sharePct <= 6.3 + 1e-9);
    }
    expect(record.parts!.withinTolerance).toBe(true);
  });

  it("leaves out a share that is the solver's noise, and says so", () => {
    const input = base(70, 30 - 9.85e-7, 5);
    const record = mixRecord(input);
    expect(record.notUsed.map(({ id }) => id)).toEqual(["gravel"]);
    expect(record.findings.map(({ code }) => code)).toEqual(["share-too-small"]);
    near(record.shares[0].sharePct, 70, { rel: 1e-7, abs: 0 }, "the rest is whole");
    expect(() => mixRecord(base(120, -20, 5))).toThrow("invalid `materials[1].sharePct`");
  });

  it("weighs where a loose density is missing, and keeps its state and reasons", () => {
    const input = base(70, 30, 5);
    const record = mixRecord({
      ...input,
      materials: input.materials.map((each) => ({ ...each, looseBulkDensityKgM3: undefined })),
      buckets: { bucketL: 10 },
      scaleStepKg: 0.1,
      state: "trial",
      reasons: ["No block was crushed."],
    });
    expect([record.buckets, record.parts]).toEqual([null, null]);
    expect(record.scale!.withinTolerance).toBe(true);
    expect(record.messages.map((text) => render(text))).toEqual([
      "A loose bulk density is missing: weigh every material.",
    ]);
    expect([record.state, record.reasons]).toEqual(["trial", ["No block was crushed."]]);
    expect(record.batches).toBeNull();
  });
});
