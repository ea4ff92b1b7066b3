import type { TestProgramme } from "../strength/testProgramme.js";
import { plain } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/** The programme as a page to make and crush by; the cells that are empty are filled in by hand. */
export function programmeTable(programme: TestProgramme): TableBlock {
  return {
    kind: "table",
    caption: "Making and crushing",
    columns: [
      { header: "Block" },
      { header: "Batch" },
      { header: "Cement", unit: "%", align: "right" },
      { header: "Crush at", unit: "d", align: "right" },
      { header: "Crushing order", align: "right" },
      { header: "Size", unit: "mm" },
      { header: "Mass", unit: "g" },
      { header: "Load", unit: "kN" },
      { header: "Remark" },
    ],
    rows: programme.blocks.map(({ id, batch, cementPct, ageDays, crushingOrder }) => [
      ...[id, batch, plain(cementPct), plain(ageDays), String(crushingOrder)],
      ...["", "", "", ""],
    ]),
    notes: [
      programme.message,
      "Rows stand in the order of making, drawn at random. A block that breaks stays on the sheet with its reason.",
    ],
  };
}
