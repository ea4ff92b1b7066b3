import { formatQuantity } from "../quantities/displayUnits.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { noMix } from "./noMix.js";
import { cementText, formItems, loadsText } from "./quantityItems.js";
import type { KeyValuesBlock, NoteBlock } from "./reportBlock.js";

/** What the element needs. */
export function quantitiesTable({ config, mix }: StudyResult): KeyValuesBlock | NoteBlock {
  if (!mix) return noMix();
  const { units, element, cement, site } = config;
  const { quantities, density } = mix;
  const volume = (cubicMetres: number) => formatQuantity(1e6 * cubicMetres, "volume", units);
  const mass = (kilograms: number) => formatQuantity(1000 * kilograms, "mass", units, 4);
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", units);
  const bag = formatQuantity(1000 * cement.bagMassKg, "mass", units, 2);
  return {
    kind: "keyValues",
    caption: say`Quantities: ${element.name}`,
    items: [
      { label: say`Rammed volume, net of openings`, value: volume(quantities.netVolumeM3) },
      {
        label: say`Rammed volume to make`,
        value: say`${volume(quantities.madeVolumeM3)}, with ${element.wastePct} % waste`,
      },
      {
        label: say`Dry density, rammed`,
        value: `${formatQuantity(density.valueKgM3, "density", units, 4)} (${density.basis})`,
      },
      ...quantities.mix.materials.map(({ name, moistMassKg, looseVolumeL }) => ({
        label: say`${name}, as shovelled`,
        value: [
          mass(moistMassKg),
          ...(looseVolumeL === null ? [] : [say`${volume(looseVolumeL / 1000)} loose`]),
          ...loadsText({ moistMassKg, looseVolumeL }, site),
        ].join(", "),
      })),
      {
        label: cement.name,
        value: cementText(quantities, bag, mass),
      },
      { label: say`Water to add`, value: mass(quantities.mix.water.toAddKg) },
      { label: say`Batches`, value: say`${Math.ceil(quantities.batches)} of the size above` },
      {
        label: say`Lifts`,
        value: say`${quantities.lifts} of ${depth(element.compactedLiftM)} rammed, the last of ${depth(quantities.lastLiftM)}`,
      },
      ...formItems(quantities, site, units),
    ],
  };
}
