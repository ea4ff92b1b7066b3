import { expect, it } from "vitest";
import { LANGUAGE_INFO } from "../../src/notebook/kernel/spec.js";
import { asNotebook, executedNotebook, openNotebook } from "../../src/notebook/notebookFile.js";
import { FIXTURES } from "./support.js";

const code = { cell_type: "code", metadata: {}, source: "1", outputs: [{ old: 1 }] };

it("gives ids to the cells of an older notebook, the same each time and no id twice", () => {
  const cells = [code, { ...code, id: "cell-1" }, { cell_type: "raw", source: ["a\n", "b"] }];
  const read = asNotebook({ nbformat: 4, nbformat_minor: 2, metadata: {}, cells });
  expect(read.cells.map(({ id }) => id)).toEqual(["cell-4", "cell-1", "cell-3"]);
  expect(read.nbformat_minor).toBe(5);
});

it.each([
  [[], "invalid `notebook`"],
  [{ nbformat: 3 }, "`notebook.nbformat`: 3; expected 4"],
  [{ nbformat: 4 }, "`notebook.cells`"],
  [{ nbformat: 4, cells: [code, { ...code, source: 1 }] }, "`notebook.cells[1].source`: 1"],
  [{ nbformat: 4, cells: [{ ...code, cell_type: "heading" }] }, "`notebook.cells[0].cell_type`"],
])("refuses %j", (value, message) => {
  expect(() => asNotebook(value)).toThrow(TypeError);
  expect(() => asNotebook(value)).toThrow(message);
});

it("names a file that is not JSON, and passes on that there is none", async () => {
  await expect(openNotebook(`${FIXTURES}../support.ts`)).rejects.toThrow("is not JSON");
  await expect(openNotebook(`${FIXTURES}absent.ipynb`)).rejects.toMatchObject({ code: "ENOENT" });
});

it("puts the outputs of this run in the place of older ones, and leaves no time behind", () => {
  const timed = { ...code, id: "a", metadata: { execution: { start: "t" }, tags: ["x"] } };
  const notebook = asNotebook({
    nbformat: 4,
    nbformat_minor: 5,
    metadata: { language_info: { version: "9" } },
    cells: [timed, { ...code, id: "b" }],
  });
  const executed = executedNotebook(notebook, [
    [
      { output_type: "stream", name: "stdout", text: "a\nb" },
      {
        output_type: "display_data",
        data: { "text/plain": "c\n", "application/json": "d\n" },
        metadata: {},
      },
    ],
  ]);
  expect(executed.cells[0]).toMatchObject({ metadata: { tags: ["x"] }, execution_count: 1 });
  expect(executed.cells[0]?.metadata).not.toHaveProperty("execution");
  expect(executed.cells[0]?.outputs).toEqual([
    { output_type: "stream", name: "stdout", text: ["a\n", "b"] },
    {
      output_type: "display_data",
      data: { "text/plain": ["c\n"], "application/json": "d\n" },
      metadata: {},
    },
  ]);
  expect(executed.cells[1]).toMatchObject({ execution_count: null, outputs: [] });
  expect(executed.metadata.language_info).toEqual(LANGUAGE_INFO);
});
