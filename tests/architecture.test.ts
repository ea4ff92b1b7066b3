import { existsSync } from "node:fs";
import { join, posix } from "node:path";
import { describe, expect, it } from "vitest";
import { SOURCE_ROOT, sourceFiles } from "./support/sourceFiles.js";

/** Lowest first; a folder imports only from itself and from folders before it. */
const ORDER = [
  "words",
  "quantities",
  "numerics",
  "findings",
  "blocks",
  "lab",
  "grading",
  "soil",
  "guidance",
  "blend",
  "strength",
  "batch",
  "entries",
  "study",
  "figures",
  "tables",
  "workshop",
  "notebook",
  "report",
  "page",
  "cli",
];

const files = sourceFiles();
const paths = new Set(files.map(({ path }) => path));

function importsOf(file: { path: string; text: string }): string[] {
  const found = file.text.matchAll(/(?:from|import)\s*\(?\s*"(\.{1,2}\/[^"]+)"/g);
  return [...found].map(([, target]) =>
    posix.join(posix.dirname(file.path), target).replace(/\.js$/, ".ts"),
  );
}

describe("the structure of src/", () => {
  it("has only the folders of the plan", () => {
    const folders = new Set(files.map(({ path }) => path.split("/")[0]));
    folders.delete("index.ts");
    expect([...folders].filter((folder) => !ORDER.includes(folder))).toEqual([]);
  });

  it("imports only downwards, and only files that exist", () => {
    const wrong = files.flatMap((file) =>
      importsOf(file)
        .filter((target) => {
          if (!paths.has(target) && !existsSync(join(SOURCE_ROOT, target))) return true;
          if (file.path === "index.ts") return target.startsWith("cli/");
          // the command line lends the whole face to the cells that it runs
          if (target === "index.ts") return !file.path.startsWith("cli/");
          const [from, to] = [file.path, target].map((path) => ORDER.indexOf(path.split("/")[0]));
          return to > from || to < 0;
        })
        .map((target) => `${file.path} → ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it("lets figures and tables read the same results, and not each other", () => {
    const across = files.flatMap((file) =>
      importsOf(file)
        .filter(
          (target) => /^(figures|tables)\//.test(file.path) && /^(figures|tables)\//.test(target),
        )
        .filter((target) => target.split("/")[0] !== file.path.split("/")[0])
        .map((target) => `${file.path} → ${target}`),
    );
    expect(across).toEqual([]);
  });

  it("has no circle of imports", () => {
    const targets = new Map(files.map((file) => [file.path, importsOf(file)]));
    const done = new Set<string>();
    const circles: string[] = [];
    const walk = (path: string, trail: readonly string[]): void => {
      if (trail.includes(path)) {
        circles.push([...trail.slice(trail.indexOf(path)), path].join(" → "));
        return;
      }
      if (done.has(path)) return;
      for (const target of targets.get(path) ?? []) walk(target, [...trail, path]);
      done.add(path);
    };
    for (const path of targets.keys()) walk(path, []);
    expect(circles).toEqual([]);
  });

  it("loads nothing heavy at the top of a file", () => {
    const heavy =
      /^import (?!type).*"(jsdom|plotly\.js-dist|danfojs|zeromq|@myriaddreamin\/[^"]+|@e965\/xlsx|katex)"/m;
    expect(files.filter(({ text }) => heavy.test(text)).map(({ path }) => path)).toEqual([]);
  });
});
