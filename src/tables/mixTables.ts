import type { RecipeLine } from "../batch/recipeResult.js";
import { formatQuantity, type UnitSystem } from "../quantities/displayUnits.js";
import type { StudyResult } from "../study/studyResult.js";
import { BLANK, digits, fixed, numberColumn, quantity, quantityColumn } from "./cell.js";
import type { KeyValuesBlock, NoteBlock, TableBlock } from "./reportBlock.js";

/** What stands in the place of a table about the mix where the tests do not give one. */
export const NO_MIX: NoteBlock = {
  kind: "note",
  tone: "warning",
  text: "The tests do not give a mix: see the findings.",
};

/** Litres in SI, cubic feet in US customary units: what a crew measures with. */
function looseVolume(litres: number | null, units: UnitSystem): string {
  if (litres === null) return BLANK;
  return digits(units === "SI" ? litres : litres / 28.316846592, 3);
}

/** One batch: by dry mass, by mass as shovelled, by loose volume, and in whole parts. */
export function recipeTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return NO_MIX;
  const { units } = config;
  const { recipe, parts } = mix;
  const partsOf = new Map(
    [...parts.materials, ...(parts.cement ? [parts.cement] : [])].map((line) => [line.id, line]),
  );
  const mass = (kilograms: number) => quantity(1000 * kilograms, "mass", units);
  const row = (line: RecipeLine, share: string) => [
    line.name,
    share,
    mass(line.dryMassKg),
    mass(line.moistMassKg),
    looseVolume(line.looseVolumeL, units),
    digits(line.partsToCement ?? undefined, 3),
    String(partsOf.get(line.id)?.parts ?? BLANK),
  ];
  const { water } = recipe;
  return {
    kind: "table",
    caption: `One batch of ${formatQuantity(1000 * recipe.dryMassKg, "mass", units)} dry soil and aggregate`,
    columns: [
      { header: "Material" },
      numberColumn("Share of dry mass", "%"),
      quantityColumn("Dry", "mass", units),
      quantityColumn("As shovelled", "mass", units),
      numberColumn("Loose", units === "SI" ? "L" : "ft³"),
      numberColumn("Volumes to one of cement"),
      numberColumn("Whole parts by volume"),
    ],
    rows: [
      ...recipe.materials.map((line) => row(line, fixed(line.sharePct, 1))),
      row(recipe.cement, `${fixed(recipe.cementPct, 1)} on top`),
      [
        "Water to add",
        BLANK,
        BLANK,
        mass(water.toAddKg),
        looseVolume(water.toAddKg, units),
        BLANK,
        BLANK,
      ],
    ],
    notes: [
      `Shares are percent of the dry mass of soil and aggregate; cement comes on top of 100. Cement is ${fixed(recipe.cementOfAllPct, 1)} % of all dry mass and ${fixed(recipe.cementByVolumePct ?? undefined, 1)} % of the loose volumes.`,
      `Water for ${fixed(recipe.targetMoisturePct, 1)} % of the dry mass of all solids, the optimum of the compaction test; the damp materials bring ${mass(water.inMaterialsKg)} of it.`,
      `Whole parts: ${parts.message}${parts.largestChangePct === null ? "" : ` Rounding changes a share of the whole by at most ${fixed(parts.largestChangePct, 1)} points.`}`,
    ],
  };
}

/** What the element needs. */
export function quantitiesTable({ config, mix }: StudyResult): KeyValuesBlock | NoteBlock {
  if (!mix) return NO_MIX;
  const { units, element, cement } = config;
  const { quantities, density } = mix;
  const volume = (cubicMetres: number) => formatQuantity(1e6 * cubicMetres, "volume", units);
  const mass = (kilograms: number) => formatQuantity(1000 * kilograms, "mass", units, 4);
  const length = (metres: number) => formatQuantity(1000 * metres, "length", units);
  return {
    kind: "keyValues",
    caption: `Quantities: ${element.name}`,
    items: [
      { label: "Rammed volume, net of openings", value: volume(quantities.netVolumeM3) },
      {
        label: "Rammed volume to make",
        value: `${volume(quantities.madeVolumeM3)}, with ${element.wastePct} % waste`,
      },
      {
        label: "Dry density, rammed",
        value: `${formatQuantity(density.valueKgM3, "density", units, 4)} (${density.basis})`,
      },
      ...quantities.mix.materials.map(({ name, moistMassKg, looseVolumeL }) => ({
        label: `${name}, as shovelled`,
        value: `${mass(moistMassKg)}${looseVolumeL === null ? "" : `, ${volume(looseVolumeL / 1000)} loose`}`,
      })),
      {
        label: cement.name,
        value: `${mass(quantities.cementKg)}, ${quantities.cementBags} bags of ${mass(cement.bagMassKg)}`,
      },
      { label: "Water to add", value: mass(quantities.mix.water.toAddKg) },
      { label: "Batches", value: `${Math.ceil(quantities.batches)} of the size above` },
      {
        label: "Lifts",
        value: `${quantities.lifts} of ${length(element.compactedLiftM)} rammed, the last of ${length(quantities.lastLiftM)}`,
      },
    ],
  };
}

/** What the materials cost, or that no price was entered. */
export function costTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return NO_MIX;
  const { cost } = mix;
  if (!cost) return { kind: "note", tone: "note", text: "No prices were entered." };
  return {
    kind: "table",
    caption: "Cost of the materials for the element",
    columns: [
      { header: "Material" },
      { header: "Price, as entered" },
      numberColumn("Cost", config.currency),
    ],
    rows: [
      ...cost.lines.map(({ name, price, cost: amount }) => [
        name,
        price ? `${digits(price.amount, 3)} per ${price.per === "t" ? "t" : "m³"}` : BLANK,
        fixed(amount ?? undefined, 0),
      ]),
      ["Total", "", fixed(cost.total, 0)],
    ],
    notes: [`${cost.message} Labour, transport, forms and whole bags are not in it.`],
  };
}

/** Cement and its carbon beside an all-concrete element of the same volume. */
export function comparisonTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return NO_MIX;
  const { comparison } = mix;
  const { units } = config;
  const mass = (kilograms: number) => quantity(1000 * kilograms, "mass", units);
  const range = ({ low, high }: { low: number; high: number }) => `${mass(low)} to ${mass(high)}`;
  const { carbonFactor, concreteCement } = comparison;
  return {
    kind: "table",
    caption: "Cement with cement, for the net volume of the element",
    columns: [
      { header: "Element" },
      quantityColumn("Cement", "mass", units),
      quantityColumn("CO₂e of that cement", "mass", units),
    ],
    rows: [
      [
        "Earth, as specified",
        mass(comparison.earthCementKg),
        range(comparison.earthCementCarbonKg),
      ],
      [
        "Concrete, same volume",
        range(comparison.concreteCementKg),
        range(comparison.concreteCementCarbonKg),
      ],
    ],
    notes: [
      comparison.statement,
      `Concrete: ${concreteCement.name}, ${concreteCement.low} to ${concreteCement.high} ${concreteCement.unit} (${concreteCement.source}).`,
      `Carbon: ${carbonFactor.low} to ${carbonFactor.high} ${carbonFactor.unit} (${carbonFactor.source}; ${carbonFactor.basis === "read" ? "read" : "from memory"}).`,
    ],
  };
}
