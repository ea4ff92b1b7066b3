import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { recogniseSheet } from "../../src/lab/recogniseSheet.js";
import { readGrid } from "../../src/lab/sheet/grid.js";
import { render } from "../../src/words/render.js";
import { EXAMPLES } from "../support/studyCopy.js";

const rows = (...lines: string[]) => ({
  file: "s.csv",
  rows: lines.map((line) => line.split(",")),
});

describe("the kind of a sheet", () => {
  it("is that of its name, for every sheet of the examples", async () => {
    const kindOf: Readonly<Record<string, string>> = { blocks: "specimens", trials: "looks" };
    let count = 0;
    for (const study of ["class-day", "reading-room", "bus-shelter"]) {
      for (const file of readdirSync(join(EXAMPLES, study, "sheets"))) {
        const bytes = readFileSync(join(EXAMPLES, study, "sheets", file));
        const { grid } = await readGrid(file, bytes);
        const word =
          /sieve|hydrometer|pipette|jar|limits|compaction|envelope|blocks|trials/.exec(file)?.[0] ??
          "";
        expect([file, grid && recogniseSheet(grid).kind]).toEqual([file, kindOf[word] ?? word]);
        count += 1;
      }
    }
    expect(count).toBeGreaterThan(15);
  });

  it.each<[string, string[]]>([
    ["sieve", ["sieve (mm),passing (%)"]],
    ["sieve", ["dry mass (g),900", "sieve,cumulative retained (g)"]],
    ["sieve", ["retained (g),sieve (mm)"]],
    ["envelope", ["sieve (mm),low (%),high (%)"]],
    ["hydrometer", ["time (min),reading,control,temperature (C)"]],
    ["pipette", ["time (min),depth (mm),temperature (C),solids (g)"]],
    ["jar", ["layer,time (min),top (mm)"]],
    ["limits", ["test,blows,water content (%)"]],
    ["limits", ["# of the laboratory", "non-plastic,NP"]],
    ["compaction", ["water content (%),mould + moist soil (g)"]],
    ["specimens", ["block,cement (%),age (d),strength (psi)"]],
    ["looks", ["trial,mix"]],
  ])("%s from %j", (kind, lines) => {
    expect(recogniseSheet(rows(...lines)).kind).toBe(kind);
  });

  it("is told with the row and the cells that told it", () => {
    expect(recogniseSheet(rows("dry mass (g),900", "", "sieve (mm),retained (g),who"))).toEqual({
      kind: "sieve",
      row: 3,
      by: ["sieve (mm)", "retained (g)"],
      findings: [],
    });
  });

  it("is not guessed: what is lacking is named", () => {
    const { kind, findings } = recogniseSheet(rows("time (min),reading,note", "1,20,"));
    expect(kind).toBeUndefined();
    expect(findings.map(({ code, row }) => [code, row])).toEqual([["wrong-header", 1]]);
    expect(render(findings[0].message)).toBe(
      "This looks like a hydrometer sheet, but it lacks “temperature (C)”.",
    );
  });

  it("is not guessed: what was looked for is listed", () => {
    const { kind, findings } = recogniseSheet(rows("mesh,weight", "4,20"));
    expect(kind).toBeUndefined();
    expect(findings[0].code).toBe("unknown-sheet");
    const looked = render(findings[0].expected);
    for (const title of ["sieve", "hydrometer", "pipette", "jar", "limits", "block"]) {
      expect(looked).toContain(`${title} sheet: `);
    }
  });

  it("is asked where two kinds fit as well", () => {
    const both = rows("sieve (mm),passing (%),low (%),high (%)", "2,50,40,60");
    expect(recogniseSheet(both).kind).toBe("envelope");
    const two = rows("test,block,water content (%),age (d)");
    expect(recogniseSheet(two).findings.map(({ code }) => code)).toEqual(["two-kinds-of-sheet"]);
  });
});
