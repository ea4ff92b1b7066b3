import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { normalQuantile } from "../../src/numerics/distributions.js";
import { noncentralTQuantile } from "../../src/numerics/noncentralT.js";
import { createRandom } from "../../src/numerics/random.js";
import {
  type AcceptanceRule,
  acceptanceRisks,
  designAcceptance,
  judgeLot,
  operatingCharacteristic,
} from "../../src/strength/control/acceptance.js";
import { controlChart } from "../../src/strength/control/controlChart.js";
import { render } from "../../src/words/render.js";
import { near } from "./near.js";

const file = new URL("../reference/strengthStatsmodels.json", import.meta.url);
const fixture = JSON.parse(readFileSync(file, "utf8"));
const MEAN_AND_LEAST: AcceptanceRule = {
  kind: "mean-and-least",
  blocks: 5,
  meanMpa: 2.07,
  minMpa: 1.72,
};

describe("acceptance", () => {
  it("has SciPy's chance of acceptance", () => {
    for (const { n, k, p, accept } of fixture.acceptance) {
      const rule = { kind: "mean-less-ks", blocks: n, factor: k, requiredMpa: 2 } as const;
      const found = acceptanceRisks(rule, {
        sdMpa: 0.3,
        acceptableQuality: Math.min(p, 0.4),
        rejectableQuality: 0.5,
      });
      near(1 - found.builderRisk, accept, { rel: 1e-9, abs: 1e-12 }, `${n}, ${k}, ${p}`);
    }
  });

  it.each([
    ["mean less k s", { kind: "mean-less-ks", blocks: 5, factor: 1.2, requiredMpa: 1.8 }],
    ["mean and least", MEAN_AND_LEAST],
  ] as [string, AcceptanceRule][])("%s: the chance is that of judging drawn lots", (_, rule) => {
    const random = createRandom(77);
    const [mean, sd, lots] = [2.25, 0.25, 4000];
    let accepted = 0;
    for (let lot = 0; lot < lots; lot += 1) {
      const strengths = Array.from({ length: 5 }, () => mean + sd * random.normal());
      if (judgeLot(rule, strengths).status === "accepted") accepted += 1;
    }
    const [{ acceptance }] = operatingCharacteristic(rule, { sdMpa: sd, meansMpa: [mean] });
    // Four standard errors of the count, and of the rule's own simulation.
    near(accepted / lots, acceptance, { rel: 0, abs: 4 * Math.sqrt(0.25 / lots) + 0.01 }, "share");
    expect(acceptance).toBeGreaterThan(0.2);
    expect(acceptance).toBeLessThan(0.99);
  });

  it("holds 1 % for good and 20 % for poor where nothing else is said", () => {
    for (const rule of [
      MEAN_AND_LEAST,
      { kind: "mean-less-ks", blocks: 4, factor: 1.5, requiredMpa: 2 } as const,
    ]) {
      const stated = { sdMpa: 0.3, acceptableQuality: 0.01, rejectableQuality: 0.2 };
      expect(acceptanceRisks(rule, { sdMpa: 0.3 })).toEqual(acceptanceRisks(rule, stated));
    }
  });

  it("is even for a lot whose true mean is the mean asked for, where no least block is in the way", () => {
    const rule = { ...MEAN_AND_LEAST, minMpa: 0.01 };
    const [low, at, high] = operatingCharacteristic(rule, {
      sdMpa: 0.3,
      meansMpa: [0.3, 0, -0.3].map((by) => 2.07 - by / Math.sqrt(5)),
    });
    // Φ(−1), Φ(0) and Φ(1), each to three standard errors of 40,000 lots.
    near(low.acceptance, 0.15866, { rel: 0, abs: 0.006 }, "low");
    near(at.acceptance, 0.5, { rel: 0, abs: 0.0075 }, "even");
    near(high.acceptance, 0.84134, { rel: 0, abs: 0.006 }, "high");
  });

  it("rises with the true mean from nothing to certainty", () => {
    const means = Array.from({ length: 40 }, (_, i) => 1 + 0.1 * i);
    for (const rule of [
      MEAN_AND_LEAST,
      { kind: "mean-less-ks", blocks: 4, factor: 1.5, requiredMpa: 2 } as const,
    ]) {
      const points = operatingCharacteristic(rule, { sdMpa: 0.3, meansMpa: means });
      points.slice(1).forEach(({ acceptance }, index) => {
        expect(acceptance).toBeGreaterThanOrEqual(points[index].acceptance - 1e-12);
      });
      expect(points[0].acceptance).toBeLessThan(1e-3);
      expect(points[39].acceptance).toBeGreaterThan(0.999);
    }
  });

  it("designs a rule that keeps both risks, with one block less that does not", () => {
    const of = {
      requiredMpa: 2,
      acceptableQuality: 0.02,
      rejectableQuality: 0.15,
      builderRisk: 0.05,
      ownerRisk: 0.1,
    };
    const { rule } = designAcceptance(of);
    const risks = acceptanceRisks(rule!, {
      sdMpa: 0.4,
      acceptableQuality: 0.02,
      rejectableQuality: 0.15,
    });
    near(risks.builderRisk, 0.05, { rel: 1e-9, abs: 0 }, "builder");
    expect(risks.ownerRisk).toBeLessThanOrEqual(0.1);
    const blocks = rule!.blocks - 1;
    const root = Math.sqrt(blocks);
    const factor = noncentralTQuantile(0.05, blocks - 1, normalQuantile(0.98) * root) / root;
    const fewer = { kind: "mean-less-ks", blocks, factor, requiredMpa: 2 } as const;
    const worse = acceptanceRisks(fewer, {
      sdMpa: 0.4,
      acceptableQuality: 0.02,
      rejectableQuality: 0.15,
    });
    near(worse.builderRisk, 0.05, { rel: 1e-9, abs: 0 }, "builder");
    expect(worse.ownerRisk).toBeGreaterThan(0.1);
    expect(designAcceptance({ ...of, rejectableQuality: 0.025 }).status).toBe("too-many-blocks");
    expect(() => designAcceptance({ ...of, rejectableQuality: 0.01 })).toThrow(
      "`acceptableQuality`: 0.02",
    );
  });

  it("says what to do with a rejected lot, and judges no lot of another number", () => {
    const rejected = judgeLot(MEAN_AND_LEAST, [2, 2, 2, 2, 1.5]);
    expect(rejected.status).toBe("rejected");
    expect(render(rejected.message)).toContain("the mean, 1.90 MPa");
    expect(render(rejected.message)).toContain("the weakest, 1.50 MPa");
    expect(rejected.steps.length).toBeGreaterThan(3);
    expect(judgeLot(MEAN_AND_LEAST, [2.5, 2.5, 2.5]).status).toBe("wrong-number");
    expect(() => judgeLot({ ...MEAN_AND_LEAST, blocks: 0 }, [2])).toThrow("`rule.blocks`: 0");
    const less = (more: object): AcceptanceRule => ({
      kind: "mean-less-ks",
      blocks: 2,
      factor: 1,
      requiredMpa: 2,
      ...more,
    });
    for (const [rule, name] of [
      [{ ...MEAN_AND_LEAST, meanMpa: 0 }, "rule.meanMpa"],
      [{ ...MEAN_AND_LEAST, minMpa: Number.NaN }, "rule.minMpa"],
      [less({ requiredMpa: 0 }), "rule.requiredMpa"],
      [less({ requiredMpa: Infinity }), "rule.requiredMpa"],
      [less({ factor: -0.1 }), "rule.factor"],
      [less({ blocks: 1 }), "rule.blocks"],
    ] as const) {
      expect(() => judgeLot(rule, [2, 2]), name).toThrow(name);
    }
    expect(judgeLot(less({ factor: 0 }), [1.9, 2.1]).status).toBe("accepted");
    expect(() => judgeLot(MEAN_AND_LEAST, [])).toThrow("invalid `strengthsMpa`");
  });
});

describe("controlChart", () => {
  const lots = (count: number, blocks: number, shift: (lot: number) => number, seed = 3) => {
    const random = createRandom(seed);
    return Array.from({ length: count }, (_, lot) => ({
      label: `L${lot + 1}`,
      strengthsMpa: Array.from({ length: blocks }, () => 2.5 + shift(lot) + 0.2 * random.normal()),
    }));
  };

  it("has the tabled factors: A3 of lots of 4 is 1.628, B4 2.266; 2.66 for single blocks", () => {
    // Factors of Shewhart charts, from memory; the values of c4 they rest on are calculated.
    const chart = controlChart(lots(20, 4, () => 0));
    const sbar = chart.points.reduce((sum, { sdMpa }) => sum + sdMpa!, 0) / 20;
    near((chart.highMpa! - chart.centreMpa!) / sbar, 1.628, { rel: 0, abs: 5e-4 }, "A3");
    near(chart.spreadHighMpa! / sbar, 2.266, { rel: 0, abs: 5e-4 }, "B4");
    const single = controlChart(lots(20, 1, () => 0));
    const steps = single.points
      .slice(1)
      .map(({ valueMpa }, i) => Math.abs(valueMpa - single.points[i].valueMpa));
    const range = steps.reduce((sum, step) => sum + step, 0) / 19;
    expect([chart.kind, single.kind]).toEqual(["means", "single blocks"]);
    near((single.highMpa! - single.centreMpa!) / range, 2.66, { rel: 0, abs: 2e-3 }, "E2");
    const odd = controlChart(lots(20, 5, () => 0));
    const sOdd = odd.points.reduce((sum, { sdMpa }) => sum + sdMpa!, 0) / 20;
    near((odd.highMpa! - odd.centreMpa!) / sOdd, 1.427, { rel: 0, abs: 5e-4 }, "A3 of 5");
  });

  it("leaves steady work alone: about three lots in a thousand lie outside", () => {
    let outside = 0;
    for (let seed = 1; seed <= 400; seed += 1) {
      const { points } = controlChart(lots(25, 4, () => 0, seed));
      outside += points.filter(({ signals }) => signals.includes("outside-limits")).length;
    }
    // 27 of 10,000 with limits known; limits estimated from 25 lots let a few more through.
    expect(outside).toBeGreaterThan(15);
    expect(outside).toBeLessThan(60);
  });

  it("signals a run from its eighth lot on, wherever it begins", () => {
    const above = (count: number) =>
      controlChart(
        Array.from({ length: 2 * count }, (_, lot) => ({
          label: `L${lot + 1}`,
          strengthsMpa: lot < count ? [2.6, 2.9] : [2.2, 2.5],
        })),
      )
        .points.filter(({ signals }) => signals.includes("run-of-eight"))
        .map(({ label }) => label);
    expect(above(7)).toEqual([]);
    expect(above(8)).toEqual(["L8", "L16"]);
  });

  it("signals a lot far off and a long run", () => {
    const far = controlChart(lots(25, 4, (lot) => (lot === 20 ? -0.8 : 0)));
    expect(far.points[20].signals).toContain("outside-limits");
    expect(render(far.message)).toContain("Look at the work of L20, L21: ");
    const drift = controlChart(lots(25, 4, (lot) => (lot < 12 ? 0.1 : -0.1)));
    expect(drift.points.some(({ signals }) => signals.includes("run-of-eight"))).toBe(true);
  });

  it("says why there is no chart", () => {
    expect(controlChart(lots(4, 3, () => 0)).status).toBe("too-few-lots");
    expect(controlChart(lots(5, 3, () => 0)).status).toBe("ok");
    expect(controlChart([...lots(5, 3, () => 0), { label: "x", strengthsMpa: [2] }]).status).toBe(
      "uneven-lots",
    );
    const same = Array.from({ length: 6 }, () => ({ label: "a", strengthsMpa: [2, 2] }));
    expect(controlChart(same).status).toBe("no-scatter");
    expect(() => controlChart([{ label: "a", strengthsMpa: [Number.NaN] }])).toThrow(
      "strengthsMpa[0]",
    );
  });
});
