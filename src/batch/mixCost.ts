import type { Finding } from "../findings/finding.js";
import { say, type Text } from "../words/message.js";
import { checkNotBelow } from "./checkAmount.js";
import { priceFinding } from "./cost.js";
import type { Recipe } from "./recipe.js";

/** In any one currency. */
export interface MaterialPrice {
  readonly amount: number;
  /** Tonne, or cubic metre loose. */
  readonly per: "t" | "m3";
}

export interface MixCostLine {
  readonly id: string;
  readonly name: Text;
  readonly price: MaterialPrice | null;
  /** Null without a price, or without the volume that it is for. */
  readonly cost: number | null;
}

export interface MixCost {
  readonly status: "ok" | "incomplete";
  readonly message: Text;
  readonly lines: readonly MixCostLine[];
  /** Of the lines that have a cost. */
  readonly total: number;
  readonly findings: readonly Finding[];
}

/**
 * Gives what the materials of a mix cost, by material.
 *
 * Formula: price per tonne × mass, or price per cubic metre × loose volume. Labour, transport, formwork
 * and whole bags are not in it.
 *
 * @param recipe the mix in the amount to buy, for example `wallQuantities(…).amounts.mix`.
 * @param prices by material id, the cement under `cement`.
 * @param options.tonneOf `moist`, the default: a tonne over the weighbridge holds its water; or `dry`.
 * @param options.file named in findings; default `study.yaml`.
 * @throws RangeError for a price below 0. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 6 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * mixCost(batch, { soil: { amount: 5, per: "m3" }, cement: { amount: 190, per: "t" } }).total // => 19.2
 */
export function mixCost(
  recipe: Recipe,
  prices: Readonly<Record<string, MaterialPrice | undefined>>,
  options: { readonly tonneOf?: "moist" | "dry"; readonly file?: string } = {},
): MixCost {
  const { tonneOf = "moist", file = "study.yaml" } = options;
  const findings: Finding[] = [];
  const parts = [...recipe.materials, recipe.cement].filter(({ dryMassKg }) => dryMassKg > 0);
  const lines = parts.map((part): MixCostLine => {
    const { id, name } = part;
    const price = prices[id] ?? null;
    const column = id === "cement" ? "cement.price" : `materials.${id}.price`;
    if (price === null) {
      findings.push(priceFinding({ id, name, kind: "price", range: undefined, file }));
      return { id, name, price, cost: null };
    }
    checkNotBelow(`prices.${id}.amount`, price.amount);
    if (price.per === "m3") {
      if (part.looseVolumeL === null) {
        findings.push({
          severity: "warning",
          code: "price-without-volume",
          file,
          column,
          value: say`${price.amount} per m3`,
          message: say`${name} is priced by volume, but its loose bulk density is missing.`,
          expected: say`a loose bulk density, or a price per tonne`,
          remedy: say`Measure the loose bulk density.`,
        });
        return { id, name, price, cost: null };
      }
      return { id, name, price, cost: (price.amount * part.looseVolumeL) / 1000 };
    }
    const massKg = tonneOf === "moist" ? part.moistMassKg : part.dryMassKg;
    return { id, name, price, cost: (price.amount * massKg) / 1000 };
  });
  return {
    status: findings.length === 0 ? "ok" : "incomplete",
    message:
      findings.length === 0
        ? say`Materials only, tonnes taken ${tonneOf}.`
        : say`Materials only, without ${findings.length} of ${parts.length} that have no usable price.`,
    lines,
    total: lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    findings,
  };
}
