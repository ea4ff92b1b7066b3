import { type ElementAmounts, elementQuantities } from "../batch/elementQuantities.js";
import { formDays } from "../batch/formDays.js";
import { lorryLoads } from "../batch/lorryLoads.js";
import { formatQuantity } from "../quantities/displayUnits.js";
import type { MixStudy, StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { BLANK, fixed, plain } from "./cell.js";
import { noMix } from "./noMix.js";
import type { KeyValuesBlock, TableBlock } from "./reportBlock.js";
import { siteCautions } from "./siteCautions.js";
import type { SiteOptions, SiteSheet } from "./siteSheet.js";

const SQUARE_FOOT_M2 = 0.3048 ** 2;

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
  const { mix, config } = result;
  if (!mix) return { ...sheet, blocks: [noMix()] };
  const density = densityRange(result, mix.density.valueKgM3);
  const { amounts } = elementQuantities(
    { kind: "wall", ...config.element },
    { recipe: mix.recipe, density, bagMassKg: config.cement.bagMassKg },
  );
  if (!amounts) return { ...sheet, blocks: [noMix()] };
  return {
    ...sheet,
    blocks: [
      orderTable(result, mix, amounts, density, options),
      formsTable(result, amounts, options),
      {
        kind: "note",
        tone: "note",
        text: say`Amounts hold ${plain(config.element.wastePct)} % waste. Order soil and aggregate by what the yard measures: a lorry's weight holds its water, a loose cubic metre its bulking.`,
      },
      siteCautions(["licensed-practice", "lifting"]),
    ],
  };
}

type Density = { readonly best: number; readonly low: number; readonly high: number };

/** From the lightest to the heaviest block that the fit used; one value where none was weighed. */
function densityRange({ strength }: StudyResult, best: number): Density {
  const used = new Set(strength.fit.points.map(({ id }) => id));
  const weighed = strength.specimens.flatMap(({ id, dryDensityKgM3 }) =>
    used.has(id) && dryDensityKgM3 !== undefined ? [dryDensityKgM3] : [],
  );
  return { best, low: Math.min(best, ...weighed), high: Math.max(best, ...weighed) };
}

function orderTable(
  { config }: StudyResult,
  mix: MixStudy,
  amounts: ElementAmounts,
  density: Density,
  { lorry }: SiteOptions,
): TableBlock {
  const { units, cement } = config;
  const mass = (kilograms: number) => formatQuantity(1000 * kilograms, "mass", units, 3);
  const range = (low: number, high: number) =>
    low === high ? mass(low) : say`${mass(low)} to ${mass(high)}`;
  const [thin, heavy] = [density.low, density.high].map((value) => value / density.best);
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
      say`Range: dry density of the rammed mix ${formatQuantity(density.low, "density", units, 4)} to ${formatQuantity(density.high, "density", units, 4)}, best ${formatQuantity(density.best, "density", units, 4)} (${mix.density.basis}). Bags of ${formatQuantity(1000 * cement.bagMassKg, "mass", units, 2)}, whole.`,
    ],
  };
}

function formsTable(
  { config }: StudyResult,
  amounts: ElementAmounts,
  { forms, strippingHours }: SiteOptions,
): KeyValuesBlock {
  const { units } = config;
  const area = (squareMetres: number) =>
    units === "SI"
      ? `${fixed(squareMetres, 1)} m²`
      : `${fixed(squareMetres / SQUARE_FOOT_M2, 0)} ft²`;
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", units, 2);
  const days =
    forms && strippingHours !== undefined
      ? formDays({ formAreaM2: amounts.formAreaM2, ...forms, strippingHours })
      : undefined;
  return {
    kind: "keyValues",
    caption: say`Lifts and forms`,
    items: [
      {
        label: say`Lifts`,
        value: say`${amounts.lifts} of ${depth(amounts.compactedLiftM)}, the last of ${depth(amounts.lastLiftM)}`,
      },
      ...(amounts.looseLiftM === null || amounts.compactedOfLoosePct === null
        ? []
        : [
            {
              label: say`Spread loose`,
              value: say`at most ${depth(amounts.looseLiftM)}; try it at the first lift`,
            },
          ]),
      { label: say`Batches`, value: say`${Math.ceil(amounts.batches)} in all` },
      {
        label: say`Form area, all faces`,
        value: say`${area(amounts.formAreaM2)}, ends and reveals counted`,
      },
      {
        label: say`Days of forms`,
        value: days?.message ?? say`enter the forms and a stripping time`,
      },
    ],
  };
}
