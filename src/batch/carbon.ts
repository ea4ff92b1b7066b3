import { checkNotNegative, checkPositive } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import type { SourcedRange } from "../quantities/sourcedRange.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { accountDifference, accountTotal, bothEnds } from "./account.js";
import { type Recipe, usedLines } from "./recipe.js";

export interface MixCarbonLine {
  readonly id: string;
  readonly name: Text;
  /** kg CO2e of making; null without a factor. */
  readonly making: Interval | null;
  /** kg CO2e of haul; null without a distance. */
  readonly haul: Interval | null;
  readonly factor: SourcedRange | null;
}

export interface MixCarbon {
  readonly status: "ok" | "incomplete";
  readonly message: Text;
  readonly lines: readonly MixCarbonLine[];
  /** kg CO2e. */
  readonly total: Interval;
  /** Cement in percent of the total, all factors low or all high: the smaller first. */
  readonly cementPctOfTotal: Interval;
  /** Per tonne and kilometre; null where nothing was hauled. */
  readonly haulFactor: SourcedRange | null;
}

interface MixCarbonOptions {
  /** By material id, the cement under `cement`. */
  readonly factors: Readonly<Record<string, SourcedRange | undefined>>;
  /** One way, by material id. */
  readonly haulKm?: Readonly<Record<string, number | undefined>>;
  /** kg CO2e per tonne and kilometre; needed where a distance is given. */
  readonly haulFactor?: SourcedRange;
}

/**
 * Gives the carbon of a mix by material, from low to high: making by dry mass, haul by mass as carried.
 *
 * Formulas: making = dry mass × factor; haul = moist mass / 1000 × km × factor. Ramming, mixing, forms,
 * the wall's life and later carbonation are not in it.
 *
 * @returns status `incomplete` where a material has no factor; it is then not in the total.
 * @throws RangeError for a factor below 0 or out of order or a distance below 0; TypeError for a distance
 * without `haulFactor`. Source: with each factor.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const carbon = mixCarbon(batch, { factors: { soil: MATERIAL_CARBON_FACTORS[0], cement: CEMENT_CARBON_FACTORS[0] } });
 * carbon.total // => { low: 67.68, high: 97.76 }
 * carbon.cementPctOfTotal // => { low: 75.45, high: 100 }
 */
export function mixCarbon(recipe: Recipe, options: MixCarbonOptions): MixCarbon {
  const { factors, haulKm = {}, haulFactor } = options;
  const lines = usedLines(recipe).map(({ id, name, dryMassKg, moistMassKg }): MixCarbonLine => {
    const factor = factors[id] ?? null;
    const making = factor && timesFactor(dryMassKg, factor);
    const km = haulKm[id];
    if (km === undefined) return { id, name, making, haul: null, factor };
    checkNotNegative(`haulKm.${id}`, km);
    if (haulFactor === undefined) {
      throw new TypeError("invalid `haulFactor`: undefined; expected a factor for the distances");
    }
    const haul = timesFactor((moistMassKg / 1000) * km, haulFactor);
    return { id, name, making, haul, factor };
  });
  const account = accountOf(lines);
  const total = accountTotal(account);
  const cement = accountTotal(account.filter(({ id }) => id === "cement"));
  const pct = bothEnds((end) => (total[end] > 0 ? (100 * cement[end]) / total[end] : 0));
  const without = lines.filter(({ making }) => making === null);
  return {
    status: without.length === 0 ? "ok" : "incomplete",
    message:
      without.length === 0
        ? say`${formatFixed(total.low, 0)} to ${formatFixed(total.high, 0)} kg CO2e for making and haul of the materials.`
        : say`No factor for ${joinTexts(without.map(({ name }) => name))}: not in the total.`,
    lines,
    total,
    haulFactor: lines.some(({ haul }) => haul !== null) ? haulFactor! : null,
    cementPctOfTotal: {
      low: Math.min(pct.low, pct.high),
      high: Math.max(pct.low, pct.high),
    },
  };
}

function timesFactor(amount: number, { id, low, high }: SourcedRange): Interval {
  if (!(low >= 0 && low <= high && Number.isFinite(high))) {
    throw new RangeError(
      `invalid range \`${id}\`: ${low} to ${high}; expected 0 or above, low first`,
    );
  }
  return { low: amount * low, high: amount * high };
}

function accountOf(lines: readonly MixCarbonLine[]) {
  return lines.map(({ id, making, haul }) => ({ id, parts: [making, haul] }));
}

/**
 * Gives what a mix saves in carbon against another one of the same element, at the same factors.
 *
 * A factor that both mixes use errs alike in both, so the range is not the difference of two ranges.
 * Formula: Σ over materials of factor × (amount in other − amount in this), kg CO2e; below zero where
 * this mix emits more.
 *
 * @returns null where a factor is missing in either: a part of a saving says nothing. Source: own
 * arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const factors = { soil: MATERIAL_CARBON_FACTORS[0], cement: CEMENT_CARBON_FACTORS[0] };
 * const at = (cementPct) => mixCarbon(recipe({ materials, cementPct, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 }), { factors });
 * carbonSaving(at(6), at(8)) // => { low: 16.92, high: 18.44 }
 */
export function carbonSaving(mix: MixCarbon, other: MixCarbon): Interval | null {
  if (mix.status !== "ok" || other.status !== "ok") return null;
  return accountDifference(accountOf(mix.lines), accountOf(other.lines));
}

export interface CarbonComparison {
  /** kg CO2e of making all materials of the earth element, haul and waste left out. */
  readonly earth: Interval;
  /** The same of the concrete: its cement, sand and stone. */
  readonly concrete: Interval;
  readonly earthPctOfConcrete: Interval;
  readonly aggregate: SourcedRange;
}

/**
 * Sand and stone in a cubic metre of structural concrete, kg. Near 2350 kg less cement and water.
 *
 * @example
 * CONCRETE_AGGREGATE_KG_M3 // => { low: 1800, high: 1900 }
 */
export const CONCRETE_AGGREGATE_KG_M3: Interval = { low: 1800, high: 1900 };

/**
 * Compares the carbon of an earth element with that of an all-concrete one: making of all materials with
 * making of all materials, neither with haul, forms or reinforcement.
 *
 * Formulas: earth = Σ making / (1 + waste/100); concrete = its cement carbon + volume × aggregate ×
 * factor, low with low and high with high. The percentage takes the ends that lie furthest apart.
 *
 * @returns null where a material of the earth has no factor.
 * @throws RangeError for a volume not above 0. Source: factors with each; the aggregate in concrete is
 * common practice, no source.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1750 });
 * const carbon = mixCarbon(batch, { factors: { soil: MATERIAL_CARBON_FACTORS[0], cement: CEMENT_CARBON_FACTORS[0] } });
 * const { earth, concrete } = carbonComparison({ carbon, wastePct: 0, concreteVolumeM3: 1, concreteCementCarbonKg: { low: 237, high: 286 }, aggregate: MATERIAL_CARBON_FACTORS[1] });
 * earth // => { low: 118.44, high: 171.08 }
 * concrete // => { low: 246, high: 300.25 }
 */
export function carbonComparison(elements: {
  /** Of the amount to make. */
  readonly carbon: MixCarbon;
  /** Taken off again: both elements net. */
  readonly wastePct: number;
  readonly concreteVolumeM3: number;
  /** From `cementComparison`. */
  readonly concreteCementCarbonKg: Interval;
  readonly aggregate: SourcedRange;
}): CarbonComparison | null {
  const { carbon, wastePct, concreteVolumeM3, concreteCementCarbonKg, aggregate } = elements;
  checkPositive("concreteVolumeM3", concreteVolumeM3);
  if (carbon.status !== "ok") return null;
  const earth = bothEnds(
    (end) => carbon.lines.reduce((sum, { making }) => sum + making![end], 0) / (1 + wastePct / 100),
  );
  const concrete = bothEnds(
    (end) =>
      concreteCementCarbonKg[end] +
      concreteVolumeM3 * CONCRETE_AGGREGATE_KG_M3[end] * aggregate[end],
  );
  return {
    earth,
    concrete,
    earthPctOfConcrete: {
      low: (100 * earth.low) / concrete.high,
      high: (100 * earth.high) / concrete.low,
    },
    aggregate,
  };
}
