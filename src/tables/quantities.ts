import type { BuiltAmounts, ElementsQuantities } from "../batch/element.js";
import { formworkDuration } from "../batch/formworkDuration.js";
import { scaleRecipe } from "../batch/scaleRecipe.js";
import { type SuppliedAmount, suppliedAmounts } from "../batch/supply.js";
import type { KeyValuesBlock, NoteBlock, TableBlock } from "../blocks/block.js";
import { type BuildableConfig, isBuildable } from "../entries/buildable.js";
import type { SiteConfig } from "../entries/studyConfig.js";
import { formatQuantity, type UnitSystem } from "../quantities/format.js";
import { convertFromBase } from "../quantities/units.js";
import { orderedDensity, specifiedMix } from "../study/specifiedMix.js";
import { type FoundRecord, recordOf, supplyTerms } from "../study/studyRecord.js";
import type { CompactedDensity, StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import {
  BLANK,
  depthText,
  ends,
  fixed,
  massText,
  numberColumn,
  plain,
  volumeText,
} from "./cell.js";
import {
  GLOVES,
  type SiteOptions,
  type SiteSheet,
  sheetOfMix,
  siteCautions,
  siteOptionsOf,
} from "./site/siteSheet.js";
import { elementNames, ofElement } from "./studyEntries.js";
import { type ListLine, listOf, type Optional, present } from "./tableOf.js";
import { noMix } from "./trials.js";

/** What has to be brought for the elements, all together, at the best density; the lifts of each by itself. */
export function quantitiesTable({ config, mix }: StudyResult): KeyValuesBlock | NoteBlock {
  if (!mix || !isBuildable(config)) return noMix();
  const { units, elements, cement, site } = config;
  const { record, quantities, density } = mix;
  const volume = (cubicMetres: number) => volumeText(cubicMetres, units);
  const mass = (kilograms: number) => massText(kilograms, units, 4);
  const bag = massText(cement.bagMassKg, units, 2);
  return listOf(say`Quantities: ${elementNames(elements)}`, [
    [say`Rammed volume, net of openings`, volume(quantities.netVolumeM3)],
    [say`Rammed volume to make`, wasteWords(volume(quantities.madeVolumeM3), elements)],
    ...(record.elements.length > 1 ? record.elements : []).map(
      ({ name, amounts }): ListLine => [
        say`${name}, net and to make`,
        say`${volume(amounts.netVolumeM3)}; ${volume(amounts.madeVolumeM3)}`,
      ],
    ),
    [
      say`Dry density, rammed`,
      say`${formatQuantity(density.valueKgM3, "density", units, 4)} (${density.basis})`,
    ],
    ...(record.order ?? [])
      .filter(({ id }) => id !== "cement")
      .map(
        (amount): ListLine => [
          say`${amount.name}, moist mass`,
          joinTexts([
            mass(amount.moistMassKg),
            amount.looseVolumeL === null
              ? undefined
              : say`${volume(amount.looseVolumeL / 1000)} loose`,
            loadsText(amount),
            lossWords(config.materials.find(({ id }) => id === amount.id)),
          ]),
        ],
      ),
    [cement.name, joinTexts([cementText(quantities, cement, bag, mass), lossWords(cement)])],
    [say`Water to add`, mass(quantities.mix.water.toAddKg)],
    [say`Batches`, say`${record.batches ?? BLANK} of the size above`],
    ...record.elements.map(
      ({ name, amounts }): ListLine => [
        ofElement(say`Lifts`, name, record.elements),
        say`${amounts.lifts} of ${depthText(amounts.compactedLiftM, units)} rammed, the last of ${depthText(amounts.lastLiftM, units)}`,
      ],
    ),
    ...formLines(record.elements, site, units),
  ]);
}

/**
 * What to order for the element: each material by mass and loose volume over the range of the blocks' dry
 * densities, cement in bags, truck loads where a truck was given, and the forms.
 *
 * @param options.truck payload and body; without it there are no loads. @param options.forms what is at hand;
 * days are given only with `strippingHours`, which the user enters.
 * @throws RangeError for options out of range. Source: `elementQuantities`, `suppliedAmounts`, `formworkDuration`.
 */
export function siteOrderList(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const site = siteOptionsOf(result, options);
  const { mix } = result;
  const found = recordOf(result, site);
  const total = found?.record.total;
  const blocks = mix &&
    found &&
    total && [
      orderTable(found.config, total, orderedDensity(mix.density, specifiedMix(result)), site),
      formworkTable(found, site),
      siteCautions(["lifting"]),
      GLOVES,
    ];
  return sheetOfMix("order-list", say`Order list`, result, blocks);
}

function orderTable(
  config: BuildableConfig,
  amounts: BuiltAmounts,
  { valueKgM3: best, lowKgM3, highKgM3, basis }: CompactedDensity,
  { truck }: SiteConfig,
): TableBlock {
  const { units, cement } = config;
  const density = (value: number) => formatQuantity(value, "density", units, 4);
  const range = (low: number, high: number) =>
    ends({ low, high }, (kilograms) => massText(kilograms, units));
  const terms = supplyTerms(config, truck);
  const suppliedAt = (densityKgM3: number) =>
    suppliedAmounts(scaleRecipe(amounts.mix, densityKgM3 / best), terms);
  const [light, heavy] = [suppliedAt(lowKgM3), suppliedAt(highKgM3)];
  const row = (most: SuppliedAmount, index: number) => {
    const min = light[index];
    const mass = range(min.moistMassKg, most.moistMassKg);
    if (most.bags !== null) {
      const bags = ends({ low: min.bags ?? 0, high: most.bags }, String);
      return [cement.name, mass, BLANK, truck ? say`${bags} bags` : bags];
    }
    const loose =
      most.looseVolumeL === null ? BLANK : volumeText(most.looseVolumeL / 1000, units, 2);
    return [most.name, mass, loose, most.loads ? `${most.loads.loads}` : BLANK];
  };
  const wastePct = wasteOfAll(config.elements);
  return {
    kind: "table",
    caption: elementNames(config.elements),
    columns: [
      { header: say`Material` },
      numberColumn(say`Moist mass, as delivered`),
      numberColumn(say`Loose, at most`),
      numberColumn(truck ? say`Loads, at most` : say`Bags`),
    ],
    rows: heavy.map(row),
    notes: [
      say`Range: dry density of the rammed mix ${density(lowKgM3)} to ${density(highKgM3)}, best ${density(best)} (${basis}). Bags of ${massText(cement.bagMassKg, units, 2)}, whole.`,
      say`${wastePct === undefined ? say`Amounts include the waste of each element.` : say`Amounts include ${plain(wastePct)} % waste.`} Order soil and aggregate by what the yard measures: a truck's weight holds its water, a loose volume its bulking.`,
      ...lossNote(config, heavy),
    ],
  };
}

/** What is added for the heap and the way, where the study says how much is lost there. */
function lossNote(
  { materials, cement }: BuildableConfig,
  ordered: readonly Pick<SuppliedAmount, "id">[],
): Text[] {
  const used = materials.filter(({ id }) => ordered.some((one) => one.id === id));
  const lost = [...used, cement].flatMap(({ name, lossPct = 0 }) =>
    lossPct > 0 ? [say`${name} ${plain(lossPct)} %`] : [],
  );
  return lost.length === 0
    ? []
    : [say`Added for what is lost in the heap and on the way: ${joinTexts(lost)}.`];
}

function formworkTable(
  { config: { units }, record: { elements, batches } }: FoundRecord,
  site: SiteConfig,
): KeyValuesBlock {
  const depth = (metres: number) => depthText(metres, units, 2);
  return listOf(say`Lifts and forms`, [
    ...elements.map(
      ({ name, amounts }): ListLine => [
        ofElement(say`Lifts`, name, elements),
        say`${amounts.lifts} of ${depth(amounts.compactedLiftM)}, the last of ${depth(amounts.lastLiftM)}`,
      ],
    ),
    [say`Batches`, say`${batches ?? BLANK} in all`],
    ...formLines(elements, site, units),
  ]);
}

/** Truck loads of a material in words; none where the study knows no truck. */
function loadsText({ loads }: SuppliedAmount): Text | undefined {
  return loads ? say`${loads.loads} {0, plural, one {truck load} other {truck loads}}` : undefined;
}

/** What is lost in the heap and on the way, where the study tells it. */
function lossWords({ lossPct = 0 }: { readonly lossPct?: number } = {}): Text | undefined {
  return lossPct > 0
    ? say`${plain(lossPct)} % loss in the heap and on the way included`
    : undefined;
}

/** Cement by mass and in whole bags, with the range that the blocks' densities bring. */
function cementText(
  { mix, cementKg, cementBags }: BuiltAmounts,
  { lossPct = 0 }: BuildableConfig["cement"],
  bag: Text,
  inUnits: (kilograms: number) => Text,
): Text {
  const mass = (kilograms: number) => inUnits(kilograms * (1 + lossPct / 100));
  const best = mass(mix.cement.dryMassKg);
  return cementBags.low === cementBags.high
    ? say`${best}, ${cementBags.low} bags of ${bag}`
    : say`${best} (${mass(cementKg.low)} to ${mass(cementKg.high)} over the blocks' densities), ${cementBags.low} to ${cementBags.high} bags of ${bag}`;
}

/** The waste where it is the same for all elements, percent. */
function wasteOfAll([first, ...others]: BuildableConfig["elements"]): number | undefined {
  return others.every(({ wastePct }) => wastePct === first.wastePct) ? first.wastePct : undefined;
}

function wasteWords(volume: Text, elements: BuildableConfig["elements"]): Text {
  const wastePct = wasteOfAll(elements);
  return wastePct === undefined
    ? say`${volume}, with the waste of each element`
    : say`${volume}, with ${wastePct} % waste`;
}

/** Loose thickness of a lift of each element, area and time of the formwork of all. */
function formLines(
  elements: ElementsQuantities["each"],
  { forms, strippingHours }: SiteConfig,
  units: UnitSystem,
): ListLine[] {
  const formAreaM2 = elements.reduce((sum, { amounts }) => sum + amounts.formAreaM2, 0);
  const depth = (metres: number) => depthText(metres, units, 2);
  const stripping =
    strippingHours === undefined
      ? say`not entered; 24 hours is common practice without a source, and local rules, engineer and curing govern`
      : say`${plain(strippingHours)} hours, as entered; local rules, engineer and curing govern`;
  return present([
    ...elements.map(
      ({ name, amounts: { looseLiftM, compactedOfLoosePct } }): Optional<ListLine> =>
        looseLiftM !== null &&
        compactedOfLoosePct !== null && [
          ofElement(say`Loose lift thickness`, name, elements),
          say`at most ${depth(looseLiftM)}, rammed to about ${fixed(compactedOfLoosePct, 0)} % of it; try it at the first lift`,
        ],
    ),
    [
      say`Form area, all faces`,
      units === "SI"
        ? say`${fixed(formAreaM2, 1)} m², ends and reveals counted`
        : say`${fixed(convertFromBase(formAreaM2, "ft2", "area"), 0)} ft², ends and reveals counted`,
    ],
    forms && strippingHours !== undefined
      ? [say`Formwork time`, formworkDuration({ formAreaM2, ...forms, strippingHours }).message]
      : [say`Strip forms after`, stripping],
  ]);
}
