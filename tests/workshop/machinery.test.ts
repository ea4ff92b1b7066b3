import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { say } from "../../src/words/message.js";
import { render, renderAll } from "../../src/words/render.js";
import {
  acceptedRange,
  type ChoiceExercise,
  type NumberExercise,
  YES_OR_NO,
} from "../../src/workshop/exercise.js";
import { judgeAnswer, readAnswer } from "../../src/workshop/judgeAnswer.js";
import {
  checkAnswer,
  comparePredictions,
  openExercises,
  predict,
} from "../../src/workshop/session.js";

const fines: NumberExercise = {
  kind: "number",
  id: "fines",
  question: "How much is finer?",
  unit: "%",
  value: 27,
  tolerance: { abs: 0.5 },
  mistakes: [
    { value: 1, text: "The wash was forgotten." },
    { value: 27.2, text: "Never to be said." },
  ],
  hint: "Count the drain.",
  worked: "100 (1 − 876 / 1200) = 27 %.",
  why: "All that passes.",
};
const proof: ChoiceExercise = {
  kind: "choice",
  id: "proof",
  question: "Is it proof?",
  options: YES_OR_NO,
  value: "no",
  mistakes: [{ value: "yes", text: "It is not." }],
  hint: "Read the note.",
  worked: "No.",
  why: "Tests decide.",
};

describe("the course of tries", () => {
  it("says what is wrong, then a hint, then the worked answer, and still takes the right one", () => {
    openExercises([fines, proof]);
    const said = [2, 2, 2, 2, 27].map((answer) => render(checkAnswer("fines", answer).text));
    expect(said[0]).toBe(
      "fines. Not yet. This is far too small.".replace("far too small", "too small, by about 93 %"),
    );
    expect(said[1]).toContain("A hint: Count the drain.");
    expect(said[1]).not.toContain("27");
    expect(said[2]).toContain("Worked: 100 (1 − 876 / 1200) = 27 %.");
    expect(said[3]).toContain("Worked:");
    expect(said[4]).toBe("fines. Right. Computed: 27.0 %. All that passes.");
  });

  it("counts each exercise by itself and no blank or unreadable answer", () => {
    openExercises([fines, proof]);
    for (const answer of [undefined, null, "", "  ", Number.NaN, "27", {}, [27], () => 27]) {
      expect(render(checkAnswer("fines", answer).text)).not.toMatch(/Not yet|Right/);
    }
    checkAnswer("proof", "yes");
    expect(render(checkAnswer("proof", "yes").text)).toContain("A hint: Read the note.");
    expect(render(checkAnswer("fines", 2).text)).not.toContain("hint");
  });

  it("begins again when the exercises are opened again", () => {
    openExercises([fines]);
    for (let count = 0; count < 3; count += 1) checkAnswer("fines", 2);
    openExercises([fines]);
    expect(render(checkAnswer("fines", 2).text)).not.toMatch(/hint|Worked/);
  });

  it("answers a misspelt exercise, and refuses two of one name", () => {
    openExercises([fines, proof]);
    expect(render(checkAnswer("fine", 27).text)).toContain("Is fines meant?");
    expect(render(checkAnswer("something else", 27).text)).toContain("Open are:");
    expect(render(checkAnswer(undefined as never, 27).text)).toContain("There is no exercise");
    expect(() => openExercises([fines, fines])).toThrow("fines twice");
  });
});

describe("what is wrong with an answer", () => {
  const wrong = (answer: unknown, exercise: NumberExercise | ChoiceExercise = fines) =>
    render(judgeAnswer(exercise, answer).text);

  it("knows the exercise's own turns, and names none that would be right", () => {
    expect(wrong(1)).toBe("Not yet. The wash was forgotten.");
    expect(wrong(27.2)).toContain("Right.");
    expect(wrong(27.6)).not.toContain("Never to be said");
  });

  it("knows fraction, rest, decade, sign and quotient", () => {
    expect(wrong(0.27)).toContain("a fraction");
    expect(wrong(73)).toContain("the rest to 100");
    expect(wrong(270)).toContain("too large by a factor of 10");
    expect(wrong(2.7)).toContain("too small by a factor of 10");
    expect(wrong(-27)).toContain("sign");
    expect(wrong(1 / 27)).toContain("upside down");
    expect(wrong(29)).toBe("Not yet. This is too large, by about 7 %.");
    expect(wrong(90)).toBe("Not yet. This is far too large.");
  });

  it("knows other units", () => {
    const size: NumberExercise = {
      ...fines,
      unit: "mm",
      value: 1.02,
      tolerance: { rel: 0.05 },
      mistakes: [],
    };
    expect(wrong(1020, size)).toContain("micrometres");
    const stress: NumberExercise = { ...size, unit: "MPa", value: 1.5 };
    expect(wrong(1500, stress)).toContain("kilopascals");
    expect(wrong(0.0015, stress)).toContain("kN/mm²");
  });

  it("is friendly to values of the wrong sort", () => {
    expect(wrong("27 %")).toContain("without quotation marks");
    expect(wrong("many")).toContain("a number is asked for");
    expect(wrong(Number.NaN)).toContain("NaN");
    expect(wrong(Number.POSITIVE_INFINITY)).toContain("infinity");
    expect(wrong([27])).toContain("a list");
    expect(wrong({ value: 27 })).toContain("no number");
    expect(wrong(true)).toContain("no number");
    expect(wrong(Symbol("27"))).toContain("no number");
    expect(wrong(() => 27)).toContain("a function");
    expect(wrong(Promise.resolve(27))).toContain("await");
    expect(wrong(27n)).toContain("Right.");
    expect(wrong(null)).toContain("No answer yet");
    expect(wrong(5, proof)).toContain('"yes", "no"');
    expect(wrong("maybe", proof)).toContain('"yes", "no"');
    expect(wrong(" NO ", proof)).toContain("Right.");
    expect(wrong(false, proof)).toContain("Right.");
  });

  it("takes a choice in any of our languages and by its key, however it is spaced", () => {
    const options = [
      { key: "gravel -1", text: "gravel -1" },
      { key: "same", text: say`the same` },
    ];
    const chosen = (answer: unknown) => readAnswer({ kind: "choice", options }, answer);
    for (const answer of ["gravel -1", "Gravel −1", " gravel-1 ", "gravel - 1"]) {
      expect(chosen(answer)).toEqual({ kind: "choice", value: "gravel -1" });
    }
    for (const answer of ["the same", "The  Same", "same", render(say`the same`, "es")]) {
      expect(chosen(answer)).toEqual({ kind: "choice", value: "same" });
    }
    expect(render(judgeAnswer(proof, "SÍ").text)).toContain("It is not.");
    expect(render(judgeAnswer(proof, "quizás").text, "es")).toContain('"sí", "no"');
  });

  it("never throws, whatever stands in the cell, and is right only inside the range", () => {
    const { low, high } = acceptedRange(fines);
    fc.assert(
      fc.property(fc.anything(), (answer) => {
        const { verdict } = judgeAnswer(fines, answer);
        const inside = typeof answer === "number" && answer >= low && answer <= high;
        if (typeof answer !== "bigint") expect(verdict === "right").toBe(inside);
      }),
    );
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (answer) => {
        const { verdict } = judgeAnswer(fines, answer);
        expect(verdict).toBe(answer >= low && answer <= high ? "right" : "wrong");
      }),
    );
  });

  it("takes a zero for an answer and a value", () => {
    const none: NumberExercise = {
      ...fines,
      value: 0,
      unit: "",
      tolerance: { abs: 0.001 },
      mistakes: [],
    };
    expect(wrong(0, none)).toContain("Right.");
    expect(wrong(3, none)).toContain("far too large");
  });
});

describe("predictions", () => {
  it("stand beside the computed value", () => {
    predict("fines of A, %", 30);
    predict("wording of A", "more sand");
    expect(
      renderAll(
        comparePredictions({ "fines of A, %": 25, "wording of A": "less sand", "unsaid A": 3 })
          .rows,
      ),
    ).toEqual([
      ["fines of A, %", "30", "25.0", "+20 %"],
      ["wording of A", "more sand", "less sand", "–"],
      ["unsaid A", "–", "3.00", "–"],
    ]);
  });

  it("can be changed until the value was shown, and then stand", () => {
    predict("B", 1);
    predict("B", 2);
    expect(renderAll(comparePredictions({ B: 2 }).rows)[0][3]).toBe("0 %");
    expect(render(predict("B", 5).text)).toContain("the first prediction stands");
    expect(renderAll(comparePredictions({ B: 2 }).rows)[0][1]).toBe("2");
    comparePredictions({ C: 1 });
    predict("C", 4);
    expect(renderAll(comparePredictions({ C: 1 }).rows)[0]).toEqual([
      "C",
      "4 (afterwards)",
      "1.00",
      "+300 %",
    ]);
  });

  it("take no silly values and say so", () => {
    for (const value of [undefined, null, "", Number.NaN, [1], {}, Number.POSITIVE_INFINITY]) {
      expect(render(predict("D", value).text)).toContain("No prediction yet");
    }
    expect(renderAll(comparePredictions({ D: null }).rows)).toEqual([["D", "–", "–", "–"]]);
  });
});
