import type { ElementAmounts } from "../batch/elementQuantities.js";
import { lorryLoads } from "../batch/lorryLoads.js";
import { formatQuantity } from "../quantities/displayUnits.js";
import type { SiteConfig } from "../study/siteConfig.js";
import type { MixStudy, StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { BLANK, plain } from "./cell.js";
import { noMix } from "./noMix.js";
import { formItems } from "./quantityItems.js";
import type { KeyValuesBlock, TableBlock } from "./reportBlock.js";
import { siteCautions } from "./siteCautions.js";
import { siteOptionsOf } from "./siteOptionsOf.js";
import type { SiteOptions, SiteSheet } from "./siteSheet.js";

/**
 * What to order for the element: each material by mass and loose volume over the range of the blocks' dry
 * densities, cement in bags, lorry loads where a lorry was given, and the forms.
 *
 * @param options.lorry payload and body; without it there are no loads. @param options.forms what is at hand;
 * days are given only with `strippingHours`, which the user enters.
 * @throws RangeError for options out of range. Source: `elementQuantities`, `lorryLoads`, `formDays`.
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
    lorry ? `${lorryLoads({ moistMassKg, looseVolumeL }, lorry).loads}` : BLANK;
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
