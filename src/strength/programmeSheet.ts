import type { SheetGrid } from "../lab/sheetGrid.js";
import type { PlannedBlock } from "./planBlocks.js";

const HEADER: readonly string[] = [
  "block",
  "batch",
  "cement (%)",
  "age (d)",
  "crushing order",
  "length (mm)",
  "width (mm)",
  "height (mm)",
  "load (kN)",
  "mass (g)",
  "moisture at making (%)",
  "moisture at test (%)",
  "excluded",
  "remark",
];

/**
 * The programme as a making-and-crushing sheet: its filled form is the block sheet of a study.
 *
 * Rows stand in the order of making; sizes, load, mass and moistures are to be filled in.
 *
 * @param file what the sheet is to be called. Source: own layout.
 *
 * @example
 * const sheet = programmeSheet([{ id: "M1-1", batch: "M1", cementPct: 6, ageDays: 28, crushingOrder: 2 }], "blocks.csv");
 * sheet.rows[2].slice(0, 6) // => ["M1-1", "M1", "6", "28", "2", ""]
 */
export function programmeSheet(blocks: readonly PlannedBlock[], file: string): SheetGrid {
  return {
    file,
    rows: [
      [
        "# Make in the order of the rows. Crush in the order of “crushing order”. Leave no block out: write the reason under “excluded”.",
      ],
      HEADER,
      ...blocks.map(({ id, batch, cementPct, ageDays, crushingOrder }) => {
        const known = [id, batch, String(cementPct), String(ageDays), String(crushingOrder)];
        return [...known, ...HEADER.slice(known.length).map(() => "")];
      }),
    ],
  };
}
