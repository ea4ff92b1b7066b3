import { describe, expect, it } from "vitest";
import { emittedPlace, kernelText, stderrPlace } from "../../src/notebook/cellFailure.js";
import { formatFailure } from "../../src/notebook/notebookRun.js";

/** As tslab 1.0.22 wrote it on Node.js 20, the stack shortened. */
const THROWN = `evalmachine.<anonymous>:27
    throw new Error("bad " + x);
    ^

Error: bad 3
    at f (evalmachine.<anonymous>:27:11)
    at evalmachine.<anonymous>:32:22
    at evalmachine.<anonymous>:34:3
    at sigintHandlersWrap (node:vm:280:12)
    at Script.runInThisContext (node:vm:135:14)
    at Object.execute (/home/x/node_modules/tslab/dist/executor.js:160:38)
`;

const AWAITED = `RangeError: late
    at f (file:///home/x/node_modules/other/dist/deep.js:5:49)
    at evalmachine.<anonymous>:5:49
    at async evalmachine.<anonymous>:8:1
    at async Object.execute (/home/x/node_modules/tslab/dist/executor.js:173:17)
`;

describe("stderrPlace", () => {
  it("reads a diagnostic, and the frame of a stack that the executor called", () => {
    expect(stderrPlace("3:9 - Cannot find name 'nope'.\n")).toEqual({ kind: "compile", line: 3 });
    expect(stderrPlace(THROWN)).toEqual({ kind: "run", line: 32, column: 22 });
    expect(stderrPlace(AWAITED)).toEqual({ kind: "run", line: 8, column: 1 });
  });

  it("says nothing of a text or a stack that does not reach down", () => {
    expect(stderrPlace("just a string\n")).toBeUndefined();
    expect(stderrPlace(THROWN.split("\n").slice(0, 6).join("\n"))).toBeUndefined();
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
  it("keeps the message and the library's frames, without excerpt and folders", () => {
    expect(kernelText(THROWN, "/home/x")).toBe("Error: bad 3");
    expect(kernelText(AWAITED, "/home/x")).toBe(
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
