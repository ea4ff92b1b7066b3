import type { HydrometerCalibration, HydrometerType } from "../../lab/hydrometer.js";
import { checkThat } from "../../quantities/checkNumber.js";

/**
 * Effective depth from the hydrometer's own calibration, in cm.
 *
 * Formula: L = L1 + (L2 − Vb / A) / 2 with L1 from the reading to the neck, linear between the marks,
 * L2 the bulb's length, Vb its volume and A the cylinder's cross-section (Murthy eq. 3.28, read). Marks to the
 * middle of the bulb (the form of ASTM D7928, read in a worked thesis) come with a length of 0.
 * Where the calibration gives depths, linear between its pairs and on beyond the outer ones, since the
 * scale of a stem is even (own arithmetic).
 *
 * @param reading corrected for the meniscus only.
 * @throws RangeError where a length, volume or area is not positive, the marks do not differ or the readings
 * of the depths do not rise.
 *
 * @example
 * const calibration = { marks: [{ reading: 0, toNeckCm: 10.5 }, { reading: 50, toNeckCm: 2.3 }], bulbLengthCm: 14, bulbVolumeCm3: 67, cylinderAreaCm2: 27.8 };
 * hydrometerDepth(calibration, 25) // => 12.19
 * hydrometerDepth({ depths: [{ reading: 0, depthCm: 16.3 }, { reading: 60, depthCm: 6.5 }] }, 30) // => 11.4
 */
export function hydrometerDepth(calibration: HydrometerCalibration, reading: number): number {
  if ("depths" in calibration) return depthInterval(calibration.depths, reading);
  const { marks, bulbLengthCm, bulbVolumeCm3, cylinderAreaCm2 } = calibration;
  checkThat(bulbLengthCm >= 0, { bulbLengthCm }, "0 or more");
  checkThat(bulbVolumeCm3 > 0, { bulbVolumeCm3 }, "above 0");
  checkThat(cylinderAreaCm2 > 0, { cylinderAreaCm2 }, "above 0");
  const [a, b] = marks;
  checkThat(a.reading !== b.reading, { marks: `${a.reading} twice` }, "two readings");
  const part = (reading - a.reading) / (b.reading - a.reading);
  const toNeckCm = a.toNeckCm + part * (b.toNeckCm - a.toNeckCm);
  return toNeckCm + 0.5 * (bulbLengthCm - bulbVolumeCm3 / cylinderAreaCm2);
}

function depthInterval(
  depths: readonly { readonly reading: number; readonly depthCm: number }[],
  reading: number,
): number {
  checkThat(depths.length >= 2, { depths: `${depths.length} pairs` }, "at least 2");
  for (let i = 1; i < depths.length; i++) {
    const [before, here] = [depths[i - 1].reading, depths[i].reading];
    checkThat(here > before, { [`depths[${i}].reading`]: here }, `above ${before}`);
  }
  const found = depths.findIndex((pair) => pair.reading >= reading);
  const upper = found < 0 ? depths.length - 1 : Math.max(1, found);
  const [a, b] = [depths[upper - 1], depths[upper]];
  return a.depthCm + ((reading - a.reading) / (b.reading - a.reading)) * (b.depthCm - a.depthCm);
}

/** g/L on the 152H scale for one unit of specific gravity, for grains of 2650 kg/m³ in a litre. */
export const UNITS_152H_PER_GRAVITY = (1000 * 2.65) / 1.65;

/**
 * Depth in cm from the surface to the middle of a hydrometer's bulb: how far a grain at the edge of
 * what the reading still counts has fallen.
 *
 * Formula: 152H: L = 16.3 − 0.1641 R (Murthy eq. 3.28–3.29, read, bulb 67 cm³ in a cylinder of 27.8 cm²).
 * 151H: the same stem and bulb with the same suspension under it, so that R = 1606 (r − 1) and
 * L = 16.3 − 263.6 (r − 1), computed by us; it lies within 0.1 cm of the table of ASTM D422, from memory.
 *
 * BS and g/mL hydrometers have no standard depths: for them this is the depth of a 151H, fit for a rough check only.
 *
 * @param reading corrected for the meniscus only; g/L for 152H, else specific gravity or g/mL.
 *
 * @example
 * effectiveDepth("152H", 25) // => 12.20
 * effectiveDepth("151H", 1.03) // => 8.39
 */
export function effectiveDepth(hydrometer: HydrometerType, reading: number): number {
  const units = hydrometer === "152H" ? reading : UNITS_152H_PER_GRAVITY * (reading - 1);
  return 16.3 - 0.1641 * units;
}
