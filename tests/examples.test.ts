import { describe, expect, it } from "vitest";
import { sourceFiles } from "./support/sourceFiles.js";

const AsyncFunction = Object.getPrototypeOf(async () => {}).constructor as FunctionConstructor;

interface Example {
  readonly name: string;
  /** The file it stands in, below `src`. */
  readonly path: string;
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
          path,
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
  const near = (value: unknown): unknown => {
    if (typeof value === "number" && Number.isFinite(value)) {
      const within = Math.max(tolerance, 1e-9 * Math.abs(value));
      const isNear = (other: unknown) =>
        typeof other === "number" && Math.abs(other - value) <= within;
      return expect.toSatisfy(isNear, `about ${value}`);
    }
    if (Array.isArray(value)) return value.map(near);
    if (value === null || typeof value !== "object") return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, near(inner)]));
  };
  expect(actual).toEqual(near(expected));
}

/** Everything that the faces of the rooms show: what an example may use besides the names of its own file. */
async function publicNames(): Promise<Record<string, unknown>> {
  const faces = sourceFiles().filter(({ path }) => path.endsWith("/index.ts"));
  const rooms = await Promise.all(
    faces.map(({ path }) => import(/* @vite-ignore */ `../src/${path}`)),
  );
  return Object.assign({}, ...rooms);
}

describe("the examples in the docstrings", async () => {
  const all = examples();
  const names = await publicNames();

  it("are there", () => {
    expect(all.length).toBeGreaterThan(20);
  });

  it.each(all.map((example) => [example.name, example] as const))(
    "%s",
    async (_, { path, lines }) => {
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
      const known = { ...names, ...(await import(/* @vite-ignore */ `../src/${path}`)) };
      const run = new AsyncFunction("__check", ...Object.keys(known), body);
      await run(compare, ...Object.values(known));
    },
  );
});
