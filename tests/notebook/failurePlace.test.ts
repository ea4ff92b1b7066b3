import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import {
  compileError,
  emittedPlace,
  kernelText,
  thrownError,
  withoutCellLines,
} from "../../src/notebook/kernel/cellTrace.js";
import { formatFailure } from "../../src/notebook/notebookRun.js";

/** An error with a stack as a kernel gives it. */
function thrown(message: string, ...frames: readonly string[]): Error {
  const error = new RangeError(message);
  error.stack = [`RangeError: ${message}`, ...frames.map((frame) => `    at ${frame}`)].join("\n");
  return error;
}

const CELLS = new Map([
  [
    1,
    {
      source: "let a = 1;\n\nfunction f() {\n  throw up;\n}",
      emitted: "let a = 1;\nfunction f() {\n    throw up;\n}\n",
      prefix: 30,
    },
  ],
  [2, { source: "await f();", emitted: "await f();\n", prefix: 36 }],
]);

describe("thrownError", () => {
  it("gives lines of cells and frames of packages, none of the kernel and no folder", () => {
    const error = thrown(
      "late",
      "deep (file:///home/x/node_modules/other/dist/deep.js:5:49)",
      "f (cell[1]:3:5)",
      "cell[2]:1:43",
      "cell[2]:3:3",
      "sigintHandlersWrap (node:vm:280:12)",
      "Object.execute (/home/x/node_modules/tslab/dist/executor.js:160:38)",
    );
    const told = thrownError(error, CELLS, 2, "/home/x");
    expect(told).toEqual({
      ename: "RangeError",
      evalue: "late",
      traceback: [
        "RangeError: late",
        "    at deep (node_modules/other/dist/deep.js:5:49)",
        "    at f, line 4 of cell [1]",
        "    at line 1: await f();",
      ],
      line: 1,
    });
    expect(withoutCellLines(told.traceback)).toBe(
      "RangeError: late\n    at deep (node_modules/other/dist/deep.js:5:49)",
    );
  });

  it("names no line where the stack reaches no cell, and shows what is no error", () => {
    expect(thrownError(thrown("x", "g (node:fs:1:2)"), CELLS, 2, "/home/x").line).toBeUndefined();
    const { evalue, traceback } = thrownError({ code: 3 }, CELLS, 2, "/home/x");
    expect([evalue, traceback]).toEqual(["{ code: 3 }", ["{ code: 3 }"]]);
  });

  it("tells what the compiler says, and no line that the cell does not have", () => {
    const said = [{ line: 3, column: 9, text: "Cannot find name 'nope'." }];
    expect(compileError(said, "a\nb", "/home/x")).toEqual({
      ename: "CompileError",
      evalue: "Cannot find name 'nope'.",
      traceback: ["3:9 - Cannot find name 'nope'."],
      line: 2,
    });
  });

  it("keeps this machine's folders out of what the compiler says", () => {
    const own = fileURLToPath(new URL("../../dist/index", import.meta.url));
    const text = `No 'a' on 'typeof import("${own}")' or 'import("/home/x/lib/soil").Soil'.`;
    const { evalue, traceback } = compileError([{ line: 1, column: 2, text }], "a", "/home/x");
    expect(evalue).toBe(
      `No 'a' on 'typeof import("loambook/dist/index")' or 'import("lib/soil").Soil'.`,
    );
    expect(traceback).toEqual([`1:2 - ${evalue}`]);
  });
});

describe("emittedPlace", () => {
  const source =
    'import { a } from "x";\n\ntype T = 1;\nconst t: T = a(1);\nawait a(\n  2,\n);\na(2)';
  const emitted =
    'const x_1 = require("x");\nconst t = (0, x_1.a)(1);\nexports.t = t;\nawait (0, x_1.a)(2);\nexports.tsLastExpr = (0, x_1.a)(2);\n';

  it("finds lines in spite of types, imports, and calls written in one line", () => {
    expect(emittedPlace(source, emitted, 2, 18)).toBe(4);
    expect(emittedPlace(source, emitted, 4, 1)).toBe(5);
    expect(emittedPlace(source, emitted, 5, 22)).toBe(8);
  });

  it("returns nothing where the text stands more often in one than in the other", () => {
    expect(emittedPlace(`${source}\n// await a(2)`, emitted, 4, 1)).toBeUndefined();
    expect(emittedPlace("other", emitted, 4, 1)).toBeUndefined();
    expect(emittedPlace(source, emitted, 99, 1)).toBeUndefined();
  });
});

describe("kernelText", () => {
  it("keeps the message and the library's frames, without folders", () => {
    const text =
      "RangeError: late\n    at f (file:///home/x/node_modules/other/dist/deep.js:5:49)\n    at node:vm:1:2\n    at async Object.execute (/home/x/node_modules/tslab/dist/executor.js:173:17)\n";
    expect(kernelText(text, "/home/x")).toBe(
      "RangeError: late\n    at f (node_modules/other/dist/deep.js:5:49)",
    );
  });
});

describe("formatFailure", () => {
  const notebook = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [] } as const;
  const cell = { cellNumber: 1, cellPosition: 2, injected: true, source: "let a = 1" };

  it("names the injected cell as such, and says when nothing started", () => {
    const failure = { ...cell, line: 1, codeLine: "let a = 1", kernelMessage: "1:5 - no" };
    expect(formatFailure({ status: "cell-failed", notebook, failure })).toBe(
      "The notebook stopped in the cell that sets the parameters, line 1.\n\n> 1 | let a = 1\n\nThe kernel says:\n1:5 - no",
    );
    const died = { status: "kernel-died", notebook, exitCode: null, signal: "SIGKILL" } as const;
    expect(formatFailure({ ...died, kernelMessage: "" })).toBe(
      "The notebook kernel did not start (signal SIGKILL).",
    );
    const late = { status: "timed-out", which: "total", seconds: 5, notebook } as const;
    expect(formatFailure({ ...late, kernelMessage: "" })).toBe(
      "The notebook was stopped: it ran longer than the 5 s allowed for the whole.",
    );
  });
});
