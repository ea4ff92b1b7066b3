import type { SourcedRange } from "./carbonFactors.js";
import type { Between } from "./cementComparison.js";
import { checkAbove } from "./checkAmount.js";
import type { MixCarbon } from "./mixCarbon.js";

export interface CarbonComparison {
  /** kg CO2e of making all materials of the earth element, haul and waste left out. */
  readonly earth: Between;
  /** The same of the concrete: its cement, sand and stone. */
  readonly concrete: Between;
  readonly earthPctOfConcrete: Between;
  readonly aggregate: SourcedRange;
}

/**
 * Sand and stone in a cubic metre of structural concrete, kg. Near 2350 kg less cement and water.
 *
 * @example
 * CONCRETE_AGGREGATE_KG_M3 // => { low: 1800, high: 1900 }
 */
export const CONCRETE_AGGREGATE_KG_M3: Between = { low: 1800, high: 1900 };

/**
 * Compares the carbon of an earth element with that of an all-concrete one: making of all materials with
 * making of all materials, neither with haul, forms or reinforcement.
 *
 * Formulas: earth = Σ making / (1 + waste/100); concrete = its cement carbon + volume × aggregate ×
 * factor, low with low and high with high. The percentage takes the ends that lie furthest apart.
 *
 * @param of.carbon of the amount to make. @param of.wastePct taken off again: both elements net.
 * @param of.concreteCementCarbonKg from `cementComparison`.
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
export function carbonComparison(of: {
  readonly carbon: MixCarbon;
  readonly wastePct: number;
  readonly concreteVolumeM3: number;
  readonly concreteCementCarbonKg: Between;
  readonly aggregate: SourcedRange;
}): CarbonComparison | null {
  const { carbon, wastePct, concreteVolumeM3, concreteCementCarbonKg, aggregate } = of;
  checkAbove("concreteVolumeM3", concreteVolumeM3);
  if (carbon.status !== "ok") return null;
  const earthAt = (end: "low" | "high") =>
    carbon.lines.reduce((sum, { making }) => sum + making![end], 0) / (1 + wastePct / 100);
  const concreteAt = (end: "low" | "high") =>
    concreteCementCarbonKg[end] + concreteVolumeM3 * CONCRETE_AGGREGATE_KG_M3[end] * aggregate[end];
  const [earth, concrete] = [earthAt, concreteAt].map((at) => ({
    low: at("low"),
    high: at("high"),
  }));
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
