import { expect, it } from "vitest";
import { answerAsTyped } from "../../src/notebook/answerCell.js";

const cell = (written: string, call = "checkAnswer") =>
  `let myShare = ${written};\nawait show(loam.${call}("share", myShare));`;
const firstLine = (written: string, call?: string) =>
  answerAsTyped(cell(written, call)).split("\n")[0];

it("makes texts of answers that are no TypeScript", () => {
  for (const written of [
    "59,1",
    "59 %",
    "12 kg",
    "1.250,5",
    "less",
    "the same",
    "gravel -1",
    "sí",
    "mostly more, or no answer",
  ]) {
    expect(firstLine(written), written).toBe(`let myShare = ${JSON.stringify(written)};`);
    expect(firstLine(written, "predict"), written).toBe(
      `let myShare = ${JSON.stringify(written)};`,
    );
  }
  expect(firstLine("“less”")).toBe('let myShare = "less";');
  expect(firstLine('"less')).toBe('let myShare = "less";');
  expect(firstLine("")).toBe("let myShare = undefined;");
});

it("leaves numbers, sums, texts and names of other answers as they are", () => {
  for (const written of [
    "undefined",
    "59.1",
    "-3",
    "100 * (1 - 300 / 1200)",
    "Math.sqrt(2)",
    '"less"',
    "mySand",
    "myA + 1",
    "[1, 2]",
    "true",
    "NaN",
    "await other(2)",
  ]) {
    expect(answerAsTyped(cell(written)), written).toBe(cell(written));
  }
});

it("touches no cell that asks for no answer, and mends none that is broken elsewhere", () => {
  for (const code of [
    "let myShare = 59,1;",
    "const less = 3;",
    "let myShare = less;\nconsole.log(myShare);",
    "",
  ]) {
    expect(answerAsTyped(code)).toBe(code);
  }
  const broken = 'let myShare = 59,1;\nawait show(loam.checkAnswer("share", myShare);';
  expect(answerAsTyped(broken)).toBe(broken);
});
