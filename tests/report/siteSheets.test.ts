import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { JSDOM } from "jsdom";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { FIELD_TESTS } from "../../src/batch/fieldTests.js";
import { mixRecord } from "../../src/batch/mixRecord.js";
import type { TableBlock } from "../../src/blocks/block.js";
import { CAUTIONS } from "../../src/guidance/cautions.js";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import { NO_APPROVAL } from "../../src/report/reportMeta.js";
import { renderSite, siteDocument, writeSite } from "../../src/report/writeSite.js";
import { bucketSize } from "../../src/study/studyRecord.js";
import { siteOrderList } from "../../src/tables/quantities.js";
import { siteBucketCard, siteMoistureCard, siteSheets } from "../../src/tables/site/crewCards.js";
import { buckets, liquid } from "../../src/tables/site/crewMix.js";
import { siteFieldTests } from "../../src/tables/site/fieldTestForms.js";
import { siteBlockLabels, siteCuringLog } from "../../src/tables/site/logAndLabels.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import { type SiteSheet, siteCautions } from "../../src/tables/site/siteSheet.js";
import { render, renderAll } from "../../src/words/render.js";
import { allTextOf } from "../support/blockText.js";
import { EXAMPLE_NAMES, exampleResult, type FullResult } from "../support/exampleResult.js";
import { readPdf } from "./readPdf.js";
import { HOSTILE } from "./sampleNotebook.js";

const results = new Map<string, FullResult>();
let folder = "";
beforeAll(async () => {
  for (const name of EXAMPLE_NAMES) results.set(name, await exampleResult(name));
  folder = await mkdtemp(join(tmpdir(), "loambook-site-"));
}, 60_000);
afterAll(() => rm(folder, { recursive: true }));

const tables = (sheet: SiteSheet) =>
  renderAll(sheet.blocks.filter((block): block is TableBlock => block.kind === "table"));
/** From memory: a US gallon is 231 cubic inches by definition. */
const GALLON_L = 3.785411784;
const TESTS = renderAll(FIELD_TESTS);

async function pagesOf(sheet: SiteSheet, result: FullResult) {
  const { pdf, printScale, findings } = await renderPdf(siteDocument(sheet, result));
  expect(findings).toEqual([]);
  // loaded late: it adds globals that jsdom must not see when it starts
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  const document = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
  const page = await document.getPage(1);
  const { items } = await page.getTextContent();
  const found = {
    pages: document.numPages,
    printScale,
    size: page.view.slice(2).map(Math.round),
    text: items.map((item) => ("str" in item ? item.str : "")).join(" "),
  };
  await document.destroy();
  return found;
}

describe("a card with warnings", () => {
  const long =
    "The blocks of the trial were crushed dry; the requirement speaks of blocks crushed soaked. The cement content does not show that the requirement is met.";
  const doubtful = (count: number) => {
    const result = results.get("reading-room")!;
    const record = {
      ...result.mix!.record,
      doubts: Array.from({ length: count }, (_, at) => `${at + 1}. ${long}`),
    };
    return { ...result, mix: { ...result.mix!, record } } as FullResult;
  };

  test("is one page, set smaller where it must be and as large as it may", async () => {
    for (const make of [siteBucketCard, siteMoistureCard, mixCard]) {
      const scales: number[] = [];
      for (const count of [0, 1, 3, 6]) {
        const result = doubtful(count);
        const { pages, printScale, text } = await pagesOf(make(result), result);
        expect([make.name, count, pages]).toEqual([make.name, count, 1]);
        for (let at = 1; at <= count; at++) expect(text).toContain(`${at}. The blocks of`);
        expect(text.includes("tested mix in doubt: do not build yet")).toBe(count > 0);
        // What stands last is there too.
        expect(text).toContain("page 1 of 1");
        scales.push(printScale);
      }
      expect(scales[0]).toBe(1);
      expect(scales).toEqual([...scales].sort((a, b) => b - a));
      expect(scales[3]).toBeLessThan(1);
    }
  }, 60_000);

  test("keeps its size, on several pages, and says so, where nobody could read it any more", async () => {
    const result = doubtful(20);
    const sheet = siteDocument(siteBucketCard(result), result);
    const { printScale, findings } = await renderPdf(sheet);
    expect(printScale).toBe(1);
    const [{ severity, code, message }] = findings;
    expect([findings.length, severity, code]).toEqual([1, "warning", "card-on-several-pages"]);
    expect(render(message)).toBe(
      "“Bucket card” does not fit on one page, even in small letters: it takes 3.",
    );
  });

  test("is printed from a browser at the size of the PDF", async () => {
    const { files } = await renderSite([mixCard(doubtful(3))], doubtful(3));
    expect(files["mix-card.html"]).toMatch(/@media print\{\.sheet \.frame\{zoom:0\.\d+\}\}/);
  });
});

describe.each(EXAMPLE_NAMES)("the sheets of %s", (name) => {
  test("fit their pages, in the page size of the study", async () => {
    const result = results.get(name)!;
    const counts: Record<string, number> = {};
    for (const sheet of [...siteSheets(result), siteOrderList(result), siteFieldTests()]) {
      const { pages, size, text } = await pagesOf(sheet, result);
      counts[sheet.name] = pages;
      expect(size).toEqual(name === "reading-room" ? [595, 842] : [612, 792]);
      expect(text).toContain(render(sheet.title));
      expect(text).toContain("do not build from this report");
      expect(text).not.toContain("Contents");
    }
    expect(counts).toEqual({
      "bucket-card": 1,
      "making-and-curing-log": 3,
      "block-labels": 1,
      "moisture-check": 1,
      "order-list": 1,
      "field-tests": FIELD_TESTS.length,
    });
  });

  test("the card's buckets weigh what the card says", () => {
    const result = results.get(name)!;
    const { units, materials, site } = result.config;
    const { batch, buckets: form } = result.mix!.record;
    const sheet = siteBucketCard(result);
    const [card] = tables(sheet);
    const told = allTextOf(sheet.blocks).includes("Do not use these buckets");
    let checked = 0;
    for (const [label, count, weight] of card.rows) {
      const material = materials.find((one) => one.name === label);
      if (!material) continue;
      const number = Number(count.replace("½", "")) + (count.includes("½") ? 0.5 : 0);
      const litres = number * (site.bucketL ?? (units === "SI" ? 10 : 5 * GALLON_L));
      const kilograms =
        (litres / 1000) * material.looseBulkDensityKgM3 * (1 + material.moisturePct / 100);
      const line = form!.materials.find(({ id }) => id === material.id)!;
      expect(Math.abs(line.moistMassKg / kilograms - 1), label).toBeLessThan(1e-9);
      // The scale column is the record's own batch; the buckets keep its tolerance, or the card says otherwise.
      const shown = Number.parseFloat(weight) * (units === "SI" ? 1 : 0.45359237);
      const exact = batch.materials.find(({ id }) => id === material.id)!.moistMassKg;
      expect(Math.abs(shown / exact - 1), label).toBeLessThan(0.006);
      const { low, high } = line.tolerance!;
      const share = (100 * line.dryMassKg) / batch.dryMassKg;
      if (!told) expect(share >= low && share <= high, label).toBe(true);
      checked += 1;
    }
    expect(checked).toBeGreaterThan(1);
  });

  test("show the cautions where they matter, and nobody's name", () => {
    const sheets = siteSheets(results.get(name)!);
    const shown = (sheet: SiteSheet) =>
      sheet.blocks.flatMap((block) =>
        block.kind === "cautions" ? block.items.map(({ title }) => title) : [],
      );
    const [card, log, labels, moisture] = renderAll(sheets.map(shown));
    // The bucket card has one page in every language, so it says them in short.
    expect(card).toEqual([]);
    expect(allTextOf(sheets[0].blocks)).toMatch(/Wet cement burns.*gloves.*Silica dust/);
    expect(log[0]).toBe("Pressure on the forms");
    expect(log).toContain("Work at height");
    expect(log).toContain("Water and frost");
    expect(labels).toEqual(["Cured strength before loading"]);
    expect(moisture).toEqual(["Wet cement burns"]);
  });

  test("are one page of HTML each, unnumbered, loading nothing", () => {
    const result = results.get(name)!;
    for (const sheet of siteSheets(result)) {
      const page = new JSDOM(renderHtml(siteDocument(sheet, result))).window.document;
      expect(page.querySelector("nav")).toBeNull();
      expect(page.body.className).toBe("sheet");
      expect(page.querySelectorAll("[src], link[href^=http], script, form")).toHaveLength(0);
      expect(page.body.textContent).not.toMatch(/Table \d|undefined|NaN|null/);
      const ids = Array.from(page.querySelectorAll("[id]")).map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const cell of Array.from(page.querySelectorAll("th"))) {
        expect(cell.getAttribute("scope")).toMatch(/^(row|col)$/);
      }
    }
  });
});

describe("site sheets", () => {
  /** Without what the study says of its site, so that the defaults show. */
  const room = (): FullResult => {
    const result = results.get("reading-room")!;
    return { ...result, config: { ...result.config, site: {} } };
  };

  test("the card stays one page on the shorter paper with five materials and a warning", async () => {
    const shelter = results.get("bus-shelter")!;
    const { materials } = shelter.config;
    const five = [
      ...materials.slice(0, 4),
      { ...materials[3], id: "more", name: "Crushed gravel" },
    ];
    const shares = Object.fromEntries(
      five.map(({ id }, index) => {
        const share = [40, 20, 10, 20, 10][index];
        return [id, { low: 0.95 * share, high: 1.05 * share }];
      }),
    );
    const record = mixRecord({
      materials: five.map((one, index) => ({ ...one, sharePct: [40, 20, 10, 20, 10][index] })),
      cementPct: 5.5,
      cementBulkDensityKgM3: 1200,
      targetMoisturePct: shelter.compaction!.peak!.optimumWaterPct,
      mixerVolumeL: 100,
      state: "tested",
      reasons: [],
      water: { tolerancePct: 1 },
      tolerances: { shares },
      buckets: { bucketL: 5 * GALLON_L },
    });
    const result = {
      ...shelter,
      materials: [...shelter.materials, { ...shelter.materials[3], id: "more" }],
      mix: { ...shelter.mix!, record, recipe: record.batch },
    };
    const card = siteBucketCard(result);
    expect(allTextOf(card.blocks)).toContain(
      "Buckets of 5 gal give a different mix: weigh every material.",
    );
    expect((await pagesOf(card, result)).pages).toBe(1);
  });

  test("say when a bucket is a default, and when rounding moves a share", () => {
    expect(allTextOf(siteBucketCard(room()).blocks)).toContain("is a default");
    const given = siteBucketCard(room(), { bucketL: 7, bucketStep: 1 });
    expect(allTextOf(given.blocks)).not.toContain("is a default");
    expect(allTextOf(given.blocks)).toContain("Bucket of 7 L");
    const coarse = siteBucketCard(room(), { bucketL: 20, bucketStep: 1, mixerVolumeL: 75 });
    expect(allTextOf(coarse.blocks)).toContain(
      "Buckets of 20 L give a different mix: weigh every material.",
    );
    const none = siteBucketCard(room(), { bucketL: 90 });
    expect(allTextOf(none.blocks)).toContain("120 kg dry soil and aggregate, by scale");
    expect(allTextOf(none.blocks)).toContain("These buckets are too large for this batch");
  });

  test("the order list adds up with the quantities of the study, and counts loads and days", () => {
    const { quantities, density } = room().mix!;
    const options = {
      truck: { payloadKg: 9000, bodyM3: 6 },
      forms: { formsAtHandM2: 8, hoursToSetAndRam: 8, workingHoursADay: 8 },
      strippingHours: 24,
    };
    const sheet = siteOrderList(room(), options);
    const [order] = tables(sheet);
    for (const [label, mass, , loads] of order.rows) {
      const line = quantities.mix.materials.find(({ name }) => name === label);
      if (!line) continue;
      // What is lost in the heap and on the way is ordered too.
      const { lossPct = 0 } = room().config.materials.find(({ id }) => id === line.id)!;
      const broughtKg = line.moistMassKg * (1 + lossPct / 100);
      const [low, high] = mass.split(" to ").map((text) => Number.parseFloat(text));
      expect(low).toBeLessThan(broughtKg);
      expect(high).toBeGreaterThan(broughtKg);
      const most = Math.max(high / 9000, ((line.looseVolumeL! / 6000) * high) / line.moistMassKg);
      expect(Number(loads)).toBe(Math.ceil(most));
    }
    expect(allTextOf(sheet.blocks)).toContain(render(density.basis));
    expect(allTextOf(sheet.blocks)).toMatch(/\d+ uses of the formwork, 2\.0 days each/);
    expect(allTextOf(siteOrderList(room()).blocks)).toContain(
      "not entered; 24 hours is common practice without a source",
    );
  });

  test("leave stripping time and curing to the user", () => {
    const open = allTextOf(siteCuringLog(room()).blocks);
    expect(open).toContain("________ hours; local rules");
    expect(open).not.toMatch(/24 h/);
    const log = siteCuringLog(room(), { strippingHours: 36, dampDays: 9 });
    expect(allTextOf(log.blocks)).toContain("36 hours; local rules");
    expect(tables(log)[1].rows).toHaveLength(9);
    expect(() => siteCuringLog(room(), { dampDays: 0 })).toThrow("invalid `dampDays`: 0");
    expect(() => siteCuringLog(room(), { strippingHours: -1 })).toThrow(RangeError);
  });

  test("say where the moisture window comes from", () => {
    // The reading room enters its tolerance; the bus shelter leaves it to the compaction test.
    expect(allTextOf(siteMoistureCard(room()).blocks)).toContain("A tolerance that was entered");
    expect(allTextOf(siteMoistureCard(results.get("bus-shelter")!).blocks)).toContain(
      "Where the compaction test keeps 98 %",
    );
    const entered = allTextOf(siteMoistureCard(room(), { tolerancePct: 1.5 }).blocks);
    expect(entered).toContain("A tolerance that was entered");
    const untested = allTextOf(siteMoistureCard({ ...room(), compaction: undefined }).blocks);
    expect(untested).toContain("common practice without a source");
    expect(() => siteMoistureCard(room(), { tolerancePct: -1 })).toThrow("invalid `tolerancePct`");
  });

  test("print as many labels as asked for, each number once", () => {
    const cells = tables(siteBlockLabels(room(), { labels: 19 }))
      .flatMap(({ rows }) => rows.flat())
      .flatMap((cell) => /^Block (\d+)/.exec(cell)?.[1] ?? []);
    expect(cells.map(Number)).toEqual(Array.from({ length: 19 }, (_, index) => index + 1));
    expect(() => siteBlockLabels(room(), { labels: 0 })).toThrow("invalid `labels`: 0");
  });

  test("without a mix hold one warning and no number", () => {
    const bare = { ...room(), mix: undefined };
    for (const { blocks } of siteSheets(bare)) {
      expect(blocks.map(({ kind }) => kind)).toEqual(["note"]);
    }
  });

  test("say at the foot of every page, in either language, that nothing is an approval", async () => {
    for (const language of ["en", "es"] as const) {
      const result = { ...room(), config: { ...room().config, language } };
      const words = render(NO_APPROVAL, language);
      const document = siteDocument(siteCuringLog(result), result);
      const { pages } = await readPdf((await renderPdf(document)).pdf);
      expect(pages.length).toBeGreaterThan(1);
      for (const page of pages) expect(page).toContain(words);
      const html = new JSDOM(renderHtml(document)).window.document;
      expect(html.querySelector("footer")!.textContent).toContain(words);
    }
    expect(render(NO_APPROVAL, "es")).not.toBe(render(NO_APPROVAL));
  });

  test("take text of a study as text", async () => {
    const result = { ...room(), config: { ...room().config, title: HOSTILE } };
    const sheet = siteBucketCard(result);
    const page = new JSDOM(renderHtml(siteDocument(sheet, result))).window.document;
    expect(page.querySelector(".subtitle")!.textContent).toBe(`${HOSTILE} · tested mix`);
    expect((await pagesOf(sheet, result)).text).toContain("#panic()");
  });

  test("are written whole, the same again, and never over a user's file unasked", async () => {
    const outFolder = join(folder, "sheets");
    const { paths } = await writeSite(room(), { outFolder });
    expect(paths).toHaveLength(8);
    const before = await Promise.all(paths.map((path) => readFile(path)));
    await writeFile(join(outFolder, "mine.txt"), "keep");
    await expect(writeSite(room(), { outFolder })).rejects.toThrow(RangeError);
    const again = await writeSite(room(), {
      outFolder,
      replace: true,
      fieldTests: true,
      orderList: true,
    });
    expect(again.paths).toHaveLength(12);
    expect(await Promise.all(paths.map((path) => readFile(path)))).toEqual(before);
    expect(await readFile(join(outFolder, "mine.txt"), "utf8")).toBe("keep");
    expect(await readdir(folder)).toEqual(["sheets"]);
  });

  test("call out halves and units as a crew does", () => {
    expect([0.5, 1, 3.5].map(buckets)).toEqual(["½", "1", "3½"]);
    expect(renderAll([liquid(5.46, "SI"), liquid(GALLON_L, "US")])).toEqual(["5.5 L", "1.00 gal"]);
    expect(renderAll([bucketSize(10, "SI"), bucketSize(5 * GALLON_L, "US")])).toEqual([
      "10 L",
      "5 gal",
    ]);
  });

  test("know every caution by its id and no other", () => {
    expect(siteCautions(CAUTIONS.map(({ id }) => id)).items).toHaveLength(CAUTIONS.length);
    expect(() => siteCautions(["gloves"])).toThrow("invalid caution: gloves");
  });
});

describe("field tests", () => {
  test("keep the two dropped balls apart", () => {
    const [plastic, moist] = ["plastic-ball", "ball-and-drop"].map(
      (id) => TESTS.find((one) => one.id === id)!,
    );
    expect(plastic.notToBeMistakenFor).toContain("moist mix");
    expect(moist.notToBeMistakenFor).toContain("plastic soil");
    expect(plastic.asks).not.toMatch(/moist/);
    expect(moist.asks).not.toMatch(/clay|bind/);
    expect(plastic.steps.join(" ")).toContain("2 m");
    expect(moist.steps.join(" ")).toContain("shoulder height");
  });

  test("each has a mark, a limit, a source and the test that settles it", () => {
    const ids = FIELD_TESTS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [at, one] of TESTS.entries()) {
      const form = allTextOf(siteFieldTests([FIELD_TESTS[at]!]).blocks);
      for (const part of [one.settledBy, one.doesNotTell, one.source]) expect(form).toContain(part);
      for (const { basis } of one.conclusions) {
        if (basis === "read") expect(one.source).toContain("(read");
        if (basis === "memory") expect(`${one.source}${one.doesNotTell}`).toContain("from memory");
      }
      expect(form).not.toMatch(/approved|is safe|suitable for building/i);
    }
  });
});
