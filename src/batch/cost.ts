import type { Finding } from "../findings/finding.js";
import { say, type Text } from "../words/message.js";
import type { Between } from "./cementComparison.js";
import { checkNotBelow } from "./checkAmount.js";
import { rangeDifference } from "./rangeDifference.js";
import type { Recipe, RecipeLine } from "./recipe.js";

/** A price in any one currency, as a range: low and high are the same where it is firm. */
export interface PriceRange {
  readonly low: number;
  readonly high: number;
  /** Tonne as weighed with its water, cubic metre loose, or bag. Missing: the price cannot be used. */
  readonly per?: "t" | "m3" | "bag";
}

/** How a material gets to the site. */
export interface HaulPrice {
  /** For each tonne as weighed with its water, each loose cubic metre, or each load. */
  readonly low: number;
  readonly high: number;
  readonly per?: "t" | "m3" | "load";
}

/** What one material costs to buy and to bring. */
export interface MaterialPriceRange {
  readonly price?: PriceRange;
  readonly haul?: HaulPrice;
  /** Lost in the heap and on the way, percent of what goes into the mix; default 0. */
  readonly wastePct?: number;
  /** For a price of a bag. */
  readonly bagMassKg?: number;
  /** For haul by load: count them with `lorryLoads`. */
  readonly loads?: number;
}

export interface CostRangeLine {
  readonly id: string;
  readonly name: Text;
  /** Null where the price is missing or cannot be used. */
  readonly material: Between | null;
  /** Null where no haul was given. */
  readonly haul: Between | null;
}

export interface CostRange {
  readonly status: "ok" | "incomplete";
  readonly message: Text;
  readonly lines: readonly CostRangeLine[];
  readonly total: Between;
  readonly findings: readonly Finding[];
}

/**
 * Gives what the materials of a mix cost to buy and to bring, from low to high.
 *
 * Formulas: tonnes = moist mass × (1 + waste/100) / 1000; cubic metres loose likewise; bags are whole.
 * Low adds the low prices, high the high ones: the range if all prices err the same way. Labour, forms and
 * tools are not in it.
 *
 * @param recipe the mix in the amount to make, for example `elementQuantities(…).amounts.mix`.
 * @param prices by material id, the cement under `cement`.
 * @param options.file named in findings; default `study.yaml`.
 * @returns a missing price, a price without unit, by volume without a density or by bag without its mass
 * is a finding and not in the total: status `incomplete`.
 * @throws RangeError for a price or waste below 0, or a range out of order. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 6 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const prices = { soil: { price: { low: 4, high: 6, per: "m3" }, haul: { low: 2, high: 3, per: "t" } }, cement: { price: { low: 5, high: 6, per: "bag" }, bagMassKg: 25 } };
 * costRange(batch, prices).total // => { low: 25.32, high: 31.98 }
 */
export function costRange(
  recipe: Recipe,
  prices: Readonly<Record<string, MaterialPriceRange | undefined>>,
  options: { readonly file?: string } = {},
): CostRange {
  const { file = "study.yaml" } = options;
  const findings: Finding[] = [];
  const parts = [...recipe.materials, recipe.cement].filter(({ dryMassKg }) => dryMassKg > 0);
  const lines = parts.map((part): CostRangeLine => {
    const { id, name } = part;
    const given = prices[id];
    checkNotBelow(`prices.${id}.wastePct`, given?.wastePct ?? 0);
    const cost = (kind: "price" | "haul"): Between | null => {
      const range = given?.[kind];
      if (kind === "haul" && range === undefined) return null;
      if (range !== undefined) checkRange(`prices.${id}.${kind}`, range);
      const amount = range?.per === undefined ? null : amountOf(part, given!, range.per);
      if (amount === null) {
        findings.push(priceFinding({ id, name, kind, range, file }));
        return null;
      }
      return { low: range!.low * amount, high: range!.high * amount };
    };
    return { id, name, material: cost("price"), haul: cost("haul") };
  });
  const total = (end: "low" | "high") =>
    lines.reduce((sum, line) => sum + (line.material?.[end] ?? 0) + (line.haul?.[end] ?? 0), 0);
  return {
    status: findings.length === 0 ? "ok" : "incomplete",
    message:
      findings.length === 0
        ? say`Materials and their haul, waste included; labour and forms are not in it.`
        : say`Not whole: ${findings.length} prices are missing or cannot be used.`,
    lines,
    total: { low: total("low"), high: total("high") },
    findings,
  };
}

function checkRange(name: string, { low, high }: Between): void {
  checkNotBelow(`${name}.low`, low);
  if (!(Number.isFinite(high) && high >= low)) {
    throw new RangeError(`invalid \`${name}.high\`: ${high}; expected at least ${low}`);
  }
}

/** How many units are paid for, or null where that is not known. */
function amountOf(
  part: RecipeLine,
  { wastePct = 0, bagMassKg, loads }: MaterialPriceRange,
  per: "t" | "m3" | "bag" | "load",
): number | null {
  const more = 1 + wastePct / 100;
  if (per === "t") return (part.moistMassKg * more) / 1000;
  if (per === "m3") return part.looseVolumeL === null ? null : (part.looseVolumeL * more) / 1000;
  if (per === "load") return loads ?? null;
  if (bagMassKg === undefined || !(bagMassKg > 0)) return null;
  return Math.ceil((part.dryMassKg * more) / bagMassKg - 1e-9);
}

export interface MixSaving {
  readonly status: "ok" | "incomplete";
  readonly message: Text;
  /** Cost of the other mix less that of this one: below zero where this one costs more. */
  readonly saved: Between | null;
  readonly savedCementKg: number;
}

/**
 * Gives what a mix saves against another one of the same element, at the same prices.
 *
 * Both mixes are bought at the same prices, so the range is not the difference of two ranges: a material
 * that both use alike adds no doubt. Formula: Σ over materials of price × (amount in other − amount in
 * this); the low end takes for each material the price that makes the saving least.
 *
 * @param of.mix, @param of.other both in the amount to make for the element, each with its own density.
 * @returns null and `incomplete` where a price is missing: a part of a saving says nothing.
 * @throws RangeError as `costRange` does. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const at = (cementPct) => recipe({ materials, cementPct, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const prices = { soil: { price: { low: 0, high: 5, per: "t" } }, cement: { price: { low: 150, high: 200, per: "t" } } };
 * mixSaving({ mix: at(6), other: at(8), prices }).saved // => { low: 3, high: 4 }
 */
export function mixSaving(of: {
  readonly mix: Recipe;
  readonly other: Recipe;
  readonly prices: Readonly<Record<string, MaterialPriceRange | undefined>>;
  /** Where the other mix comes in other counts of loads; default `prices`. */
  readonly otherPrices?: Readonly<Record<string, MaterialPriceRange | undefined>>;
  /** Named in findings; default `study.yaml`. */
  readonly file?: string;
}): MixSaving {
  const mix = costRange(of.mix, of.prices, { file: of.file });
  const other = costRange(of.other, of.otherPrices ?? of.prices, { file: of.file });
  const savedCementKg = of.other.cement.dryMassKg - of.mix.cement.dryMassKg;
  if (mix.status !== "ok" || other.status !== "ok") {
    const { message } = mix.status === "ok" ? other : mix;
    return { status: "incomplete", message, saved: null, savedCementKg };
  }
  const account = ({ lines }: CostRange) =>
    lines.map(({ id, material, haul }) => ({ id, parts: [material, haul] }));
  const saved = rangeDifference(account(mix), account(other));
  const words =
    saved.low >= 0
      ? say`This mix costs less at all prices given.`
      : saved.high <= 0
        ? say`This mix costs more at all prices given.`
        : say`Which mix costs less depends on the prices within their ranges.`;
  return { status: "ok", message: words, saved, savedCementKg };
}

/** Says why a price cannot be used: none, none with a unit, or one whose amount is not known. */
export function priceFinding(of: {
  readonly id: string;
  readonly name: Text;
  readonly kind: "price" | "haul";
  readonly range: PriceRange | HaulPrice | undefined;
  readonly file: string;
}): Finding {
  const { id, name, kind, range, file } = of;
  const place = {
    severity: "warning" as const,
    file,
    column: `${id === "cement" ? "cement" : `materials.${id}`}.${kind}`,
  };
  if (range === undefined) {
    return {
      ...place,
      code: "price-missing",
      message: say`${name} has no price, so it is not in the total.`,
      expected: say`a price with its unit, 0 where it costs nothing`,
      remedy: say`Add the price to the study.`,
    };
  }
  const value = range.low === range.high ? `${range.low}` : say`${range.low} to ${range.high}`;
  if (range.per === undefined) {
    return {
      ...place,
      code: "price-without-unit",
      value,
      message: say`${name}: the ${kind} has no unit, so nobody knows what it is for.`,
      expected: say`per t, per m3, per bag, or per load for haul`,
      remedy: say`Write the unit beside the ${kind}.`,
    };
  }
  const missing = {
    t: say`the mass`,
    m3: say`a loose bulk density`,
    bag: say`the mass of a bag`,
    load: say`what a lorry takes`,
  }[range.per];
  return {
    ...place,
    code: "price-without-amount",
    value: say`${value} per ${range.per}`,
    message: say`${name}: the ${kind} is per ${range.per}, but ${missing} is missing.`,
    expected: missing,
    remedy: say`Give ${missing}, or a ${kind} per tonne.`,
  };
}
