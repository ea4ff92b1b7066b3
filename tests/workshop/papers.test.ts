import { beforeAll, expect, it } from "vitest";
import { render, renderAll } from "../../src/words/render.js";
import { answerKey } from "../../src/workshop/answerKey.js";
import type { Exercise } from "../../src/workshop/exercise.js";
import { LESSONS, lessonExercises } from "../../src/workshop/lesson.js";
import type { ClassDay } from "../../src/workshop/openClass.js";
import { answerPaper, classForms, type Paper, worksheet } from "../../src/workshop/papers.js";
import { allTextOf } from "../support/blockText.js";
import { openedClass } from "../support/openedClass.js";

let day: ClassDay;
beforeAll(async () => {
  day = await openedClass();
}, 60_000);

const questions = ({ parts }: Paper) =>
  parts.flatMap((part) => (part.kind === "question" ? [part] : []));
const printed = (paper: Paper, language: "en" | "es" = "en") => allTextOf(paper.parts, language);
const exercises = (): Exercise[] =>
  LESSONS.flatMap(({ id }) => {
    const { core, further } = lessonExercises(day, id);
    return [...core, ...further].filter(
      ({ id: name }) => !["outside-of-how-many", "worst-miscount"].includes(name),
    );
  });

it("the worksheet asks every question that paper can hold, each with room for its answer", () => {
  const asked = questions(worksheet(day));
  expect(asked.map(({ text }) => render(text))).toEqual(
    exercises().map(({ question, recalls }, index, all) => {
      const at = all.findIndex(({ id }) => id === recalls?.id);
      return `${index + 1}. ${render(recalls?.question(String(at + 1)) ?? question)}`;
    }),
  );
  for (const { options, lines } of asked) expect(options !== undefined || lines > 0).toBe(true);
});

it("the worksheet tells no value in a question that it asks for in one before", () => {
  const asked = questions(worksheet(day)).map(({ text }) => render(text));
  expect(asked[8]).toContain(
    "The soil has the fines (below 0.063 mm) that you found in 4, the sand",
  );
  expect(asked.join("\n")).not.toMatch(/27\.0 %|6\.5 %/);
  // with another content than the blocks ask for there is nothing to find
  const other = { ...day, wall: { ...day.wall!, cementPct: 8 } };
  const text = questions(worksheet(other)).map((one) => render(one.text));
  expect(text.join("\n")).toContain("8 % cement of the dry mass of soil and aggregate");
});

it("the worksheet holds no answer, no working, no hint, and no word about computers", () => {
  for (const language of ["en", "es"] as const) {
    const text = printed(worksheet(day), language);
    for (const { worked, why, hint } of exercises()) {
      for (const hidden of [worked, why, hint])
        expect(text).not.toContain(render(hidden, language));
    }
    expect(text).not.toMatch(
      /undefined|run the cell|ejecute|quotation|comillas|notebook|cuaderno/i,
    );
    expect(text).not.toMatch(/\{\d\}/);
  }
});

it("the worksheet tells the readings that its questions are worked from", () => {
  const text = printed(worksheet(day));
  for (const reading of [
    "1200",
    "885",
    "107.6",
    "120.9",
    "131.2",
    "216.8",
    "167.3",
    "132.5",
    "5.9",
    "220",
    "52",
    "71",
    "88",
  ]) {
    expect(text).toContain(`"${reading}"`);
  }
  expect(worksheet(day).parts.at(-1)?.kind).toBe("figure");
});

it("the key answers by the worksheet's numbers", () => {
  const tables = answerPaper(day).parts.flatMap((part) => (part.kind === "table" ? [part] : []));
  const answers = renderAll(tables.slice(1, 1 + LESSONS.length).flatMap(({ rows }) => rows));
  const numbered = answers.filter(([number]) => number !== "–");
  expect(numbered.map(([number]) => Number(number))).toEqual(
    exercises().map((_, index) => index + 1),
  );
  for (const [index, exercise] of exercises().entries()) {
    const [row] = renderAll(answerKey("", [exercise], [String(index + 1)]).rows);
    expect(numbered[index]).toEqual(row);
    expect(row[1]).toBe(render(exercise.question));
  }
  // what is asked on the screen alone has its answer too
  expect(answers.filter(([number]) => number === "–").map((row) => row[2])).toEqual([
    "5",
    "Gravel 4/16 -1",
  ]);
});

it("there are sheets for jar, sieving and the class's results, and paper with minor lines", () => {
  const forms = classForms(day);
  const headings = forms.parts.flatMap((part) =>
    part.kind === "heading" ? [render(part.text)] : [],
  );
  expect(headings).toEqual(["Jar", "Sieving", "Results of the class", "Paper for a grading curve"]);
  const [soil, jar, sieves] = forms.parts.flatMap((part) =>
    part.kind === "signature" ? [renderAll(part.lines)] : [],
  );
  expect(soil).toEqual(["jar: sieve that the soil passed (mm)"]);
  expect(jar).toEqual([
    "jar: depth of water (mm)",
    ...["sand", "silt", "clay"].map((layer) => `jar: top of ${layer} (mm)`),
  ]);
  expect(sieves).toEqual([
    "dry mass before washing (g)",
    "dry mass after washing (g)",
    ...["16", "8", "4", "2", "0.6", "0.2", "0.063"].map((size) => `on ${size} mm (g)`),
    "pan (g)",
  ]);
  const paper = forms.parts.at(-1);
  if (paper?.kind !== "figure") throw new Error("no paper");
  const { xaxis } = paper.layout as {
    xaxis: { tickvals: number[]; minor: { tickvals: number[] } };
  };
  expect(xaxis.tickvals).toEqual(
    [0.001, 0.01, 0.1, 1, 10, 100].flatMap((decade) =>
      [1, 2, 5].map((step) => Number((step * decade).toPrecision(1))).filter((size) => size <= 100),
    ),
  );
  const lines = xaxis.minor.tickvals;
  expect(lines).toHaveLength(5 * 9 + 1);
  // between two lines lies at most a factor of two
  for (const [index, line] of lines.slice(1).entries())
    expect(line / lines[index]).toBeLessThanOrEqual(2.0001);
});

it("sheets of a class in the United States name its sieves", () => {
  const us = classForms({ ...day, units: "US" });
  expect(printed(us)).toContain("on No. 200 (g)");
  expect(printed(us)).not.toContain("on 0.063 mm (g)");
});
