import { CONCRETE_AGGREGATE_KG_M3, type MixCarbon } from "../batch/carbon.js";
import type { NoteBlock, ReferencesBlock, TableBlock } from "../blocks/block.js";
import { isBuildable } from "../entries/buildable.js";
import { formatQuantity, type UnitSystem } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import type { MixStudy, StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { render } from "../words/render.js";
import { BLANK, ends, fixed, MARKS, plain, quantity, quantityColumn, volumeText } from "./cell.js";
import { present } from "./tableOf.js";
import { noMix } from "./trials.js";

/** Carbon of the element's materials by material, as ranges, each factor with its source and mark. */
export function carbonTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix || !isBuildable(config)) return noMix();
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
        ? say`Haulage, one way: ${joinTexts(ways)}. What has no distance is not hauled in this account.`
        : say`No haul distances were entered, so haulage is not counted.`,
      say`Mixing, ramming, forms, the life of the element and later carbonation are not in it.`,
    ],
  };
}

/**
 * Carbon of a mix by material, low to high, with each factor's source and mark.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const carbon = mixCarbon(batch, { factors: { soil: MATERIAL_CARBON_FACTORS[0], cement: CEMENT_CARBON_FACTORS[0] } });
 * renderAll(siteCarbonTable(carbon, "SI")).rows[1] // => ["Cement", "67.7 to 73.8", "–"]
 */
export function siteCarbonTable(carbon: MixCarbon, units: UnitSystem): TableBlock {
  const range = (value: Interval | null) =>
    ends(value, (kilograms) => quantity(1000 * kilograms, "mass", units));
  const { low, high } = carbon.cementPctOfTotal;
  const factors = [
    ...carbon.lines.flatMap(({ factor }) => (factor ? [factor] : [])),
    ...(carbon.haulFactor ? [carbon.haulFactor] : []),
  ];
  const used = [...new Map(factors.map((factor) => [factor.id, factor])).values()];
  return {
    kind: "table",
    caption: say`Carbon of the mix by material, CO₂e`,
    columns: [
      { header: say`Material` },
      quantityColumn(say`Manufacture`, "mass", units),
      quantityColumn(say`Haulage`, "mass", units),
    ],
    rows: [
      ...carbon.lines.map(({ name, making, haul }) => [name, range(making), range(haul)]),
      [say`Manufacture and haulage together`, range(carbon.total), ""],
    ],
    notes: present([
      say`Cement makes ${fixed(low, 0)} to ${fixed(high, 0)} % of it.`,
      carbon.status !== "ok" && carbon.message,
      ...used.map(
        (factor) =>
          say`${factor.name}: ${factor.low} to ${factor.high} ${factor.unit} (${markedSource(factor)}).`,
      ),
    ]),
  };
}

/** Cement and its carbon beside an all-concrete element of the same volume. */
export function comparisonTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { comparison, carbonComparison } = mix;
  const { units } = config;
  const mass = (kilograms: number) => quantity(1000 * kilograms, "mass", units);
  const range = (value: Interval) => ends(value, mass);
  const { carbonFactor, concreteCement } = comparison;
  return {
    kind: "table",
    caption: say`Cement with cement, for the net volume of the element`,
    columns: [
      { header: say`Element` },
      quantityColumn(say`Cement`, "mass", units),
      quantityColumn(say`CO₂e of that cement`, "mass", units),
      quantityColumn(say`CO₂e of all materials`, "mass", units),
    ],
    rows: [
      [
        say`Earth, as specified`,
        mass(comparison.earthCementKg),
        range(comparison.earthCementCarbonKg),
        carbonComparison ? range(carbonComparison.earth) : BLANK,
      ],
      [
        config.carbon.concreteVolumeM3 === undefined
          ? say`Concrete, same volume`
          : say`Concrete of ${volumeText(config.carbon.concreteVolumeM3, units)}`,
        range(comparison.concreteCementKg),
        range(comparison.concreteCementCarbonKg),
        carbonComparison ? range(carbonComparison.concrete) : BLANK,
      ],
    ],
    notes: present([
      config.carbon.concreteVolumeM3 === undefined
        ? say`The earth element holds ${fixed(comparison.cementPctOfConcrete.low, 0)} to ${fixed(comparison.cementPctOfConcrete.high, 0)} % of the cement of a concrete element of the same volume. A thinner concrete wall would narrow that.`
        : say`The earth element holds ${fixed(comparison.cementPctOfConcrete.low, 0)} to ${fixed(comparison.cementPctOfConcrete.high, 0)} % of the cement of the concrete element.`,
      carbonComparison &&
        say`All materials, earth with concrete: ${fixed(carbonComparison.earthPctOfConcrete.low, 0)} to ${fixed(carbonComparison.earthPctOfConcrete.high, 0)} % of the carbon of making them. Neither side counts haulage, waste, forms or reinforcement; the concrete holds ${formatQuantity(CONCRETE_AGGREGATE_KG_M3.low, "density", config.units, 4)} to ${formatQuantity(CONCRETE_AGGREGATE_KG_M3.high, "density", config.units, 4)} of sand and stone (common practice, no source).`,
      say`Concrete: ${concreteCement.name}, ${concreteCement.low} to ${concreteCement.high} ${concreteCement.unit} (${markedSource(concreteCement)}).`,
      say`Carbon: ${carbonFactor.low} to ${carbonFactor.high} ${carbonFactor.unit} (${markedSource(carbonFactor)}).`,
    ]),
  };
}

/** Where the factors of cement and carbon come from, each source once. */
export function mixReferences({ comparison, carbon }: MixStudy): ReferencesBlock["items"] {
  const hauled = carbon.lines.some(({ haul }) => haul);
  const factors = [
    ...carbon.lines.flatMap(({ factor }) => (factor ? [factor] : [])),
    ...(hauled && carbon.haulFactor ? [carbon.haulFactor] : []),
  ];
  const items = [
    ...[comparison.carbonFactor, ...factors].map(({ name, source, basis }) => ({
      text: say`${source}: carbon of ${name}`,
      mark: MARKS[basis],
    })),
    {
      text: say`${comparison.concreteCement.source}: cement in concrete`,
      mark: MARKS[comparison.concreteCement.basis],
    },
  ];
  return [...new Map(items.map((item) => [render(item.text), item])).values()];
}

/** A source with how it is known, once. */
function markedSource({
  source,
  basis,
}: {
  readonly source: Text;
  readonly basis: "read" | "memory" | "entered";
}): Text {
  // Some sources say of one part that it is from memory: the mark would say it twice.
  return basis === "memory" && render(source).includes("from memory")
    ? source
    : say`${source}; ${MARKS[basis]}`;
}
