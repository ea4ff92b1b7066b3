import type { UnitSystem } from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { plain } from "./cell.js";

/** A US gallon is 231 cubic inches by definition. */
export const GALLON_L = 231 * 0.0254 ** 3 * 1000;

/** Water to pour: tenths of a litre, or hundredths of a US gallon. */
export function liquid(litres: number, units: UnitSystem): string {
  return units === "SI"
    ? `${formatFixed(litres, 1)} L`
    : `${formatFixed(litres / GALLON_L, 2)} gal`;
}

/** The volume of a bucket, without zeros that say nothing. */
export function bucketSize(litres: number, units: UnitSystem): string {
  return units === "SI" ? `${plain(litres)} L` : `${plain(litres / GALLON_L, 3)} gal`;
}

/** Whole and half buckets as they are called out: 3½. */
export function buckets(count: number): string {
  const whole = Math.floor(count + 1e-9);
  const half = count - whole > 0.25;
  return half ? `${whole === 0 ? "" : whole}½` : `${whole}`;
}
