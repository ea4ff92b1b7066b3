import type { TestProgramme } from "../strength/testProgramme.js";
import { say } from "../words/say.js";
import { plain } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/** The programme as a page to make and crush by; the cells that are empty are filled in by hand. */
export function programmeTable(programme: TestProgramme): TableBlock {
  return {
    kind: "table",
    caption: say`Making and crushing`,
    columns: [
      { header: say`Block` },
      { header: say`Batch` },
      { header: say`Cement`, unit: "%", align: "right" },
      { header: say`Crush at`, unit: "d", align: "right" },
      { header: say`Crushing order`, align: "right" },
      { header: say`Size`, unit: "mm" },
      { header: say`Mass`, unit: "g" },
      { header: say`Load`, unit: "kN" },
      { header: say`Remark` },
    ],
    rows: programme.blocks.map(({ id, batch, cementPct, ageDays, crushingOrder }) => [
      ...[id, batch, plain(cementPct), plain(ageDays), String(crushingOrder)],
      ...["", "", "", ""],
    ]),
    notes: [
      programme.message,
      say`Rows stand in the order of making, drawn at random. A block that breaks stays on the sheet with its reason.`,
    ],
  };
}
