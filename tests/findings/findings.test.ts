import { describe, expect, it } from "vitest";
import { type Finding, finding, hasErrors, limitFindings } from "../../src/findings/finding.js";
import { countFindings, formatFindings, plain } from "../../src/findings/format.js";
import { say } from "../../src/words/message.js";
import { render, renderAll } from "../../src/words/render.js";

const WORDS = { message: say`Empty.`, expected: say`a reading`, remedy: say`Fill it in.` };
const many = (count: number, more: Partial<Finding> = {}): Finding[] =>
  Array.from({ length: count }, (_, index) => ({
    ...finding({ file: "a.csv", row: index + 1 }, "error", "missing-value", WORDS),
    ...more,
  }));

describe("a finding", () => {
  it("holds what is known of its place, and no key for what is not", () => {
    expect(finding({ file: "a.csv" }, "note", "told", WORDS)).toStrictEqual({
      severity: "note",
      code: "told",
      file: "a.csv",
      ...WORDS,
    });
    const whole = { file: "a.csv", row: 3, column: "mass (g)", value: "x" };
    expect(finding(whole, "warning", "told", WORDS)).toMatchObject(whole);
  });

  it("is an error or is none", () => {
    expect(hasErrors(many(1))).toBe(true);
    expect(hasErrors([...many(1, { severity: "warning" }), ...many(1, { severity: "note" })])).toBe(
      false,
    );
  });
});

describe("many findings of a kind", () => {
  it("are all listed up to fifty, and counted beyond", () => {
    expect(limitFindings(many(50))).toHaveLength(50);
    const few = limitFindings(many(51));
    expect(few).toHaveLength(51);
    expect(renderAll(few[50])).toStrictEqual({
      severity: "error",
      code: "missing-value",
      file: "a.csv",
      message: "1 more finding of this kind is not listed.",
      expected: "a reading",
      remedy: "Fill it in.",
    });
    expect(render(limitFindings(many(1000)).at(-1)!.message)).toBe(
      "950 more findings of this kind are not listed.",
    );
  });

  it("are of one kind by severity, code and file together; the others stay, in their order", () => {
    const others = [
      ...many(1, { severity: "warning" }),
      ...many(1, { code: "out-of-range" }),
      ...many(1, { file: "b.csv" }),
    ];
    const kept = limitFindings([...many(60), ...others]);
    expect(kept).toHaveLength(54);
    expect(kept.slice(50, 53)).toEqual(others);
    const split = [...many(40), ...many(40, { code: "out-of-range" })];
    expect(limitFindings(split)).toEqual(split);
  });
});

describe("findings as text", () => {
  const found = [
    finding({ file: "a.csv" }, "note", "told", WORDS),
    finding(
      { file: "a.csv", row: 4, column: "mass (g)", value: say`${1.5} g` },
      "error",
      "x",
      WORDS,
    ),
  ];

  it("stand with the errors first, their place, what was expected and the remedy", () => {
    expect(formatFindings(found)).toBe(
      [
        "error    a.csv, row 4, column “mass (g)”: “1.5 g”",
        "         Empty.",
        "         Expected: a reading",
        "         Remedy: Fill it in.",
        "",
        "note     a.csv",
        "         Empty.",
        "         Expected: a reading",
        "         Remedy: Fill it in.",
        "",
        "1 error, 0 warnings, 1 note",
      ].join("\n"),
    );
  });

  it("are said in Spanish with a decimal comma", () => {
    const text = formatFindings(found, "es");
    expect(text).toContain("“1,5 g”");
    expect(text.endsWith("1 error, 0 advertencias, 1 nota")).toBe(true);
    const [warning, message] = formatFindings(many(1, { severity: "warning" }), "es").split("\n");
    // The longest word of the three, one space, and everything below it in the same column.
    expect([warning, message]).toEqual(["advertencia a.csv, fila 1", "            Empty."]);
  });

  it("are counted by kind", () => {
    const counted = countFindings([...many(2), ...many(1, { severity: "warning" })]);
    expect(render(counted)).toBe("2 errors, 1 warning, 0 notes");
  });

  it("never steer the terminal", () => {
    expect(plain("a\u001b[31mb\u0007\tc\u009f")).toBe("a\\u001b[31mb\\u0007\\u0009c\\u009f");
    const sly = finding({ file: "\u001b.csv", column: "\u0007", value: "\r" }, "error", "x", {
      ...WORDS,
      message: "\u001b[2J",
    });
    expect(formatFindings([sly]).replaceAll("\n", "")).not.toMatch(/\p{Cc}/u);
  });
});
