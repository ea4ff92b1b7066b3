import { expect, it } from "vitest";
import { mathHtml } from "../../src/report/html/inlineHtml.js";
import { markdownToNodes } from "../../src/report/markdown.js";
import { typstMath } from "../../src/report/pdf/typstMath.js";

it.each([
  ["quotations", "> ".repeat(5000)],
  ["lists", Array.from({ length: 1500 }, (_, depth) => `${" ".repeat(2 * depth)}- x`).join("\n")],
  ["lists on one line", "- ".repeat(3000)],
  ["stars", "*".repeat(20_000)],
  ["brackets", "[".repeat(10_000)],
  ["emphasis", "*a **b ".repeat(2000)],
])("%s without end are read, or shown as they were typed", (_, text) => {
  const start = process.cpuUsage();
  expect(markdownToNodes(`${text}end`).length).toBeGreaterThan(0);
  const { user, system } = process.cpuUsage(start);
  expect(user + system).toBeLessThan(10e6);
});

it("a formula of groups without end is shown as the TeX it is", () => {
  const tex = `${"{".repeat(5000)}x${"}".repeat(5000)}`;
  expect(mathHtml(tex, false)).toContain('<code class="tex">');
  expect(typstMath(tex)).toBeUndefined();
});
