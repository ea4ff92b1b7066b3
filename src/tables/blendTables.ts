import type { BlendResult } from "../blend/blendMaterials.js";
import type { MaterialConfig } from "../study/studyConfig.js";
import { phrase, say, sayOf } from "../words/say.js";
import { fixed, numberColumn, plain } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

const BOUND_WORDS = {
  "-1": phrase`held by its least share`,
  "0": "free",
  "1": phrase`held by its largest share`,
};

/** The shares of the blend, and which of them a limit of the user holds. */
export function blendSharesTable(
  blend: BlendResult,
  materials: readonly MaterialConfig[],
): TableBlock {
  return {
    kind: "table",
    caption: say`Shares of the blend nearest to the target`,
    columns: [
      { header: say`Material` },
      numberColumn(say`Share of dry mass`, "%"),
      numberColumn(say`Allowed`, "%"),
      { header: say`Limit` },
    ],
    rows: blend.shares.map(({ id, sharePct, bound }) => {
      const material = materials.find((entry) => entry.id === id);
      return [
        material?.name ?? id,
        fixed(sharePct, 1),
        material ? say`${plain(material.minSharePct)} to ${plain(material.maxSharePct)}` : "",
        sharePct === 0 ? say`not used` : sayOf(BOUND_WORDS[`${bound}`]),
      ];
    }),
    notes: [
      say`Percent of the dry mass of soil and aggregate, cement excluded.`,
      say`Root mean square difference from the target: ${fixed(blend.rmsDifferencePct, 2)} points; largest: ${fixed(blend.worst.differencePct, 1)} points at ${plain(blend.worst.sizeMm)} mm.`,
      ...(blend.unique
        ? []
        : [say`Other shares would fit equally well: two materials are alike at these sizes.`]),
    ],
  };
}

/** The blend against its target, size by size. */
export function blendFitTable(blend: BlendResult): TableBlock {
  return {
    kind: "table",
    caption: say`The blend against its target`,
    columns: [
      numberColumn(say`Size`, "mm"),
      numberColumn(say`Target`, "%"),
      numberColumn(say`Blend`, "%"),
      numberColumn(say`Difference`, say`points`),
    ],
    rows: blend.points.map(({ sizeMm, targetPct, blendPct, differencePct }) => [
      plain(sizeMm),
      fixed(targetPct, 1),
      fixed(blendPct, 1),
      fixed(differencePct, 1),
    ]),
  };
}
