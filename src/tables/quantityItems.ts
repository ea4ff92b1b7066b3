import type { ElementAmounts } from "../batch/elementQuantities.js";
import { formDays } from "../batch/formDays.js";
import { lorryLoads } from "../batch/lorryLoads.js";
import { formatQuantity, type UnitSystem } from "../quantities/displayUnits.js";
import type { SiteConfig } from "../study/siteConfig.js";
import { say } from "../words/say.js";
import { fixed, plain } from "./cell.js";
import type { KeyValuesBlock } from "./reportBlock.js";

const SQUARE_FOOT_M2 = 0.3048 ** 2;

/** Lorry loads of a material in words; nothing where the study knows no lorry. */
export function loadsText(
  of: { readonly moistMassKg: number; readonly looseVolumeL: number | null },
  { lorry }: SiteConfig,
): string[] {
  if (!lorry) return [];
  const { loads } = lorryLoads(of, lorry);
  return [loads === 1 ? say`1 lorry load` : say`${loads} lorry loads`];
}

/** Cement by mass and in whole bags, with the range that the blocks' densities bring. */
export function cementText(
  { mix, cementKg, cementBags }: ElementAmounts,
  bag: string,
  mass: (kilograms: number) => string,
): string {
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
          value: formDays({ formAreaM2, ...forms, strippingHours }).message,
        }
      : { label: say`Forms off after`, value: stripping },
  ];
}
