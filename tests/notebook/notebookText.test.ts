import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, it } from "vitest";
import { LANGUAGE_INFO } from "../../src/notebook/kernel/spec.js";
import { type NotebookFile, notebookText } from "../../src/notebook/notebookFile.js";

it("a notebook is written with its keys in order and its numbers as Python spells them", () => {
  const cell = { cell_type: "code", id: "a", metadata: {}, source: ["ü\u2009\n"], outputs: [] };
  const values = { b: [0.00012, 0.000012, 1.5e-7, -2e-12, 1e21, 0, -3, Number.NaN], a: undefined };
  const notebook = { nbformat: 4, nbformat_minor: 5, metadata: { values, 10: 1, 9: null } };
  const text = notebookText({ ...notebook, cells: [cell] } as unknown as NotebookFile);
  expect(text.startsWith('{\n "cells": [\n  {\n   "cell_type": "code",\n   "id": "a",')).toBe(true);
  expect(text).toContain('"source": [\n    "ü\u2009\\n"\n   ]');
  expect(text).toContain('"10": 1,\n  "9": null,\n  "values": {\n   "b": [');
  expect(text.match(/-?[\d.]+e[-+]\d+/g)).toEqual(["1.2e-05", "1.5e-07", "-2e-12", "1e+21"]);
  expect(text.endsWith("}\n")).toBe(true);
  expect(JSON.parse(text).cells[0].outputs).toEqual([]);
});

it("the kernel names the compiler that it has", () => {
  const require = createRequire(createRequire(import.meta.url).resolve("tslab/package.json"));
  const path = require.resolve("@tslab/typescript-for-tslab/package.json");
  expect(LANGUAGE_INFO.version).toBe(JSON.parse(readFileSync(path, "utf8")).version);
});
