import { describe, expect, it } from "vitest";
import { createRandom } from "../../src/numerics/random.js";
import { fiellerContent } from "../../src/strength/contentInterval.js";
import { leastCement } from "../../src/strength/leastCement.js";
import { strengthBands } from "../../src/strength/regression/bounds.js";
import { fitted } from "./blocks.js";

const STUDIES = 2000;
const SD = 0.3;
const Z95 = 1.6448536269514722;
const truth = (content: number) => 0.3 + 0.35 * content;
const AT = 6.5;

/** 2,000 simulated studies of sixteen blocks; one seed, so the counts never change. */
const studies = (() => {
  const random = createRandom(20260518);
  return Array.from({ length: STUDIES }, () => {
    const pairs = [4, 6, 8, 10].flatMap((content) =>
      [1, 2, 3, 4].map(() => [content, truth(content) + SD * random.normal()]),
    );
    return { fit: fitted(pairs), oneMore: truth(AT) + SD * random.normal() };
  });
})();

const sharePct = (hits: readonly boolean[]) => (100 * hits.filter(Boolean).length) / hits.length;

/** Three standard errors of a share of 95 % in 2,000. */
function expectNinetyFive(hits: readonly boolean[]): void {
  expect(hits.length).toBe(STUDIES);
  expect(sharePct(hits)).toBeGreaterThanOrEqual(93.5);
  expect(sharePct(hits)).toBeLessThanOrEqual(96.5);
}

describe("coverage in 2,000 simulated studies", () => {
  const bands = studies.map(({ fit }) => strengthBands(fit, { cementPct: [AT] })[0]);

  it("the confidence band holds the true mean", () => {
    expectNinetyFive(bands.map((at) => at.meanLowMpa <= truth(AT) && truth(AT) <= at.meanHighMpa));
    expectNinetyFive(bands.map((at) => at.lowerBoundMpa.mean <= truth(AT)));
  });

  it("the prediction band holds one more block", () => {
    expectNinetyFive(
      bands.map((at, index) => {
        const { oneMore } = studies[index];
        return at.predictionLowMpa <= oneMore && oneMore <= at.predictionHighMpa;
      }),
    );
    expectNinetyFive(
      bands.map((at, index) => at.lowerBoundMpa.prediction <= studies[index].oneMore),
    );
  });

  it("the tolerance bound lies below the strength that 95 % of blocks exceed", () => {
    expectNinetyFive(bands.map((at) => at.lowerBoundMpa.tolerance <= truth(AT) - Z95 * SD));
  });

  it("the inverted interval holds the content whose mean is the requirement", () => {
    expectNinetyFive(
      studies.map(({ fit }) => {
        const { lowPct, highPct } = fiellerContent(fit, {
          strengthMpa: truth(AT),
          statistic: "mean",
        });
        return lowPct! <= AT && AT <= highPct!;
      }),
    );
  });

  it("the least cement of the mean is enough in 95 % of studies", () => {
    const rule = { strengthMpa: truth(AT), statistic: "mean", confidence: 0.95 } as const;
    const found = studies.map(({ fit }) => leastCement(fit, rule));
    expect(found.every(({ status }) => status === "ok")).toBe(true);
    expectNinetyFive(found.map(({ cementPct }) => cementPct! >= AT));
  });

  it("the tolerance interval by inversion and its least cement hold", () => {
    const strengthMpa = truth(AT) - Z95 * SD;
    const rule = { strengthMpa, statistic: "tolerance", confidence: 0.95 } as const;
    const found = studies.map(({ fit }) => leastCement(fit, rule));
    expectNinetyFive(
      found.map(({ status, cementPct }) => status === "above-range" || cementPct! >= AT),
    );
    // An interval cut at a tested content goes on beyond it.
    expectNinetyFive(
      found.map(({ interval }) => interval!.lowPct <= AT && AT <= interval!.highPct),
    );
  });

  it("the content inverted from one block holds the content that the block was made with", () => {
    expectNinetyFive(
      studies.map(({ fit, oneMore }) => {
        const of = { strengthMpa: oneMore, statistic: "prediction" } as const;
        const { lowPct, highPct } = fiellerContent(fit, of);
        return lowPct! <= AT && AT <= highPct!;
      }),
    );
  });

  it("sees a band that is too narrow: 80 % where 95 % is asked", () => {
    const hits = studies.map(({ fit }) => {
      const [at] = strengthBands(fit, { cementPct: [AT], confidence: 0.8 });
      return at.meanLowMpa <= truth(AT) && truth(AT) <= at.meanHighMpa;
    });
    expect(() => expectNinetyFive(hits)).toThrow();
  });
});
