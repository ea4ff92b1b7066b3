import { describe, expect, it } from "vitest";
import {
  type WorkedCalculation,
  workedCalculations,
} from "../../src/report/appendix/calculations.js";
import { openStudy } from "../../src/study/openStudy.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { render } from "../../src/words/render.js";
import { openExample } from "../support/exampleResult.js";
import { copyStudy } from "../support/studyCopy.js";

/** What a pocket calculator gives for a printed formula. */
function calculate(printed: string): number {
  const code = printed
    .replaceAll("×", "*")
    .replaceAll("−", "-")
    .replaceAll("√", "Math.sqrt")
    .replaceAll("²", "**2")
    .replace(/\bln\b/g, "Math.log")
    .replace(/\bexp\b/g, "Math.exp");
  if (!/^[-+*/().\d\sMathsqrtlogexp]*$/.test(code)) throw new Error(`not a formula: ${printed}`);
  return Function(`"use strict"; return ${code};`)() as number;
}

/** Each formula with its numbers, as printed, and the number that is printed behind it. */
function repeated(calculations: readonly WorkedCalculation[]) {
  return calculations.flatMap(({ kind, lines }) =>
    lines.flatMap(({ symbol, filled, shown }) => {
      if (filled === undefined) return [];
      const printed = render(shown).split(" ")[0].replace("−", "-");
      const decimals = printed.split(".")[1]?.length ?? 0;
      const byHand = calculate(render(filled)).toFixed(decimals);
      return [{ line: `${kind} ${symbol}`, printed, byHand }];
    }),
  );
}

const lastOf = (result: StudyResult) =>
  Object.fromEntries(
    workedCalculations(result).map(({ kind, lines }) => [kind, lines.at(-1)?.value]),
  );

describe.each(["reading-room", "bus-shelter", "two-blends", "class-day"])(
  "the worked calculations of %s",
  (name) => {
    it("give by hand, from the numbers as printed, what is printed behind them", async () => {
      const calculations = workedCalculations(await openExample(name));
      const lines = repeated(calculations);
      expect(lines.length).toBeGreaterThan(15);
      expect(lines.map(({ line, byHand }) => `${line} = ${byHand}`)).toEqual(
        lines.map(({ line, printed }) => `${line} = ${printed}`),
      );
    });

    it("end with the numbers of the result", async () => {
      const result = await openExample(name);
      const { blend, strength, mix, materials } = result;
      const soil = materials.find(({ role }) => role === "soil");
      const settled = soil?.sedimentation?.rows ?? [];
      const last = lastOf(result);
      expect(soil?.sieve.rows.map(({ passingPct }) => passingPct)).toContain(last.sieve);
      expect(last.blend).toBe(blend?.points[Math.floor(blend.points.length / 2)].blendPct);
      expect(last.bound).toBe(strength?.leastCement?.boundAtBatchableMpa);
      expect(last.batch).toBe(mix?.recipe.cement.dryMassKg);
      expect(last.water).toBe(mix?.recipe.water.toAddKg);
      if (settled.length > 0) {
        expect(settled.map(({ passingPct }) => passingPct)).toContain(last.hydrometer);
      }
    });
  },
);

describe.each([
  ["power", "exp("],
  ["logarithmic", "− "],
  ["quadratic", "− "],
])("the bound of the %s model", (model, sign) => {
  it("is worked out by hand as well", async () => {
    const study = copyStudy("reading-room");
    study.edit("study.yaml", "model: linear", `model: ${model}`);
    const result = await openStudy(study.folder);
    const bound = workedCalculations(result).filter(({ kind }) => kind === "bound");
    const lines = repeated(bound);
    expect(lines.map(({ byHand }) => byHand)).toEqual(lines.map(({ printed }) => printed));
    const last = bound[0].lines.at(-1);
    expect(last?.value).toBe(result.strength?.leastCement?.boundAtBatchableMpa);
    expect(render(last?.filled ?? "")).toContain(sign);
  });
});
