import { beforeAll, describe, expect, it } from "vitest";
import type { NoteBlock, TableBlock } from "../../src/blocks/block.js";
import { bucketSize } from "../../src/study/studyRecord.js";
import { recipeTable } from "../../src/tables/mix.js";
import { siteOrderList } from "../../src/tables/quantities.js";
import {
  siteBucketCard,
  siteMoistureCard,
  siteSheets,
  trialMass,
} from "../../src/tables/site/crewCards.js";
import { buckets, liquid, siteMix } from "../../src/tables/site/crewMix.js";
import { siteFieldTests } from "../../src/tables/site/fieldTestForms.js";
import { siteBlockLabels, siteCuringLog } from "../../src/tables/site/logAndLabels.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import type { SiteSheet } from "../../src/tables/site/siteSheet.js";
import { render, renderAll } from "../../src/words/render.js";
import { allTextOf, headsOf, itemsOf, notesOf, rowsOf } from "../support/blockText.js";
import { EXAMPLE_NAMES, exampleResult, type FullResult } from "../support/exampleResult.js";

/** From memory: pound and US gallon by definition. */
const POUND_KG = 0.45359237;
const GALLON_L = 3.785411784;

const tableOf = (sheet: SiteSheet, at = 0) =>
  sheet.blocks.filter((block): block is TableBlock => block.kind === "table")[at];
const textOf = (sheet: SiteSheet) => allTextOf(sheet.blocks);
/** Three significant digits, as a mass is printed. */
const three = (value: number) => {
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  return value.toFixed(decimals);
};

const results = new Map<string, FullResult>();
beforeAll(async () => {
  for (const name of EXAMPLE_NAMES) results.set(name, await exampleResult(name));
}, 60_000);

describe.each([
  ["reading-room", "kg", 1],
  ["bus-shelter", "lb", POUND_KG],
] as const)("the cards of %s", (name, unit, kg) => {
  const mass = (kilograms: number) => `${three(kilograms / kg)} ${unit}`;

  it("mix card: shares, parts with their size, moist masses and water of the record", () => {
    const result = results.get(name)!;
    const { recipe, parts, water, quantities } = result.mix!;
    const card = mixCard(result);
    const rows = rowsOf(tableOf(card));
    expect(parts!.withinTolerance).toBe(true);
    // Of the reading room no ratio with cement in it keeps to 1 % of its mass: it is weighed.
    const cementParts = name === "reading-room" ? "weigh" : String(parts!.cement!.measure);
    const partsOf = new Map(parts!.materials.map((line) => [line.id, line.measure]));
    expect(rows.slice(0, -2)).toEqual(
      recipe.materials.map(({ id, name: material, sharePct, dryMassKg }) => {
        const { moisturePct } = result.config.materials.find((one) => one.id === id)!;
        return [
          render(material),
          sharePct.toFixed(1),
          String(partsOf.get(id)),
          mass(dryMassKg * (1 + moisturePct / 100)),
        ];
      }),
    );
    expect(rows.at(-2)).toEqual([
      result.config.cement.name,
      `${recipe.cementPct}`,
      cementParts,
      mass((recipe.dryMassKg * recipe.cementPct) / 100),
    ]);
    const litres = water.window.toAddKg.target;
    expect(rows.at(-1)?.at(-1)).toBe(
      unit === "kg" ? `${litres.toFixed(1)} L` : `${(litres / GALLON_L).toFixed(2)} gal`,
    );
    const partL = parts!.size;
    const partHead =
      unit === "kg" ? `Parts of ${three(partL)} L` : `Parts of ${three(partL / 28.316846592)} ft³`;
    expect(headsOf(tableOf(card))).toEqual(["Put in", "Share [%]", partHead, "Or by scale, moist"]);
    const items = itemsOf(card.blocks.find(({ kind }) => kind === "keyValues"));
    expect(items.Batches).toBe(`${Math.ceil(quantities.batches)} in all`);
    const [{ name: wall, amounts }] = result.mix!.record.elements;
    const { lifts, looseLiftM, compactedLiftM } = amounts;
    const depth = (metres: number) =>
      unit === "kg" ? `${Math.round(1000 * metres)} mm` : `${(metres / 0.0254).toFixed(1)} in`;
    expect(items.Lifts).toBe(
      `${lifts}, each spread about ${depth(looseLiftM!)}, rammed to ${depth(compactedLiftM)}`,
    );
    const { record } = result.mix!;
    const dense = {
      ...result,
      mix: {
        ...result.mix!,
        record: {
          ...record,
          elements: [{ name: wall, amounts: { ...amounts, looseLiftM: null } }],
        },
      },
    };
    expect(itemsOf(mixCard(dense).blocks.find(({ kind }) => kind === "keyValues")).Lifts).toBe(
      `${lifts}, each rammed to ${depth(compactedLiftM)}`,
    );
    const { low: driest, high: wettest } = water.window.toAddKg;
    const poured = (litre: number) =>
      unit === "kg" ? `${litre.toFixed(1)} L` : `${(litre / GALLON_L).toFixed(2)} gal`;
    expect(items.Water).toMatch(new RegExp(`^${poured(driest)} to ${poured(wettest)};`));
    expect(items.Water).toContain(`best ${recipe.targetMoisturePct.toFixed(1)} %`);
    const { low, high } = water.window.moisturePct;
    expect(items.Water).toContain(`the mix at ${low.toFixed(1)} to ${high.toFixed(1)} %`);
  });

  it("no card or list names a material without a share", () => {
    const result = results.get(name)!;
    const used = new Set(result.mix!.recipe.materials.map(({ id }) => id));
    for (const sheet of [...siteSheets(result), mixCard(result), siteOrderList(result)]) {
      for (const { id, name: material } of result.config.materials) {
        if (!used.has(id)) expect(textOf(sheet), sheet.name).not.toContain(material);
      }
    }
  });

  it("are printed in the order in which a crew takes them up", () => {
    expect(siteSheets(results.get(name)!).map(({ name: sheet }) => sheet)).toEqual([
      "bucket-card",
      "making-and-curing-log",
      "block-labels",
      "moisture-check",
    ]);
  });

  it("gloves stand wherever a hand meets wet mix, silica where dry material is handled", () => {
    const result = results.get(name)!;
    const wet = [...siteSheets(result), mixCard(result), siteOrderList(result)];
    for (const sheet of wet) expect(textOf(sheet), sheet.name).toMatch(/gloves/i);
    for (const sheet of [mixCard(result), siteBucketCard(result)]) {
      expect(textOf(sheet), sheet.name).toContain("ilica dust");
    }
  });

  it("moisture card: the range, and water that falls as the heaps get damper", () => {
    const result = results.get(name)!;
    const card = siteMoistureCard(result);
    const { moisturePct, targetMoisturePct } = result.mix!.water.window;
    expect(rowsOf(tableOf(card))).toEqual([
      [moisturePct.low, targetMoisturePct, moisturePct.high].map((pct) => `${pct.toFixed(1)} %`),
    ]);
    const water = tableOf(card, 3);
    const heaps = headsOf(water).slice(1).map(Number.parseFloat);
    const poured = rowsOf(water)[0].slice(1).map(Number.parseFloat);
    heaps.forEach((pct, at) => {
      if (at > 0) expect(pct).toBeCloseTo(heaps[at - 1] + 1, 6);
      if (at > 0) expect(poured[at]).toBeLessThan(poured[at - 1]);
    });
  });
});

describe("forms that make another mix", () => {
  it("are printed on no card and in no table, and the card names a bucket that would do", () => {
    const result = results.get("reading-room")!;
    const usable = tableOf(siteBucketCard(result));
    const { buckets: counted } = siteMix(result, {})!.record;
    expect(
      rowsOf(usable)
        .slice(0, 4)
        .map((row) => row[1]),
    ).toEqual([...counted!.materials.map(({ measure }) => buckets(measure!)), "weigh"]);
    expect(mixCard(result).blocks.map(({ kind }) => kind)).toEqual([
      "table",
      "keyValues",
      "note",
      "table",
    ]);
    expect(siteBucketCard(result).blocks.map(({ kind }) => kind)).toEqual([
      "table",
      "table",
      "note",
    ]);
    expect(headsOf(usable)).toContain("Buckets");
    expect(render(usable.caption!)).toMatch(/^One batch of 170 kg dry .*Bucket of 10 L/);
    const card = siteBucketCard(result, { bucketL: 12 });
    const warnings = card.blocks.flatMap((block) => (block.kind === "note" ? block.text : []));
    // The cautions stand last.
    expect(warnings.slice(0, -1).map((text) => render(text))).toEqual([
      "Buckets of 12 L give a different mix: weigh every material. Buckets of 11 L would do.",
    ]);
    const table = tableOf(card);
    expect(headsOf(table)).toEqual(["Put in", "On a scale, moist mass", "Trial batch"]);
    expect(textOf(card)).not.toContain("½");
    // The batch is what the mixer holds, not what those buckets would.
    const { batch, askedDryMassKg } = siteMix(result, { bucketL: 12 })!.record;
    expect(batch.dryMassKg).toBe(askedDryMassKg);

    // Whoever is told to weigh by one card is not told to count parts by the other.
    const weighing = mixCard(result, { bucketL: 12 });
    expect(headsOf(tableOf(weighing))).toEqual(["Put in", "Share [%]", "Moist mass"]);
    expect(textOf(weighing)).toContain(
      "The buckets of this site do not make this mix: weigh every material.",
    );
    expect(textOf(weighing)).toContain("every material weighed");

    const { record } = result.mix!;
    const parts = { ...record.parts!, withinTolerance: false, message: "Do not use these parts" };
    const other = { ...result, mix: { ...result.mix!, record: { ...record, parts } } };
    expect(headsOf(tableOf(mixCard(other))).join()).not.toContain("Parts");
    expect(textOf(mixCard(other))).toContain("No whole parts make this mix");
    const recipe = recipeTable(other) as TableBlock;
    expect(rowsOf(recipe).map((row) => row.at(-1))).toEqual(recipe.rows.map(() => "–"));
    expect(notesOf(recipe).at(-1)).toBe("Whole parts: Do not use these parts");
    expect(rowsOf(recipeTable(result)).map((row) => row.at(-1))).toEqual([
      ...record.parts!.materials.map(({ measure }) => String(measure)),
      "weigh",
      "–",
    ]);
  });
});

describe("the scale of the crew", () => {
  it("shows masses to its step, on both cards alike, as long as they are the mix", () => {
    const result = results.get("reading-room")!;
    const fine = { scaleStepKg: 0.1 };
    const { record } = siteMix(result, fine)!;
    const inBuckets = rowsOf(tableOf(siteBucketCard(result, fine)));
    const inParts = rowsOf(tableOf(mixCard(result, fine)));
    const lines = [...record.batch.materials, record.batch.cement];
    lines.forEach(({ moistMassKg }, at) => {
      const shown = `${Math.round(moistMassKg * 10) / 10} kg`;
      expect(inBuckets[at][2]).toBe(shown);
      expect(inParts[at][3]).toBe(shown);
    });
    const coarse = { scaleStepKg: 5 };
    const warning = "The scale is too coarse for this batch and gives a different mix";
    for (const card of [siteBucketCard(result, coarse), mixCard(result, coarse)]) {
      expect(textOf(card)).toContain(warning);
      const [, , , cement] = rowsOf(tableOf(card));
      expect(cement.join()).toContain(three(record.batch.cement.dryMassKg));
    }
    expect(textOf(siteBucketCard(result, fine))).not.toContain(warning);
    const pounds = rowsOf(
      tableOf(siteBucketCard(results.get("bus-shelter")!, { scaleStepKg: POUND_KG / 10 })),
    );
    for (const row of pounds.slice(0, 3)) expect(row[2]).toMatch(/^\d+(\.\d)? lb$/);
  });
});

describe("the bucket card", () => {
  it("says for which dampness its water is meant", () => {
    const result = results.get("reading-room")!;
    const { batch, water } = siteMix(result, {})!;
    const heapPct = (100 * batch.water.inMaterialsKg) / batch.dryMassKg;
    const { low, high } = water.window.moisturePct;
    expect(notesOf(tableOf(siteBucketCard(result)))).toContainEqual(
      `Water is for stockpiles that hold ${heapPct.toFixed(1)} % in all, as the study has it; the mix may hold ${low.toFixed(1)} to ${high.toFixed(1)} %.`,
    );
  });

  it("start, aim and never above, in litres and kilograms, with a trial beside them", () => {
    const result = results.get("reading-room")!;
    const options = { trial: { dryMassKg: 5, scaleStepKg: 0.01 } };
    const table = tableOf(siteBucketCard(result, options));
    expect(headsOf(table)).toEqual([
      "Put in",
      "Buckets",
      "By scale instead, moist mass",
      "Trial batch",
    ]);
    const rows = rowsOf(table);
    const water = rows.slice(-3);
    expect(water.map(([label]) => label)).toEqual([
      "Water, start with",
      "Water, aim for",
      "Water, never above",
    ]);
    const litres = water.map(([, text]) => Number.parseFloat(text));
    expect(litres[0]).toBeLessThan(litres[1]);
    expect(litres[1]).toBeLessThan(litres[2]);
    for (const [, litre, kilogram] of water) {
      expect(Number.parseFloat(kilogram)).toBeCloseTo(Number.parseFloat(litre), 0);
    }
    // 5 kg of soil and aggregate, dry; the trial holds what the recipe has, not what the buckets make.
    const { recipe } = result.mix!;
    for (const [at, { sharePct, id }] of recipe.materials.entries()) {
      const { moisturePct } = result.config.materials.find((one) => one.id === id)!;
      const moist = ((5 * sharePct) / 100) * (1 + moisturePct / 100);
      expect(Number.parseFloat(rows[at][3])).toBeCloseTo(moist, 1);
    }
    expect(rows.find(([label]) => label === "Cement")?.[3]).toBe(
      `${((5 * recipe.cementPct) / 100).toFixed(2)} kg`,
    );
    expect(water.map((row) => row[3] === "–")).toEqual([true, false, true]);
    expect(notesOf(table)[0]).toContain(`asked for: ${recipe.cementPct} %.`);
  });

  it("a trial asked for by its form holds what fills it", () => {
    const result = results.get("reading-room")!;
    const form = { lengthM: 0.3, widthM: 0.2, heightM: 0.1, blocks: 3, lifts: 2 };
    const table = tableOf(siteBucketCard(result, { trial: { form, scaleStepKg: 0.01 } }));
    const { density, recipe } = result.mix!;
    const dryKg = (0.018 * density.valueKgM3) / (1 + recipe.cementPct / 100);
    expect(rowsOf(table).find(([label]) => label === "Cement")?.[3]).toBe(
      `${((dryKg * recipe.cementPct) / 100).toFixed(2)} kg`,
    );
  });

  it("counts in halves, and in the units of the crew", () => {
    expect([0.5, 1, 2.5, 12].map(buckets)).toEqual(["½", "1", "2½", "12"]);
    expect(render(bucketSize(18.92705892, "US"))).toBe("5 gal");
    expect(render(bucketSize(12.5, "SI"))).toBe("12.5 L");
    expect(render(liquid(10, "US"))).toBe("2.64 gal");
    expect(render(liquid(10.26, "SI"))).toBe("10.3 L");
    // Large enough that a factor a little off is seen in two decimals.
    expect(render(trialMass(100 * POUND_KG, "US"))).toBe("100.00 lb");
    expect(render(trialMass(1.234, "SI"))).toBe("1.23 kg");
  });
});

describe("whole buckets that were asked for", () => {
  it("are halved where none keeps the tolerances, and then the card says so", () => {
    const result = results.get("reading-room")!;
    const told = [2, 5, 8, 12].map((bucketL) => {
      const options = { bucketL, bucketStep: 1 } as const;
      const form = siteMix(result, options)?.record.buckets;
      const notes = notesOf(tableOf(siteBucketCard(result, options))).join(" ");
      return [form?.withinTolerance && form.step, notes.includes("half buckets are counted")];
    });
    expect(told).toContainEqual([1, false]);
    expect(told).toContainEqual([0.5, true]);
    expect(told.filter(([step, halved]) => (step === 0.5) !== halved)).toEqual([]);
  });
});

describe("log, labels and forms", () => {
  it("a line a lift and a line a day, under their heads", () => {
    const result = results.get("reading-room")!;
    const log = siteCuringLog(result, { strippingHours: 36, dampDays: 5 });
    const making = tableOf(log);
    const curing = tableOf(log, 1);
    expect(making.rows).toHaveLength(result.mix!.record.elements[0].amounts.lifts);
    expect(rowsOf(curing).map(([day]) => day)).toEqual(["1", "2", "3", "4", "5"]);
    expect(headsOf(curing)).toEqual([
      "Day",
      "Date",
      "Damp?",
      "Covered?",
      "Coldest",
      "Cracks, damage, rain",
      "By",
    ]);
    expect([making, curing].map(({ columns }) => columns[0].align)).toEqual(["left", "left"]);
    for (const dampDays of [1, 90]) {
      expect(rowsOf(tableOf(siteCuringLog(result, { dampDays }), 1))).toHaveLength(dampDays);
    }
    for (const dampDays of [0, 91, 1.5]) {
      expect(() => siteCuringLog(result, { dampDays })).toThrow(
        `invalid \`dampDays\`: ${dampDays}; expected a whole number from 1 to 90`,
      );
    }
    expect(itemsOf(siteCuringLog(result, { strippingHours: 0 }).blocks[0])).toHaveProperty(
      "Strip forms after",
      "0 hours; local rules, engineer and curing govern",
    );
    const items = itemsOf(log.blocks[0]);
    expect(items["Strip forms after"]).toContain("36 hours");
    expect(items["Keep damp for"]).toContain("5 days");
    const { batch } = result.mix!.record;
    expect(items["One batch"]).toBe(
      `${three(batch.dryMassKg)} kg dry soil and aggregate, ${three(batch.cement.dryMassKg)} kg cement`,
    );
    const { cementPct } = result.mix!.recipe;
    expect(items.Mix).toMatch(new RegExp(`^cement ${cementPct} %, water `));
  });

  it("a lift is named by its element where there are two", () => {
    const result = results.get("reading-room")!;
    const { record } = result.mix!;
    const [{ amounts }] = record.elements;
    const two = ["Wall", "Pier"].map((name) => ({ name, amounts: { ...amounts, lifts: 2 } }));
    const mix = { ...result.mix!, record: { ...record, elements: two } };
    const log = siteCuringLog({ ...result, mix });
    expect(rowsOf(tableOf(log)).map(([lift]) => lift)).toEqual([
      "Wall 1",
      "Wall 2",
      "Pier 1",
      "Pier 2",
    ]);
    expect(Object.keys(itemsOf(log.blocks[0]))).toEqual(
      expect.arrayContaining(["A lift, Wall", "A lift, Pier"]),
    );
  });

  it("labels are numbered through, two in a row, with cement and age", () => {
    const result = results.get("reading-room")!;
    const rows = rowsOf(tableOf(siteBlockLabels(result, { labels: 3 })));
    const { cementPct } = result.mix!.recipe;
    const { ageDays } = result.config.strength.requirement;
    expect(rows[0].map((text) => text.split("\n")[0])).toEqual([
      `Block 1 · cement ${cementPct} %`,
      `Block 2 · cement ${cementPct} %`,
    ]);
    expect(rows[0][0].split("\n")[3]).toBe(`Test at ${ageDays} days, on ________`);
    expect(rows[1][1]).toBe("–");
    expect(rowsOf(tableOf(siteBlockLabels(result, { labels: 1 })))).toHaveLength(1);
    for (const labels of [0, 201, 1.5]) {
      expect(() => siteBlockLabels(result, { labels })).toThrow(`invalid \`labels\`: ${labels}`);
    }
    expect(siteBlockLabels(result, { labels: 200 }).blocks.length).toBeGreaterThan(25);
    const pages = siteBlockLabels(result, { labels: 19 }).blocks.flatMap((block) =>
      block.kind === "table" ? [rowsOf(block).flat()] : [],
    );
    const numbers = pages.map((page) =>
      page.flatMap((text) => text.match(/^Block (\d+)/)?.[1] ?? []),
    );
    expect(numbers.map((page) => page.length)).toEqual([8, 8, 3]);
    expect(numbers.flat()).toEqual(Array.from({ length: 19 }, (_, at) => `${at + 1}`));
  });

  it("a field test says what was seen, what it means and how that is known", () => {
    const test = {
      id: "t",
      name: "Test",
      asks: "What?",
      tools: "a jar",
      steps: ["Fill.", "Wait."],
      readings: [{ label: "Height", unit: "mm" }, { label: "Colour" }],
      conclusions: [{ seen: "clear", means: "little clay", basis: "memory" }],
      doesNotTell: "Amounts.",
      notToBeMistakenFor: "another",
      settledBy: "a laboratory",
      source: "Handbook",
      work: ["dry-work"],
    };
    const sheet = siteFieldTests([test as never]);
    expect(rowsOf(tableOf(sheet))).toEqual([
      ["With", "a jar"],
      ["1", "Fill."],
      ["2", "Wait."],
    ]);
    expect(rowsOf(tableOf(sheet, 1))).toEqual([
      ["Height, mm", ""],
      ["Colour", ""],
    ]);
    expect(rowsOf(tableOf(sheet, 2))).toEqual([["clear", "little clay (from memory)"]]);
    const note = (made: SiteSheet) => (renderAll(made.blocks.at(-1)) as NoteBlock).text;
    const told =
      "It does not tell: Amounts. Not to be mistaken for another. Settled by: a laboratory.";
    expect(note(sheet)).toBe(`${told} Caution: Silica dust.`);
    expect(note(siteFieldTests([{ ...test, work: [] } as never]))).toBe(told);
  });
});
