import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { quoteOf, README_LINE } from "./quote.mjs";

describe("what the README says of speed", () => {
  it("is what the last run of the bench wrote", () => {
    const [line] = README_LINE.exec(readFileSync("README.md", "utf8")) ?? [];
    expect(line).toBe(quoteOf(readFileSync("docs/bench.md", "utf8")));
  });

  it("takes the appendix and the least and most of the calculations", () => {
    const row = (what: string, ratio: string) =>
      `| ${what}, processor time | 1 s | beside | 2 s | ${ratio} |`;
    const page = [
      row("appendix", "0.28 of its time (0.27 to 0.29)"),
      row("compute", ""),
      row("fit", "0.2 of its time (0.19 to 0.21)"),
      row("blend", "24 times as fast (20 to 25)"),
    ].join("\n");
    expect(quoteOf(page)).toContain("the appendix 0.28 of that");
    expect(quoteOf(page)).toContain("calculations 5 to 24 times as fast");
  });
});
