import { mkdirSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { expect, it } from "vitest";
import { readPhotographs } from "../../src/study/photographs.js";
import { render } from "../../src/words/render.js";
import { temporaryFolder } from "../support/runCli.js";

/** Head of a PNG of 512 × 256 pixels. */
const PNG = new Uint8Array([
  0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 0, 0, 2, 0,
  0, 0, 1, 0,
]);

it("opens the pictures that a sheet of looks names, and tells each that it cannot", async () => {
  const [folder, elsewhere] = [temporaryFolder(), temporaryFolder()];
  writeFileSync(join(folder, "block.png"), PNG);
  writeFileSync(join(folder, "note.png"), "no picture");
  writeFileSync(join(elsewhere, "block.png"), PNG);
  mkdirSync(join(folder, "pictures"));
  const names = [
    undefined,
    "block.png",
    "note.png",
    "pictures",
    "missing.png",
    join("..", basename(elsewhere), "block.png"),
    join(folder, "block.png"),
    "../not-there-either.png",
  ];
  const looks = names.map((photograph, index) => ({
    id: `B${index}`,
    row: index + 2,
    photograph,
    seenBy: "the class",
    seenOn: "2026-06-12",
  }));
  const trial = { name: "First blend", file: "sheets/looks.csv", looks };
  const { photographs, findings } = await readPhotographs(folder, [trial]);
  expect(photographs.map(({ bytes, ...one }) => ({ ...one, bytes: bytes.length }))).toEqual([
    {
      id: "B1",
      trial: "First blend",
      seenBy: "the class",
      seenOn: "2026-06-12",
      file: "block.png",
      bytes: 24,
      type: "png",
      widthPx: 512,
      heightPx: 256,
      turnDegrees: 0,
    },
  ]);
  expect(findings.map(({ severity, code }) => `${severity} ${code}`)).toEqual(
    names.slice(2).map(() => "warning no-photograph"),
  );
  expect(findings.map(({ file, row, message }) => [file, row, render(message)])).toEqual([
    ["sheets/looks.csv", 4, "This is not a PNG or JPEG picture."],
    ["sheets/looks.csv", 5, "This is not a file."],
    ["sheets/looks.csv", 6, "This file is not there."],
    ["sheets/looks.csv", 7, "This file lies outside the study folder."],
    ["sheets/looks.csv", 8, "This file lies outside the study folder."],
    ["sheets/looks.csv", 9, "This file lies outside the study folder."],
  ]);
});
