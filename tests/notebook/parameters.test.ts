import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  joinText,
  type NotebookCell,
  type NotebookFile,
  tagsOf,
} from "../../src/notebook/notebookFile.js";
import { cellPlaces } from "../../src/notebook/notebookRun.js";
import {
  injectParameters,
  ParameterError,
  restateParameter,
} from "../../src/notebook/parameters.js";

function code(id: string, source: string, tags: string[] = []): NotebookCell {
  return { cell_type: "code", id, metadata: { tags }, source, execution_count: null, outputs: [] };
}

const text: NotebookCell = { cell_type: "markdown", id: "m", metadata: {}, source: "# T" };

function notebook(...cells: NotebookCell[]): NotebookFile {
  return { nbformat: 4, nbformat_minor: 5, metadata: {}, cells };
}

const declared = code(
  "p",
  "// a comment\nlet folder = 'a'; // where\nlet size: number = -1.5e3;\nconst on = true;\nlet n = 3;\n",
  ["parameters"],
);
const given = notebook(text, declared, code("c", "folder"));

describe("injectParameters", () => {
  it("puts a cell behind the parameters cell and changes nothing else", () => {
    const before = structuredClone(given);
    const set = injectParameters(given, { folder: "b\n\u2028", size: 2, on: false });
    expect(given).toEqual(before);
    expect(set.cells.map(({ id }) => id)).toEqual(["m", "p", "injected-parameters", "c"]);
    expect(tagsOf(set.cells[2]!)).toEqual(["injected-parameters"]);
    expect(joinText(set.cells[2]!.source)).toBe(
      'let folder = "b\\n\u2028";\nlet size: number = 2;\nlet on = false;',
    );
    expect(injectParameters(given, {})).toBe(given);
  });

  it("takes the place of an older injected cell, and stands first without a parameters cell", () => {
    const twice = injectParameters(injectParameters(given, { n: 1 }), { n: 2 });
    expect(twice.cells.map(({ id }) => id)).toEqual(["m", "p", "injected-parameters", "c"]);
    expect(joinText(twice.cells[2]!.source)).toBe("let n = 2;");
    const bare = injectParameters(notebook(text, code("injected-parameters", "1")), { any: "x" });
    expect(bare.cells.map(({ id }) => id)).toEqual([
      "injected-parameters-1",
      "m",
      "injected-parameters",
    ]);
  });

  it.each([
    [{ nope: 1, n: 2 }, "unknown parameter: nope; expected one of: folder, size, on, n"],
    [{ n: "2" }, 'invalid parameter `n`: "2"; expected a number, as the notebook declares it'],
    [{ folder: true }, "expected a string"],
    [{ on: 1 }, "expected a boolean"],
    [{ n: Number.NaN }, "invalid parameter `n`: NaN"],
    [{ n: Number.POSITIVE_INFINITY }, "expected a finite number"],
  ])("refuses %j", (values, message) => {
    expect(() => injectParameters(given, values)).toThrow(ParameterError);
    expect(() => injectParameters(given, values)).toThrow(message);
  });

  it("refuses code among the parameters, and names that are none", () => {
    const cell = code("p", "let a = 1;\nlet b = a + 1;", ["parameters"]);
    expect(() => injectParameters(notebook(cell), { a: 2 })).toThrow(
      "invalid parameters cell, line 2: let b = a + 1;",
    );
    expect(() => injectParameters(notebook(text), { "x = 1; process.exit(); let y": 1 })).toThrow(
      "unknown parameter",
    );
  });

  it("writes literals that give back the value", () => {
    const value = fc.oneof(
      fc.string({ unit: "binary" }),
      fc
        .double({ noNaN: true, noDefaultInfinity: true })
        .filter((number) => !Object.is(number, -0)),
      fc.boolean(),
    );
    fc.assert(
      fc.property(value, (wanted) => {
        const [cell] = injectParameters(notebook(text), { wanted }).cells;
        const run = new Function(`${joinText(cell!.source)}\nreturn wanted;`);
        expect(run()).toEqual(wanted);
      }),
    );
  });
});

describe("restateParameter", () => {
  it("gives an injected value another one and leaves all else as it was", () => {
    const cell = code("p", 'let folder = "a";\nlet n = 1;', ["parameters"]);
    const run = injectParameters(notebook(cell), { folder: "../../home/me/wall = x", n: 2 });
    const restated = restateParameter(run, "folder", "wall");
    expect(joinText(restated.cells[1]!.source)).toBe('let folder = "wall";\nlet n = 2;');
    expect(restated.cells[0]).toEqual(run.cells[0]);
  });
});

describe("cellPlaces", () => {
  it("counts as the file does: an inserted cell has the numbers of the one it follows", () => {
    const places = cellPlaces(injectParameters(given, { n: 1 }), given);
    expect(places.map((place) => [place.cellNumber, place.cellPosition, place.injected])).toEqual([
      [1, 2, false],
      [1, 2, true],
      [2, 3, false],
    ]);
  });
});
