import type { HydrometerType } from "../lab/hydrometerRecord.js";
import { waterProperties } from "./waterProperties.js";

export interface SeparateCorrections {
  readonly hydrometer: HydrometerType;
  /** Temperature at the reading. */
  readonly temperatureC: number;
  /** What the dispersant adds to a reading, in the hydrometer's units; from a test or from its mass. */
  readonly dispersant: number;
  /** What is added to a reading at the top of the meniscus, in the hydrometer's units. */
  readonly meniscusCorrection: number;
  /** Temperature at which the scale is right; default 20. */
  readonly calibrationC?: number;
}

/** Volume expansion of the glass bulb per °C (soda-lime glass, from memory). */
const GLASS_PER_C = 2.5e-5;

/**
 * The control reading that separate corrections stand for, where no control cylinder was read.
 *
 * Formula: control = dispersant + temperature term − meniscus. The temperature term is computed: the
 * scale sinks with the density of water and rises with the bulb's expansion,
 * ρ(T) (1 + 2.5·10⁻⁵ (T − Tc)) / ρ(Tc) − 1 in specific gravity, times 1000 · 2.65 / 1.65 on the 152H
 * scale. Das's remembered −4.85 + 0.25 T gives 1.4 units at 25 °C where this gives 1.7 (a page read has
 * 1.3): a control cylinder is better than any of them.
 *
 * @returns in the hydrometer's units (152H: g/L; else specific gravity, about 1), for
 * `HydrometerReading.control`; `undefined` outside 10 to 30 °C.
 * @throws RangeError where a number is not finite.
 *
 * @example
 * separateCorrections({ hydrometer: "152H", temperatureC: 20, dispersant: 5, meniscusCorrection: 0.5 }) // => 4.5
 * separateCorrections({ hydrometer: "152H", temperatureC: 25, dispersant: 5, meniscusCorrection: 0.5 }) // => 2.83
 */
export function separateCorrections(input: SeparateCorrections): number | undefined {
  const { hydrometer, temperatureC, dispersant, meniscusCorrection, calibrationC = 20 } = input;
  for (const [name, value] of Object.entries({ dispersant, meniscusCorrection, calibrationC })) {
    if (!Number.isFinite(value)) {
      throw new RangeError(`invalid \`${name}\`: ${value}; expected a number`);
    }
  }
  const [now, then] = [waterProperties(temperatureC), waterProperties(calibrationC)];
  if (!now || !then) return undefined;
  const swollen = 1 + GLASS_PER_C * (temperatureC - calibrationC);
  const gravity = (now.densityKgM3 * swollen) / then.densityKgM3 - 1;
  const scale = hydrometer === "152H" ? (1000 * 2.65) / 1.65 : 1;
  return (hydrometer === "152H" ? 0 : 1) + dispersant + gravity * scale - meniscusCorrection;
}
