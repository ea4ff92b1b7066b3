/** How cement and soil were measured out by loose volume. */
export interface CementParts {
  readonly cementParts: number;
  readonly soilParts: number;
  /** Loose cement as it was poured into the measure. */
  readonly cementLooseDensityKgM3: number;
  /** Loose soil as it was measured, its moisture weighed with it. */
  readonly soilLooseDensityKgM3: number;
  /** Percent of the dry mass of the soil; default 0, the soil density then being dry. */
  readonly soilMoisturePct?: number;
}

/**
 * Turns parts by loose volume into cement content, percent of the dry mass of soil and aggregate.
 *
 * Formula: c = 100 (p_c ρ_c) / (p_s ρ_s / (1 + w/100)), p parts by loose volume, ρ loose densities in
 * kg/m³ as measured out, w the soil's moisture in percent of its dry mass. Loose cement weighs anything
 * from about 830 to 1650 kg/m³, so the same parts may be one content or twice it: weigh a full measure.
 *
 * @throws RangeError for parts or densities not above 0, or a moisture below 0. Source: own arithmetic.
 *
 * @example
 * cementFromParts({ cementParts: 1, soilParts: 10, cementLooseDensityKgM3: 1506, soilLooseDensityKgM3: 1300 }) // => 11.5846
 */
export function cementFromParts(parts: CementParts): number {
  const { cementParts, soilParts, soilMoisturePct = 0 } = parts;
  const { cementLooseDensityKgM3, soilLooseDensityKgM3 } = parts;
  const above = { cementParts, soilParts, cementLooseDensityKgM3, soilLooseDensityKgM3 };
  for (const [name, value] of Object.entries(above)) {
    if (!(Number.isFinite(value) && value > 0)) {
      throw new RangeError(`invalid \`${name}\`: ${value}; expected a number above 0`);
    }
  }
  if (!(Number.isFinite(soilMoisturePct) && soilMoisturePct >= 0)) {
    throw new RangeError(`invalid \`soilMoisturePct\`: ${soilMoisturePct}; expected 0 or above`);
  }
  const drySoil = (soilParts * soilLooseDensityKgM3) / (1 + soilMoisturePct / 100);
  return (100 * cementParts * cementLooseDensityKgM3) / drySoil;
}
