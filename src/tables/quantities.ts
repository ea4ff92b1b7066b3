import type { ElementAmounts } from "../batch/element.js";
import { formworkDuration } from "../batch/formworkDuration.js";
import { truckLoads } from "../batch/truckLoads.js";
import type { KeyValuesBlock, NoteBlock, TableBlock } from "../blocks/block.js";
import type { SiteConfig } from "../entries/site.js";
import { formatQuantity, type UnitSystem } from "../quantities/format.js";
import type { MixStudy, StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { BLANK, fixed, plain } from "./cell.js";
import { noMix } from "./noMix.js";
import { type SiteOptions, type SiteSheet, siteCautions, siteOptionsOf } from "./site/siteSheet.js";

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
        value: say`${formatQuantity(density.valueKgM3, "density", units, 4)} (${density.basis})`,
      },
      ...quantities.mix.materials.map(({ name, moistMassKg, looseVolumeL }) => ({
        label: say`${name}, as shovelled`,
        value: joinTexts([
          mass(moistMassKg),
          ...(looseVolumeL === null ? [] : [say`${volume(looseVolumeL / 1000)} loose`]),
          ...loadsText({ moistMassKg, looseVolumeL }, site),
        ]),
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

/**
 * What to order for the element: each material by mass and loose volume over the range of the blocks' dry
 * densities, cement in bags, lorry loads where a lorry was given, and the forms.
 *
 * @param options.lorry payload and body; without it there are no loads. @param options.forms what is at hand;
 * days are given only with `strippingHours`, which the user enters.
 * @throws RangeError for options out of range. Source: `elementQuantities`, `truckLoads`, `formworkDuration`.
 */
export function siteOrderList(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const sheet = { name: "order-list", title: say`Order list` } as const;
  const { mix } = result;
  if (!mix) return { ...sheet, blocks: [noMix()] };
  const site = siteOptionsOf(result, options);
  return {
    ...sheet,
    blocks: [
      orderTable(result, mix, site),
      formsTable(result, mix.quantities, site),
      siteCautions(["lifting"]),
    ],
  };
}

function orderTable({ config }: StudyResult, mix: MixStudy, { lorry }: SiteConfig): TableBlock {
  const { units, cement } = config;
  const { quantities: amounts } = mix;
  const { valueKgM3: best, lowKgM3, highKgM3, basis } = mix.density;
  const density = (value: number) => formatQuantity(value, "density", units, 4);
  const mass = (kilograms: number) => formatQuantity(1000 * kilograms, "mass", units, 3);
  const range = (low: number, high: number) =>
    low === high ? mass(low) : say`${mass(low)} to ${mass(high)}`;
  const [thin, heavy] = [lowKgM3, highKgM3].map((value) => value / best);
  const loads = (moistMassKg: number, looseVolumeL: number | null) =>
    lorry ? `${truckLoads({ moistMassKg, looseVolumeL }, lorry).loads}` : BLANK;
  const { low, high } = amounts.cementBags;
  const heavyOf = (litres: number | null) => (litres === null ? null : litres * heavy);
  const bags = low === high ? `${low}` : say`${low} to ${high}`;
  return {
    kind: "table",
    caption: config.element.name,
    columns: [
      { header: say`Material` },
      { header: say`Mass, as delivered`, align: "right" },
      { header: say`Loose, at most`, align: "right" },
      { header: lorry ? say`Loads, at most` : say`Bags`, align: "right" },
    ],
    rows: [
      ...amounts.mix.materials
        .filter(({ dryMassKg }) => dryMassKg > 0)
        .map(({ name, moistMassKg, looseVolumeL }) => [
          name,
          range(moistMassKg * thin, moistMassKg * heavy),
          looseVolumeL === null
            ? BLANK
            : formatQuantity(1000 * looseVolumeL * heavy, "volume", units, 2),
          loads(moistMassKg * heavy, heavyOf(looseVolumeL)),
        ]),
      [
        cement.name,
        range(amounts.cementKg.low, amounts.cementKg.high),
        BLANK,
        lorry ? say`${bags} bags` : bags,
      ],
    ],
    notes: [
      say`Range: dry density of the rammed mix ${density(lowKgM3)} to ${density(highKgM3)}, best ${density(best)} (${basis}). Bags of ${formatQuantity(1000 * cement.bagMassKg, "mass", units, 2)}, whole.`,
      say`Amounts hold ${plain(config.element.wastePct)} % waste. Order soil and aggregate by what the yard measures: a lorry's weight holds its water, a loose cubic metre its bulking.`,
    ],
  };
}

function formsTable(
  { config }: StudyResult,
  amounts: ElementAmounts,
  site: SiteConfig,
): KeyValuesBlock {
  const { units } = config;
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", units, 2);
  return {
    kind: "keyValues",
    caption: say`Lifts and forms`,
    items: [
      {
        label: say`Lifts`,
        value: say`${amounts.lifts} of ${depth(amounts.compactedLiftM)}, the last of ${depth(amounts.lastLiftM)}`,
      },
      { label: say`Batches`, value: say`${Math.ceil(amounts.batches)} in all` },
      ...formItems(amounts, site, units),
    ],
  };
}

const SQUARE_FOOT_M2 = 0.3048 ** 2;

/** Lorry loads of a material in words; nothing where the study knows no lorry. */
export function loadsText(
  of: { readonly moistMassKg: number; readonly looseVolumeL: number | null },
  { lorry }: SiteConfig,
): Text[] {
  if (!lorry) return [];
  const { loads } = truckLoads(of, lorry);
  return [loads === 1 ? say`1 lorry load` : say`${loads} lorry loads`];
}

/** Cement by mass and in whole bags, with the range that the blocks' densities bring. */
export function cementText(
  { mix, cementKg, cementBags }: ElementAmounts,
  bag: Text,
  mass: (kilograms: number) => Text,
): Text {
  const best = mass(mix.cement.dryMassKg);
  return cementBags.low === cementBags.high
    ? say`${best}, ${cementBags.low} bags of ${bag}`
    : say`${best} (${mass(cementKg.low)} to ${mass(cementKg.high)} over the blocks' densities), ${cementBags.low} to ${cementBags.high} bags of ${bag}`;
}

/** Loose depth of a lift, area and days of forms. */
export function formItems(
  amounts: ElementAmounts,
  { forms, strippingHours }: SiteConfig,
  units: UnitSystem,
): KeyValuesBlock["items"] {
  const { formAreaM2, looseLiftM, compactedOfLoosePct } = amounts;
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", units, 2);
  const stripping =
    strippingHours === undefined
      ? say`not entered; 24 hours is common practice without a source, and local rules, engineer and curing govern`
      : say`${plain(strippingHours)} hours, as entered; local rules, engineer and curing govern`;
  return [
    ...(looseLiftM === null || compactedOfLoosePct === null
      ? []
      : [
          {
            label: say`A lift spread loose`,
            value: say`at most ${depth(looseLiftM)}, rammed to about ${fixed(compactedOfLoosePct, 0)} % of it; try it at the first lift`,
          },
        ]),
    {
      label: say`Form area, all faces`,
      value:
        units === "SI"
          ? say`${fixed(formAreaM2, 1)} m², ends and reveals counted`
          : say`${fixed(formAreaM2 / SQUARE_FOOT_M2, 0)} ft², ends and reveals counted`,
    },
    forms && strippingHours !== undefined
      ? {
          label: say`Days of forms`,
          value: formworkDuration({ formAreaM2, ...forms, strippingHours }).message,
        }
      : { label: say`Forms off after`, value: stripping },
  ];
}
