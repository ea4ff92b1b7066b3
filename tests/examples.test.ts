import { describe, expect, it } from "vitest";
import * as loambook from "../src/index.js";
import { sourceFiles } from "./support/sourceFiles.js";

const AsyncFunction = Object.getPrototypeOf(async () => {}).constructor as FunctionConstructor;

interface Example {
  readonly name: string;
  readonly lines: readonly string[];
}

/** The `@example` blocks of all docstrings: from the tag to the next tag or the end of the comment. */
function examples(): Example[] {
  return sourceFiles().flatMap(({ path, text }) =>
    [...text.matchAll(/\/\*\*[\s\S]*?\*\//g)].flatMap(([comment]) =>
      comment
        .split(/^\s*\* @example[ \t]*$/m)
        .slice(1)
        .map((block, index) => ({
          name: `${path} ${index + 1}`,
          lines: block
            .split(/^\s*\* @\w+/m)[0]
            .split("\n")
            .map((line) => line.replace(/^\s*\*\/?\s?/, "").replace(/\*\/\s*$/, ""))
            .filter((line) => line.trim() !== ""),
        })),
    ),
  );
}

/** Equal in shape; numbers equal to half a unit of the finest decimal place printed. */
function compare(actual: unknown, expected: unknown, printed: string): void {
  const decimals = [...printed.matchAll(/\d+\.(\d+)/g)].map(([, digits]) => digits.length);
  const tolerance = decimals.length ? 0.51 * 10 ** -Math.max(...decimals) : 1e-9;
  const near = (value: unknown): unknown =>
    typeof value === "number" && Number.isFinite(value)
      ? expect.toSatisfy(
          (other: unknown) =>
            typeof other === "number" &&
            Math.abs(other - value) <= Math.max(tolerance, 1e-9 * Math.abs(value)),
          `about ${value}`,
        )
      : Array.isArray(value)
        ? value.map(near)
        : value !== null && typeof value === "object"
          ? Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, near(inner)]))
          : value;
  expect(actual).toEqual(near(expected));
}

describe("the examples in the docstrings", () => {
  const all = examples();

  it("are there", () => {
    expect(all.length).toBeGreaterThan(20);
  });

  it.each(all.map((example) => [example.name, example] as const))("%s", async (_, { lines }) => {
    let checks = 0;
    const body = lines
      .map((line) => {
        const [, expression, printed] = /^(.*?);?\s*\/\/ => (.*)$/.exec(line) ?? [];
        if (expression === undefined) return line;
        checks += 1;
        return `__check(await (${expression}), (${printed}), ${JSON.stringify(printed)});`;
      })
      .join("\n");
    expect(checks).toBeGreaterThan(0);
    const run = new AsyncFunction("__check", ...Object.keys(loambook), body);
    await run(compare, ...Object.values(loambook));
  });
});
