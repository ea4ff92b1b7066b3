import { createRandom } from "../numerics/random.js";
import type { BlendMaterial } from "./blendMaterial.js";
import { blendPassing } from "./blendPassing.js";
import type { MaterialVariation } from "./materialVariation.js";

/** Fines end here (ISO 14688, from memory). */
const FINES_MM = 0.063;
/** Of a normal error, 19 in 20 lie within so many standard deviations. */
const NINETEEN_IN_TWENTY = 1.959964;

export interface DrawnPassing {
  /** Passing of the blend, draw after draw, size after size, for shares in any one unit. */
  blend(shares: readonly number[]): Float64Array;
}

/** Draws once what every material passes, so that different shares can be held against the same loads. */
export function drawnPassing(
  materials: readonly BlendMaterial[],
  sizesMm: readonly number[],
  variation: readonly MaterialVariation[],
  draws: number,
  seed: number,
): DrawnPassing {
  if (!(Number.isInteger(draws) && draws >= 1 && draws <= 1_000_000)) {
    throw new RangeError(`invalid \`draws\`: ${draws}; expected a whole number from 1 to 1000000`);
  }
  variation.forEach(({ id, finesPlusMinusPct = 0, batchingPlusMinusPct = 0 }, index) => {
    if (!materials.some((material) => material.id === id)) {
      throw new RangeError(`invalid \`variation[${index}].id\`: ${id}; expected a material's id`);
    }
    if (!(finesPlusMinusPct >= 0 && finesPlusMinusPct <= 100 && batchingPlusMinusPct >= 0)) {
      throw new RangeError(
        `invalid \`variation[${index}]\`: ${finesPlusMinusPct}, ${batchingPlusMinusPct}; expected 0 or more`,
      );
    }
  });
  const random = createRandom(seed);
  const sizes = sizesMm.length;
  const loads = materials.map((material) => {
    const own = variation.find(({ id }) => id === material.id);
    const curves = own?.curves?.length ? own.curves : [material.curve];
    const tables = curves.map((curve) => ({
      fines: blendPassing(curve, FINES_MM).passingPct,
      passing: sizesMm.map((sizeMm) => blendPassing(curve, sizeMm).passingPct),
    }));
    const finesError = (own?.finesPlusMinusPct ?? 0) / NINETEEN_IN_TWENTY;
    const batchError = (own?.batchingPlusMinusPct ?? 0) / NINETEEN_IN_TWENTY / 100;
    const passing = new Float64Array(draws * sizes);
    const factor = new Float64Array(draws);
    for (let k = 0; k < draws; k += 1) {
      const table = tables[tables.length > 1 ? random.integer(tables.length) : 0];
      const error = finesError > 0 ? finesError * random.normal() : 0;
      const fines = Math.min(100, Math.max(0, table.fines + error));
      factor[k] = batchError > 0 ? Math.max(0, 1 + batchError * random.normal()) : 1;
      for (let i = 0; i < sizes; i += 1) {
        passing[k * sizes + i] = shifted(table.passing[i], sizesMm[i], table.fines, fines);
      }
    }
    return { passing, factor };
  });
  return {
    blend: (shares) => {
      const blend = new Float64Array(draws * sizes);
      for (let k = 0; k < draws; k += 1) {
        let total = 0;
        for (let j = 0; j < loads.length; j += 1) total += shares[j] * loads[j].factor[k];
        for (let j = 0; j < loads.length; j += 1) {
          const part = (shares[j] * loads[j].factor[k]) / total;
          if (part === 0) continue;
          const { passing } = loads[j];
          for (let at = k * sizes; at < (k + 1) * sizes; at += 1) blend[at] += part * passing[at];
        }
      }
      return blend;
    },
  };
}

/** Finer than the fines' end all grows with the fines; coarser, all that is retained shrinks with the rest. */
function shifted(passingPct: number, sizeMm: number, before: number, after: number): number {
  if (before === after) return passingPct;
  if (sizeMm <= FINES_MM) return before > 0 ? (passingPct * after) / before : after;
  return before < 100 ? 100 - ((100 - passingPct) * (100 - after)) / (100 - before) : passingPct;
}
