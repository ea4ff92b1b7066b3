import type { StudyConfig } from "../study/studyConfig.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { BLANK, fixed, numberColumn } from "./cell.js";
import { noMix } from "./noMix.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

function writtenPrice({ materials, cement }: StudyConfig, id: string): string {
  const owner = id === "cement" ? cement : materials.find((material) => material.id === id);
  return owner?.price?.written ?? BLANK;
}

/** What the materials cost, or that no price was entered. */
export function costTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { cost } = mix;
  if (!cost) return { kind: "note", tone: "note", text: say`No prices were entered.` };
  return {
    kind: "table",
    caption: say`Cost of the materials for the element`,
    columns: [
      { header: say`Material` },
      { header: say`Price, as entered` },
      numberColumn(say`Cost`, config.currency),
    ],
    rows: [
      ...cost.lines.map(({ id, name, cost: amount }) => [
        name,
        writtenPrice(config, id),
        fixed(amount ?? undefined, 0),
      ]),
      [say`Total`, "", fixed(cost.total, 0)],
    ],
    notes: [say`${cost.message} Labour, transport, forms and whole bags are not in it.`],
  };
}
