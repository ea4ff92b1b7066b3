import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import type { Between } from "./cementComparison.js";
import { checkNotBelow } from "./checkAmount.js";
import { priceFinding } from "./priceFinding.js";
import type { MaterialPriceRange } from "./priceRange.js";
import type { Recipe, RecipeLine } from "./recipeResult.js";

export interface CostRangeLine {
  readonly id: string;
  readonly name: string;
  /** Null where the price is missing or cannot be used. */
  readonly material: Between | null;
  /** Null where no haul was given. */
  readonly haul: Between | null;
}

export interface CostRange {
  readonly status: "ok" | "incomplete";
  readonly message: string;
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
