import { type Finding, type FindingPlace, finding, STUDY_FILE } from "../findings/finding.js";
import { checkNotNegative, checkThat } from "../quantities/checkNumber.js";
import type { Interval } from "../quantities/interval.js";
import { say, type Text } from "../words/message.js";
import { accountDifference, accountTotal, bothEnds } from "./account.js";
import type { Recipe } from "./recipe.js";
import { type SuppliedAmount, type SupplyTerms, suppliedAmounts } from "./supply.js";

/** A price in any one currency, as a range: low and high are the same where it is firm. */
export interface PriceRange extends Interval {
  /** Tonne as weighed with its water, cubic metre loose, or bag. Missing: the price cannot be used. */
  readonly per?: "t" | "m3" | "bag";
}

/** What it costs to bring a material to the site. */
export interface HaulPrice extends Interval {
  /** Each tonne as weighed with its water, each loose cubic metre, or each load. */
  readonly per?: "t" | "m3" | "load";
}

/** What one material costs to buy and to bring, and how it comes. */
export interface MaterialPriceRange extends SupplyTerms {
  readonly price?: PriceRange;
  readonly haul?: HaulPrice;
}

export interface CostRangeLine {
  readonly id: string;
  readonly name: Text;
  /** Null where the price is missing or cannot be used. */
  readonly material: Interval | null;
  /** Null where no haul was given. */
  readonly haul: Interval | null;
}

export interface CostRange {
  readonly status: "ok" | "incomplete";
  readonly message: Text;
  readonly lines: readonly CostRangeLine[];
  readonly total: Interval;
  readonly findings: readonly Finding[];
}

/**
 * Gives what the materials of a mix cost to buy and to bring, from low to high.
 *
 * Formulas: tonnes, loose cubic metres, whole bags and loads of `suppliedAmounts`, times the price.
 * Low adds the low prices, high the high ones: the range if all prices err the same way. Labour, forms and
 * tools are not in it.
 *
 * @param recipe the mix in the amount to make, for example `elementQuantities(…).amounts.mix`.
 * @param prices by material id, the cement under `cement`.
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
): CostRange {
  const priced = suppliedAmounts(recipe, prices).map((amount) => {
    const given = prices[amount.id];
    const material = costOf("price", amount, given?.price);
    const haul = given?.haul && costOf("haul", amount, given.haul);
    return { amount, material, haul };
  });
  const lines = priced.map(({ amount: { id, name }, material, haul }): CostRangeLine => {
    return { id, name, material: material.cost, haul: haul?.cost ?? null };
  });
  const findings = priced.flatMap(({ material, haul }) => [
    ...material.findings,
    ...(haul?.findings ?? []),
  ]);
  return {
    status: findings.length === 0 ? "ok" : "incomplete",
    message:
      findings.length === 0
        ? say`Materials and their haul, waste included; labour and forms are not in it.`
        : say`Not the whole cost: ${findings.length}{0, plural, one { price is missing or cannot be used} other { prices are missing or cannot be used}}.`,
    lines,
    total: accountTotal(accountOf(lines)),
    findings,
  };
}

function accountOf(lines: readonly CostRangeLine[]) {
  return lines.map(({ id, material, haul }) => ({ id, parts: [material, haul] }));
}

type Priced = "price" | "haul";

function costOf(
  kind: Priced,
  supplied: SuppliedAmount,
  range: PriceRange | HaulPrice | undefined,
): { readonly cost: Interval | null; readonly findings: readonly Finding[] } {
  const { id, name } = supplied;
  const entry = id === "cement" ? "cement" : `materials.${id}`;
  const place = { file: STUDY_FILE, column: `${entry}.${kind}` };
  if (range === undefined) return { cost: null, findings: [noPrice(name, place)] };
  checkRange(`prices.${id}.${kind}`, range);
  const { low, high, per } = range;
  const value = low === high ? `${low}` : `${low} to ${high}`;
  if (per === undefined) {
    return { cost: null, findings: [noUnit(kind, name, { ...place, value })] };
  }
  const amount = unitsOf(supplied, per);
  if (amount === null) {
    const written = { ...place, value: `${value} per ${per}` };
    return { cost: null, findings: [noAmount(kind, name, per, written)] };
  }
  return { cost: bothEnds((end) => range[end] * amount), findings: [] };
}

function checkRange(name: string, { low, high }: Interval): void {
  checkNotNegative(`${name}.low`, low);
  checkThat(Number.isFinite(high) && high >= low, { [`${name}.high`]: high }, `at least ${low}`);
}

type Per = "t" | "m3" | "bag" | "load";

/** How many units are paid for, or null where that is not known. */
function unitsOf({ moistMassKg, looseVolumeL, bags, loads }: SuppliedAmount, per: Per) {
  switch (per) {
    case "t":
      return moistMassKg / 1000;
    case "m3":
      return looseVolumeL === null ? null : looseVolumeL / 1000;
    case "bag":
      return bags;
    case "load":
      return loads?.loads ?? null;
  }
}

function noPrice(name: Text, place: FindingPlace): Finding {
  return finding(place, "warning", "price-missing", {
    message: say`${name} has no price, so it is not in the total.`,
    expected: say`a price with its unit, 0 where it costs nothing`,
    remedy: say`Add the price to the study.`,
  });
}

function noUnit(kind: Priced, name: Text, place: FindingPlace): Finding {
  return finding(place, "warning", "price-without-unit", {
    message:
      kind === "price"
        ? say`${name}: the price has no unit, so nobody knows what it is for.`
        : say`${name}: the price of haul has no unit, so nobody knows what it is for.`,
    expected: say`per t, per m3, per bag, or per load for haul`,
    remedy: say`Write the unit beside the price.`,
  });
}

/** A tonne needs nothing but the mass, which is always known. */
const NEEDED: Readonly<Record<Per, Text>> = {
  t: say`the mass`,
  m3: say`a loose bulk density`,
  bag: say`the mass of a bag`,
  load: say`what a truck takes`,
};

function noAmount(kind: Priced, name: Text, per: Per, place: FindingPlace): Finding {
  const needed = NEEDED[per];
  return finding(place, "warning", "price-without-amount", {
    message:
      kind === "price"
        ? say`${name}: this price can be used only with ${needed}, which is missing.`
        : say`${name}: this price of haul can be used only with ${needed}, which is missing.`,
    expected: needed,
    remedy: say`Give ${needed}, or a price per tonne.`,
  });
}

export interface MixSaving {
  readonly status: "ok" | "incomplete";
  readonly message: Text;
  /** Cost of the other mix less that of this one: below zero where this one costs more. */
  readonly saved: Interval | null;
  readonly savedCementKg: number;
}

/**
 * Gives what a mix saves against another one of the same element, at the same prices.
 *
 * Both mixes are bought at the same prices, so the range is not the difference of two ranges: a material
 * that both use alike adds no doubt. Formula: Σ over materials of price × (amount in other − amount in
 * this); the low end takes for each material the price that makes the saving least.
 *
 * Both mixes in the amount to make for the element, each with its own density.
 *
 * @returns null and `incomplete` where a price is missing: a part of a saving says nothing.
 * @throws RangeError as `costRange` does. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const at = (cementPct) => recipe({ materials, cementPct, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const prices = { soil: { price: { low: 0, high: 5, per: "t" } }, cement: { price: { low: 150, high: 200, per: "t" } } };
 * mixSaving({ mix: at(6), other: at(8), prices }).saved // => { low: 3, high: 4 }
 */
export function mixSaving(mixes: {
  readonly mix: Recipe;
  readonly other: Recipe;
  readonly prices: Readonly<Record<string, MaterialPriceRange | undefined>>;
}): MixSaving {
  const [mix, other] = [mixes.mix, mixes.other].map((recipe) => costRange(recipe, mixes.prices));
  const savedCementKg = mixes.other.cement.dryMassKg - mixes.mix.cement.dryMassKg;
  if (mix.status !== "ok" || other.status !== "ok") {
    const { message } = mix.status === "ok" ? other : mix;
    return { status: "incomplete", message, saved: null, savedCementKg };
  }
  const saved = accountDifference(accountOf(mix.lines), accountOf(other.lines));
  return { status: "ok", message: savingWords(saved), saved, savedCementKg };
}

function savingWords({ low, high }: Interval): Text {
  if (low >= 0) return say`This mix costs less at all prices given.`;
  if (high <= 0) return say`This mix costs more at all prices given.`;
  return say`Which mix costs less depends on the prices within their ranges.`;
}
