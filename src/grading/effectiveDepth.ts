import type { HydrometerType } from "../lab/hydrometerRecord.js";

/** g/L on the 152H scale for one unit of specific gravity, for grains of 2650 kg/m³ in a litre. */
const UNITS_152H_PER_GRAVITY = (1000 * 2.65) / 1.65;

/**
 * Depth in cm from the surface to the middle of a hydrometer's bulb: how far a grain at the edge of
 * what the reading still counts has fallen.
 *
 * Formula: 152H: L = 16.3 − 0.1641 R (Murthy eq. 3.28–3.29, read, bulb 67 cm³ in a cylinder of 27.8 cm²).
 * 151H: the same stem and bulb with the same suspension under it, so that R = 1606 (r − 1) and
 * L = 16.3 − 263.6 (r − 1), computed by us; it lies within 0.1 cm of the table of ASTM D422, from memory.
 *
 * A BS hydrometer has no standard depths: for it this is the depth of a 151H, fit for a rough check only.
 *
 * @param reading corrected for the meniscus only; g/L for 152H, specific gravity for 151H and BS.
 *
 * @example
 * effectiveDepth("152H", 25) // => 12.20
 * effectiveDepth("151H", 1.03) // => 8.39
 */
export function effectiveDepth(hydrometer: HydrometerType, reading: number): number {
  const units = hydrometer === "152H" ? reading : UNITS_152H_PER_GRAVITY * (reading - 1);
  return 16.3 - 0.1641 * units;
}
