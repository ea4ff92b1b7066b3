import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { plain } from "./cell.js";
import { noMix } from "./noMix.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";
import { siteCarbonTable } from "./siteCarbonTable.js";

/** Carbon of the element's materials by material, as ranges, each factor with its source and mark. */
export function carbonTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const table = siteCarbonTable(mix.carbon, config.units);
  const used = config.materials.filter(({ id }) =>
    mix.recipe.materials.some((line) => line.id === id),
  );
  const ways = [...used, config.cement].flatMap(({ name, haulKm }) =>
    haulKm === undefined ? [] : [say`${name} ${plain(haulKm)} km`],
  );
  return {
    ...table,
    caption: say`Carbon of the materials for the element, CO₂e`,
    notes: [
      ...(table.notes ?? []),
      ways.length > 0
        ? say`Haul one way: ${ways.join(", ")}. What has no distance is not hauled in this account.`
        : say`No haul distances were entered, so haul is not counted.`,
      say`Mixing, ramming, forms, the life of the element and later carbonation are not in it.`,
    ],
  };
}
