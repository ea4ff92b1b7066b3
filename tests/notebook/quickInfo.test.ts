import { describe, expect, it } from "vitest";
import { calleeBefore, tellQuickInfo } from "../../src/notebook/kernel/quickInfo.js";

describe("a tooltip", () => {
  it("tells arguments, return and errors by their names", () => {
    const text = (words: string) => [{ text: words }];
    const told = tellQuickInfo({
      displayParts: [{ text: "function " }, { text: "scalp()" }],
      documentation: text("Takes out the coarse part."),
      tags: [
        { name: "param", text: text("sizeMm in mm") },
        { name: "returns", text: text("the finer part") },
        { name: "throws", text: text("RangeError for a size below 0") },
        { name: "internal" },
        { name: "example", text: text("scalp(2)") },
      ],
    });
    expect(told).toBe(
      "function scalp()\n\nTakes out the coarse part.\n\n@param sizeMm in mm\n@returns the finer part\n" +
        "@throws RangeError for a size below 0\n@example\nscalp(2)",
    );
    expect(tellQuickInfo({ displayParts: text("let a: number") })).toBe("let a: number");
  });

  it("is that of the call whose brackets hold the place", () => {
    const at = (code: string) => calleeBefore(code.replace("|", ""), code.indexOf("|"));
    expect(at("scalp(|)")).toBe(4);
    expect(at("loam.scalp(curve, |)")).toBe(9);
    expect(at("outer(inner(1), [2], { a: (3) }, |)")).toBe(4);
    expect(at("outer(inner(|1))")).toBe(10);
    expect(at("a = (1 + |2)")).toBe(undefined);
    expect(at("f(1) + |2")).toBe(undefined);
  });
});
