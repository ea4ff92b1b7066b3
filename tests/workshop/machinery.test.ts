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
import { judgeAnswer, readAnswer, recogniseMistake } from "../../src/workshop/judgeAnswer.js";
import {
  type AskedPrediction,
  afterAnswer,
  checkAnswer,
  comparePredictions,
  openExercises,
  openPredictions,
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
    expect(said[0]).toBe("Not yet. This is too small, by about 93 %.");
    expect(said[1]).toContain("A hint: Count the drain.");
    expect(said[1]).not.toContain("27");
    expect(said[2]).toContain("Worked: 100 (1 − 876 / 1200) = 27 %.");
    expect(said[3]).toContain("Worked:");
    expect(said[4]).toBe("Right. Computed: 27.0 %. All that passes.");
  });

  it("judges a wrong answer after a right one again", () => {
    openExercises([fines, proof]);
    const said = [27, 1, 27.1].map((answer) => render(checkAnswer("fines", answer).text));
    expect(said[0]).toContain("Right.");
    expect(said[1]).toContain("Not yet. The wash was forgotten.");
    expect(said[2]).toContain("Right.");
  });

  it("asks its question of who has not answered, with what may be answered", () => {
    openExercises([fines, proof]);
    expect(render(checkAnswer("fines", undefined).text)).toBe(
      "How much is finer? (a number, %, within 0.5) No answer yet. Write it into the cell above in place of undefined and run the cell again.",
    );
    expect(render(checkAnswer("proof", undefined).text)).toContain('(one of "yes", "no")');
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

  it("forgets exercises of other data when new ones are opened", () => {
    openExercises([fines]);
    openExercises([proof]);
    expect(render(checkAnswer("fines", 27).text)).toContain("There is no exercise");
    openExercises([]);
    expect(render(checkAnswer("proof", "no").text)).toContain("Run the cells above first");
  });

  it("answers a misspelt exercise, and refuses two of one name", () => {
    openExercises([fines, proof]);
    expect(render(checkAnswer("fine", 27).text)).toContain("Is fines meant?");
    expect(render(checkAnswer("something else", 27).text)).toContain("Open are:");
    expect(render(checkAnswer(undefined as never, 27).text)).toContain("There is no exercise");
    expect(() => openExercises([fines, fines])).toThrow("fines twice");
  });
});

describe("a solution", () => {
  const solution = { kind: "paragraph", text: "27 % of fines" } as const;
  const shown = (...ids: string[]) => render(afterAnswer(ids, solution).text);

  it("waits for the right answer, the third try or giving up, of each exercise named", () => {
    openExercises([fines, proof]);
    expect(shown("fines", "proof")).toContain("waits for an answer above: fines, proof.");
    checkAnswer("fines", undefined);
    checkAnswer("fines", 2);
    checkAnswer("fines", 2);
    expect(shown("fines", "proof")).toContain("above: fines, proof.");
    checkAnswer("fines", 2);
    expect(shown("fines", "proof")).toContain("above: proof.");
    expect(render(checkAnswer("proof", "?").text)).toBe("Given up. Worked: No.");
    expect(shown("fines", "proof")).toBe("27 % of fines");
    openExercises([fines, proof]);
    expect(shown("proof")).toContain("waits");
    checkAnswer("proof", "no");
    expect(shown("proof")).toBe("27 % of fines");
  });

  it("waits for a prediction, and for nothing that the class has no data for", () => {
    openExercises([fines]);
    openPredictions([{ id: "waited-for", label: "Waited for", value: 1 }]);
    expect(shown("waited-for")).toContain("waits for a prediction above: waited-for.");
    predict("waited-for", 3);
    expect(shown("waited-for", "no-such-exercise")).toBe("27 % of fines");
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
    expect(wrong("27 %")).toMatch(/point before the decimals: 27$/);
    expect(wrong("59,1")).toMatch(/point before the decimals: 59\.1$/);
    expect(wrong("−3,5 g")).toMatch(/: -3\.5$/);
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
      { key: "gravel -1", text: "Gravel 4/16 -1" },
      { key: "gravel +1", text: "Gravel 4/16 +1" },
      { key: "soil -1", text: "Class soil -1" },
      { key: "same", text: say`the same` },
    ];
    const chosen = (answer: unknown) => readAnswer({ kind: "choice", options }, answer);
    const ways = [
      "gravel -1",
      "Gravel −1",
      " gravel-1 ",
      "gravel - 1",
      "-1 gravel",
      "gravel minus one",
    ];
    for (const answer of [...ways, "one gravel less", "1 less gravel", "Gravel 4/16 –1", "grava"]) {
      const read = chosen(answer);
      if (answer === "grava") expect(read.kind).toBe("unreadable");
      else expect(read, answer).toEqual({ kind: "choice", value: "gravel -1" });
    }
    expect(chosen("one gravel more")).toEqual({ kind: "choice", value: "gravel +1" });
    expect(chosen("soil -1")).toEqual({ kind: "choice", value: "soil -1" });
    // gravel, but which of the two?
    expect(chosen("gravel").kind).toBe("unreadable");
    for (const answer of ["the same", "The  Same", "same", render(say`the same`, "es")]) {
      expect(chosen(answer)).toEqual({ kind: "choice", value: "same" });
    }
    expect(render(judgeAnswer(proof, "SÍ").text)).toContain("It is not.");
    expect(render(judgeAnswer(proof, "si").text)).toContain("It is not.");
    expect(render(judgeAnswer(proof, "quizás").text, "es")).toContain('"sí", "no"');
  });

  it("tells more and less apart in both languages, also where they are short", () => {
    const options = [
      { key: "less", text: say`less` },
      { key: "same", text: say`the same` },
      { key: "more", text: say`more` },
    ];
    for (const { key, text } of options) {
      for (const answer of [
        key,
        render(text, "en"),
        render(text, "es"),
        ` ${render(text, "es")}.`,
      ]) {
        expect(readAnswer({ kind: "choice", options }, answer), answer).toEqual({
          kind: "choice",
          value: key,
        });
      }
    }
    expect(readAnswer({ kind: "choice", options }, "-").kind).toBe("unreadable");
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
  const open = (...asked: AskedPrediction[]) => openPredictions(asked);
  const compared = (...ids: string[]) => renderAll(comparePredictions(ids).rows);

  it("stand beside the computed value, by the names of the lesson", () => {
    open(
      { id: "fines-a", label: "fines of A, %", value: 25 },
      { id: "word-a", label: say`target`, value: "less sand" },
      { id: "unsaid-a", label: "unsaid A", value: 3 },
    );
    predict("fines-a", 30);
    predict("word-a", "more sand");
    expect(compared("fines-a", "word-a", "unsaid-a")).toEqual([
      ["fines of A, %", "30", "25.0", "+20 %"],
      ["target", "more sand", "less sand", "–"],
      // what nobody predicted is not told
      ["unsaid A", "–", "–", "–"],
    ]);
    expect(() =>
      open({ id: "x", label: "x", value: 1 }, { id: "x", label: "y", value: 1 }),
    ).toThrow("x twice");
  });

  it("can be changed until the value was shown, and then stand", () => {
    open({ id: "b", label: "B", value: 2 }, { id: "c", label: "C", value: 1 });
    predict("b", 1);
    predict("b", 2);
    expect(compared("b")[0][3]).toBe("0 %");
    expect(render(predict("b", 5).text)).toContain("the first prediction stands");
    expect(compared("b")[0][1]).toBe("2");
    // without a prediction the computed value is not told, so one can still be made
    expect(compared("c")[0]).toEqual(["C", "–", "–", "–"]);
    predict("c", 4);
    expect(compared("c")[0]).toEqual(["C", "4", "1.00", "+300 %"]);
  });

  it("stand where the same is asked again, and go where other things are", () => {
    const again = { id: "f", label: "F", value: 3 };
    open(again);
    predict("f", 6);
    expect(compared("f")).toEqual([["F", "6", "3.00", "+100 %"]]);
    open(again);
    expect(render(predict("f", 9).text)).toContain("the first prediction stands");
    open({ id: "g", label: "G", value: 1 });
    open(again);
    expect(compared("f")).toEqual([["F", "–", "–", "–"]]);
    expect(render(predict("f", 9).text)).toBe("Predicted, F: 9.");
  });

  it("take a number as it was typed, and no silly values", () => {
    open({ id: "d", label: "D", value: undefined }, { id: "e", label: "E", value: 10 });
    for (const value of [undefined, null, "", Number.NaN, [1], {}, Number.POSITIVE_INFINITY]) {
      expect(render(predict("d", value).text)).toContain("No prediction yet");
    }
    expect(compared("d")).toEqual([["D", "–", "–", "–"]]);
    predict("e", "12,5 %");
    expect(compared("e")).toEqual([["E", "12.5", "10.0", "+25 %"]]);
  });
});

describe("how near a wrong answer has to come to a mistake to be recognised", () => {
  const said = (exercise: Parameters<typeof recogniseMistake>[0], answer: number) =>
    render(recogniseMistake(exercise, answer));

  it("within the tolerance, and at least half a percent of what the mistake leads to", () => {
    const mistakes = [{ value: 40, text: "Known." }];
    const exact = { value: 20, unit: "", tolerance: {}, mistakes };
    expect([39.81, 40.19, 39.79, 40.21].map((answer) => said(exact, answer) === "Known.")).toEqual([
      true,
      true,
      false,
      false,
    ]);
    const wide = { ...exact, tolerance: { abs: 1 } };
    expect([39, 41, 38.9, 41.1].map((answer) => said(wide, answer) === "Known.")).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  it("a slip that any number may have within a fifth, however wide the tolerance", () => {
    const wide = { value: 1, unit: "", tolerance: { abs: 0.5 }, mistakes: [] };
    const tenfold = (answer: number) => said(wide, answer).includes("by a factor of 10.");
    expect([8, 12, 7.9, 12.1].map(tenfold)).toEqual([true, true, false, false]);
    const narrow = { ...wide, tolerance: { rel: 0.05 } };
    expect([9.5, 10.5, 9.4, 10.6].map((answer) => said(narrow, answer).includes("of 10."))).toEqual(
      [true, true, false, false],
    );
  });
});
