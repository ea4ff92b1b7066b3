import { describe, expect, it } from "vitest";
import { siteOrderList } from "../../src/tables/quantities.js";
import { siteSheets } from "../../src/tables/site/crewCards.js";
import { siteFieldTests } from "../../src/tables/site/fieldTestForms.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import { trialCard, trialLooksCard } from "../../src/tables/site/trialCard.js";
import { regressionTable } from "../../src/tables/strength.js";
import { renderAll } from "../../src/words/render.js";
import { showAppendix } from "../fuzz/judge.js";
import { openExample } from "../support/exampleResult.js";
import { metric, SI, textsOf } from "../support/metricUnits.js";
import { runCli } from "../support/runCli.js";

describe.each(["bus-shelter", "untested-blend"])(
  "the pages of %s, in United States units",
  (name) => {
    it("have no SI unit", { timeout: 120_000 }, async () => {
      const result = await openExample(name);
      expect(result.config.units).toBe("US");
      const shown: unknown[] = [];
      await showAppendix(result, (block) => shown.push(renderAll(block)));
      const texts = [...shown, renderAll(result.findings)].flatMap(textsOf);
      expect(texts.length).toBeGreaterThan(300);
      expect(metric(texts)).toEqual([]);
    });

    it("have none in what the commands say", { timeout: 60_000 }, async () => {
      for (const words of [["check"], ["compute"], ["compare", "data-examples/class-day"]]) {
        const [command, ...more] = words;
        const { code, stdout } = await runCli([command, `data-examples/${name}`, ...more]);
        expect([command, code]).toEqual([command, 0]);
        const lines = stdout.split("\n");
        expect(lines.length).toBeGreaterThan(8);
        expect(metric(lines)).toEqual([]);
      }
    });

    it("have none on the cards of the crew", async () => {
      const result = await openExample(name);
      const cards = result.mix
        ? [...siteSheets(result), mixCard(result), siteOrderList(result)]
        : [trialCard(result), trialLooksCard(result)];
      const texts = textsOf(renderAll(cards));
      expect(texts.length).toBeGreaterThan(60);
      expect(metric(texts)).toEqual([]);
      // A form names the unit of what is written down, after a comma.
      expect(texts.filter((text) => /, (g|kg|mm|cm|m|L)$/.test(text))).toEqual([]);
    });

    it("have none on the forms of the field tests, sieves and sources aside", async () => {
      const { config } = await openExample(name);
      const texts = textsOf(renderAll(siteFieldTests(undefined, config.units)));
      expect(texts.length).toBeGreaterThan(100);
      expect(texts.filter((text) => /, (g|kg|mm|cm|m|L)$/.test(text))).toEqual([]);
      const withMm = new RegExp(SI.source.replace("|cm|", "|cm|mm|g|"), "u");
      expect(metric(texts, withMm)).toEqual([
        "50 to 150 mm (2 to 6 in)",
        expect.stringMatching(/^Form a smooth ball of 200 g \(7 oz\)/),
        expect.stringMatching(/^Sieve at 5 to 6 mm \(No\. 4 or 1\/4 in\)/),
        expect.stringMatching(/200 g \(7 oz\) from 6\.56 ft/),
      ]);
      expect(texts).toContain("3.15 in to 4.72 in");
    });

    it("tell fractions by No. 200 and No. 4", async () => {
      const { materials } = await openExample(name);
      for (const { fractions } of materials) {
        expect(fractions.boundaries).toMatchObject({ siltMm: 0.075, sandMm: 4.75 });
      }
    });
  },
);

describe("the regression in psi", () => {
  const tests = async () => {
    const { strength } = await openExample("bus-shelter");
    if (!strength) throw new Error("no strength");
    return strength;
  };
  const numbers = (rows: readonly (readonly unknown[])[]) =>
    rows.map((row) => row.slice(1, 5).map((cell) => Number(String(cell).replace("−", "-"))));

  it("has each coefficient times 145.04", async () => {
    const { fit, lackOfFit } = await tests();
    expect(fit.line).toBe("mean");
    const us = renderAll(regressionTable(fit, lackOfFit, "US"));
    fit.coefficients.forEach(({ value, standardError, low, high }, index) => {
      [value, standardError, low, high].forEach((mpa, column) => {
        const shown = numbers(us.rows)[index][column];
        expect(Math.abs(shown - 145.0377 * mpa)).toBeLessThan(0.05 * Math.abs(shown) + 0.5);
      });
    });
    expect(us.rows.map((row) => row[5])).toEqual(
      renderAll(regressionTable(fit, lackOfFit)).rows.map((row) => row[5]),
    );
    expect(us.notes?.[0]).toContain("with f in psi");
  });

  it("of logarithms moves its intercept alone, and judges nothing by it", async () => {
    const { fit, lackOfFit } = await tests();
    const median = { ...fit, line: "median" as const };
    const [si, us] = (["SI", "US"] as const).map((units) =>
      renderAll(regressionTable(median, lackOfFit, units)),
    );
    const [intercept, slope] = fit.coefficients;
    expect(numbers(us.rows)[0][0]).toBeCloseTo(intercept.value + Math.log(145.0377), 2);
    expect(numbers(us.rows)[1][0]).toBeCloseTo(slope.value, 3);
    expect(us.rows[0][5]).toBe("–");
    expect(us.rows[1]).toEqual(si.rows[1]);
    expect(us.notes?.[0]).toContain("ln psi");
  });
});
