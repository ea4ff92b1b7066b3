import { powerOf } from "../../numerics/powerOf.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { say, type Text } from "../../words/message.js";

/** Standard gravity, m/s² (exact by definition). */
export const GRAVITY = 9.80665;

export interface SettlingInput {
  /** Depth that the grain has fallen. */
  readonly depthCm: number;
  readonly timeMin: number;
  readonly viscosityMPaS: number;
  readonly waterDensityKgM3: number;
  readonly particleDensityKgM3: number;
}

/**
 * Diameter of the sphere that falls a depth in a time, in mm.
 *
 * Formula: d = √(18 η L / ((ρs − ρw) g t)), Stokes' law, in SI units inside. It gives the constant
 * 0.005531 of the BS 1377-2 sheet (read) to its printed digits, where ρw is 1.
 *
 * @throws RangeError where a depth, time or viscosity is not positive or the grain would float.
 *
 * @example
 * stokesDiameter({ depthCm: 10, timeMin: 60, viscosityMPaS: 1.0087, waterDensityKgM3: 998.23, particleDensityKgM3: 2650 }) // => 0.005580
 */
export function stokesDiameter(input: SettlingInput): number {
  const { depthCm, timeMin, viscosityMPaS, waterDensityKgM3, particleDensityKgM3 } = input;
  checkThat(depthCm > 0 && depthCm < Infinity, { depthCm }, "above 0");
  checkThat(timeMin > 0 && timeMin < Infinity, { timeMin }, "above 0");
  checkThat(viscosityMPaS > 0 && viscosityMPaS < Infinity, { viscosityMPaS }, "above 0");
  const excess = particleDensityKgM3 - waterDensityKgM3;
  checkThat(
    excess > 0 && excess < Infinity,
    { particleDensityKgM3 },
    `above the water's ${waterDensityKgM3}`,
  );
  const metresPerSecond = depthCm / 100 / (60 * timeMin);
  return 1000 * Math.sqrt(((18 * viscosityMPaS) / 1000 / (excess * GRAVITY)) * metresPerSecond);
}

/** Temperature in °C, viscosity in mPa·s (centipoise), density in g/cm³: International Critical Tables. */
const TABLE: readonly (readonly [number, number, number])[] = [
  [10, 1.3097, 0.99973],
  [12, 1.239, 0.99952],
  [14, 1.1748, 0.99927],
  [15, 1.1447, 0.99913],
  [16, 1.1156, 0.99897],
  [17, 1.0876, 0.9988],
  [18, 1.0603, 0.99862],
  [19, 1.034, 0.99843],
  [20, 1.0087, 0.99823],
  [21, 0.9843, 0.99802],
  [22, 0.9608, 0.9978],
  [23, 0.938, 0.99757],
  [24, 0.9161, 0.99733],
  [25, 0.8949, 0.99707],
  [26, 0.8746, 0.99681],
  [27, 0.8551, 0.99654],
  [28, 0.8363, 0.99626],
  [30, 0.8004, 0.99568],
];

/** Whose viscosity of water is taken. */
export type WaterBasis = "modern" | "ASTM D422" | "ISO 17892-4";

/**
 * Where the viscosity of water comes from, by basis, with its honesty mark.
 *
 * @example
 * WATER_SOURCES.modern.mark // => { text: "from memory", values: [] }
 */
export const WATER_SOURCES: Readonly<
  Record<WaterBasis, { readonly text: Text; readonly mark: Text }>
> = {
  modern: {
    text: say`IAPWS, viscosity of ordinary water at 0.1 MPa (2008); within 0.1 % of 1.002 mPa·s at 20 °C and 0.7978 at 30 °C as read`,
    mark: say`from memory`,
  },
  "ASTM D422": {
    text: say`International Critical Tables (1928/29) in Encyclopedia of Environmental Science and Engineering, p. 1332, on which the tables of ASTM D422 rest within 0.3 % (from memory)`,
    mark: say`read`,
  },
  "ISO 17892-4": {
    text: say`1.78 / (1 + 0.0337 T + 0.00022 T²) mPa·s, the form of ISO 17892-4`,
    mark: say`from memory`,
  },
};

/**
 * The viscosity that belongs to a form of test: that of its own tables for the old ASTM D422 and for
 * ISO 17892-4, today's accepted one for any other and where no form is named.
 *
 * @param method as the laboratory names it.
 *
 * @example
 * waterBasis("hydrometer, ASTM D 422-63") // => "ASTM D422"
 * waterBasis("ASTM D7928") // => "modern"
 */
export function waterBasis(method: string | undefined): WaterBasis {
  if (method === undefined) return "modern";
  if (/\bD\s*-?422\b/i.test(method)) return "ASTM D422";
  return /17892\s*-\s*4\b/.test(method) ? "ISO 17892-4" : "modern";
}

export interface WaterProperties {
  readonly viscosityMPaS: number;
  readonly densityKgM3: number;
}

/**
 * Viscosity and density of water between 10 and 30 °C.
 *
 * Viscosity: see `WATER_SOURCES`. The old tables lie 0.7 % above today's value at 20 °C, which moves a
 * Stokes size by 0.3 %. Density: International Critical Tables as read, for every basis; it differs from
 * today's by 0.002 %.
 *
 * @param basis default `modern`.
 * @returns `undefined` outside 10 to 30 °C.
 * @throws RangeError where the temperature is not a number.
 *
 * @example
 * waterProperties(20) // => { viscosityMPaS: 1.0016, densityKgM3: 998.23 }
 * waterProperties(20, "ASTM D422") // => { viscosityMPaS: 1.0087, densityKgM3: 998.23 }
 * waterProperties(35) // => undefined
 */
export function waterProperties(
  temperatureC: number,
  basis: WaterBasis = "modern",
): WaterProperties | undefined {
  checkThat(!Number.isNaN(temperatureC), { temperatureC }, "a number");
  const above = TABLE.findIndex(([line]) => line >= temperatureC);
  if (above < 0 || temperatureC < TABLE[0][0]) return undefined;
  const [t1, viscosity1, density1] = TABLE[above];
  const [t0, viscosity0, density0] = TABLE[Math.max(0, above - 1)];
  const part = t1 === t0 ? 0 : (temperatureC - t0) / (t1 - t0);
  const tabulated = viscosity0 + part * (viscosity1 - viscosity0);
  return {
    viscosityMPaS: basis === "ASTM D422" ? tabulated : VISCOSITIES[basis](temperatureC),
    densityKgM3: 1000 * (density0 + part * (density1 - density0)),
  };
}

/** Viscosity in mPa·s at a temperature in °C. */
const VISCOSITIES: Readonly<Record<Exclude<WaterBasis, "ASTM D422">, (t: number) => number>> = {
  modern(temperatureC) {
    const t = (temperatureC + 273.15) / 300;
    const terms = [
      280.68 * powerOf(t, -1.9),
      511.45 * powerOf(t, -7.7),
      61.131 * powerOf(t, -19.6),
      0.45903 * powerOf(t, -40),
    ];
    return terms.reduce((sum, term) => sum + term, 0) / 1000;
  },
  "ISO 17892-4": (t) => 1.78 / (1 + 0.0337 * t + 0.00022 * t ** 2),
};
