import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leastCement, roundUpToStep } from "../../src/strength/leastCement.js";
import { strengthBound } from "../../src/strength/regression/bounds.js";
import { fitStrength } from "../../src/strength/regression/fit.js";
import type { StrengthModel } from "../../src/strength/regression/model.js";
import { render } from "../../src/words/render.js";
import { blocksOf, fitted, SIXTEEN } from "./blocks.js";
import { near } from "./near.js";

const STATISTICS = ["mean", "prediction", "tolerance"] as const;
const FORMS = ["linear", "quadratic", "logarithmic", "power"] as const;

/** Where the straight line through the sixteen blocks, carried on, reaches a strength. */
function lineContent(strengthMpa: number): number {
  const [a, b] = fitted(SIXTEEN).coefficients.map(({ value }) => value);
  return (strengthMpa - a) / b;
}

describe("leastCement", () => {
  it.each(FORMS.flatMap((model) => STATISTICS.map((statistic) => [model, statistic] as const)))(
    "%s, %s: the bound meets the requirement there and not just below",
    (model, statistic) => {
      const fit = fitted(SIXTEEN, model);
      const rule = { strengthMpa: 2.4, statistic, confidence: 0.95 };
      const found = leastCement(fit, rule);
      expect(found.status).toBe("ok");
      near(strengthBound(fit, found.cementPct!, rule), 2.4, { rel: 1e-8, abs: 0 }, "bound");
      expect(strengthBound(fit, found.cementPct! - 0.01, rule)).toBeLessThan(2.4);
      expect(found.lineContentPct!).toBeLessThan(found.cementPct!);
      expect(found.boundAtBatchableMpa!).toBeGreaterThanOrEqual(2.4);
      expect(found.interval!.lowPct).toBeLessThan(found.interval!.highPct);
    },
  );

  it("asks for more cement the stricter the statistic", () => {
    const contents = STATISTICS.map(
      (statistic) =>
        leastCement(fitted(SIXTEEN), { strengthMpa: 2.4, statistic, confidence: 0.95 }).cementPct!,
    );
    expect(contents[0]).toBeLessThan(contents[1]);
    expect(contents[1]).toBeLessThan(contents[2]);
  });

  it("gives the same interval by Fieller's closed form and by searching the band", () => {
    const fit = fitted(SIXTEEN);
    const { interval } = leastCement(fit, {
      strengthMpa: 2.4,
      statistic: "mean",
      confidence: 0.9,
    });
    expect(interval!.method).toBe("fieller");
    // Two-sided 90 %: each end is where a one-sided 95 % bound meets the requirement.
    const { cementPct } = leastCement(fit, {
      strengthMpa: 2.4,
      statistic: "mean",
      confidence: 0.95,
    });
    near(interval!.highPct, cementPct!, { rel: 1e-10, abs: 0 }, "upper end");
  });

  it("refuses to extrapolate below: the lowest tested content, and what to make next", () => {
    const found = leastCement(fitted(SIXTEEN), {
      strengthMpa: 0.8,
      statistic: "mean",
      confidence: 0.95,
    });
    expect(found.status).toBe("below-range");
    expect(found.cementPct).toBe(4);
    expect(found.lineContentPct).toBeNull();
    // Where the curve itself, carried on downwards, gives 0.8 MPa.
    near(found.nextBlocks!.cementPct!, lineContent(0.8), { rel: 0, abs: 0.05 }, "next");
    const { interval, cementPct } = found.nextBlocks!;
    if (interval!.lowPct !== null) expect(interval!.lowPct).toBeLessThan(cementPct!);
    expect(interval!.highPct!).toBeGreaterThan(cementPct!);
  });

  it("refuses to extrapolate above: advice for more cement where blocks would not help", () => {
    const found = leastCement(fitted(SIXTEEN), {
      strengthMpa: 5,
      statistic: "tolerance",
      confidence: 0.95,
    });
    expect(found.status).toBe("above-range");
    expect([found.cementPct, found.batchablePct, found.interval]).toEqual([null, null, null]);
    const { cementPct, interval, reason } = found.nextBlocks!;
    const { residualSd } = fitted(SIXTEEN);
    near(cementPct!, lineContent(5 + 1.644854 * residualSd), { rel: 0, abs: 0.05 }, "next");
    expect(interval!.lowPct).toBeLessThan(cementPct!);
    expect(interval!.highPct).toBeGreaterThan(cementPct!);
    expect(render(reason)).toContain(`about ${cementPct} % cement (`);
    expect(render(found.message)).toContain("4 to 10 %");
  });

  it("asks for more cement the more strength is wanted, and for none where none in reach will do", () => {
    const next = (strengthMpa: number, pairs = SIXTEEN, model: StrengthModel = "linear") =>
      leastCement(fitted(pairs, model), { strengthMpa, statistic: "mean", confidence: 0.95 })
        .nextBlocks!;
    const asked = [4.2, 4.6, 5].map((strengthMpa) => next(strengthMpa).cementPct!);
    expect(asked).toEqual([...asked].sort((a, b) => a - b));
    expect(new Set(asked).size).toBe(3);
    expect(next(20)).toMatchObject({ cementPct: null, interval: null });
    expect(render(next(20).reason)).toContain("no cement content in reach will do");
    const falling = SIXTEEN.map(([content, strength]) => [content, 6 - strength]);
    expect(next(8, falling).cementPct).toBeNull();
    // A curve that has passed its top gives nothing above it either.
    const peaked = SIXTEEN.map(([content, strength]) => [
      content,
      strength - 0.06 * (content - 4) ** 2,
    ]);
    expect(next(5, peaked, "quadratic").cementPct).toBeNull();
  });

  it("asks for more blocks at the top where the curve is high enough but not known well", () => {
    const found = leastCement(fitted(SIXTEEN.slice(0, 13)), {
      strengthMpa: 3.5,
      statistic: "mean",
      confidence: 0.99,
    });
    expect(found.status).toBe("above-range");
    expect(found.nextBlocks!.cementPct).toBe(10);
    expect(render(found.nextBlocks!.reason)).toContain("more blocks with 10 %");
  });

  it("warns of a curve that falls, and of a requirement that is lost again", () => {
    const peak = [
      [4, 1.5],
      [4, 1.6],
      [6, 2.9],
      [6, 3.0],
      [8, 3.1],
      [8, 3.0],
      [10, 1.7],
      [10, 1.8],
    ];
    const found = leastCement(fitted(peak, "quadratic"), {
      strengthMpa: 2,
      statistic: "mean",
      confidence: 0.95,
    });
    expect(found.status).toBe("ok");
    expect(found.findings.map(({ code }) => code)).toEqual([
      "strength-falls-with-cement",
      "requirement-lost-again",
    ]);
    const [falls, lost] = found.findings.map(({ message }) => render(message));
    expect(falls).toMatch(/ from about 7\.\d %\.$/);
    expect(lost).toMatch(/ at about 9\.\d % cement\.$/);
  });

  it("warns where rounding up leaves the tested contents", () => {
    const { findings, batchablePct } = leastCement(
      fitted(SIXTEEN),
      { strengthMpa: 3.5, statistic: "mean", confidence: 0.95 },
      { roundUpToPct: 4 },
    );
    expect(batchablePct).toBe(12);
    expect(findings.map(({ code }) => code)).toEqual(["rounded-beyond-tested"]);
  });

  it("says so when strength does not depend on cement", () => {
    const flat = SIXTEEN.map(([content], index) => [content, 2 + 0.3 * Math.sin(7 * index)]);
    const found = leastCement(fitted(flat), {
      strengthMpa: 2,
      statistic: "mean",
      confidence: 0.95,
    });
    expect(found.status).toBe("above-range");
    expect(found.interval === null || (found.interval.lowOpen && found.interval.highOpen)).toBe(
      true,
    );
  });

  it("passes on why there is no curve", () => {
    const fit = fitStrength(blocksOf(SIXTEEN.slice(0, 2)), { model: "linear", ageDays: 28 });
    const found = leastCement(fit, { strengthMpa: 2, statistic: "mean", confidence: 0.95 });
    expect([found.status, found.message]).toEqual(["no-fit", fit.message]);
    expect(() => strengthBound(fit, 6, { statistic: "mean" })).toThrow(/too-few-points/);
  });

  it("refuses wrong options by name", () => {
    const rule = { strengthMpa: 2, statistic: "mean", confidence: 95 } as const;
    expect(() => leastCement(fitted(SIXTEEN), rule)).toThrow("invalid `confidence`: 95");
    expect(() =>
      leastCement(fitted(SIXTEEN), { ...rule, confidence: 0.9, strengthMpa: -1 }),
    ).toThrow("invalid `strengthMpa`: -1");
  });

  it("survives JSON unchanged", () => {
    const fit = fitted(SIXTEEN, "power");
    const rule = { strengthMpa: 2.4, statistic: "prediction", confidence: 0.95 } as const;
    const read = JSON.parse(JSON.stringify(fit));
    expect(read).toEqual(fit);
    expect(leastCement(read, rule)).toEqual(leastCement(fit, rule));
  });

  it("scales with the strengths and does not see the order of rows", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.shuffledSubarray([...SIXTEEN], { minLength: 16 }),
        fc.constantFrom(...FORMS),
        fc.constantFrom("mean" as const, "prediction" as const),
        (factor, mixed, model, statistic) => {
          const rule = { strengthMpa: 2.4, statistic, confidence: 0.95 };
          const plain = leastCement(fitted(SIXTEEN, model), rule);
          const scaled = leastCement(
            fitted(
              mixed.map(([content, strength]) => [content, factor * strength]),
              model,
            ),
            { ...rule, strengthMpa: 2.4 * factor },
          );
          near(scaled.cementPct, plain.cementPct!, { rel: 1e-8, abs: 0 }, "content");
          near(scaled.interval!.lowPct, plain.interval!.lowPct, { rel: 1e-8, abs: 0 }, "low");
          near(
            scaled.boundAtBatchableMpa,
            factor * plain.boundAtBatchableMpa!,
            { rel: 1e-8, abs: 0 },
            "bound",
          );
        },
      ),
      { seed: 7, numRuns: 40 },
    );
  });
});

describe("roundUpToStep", () => {
  it("never rounds down, and by less than a step", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.constantFrom(0.1, 0.25, 0.5),
        (content, step) => {
          const up = roundUpToStep(content, step);
          expect(up).toBeGreaterThanOrEqual(content - 1.1e-9);
          expect(up).toBeLessThan(content + step);
          near(up / step, Math.round(up / step), { rel: 0, abs: 1e-9 }, "whole steps");
        },
      ),
      { seed: 7 },
    );
    expect(roundUpToStep(8.21, 0.1)).toBe(8.3);
  });
});
