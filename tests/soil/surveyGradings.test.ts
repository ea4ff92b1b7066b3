import { describe, expect, it } from "vitest";
import { fitGrading } from "../../src/grading/models/fit.js";
import { createRandom } from "../../src/numerics/random.js";
import { surveyCsv } from "../../src/soil/survey/surveyCsv.js";
import { type SurveyOptions, surveyGradings } from "../../src/soil/survey/surveyGradings.js";
import type { SurveyRow } from "../../src/soil/survey/surveyRow.js";
import { curveOf } from "../grading/gradingCases.js";

const SIZES = [0.002, 0.006, 0.02, 0.05, 0.075, 0.25, 0.85, 2, 4.75, 75];
const HEADER = `id,liquid limit (%),plasticity index (%),${SIZES.join(",")}`;

/** Lines of gradings drawn about Weibull curves. */
function lines(count: number): string[] {
  const random = createRandom(5);
  return Array.from({ length: count }, (_, index) => {
    const [size63, exponent] = [0.02 + 2 * random.uniform(), 0.35 + 0.4 * random.uniform()];
    let before = 0;
    const passing = SIZES.map((size) => {
      const pct = -100 * Math.expm1(-((size / size63) ** exponent)) + 0.2 * random.normal();
      before = size === 75 ? 100 : Math.min(100, Math.max(before, pct));
      return before.toFixed(3);
    });
    return `G${index},30,12,${passing.join(",")}`;
  });
}

async function collect(text: Iterable<string>, options: SurveyOptions = {}) {
  const rows: SurveyRow[] = [];
  for await (const row of surveyGradings(text, { threads: 0, ...options })) rows.push(row);
  return rows;
}

describe("surveyGradings", () => {
  const body = lines(40);

  it("fits as the slow fit does, and classifies", async () => {
    const rows = await collect([`${HEADER}\n${body.join("\n")}\n`]);
    expect(rows).toHaveLength(40);
    rows.forEach((row, index) => {
      expect(row).toMatchObject({ id: `G${index}`, row: index + 2, status: "fitted" });
      const cells = body[index].split(",").slice(3).map(Number);
      const curve = curveOf(...SIZES.map((size, i): [number, number] => [size, cells[i]]));
      const fit = fitGrading(curve, "weibull");
      fit.parameters.forEach(({ value }, j) => {
        expect(Math.abs(row.values[j] / value - 1)).toBeLessThan(2e-3);
      });
      expect(row.residualSdPct! / fit.residualSdPct!).toBeCloseTo(1, 3);
      expect(row.uscs).toMatch(/^[SC]/);
      expect(row.usda).toMatch(/\w/);
    });
  });

  it("keeps the row of a soil without plasticity, and classifies it so", async () => {
    const cells = body[0].split(",").slice(3).join(",");
    const rows = await collect([
      `id,LL (%),PI (%),${SIZES.join(",")}\nA,NP,NP,${cells}\nB,,non-plastic,${cells}\nC,,,${cells}\nD,low,NP,${cells}\n`,
    ]);
    expect(rows.map(({ status }) => status)).toEqual(["fitted", "fitted", "fitted", "left out"]);
    expect(rows.slice(0, 3).map(({ uscs }) => uscs)).toEqual([
      expect.stringMatching(/SM|ML/),
      rows[0].uscs,
      undefined,
    ]);
    expect(rows[3].finding?.code).toBe("not-a-number");
  });

  it("does not mind where the text is cut", async () => {
    const text = `${HEADER}\n${body.slice(0, 5).join("\n")}`;
    const pieces = text.match(/[\s\S]{1,7}/g)!;
    expect(await collect(pieces)).toEqual(await collect([text]));
  });

  it("keeps the order of the file across chunks, and tells how far it is", async () => {
    const told: number[] = [];
    const text = [`${HEADER}\n`, ...lines(600).map((line) => `${line}\n`)];
    text[300] = text[300].replace("30", "thirty");
    const rows = await collect(text, {
      progress: ({ rows: done, leftOut }) => told.push(done, leftOut),
    });
    expect(rows.map(({ row }) => row)).toEqual(Array.from({ length: 600 }, (_, i) => i + 2));
    expect(rows[299]).toMatchObject({ status: "left out", row: 301 });
    expect(told).toEqual([250, 0, 500, 1, 600, 1]);
  });

  it.each([
    ["A,30,12,1,2,3,4,5,6,7,8,9,oops", "not-a-number"],
    ['A,30,12,1,2,3,4,5,6,7,8,9,"9,5"', "comma-decimal"],
    ["A,30,12,1,2,3,4,5,6,7,8,9,104", "out-of-range"],
    ["A,30,12,1,2,3,4,5,6,7,8,9,100,100", "row-too-long"],
    ["A,30,12,1,2,3,4,5,46,7,8,9,100", "grading-falls"],
    ["A,30,12,,,,,,,,,50,100", "too-few-points"],
  ])("%s is left out: %s", async (line, code) => {
    const rows = await collect([`${HEADER}\n${line}\n${body[0]}\n`]);
    expect(rows).toMatchObject([
      { status: "left out", finding: { code, row: 2 } },
      { status: "fitted" },
    ]);
    const [{ finding }] = rows;
    expect([finding!.message, finding!.expected, finding!.remedy].every(Boolean)).toBe(true);
  });

  it.each([
    ["", "empty-sheet"],
    ["id,soil\nA,1\n", "wrong-header"],
    ["id,2,2,4\nA,1,2,3\n", "wrong-header"],
    ["0.063,2,4\n1,2,3\n", "wrong-header"],
    ["id,2,4\nA,1,2\n", "wrong-header"],
    ['id,1,2,4\n"A,1,2,3\n', "not-a-csv"],
  ])("a file that cannot be read is one finding: %j", async (text, code) => {
    expect(await collect([text])).toMatchObject([{ status: "left out", finding: { code } }]);
  });

  it("a reading of one row that is a refusal does not hide those that follow", async () => {
    expect((await collect([`# remark\n\n${HEADER}\n# left out\n${body[1]}\n`]))[0]).toMatchObject({
      id: "G1",
      status: "fitted",
    });
  });

  it("a source that fails is no finding about the rows", async () => {
    const failing = function* () {
      yield `${HEADER}\n${body[0]}\n`;
      throw new Error("the disk is gone");
    };
    await expect(collect(failing())).rejects.toThrow("the disk is gone");
  });

  it("refuses another model", async () => {
    await expect(collect([""], { model: "jaky" as "weibull" })).rejects.toThrow("invalid `model`");
    await expect(collect([""], { threads: 1.5 })).rejects.toThrow("invalid `threads`: 1.5");
  });

  it("writes a CSV that no spreadsheet runs", async () => {
    const out: string[] = [];
    const text = [`${HEADER}\n"=2,5",30,12,1,2,3,4,5,6,7,8,9,100\n`];
    for await (const line of surveyCsv(surveyGradings(text, { threads: 0 }), "weibull"))
      out.push(line);
    expect(out).toHaveLength(2);
    expect(out[1]).toContain(`"'=2,5"`);
    expect(out[0].trim().split(",")).toHaveLength(18);
  });
});
