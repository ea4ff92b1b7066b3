import type { Between } from "../batch/cementComparison.js";
import type { StudyConfig } from "../study/studyConfig.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { BLANK, fixed, numberColumn, plain } from "./cell.js";
import { noMix } from "./noMix.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

function writtenPrices({ materials, cement }: StudyConfig, id: string): string {
  const owner = id === "cement" ? cement : materials.find((material) => material.id === id);
  const { price, haul, lossPct } = owner ?? {};
  const words = [
    price?.written ?? BLANK,
    ...(haul ? [say`haul ${haul.written}`] : []),
    ...(lossPct ? [say`${plain(lossPct)} % lost`] : []),
  ];
  return words.join(", ");
}

/** What the materials cost, or that no price was entered. */
export function costTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { cost } = mix;
  if (!cost) return { kind: "note", tone: "note", text: say`No prices were entered.` };
  const range = (value: Between | null) => {
    if (value === null) return BLANK;
    const [low, high] = [fixed(value.low, 0), fixed(value.high, 0)];
    return low === high ? low : say`${low} to ${high}`;
  };
  const hauled = cost.lines.some(({ haul }) => haul !== null);
  const sumOf = (part: "material" | "haul"): Between => ({
    low: cost.lines.reduce((sum, line) => sum + (line[part]?.low ?? 0), 0),
    high: cost.lines.reduce((sum, line) => sum + (line[part]?.high ?? 0), 0),
  });
  const bringing = (haul: Between | null) => (hauled ? [range(haul)] : []);
  return {
    kind: "table",
    caption: say`Cost of the materials for the element`,
    columns: [
      { header: say`Material` },
      { header: say`Price, as entered` },
      numberColumn(hauled ? say`To buy` : say`Cost`, config.currency),
      ...(hauled ? [numberColumn(say`To bring`, config.currency)] : []),
    ],
    rows: [
      ...cost.lines.map(({ id, name, material, haul }) => [
        name,
        writtenPrices(config, id),
        range(material),
        ...bringing(haul),
      ]),
      ...(hauled
        ? [
            [say`Total`, "", range(sumOf("material")), range(sumOf("haul"))],
            [say`Bought and brought`, "", "", range(cost.total)],
          ]
        : [[say`Total`, "", range(cost.total)]]),
    ],
    notes: [
      ...(cost.status === "ok" ? [] : [cost.message]),
      ...(cost.total.low === cost.total.high
        ? []
        : [
            say`Low adds all low prices, high all high ones: the range if all prices err the same way.`,
          ]),
      hauled
        ? say`Materials and haul as entered; labour, forms and tools are not in it.`
        : say`Materials only; labour, transport, forms and tools are not in it.`,
    ],
  };
}
