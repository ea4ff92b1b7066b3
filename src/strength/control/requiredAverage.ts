import { formatFixed } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";
import { checkPositive } from "../checkOption.js";

/** Multipliers on s by number of tests, read; between them straight, as the source's table is used. */
const MULTIPLIERS = [
  [15, 1.16],
  [20, 1.08],
  [25, 1.03],
  [30, 1],
] as const;

export interface RequiredAverage {
  readonly requiredAverageMpa: number;
  /** On s, for the number of tests; null where no scatter is known. */
  readonly multiplier: number | null;
  readonly governs: "average of three" | "single test" | "no record of tests";
  readonly message: Text;
  readonly source: Text;
}

/**
 * The average that a mix must be designed for so that concrete-type acceptance is rarely missed.
 *
 * Formula, f and s in MPa, s times the multiplier: max(f + 1.34 s, f + 2.33 s − 3.45) for f up to 35,
 * max(f + 1.34 s, 0.9 f + 2.33 s) above; without a record of at least 15 tests f + 7.0 below 21 MPa,
 * f + 8.3 to 35, 1.1 f + 5.0 above. It was made for concrete: for earth of 2 MPa the allowance without
 * a record is far beyond what the material gives, and 2.33 s − 3.45 governs only where s is above 3.5 MPa.
 *
 * @param of.specifiedMpa the specified strength f. @param of.sdMpa s of earlier tests.
 * @param of.tests how many tests s comes from; below 15 it is not used.
 * @throws RangeError for a strength, deviation or number not above 0.
 * Source: ACI 318-11 tables 5.3.1.2 and 5.3.2.2, ACI 318-19 26.12.3.1, read as quoted elsewhere; 1.34 is
 * 2.326/√3, recomputed.
 *
 * @example
 * const { requiredAverageMpa, governs } = requiredAverage({ specifiedMpa: 20, sdMpa: 3, tests: 20 });
 * [requiredAverageMpa, governs] // => [24.3416, "average of three"]
 */
export function requiredAverage(of: {
  readonly specifiedMpa: number;
  readonly sdMpa?: number;
  readonly tests?: number;
}): RequiredAverage {
  const { specifiedMpa, sdMpa, tests } = of;
  checkPositive("specifiedMpa", specifiedMpa);
  if (sdMpa !== undefined) checkPositive("sdMpa", sdMpa);
  if (tests !== undefined) checkPositive("tests", tests);
  const source = say`ACI 318-11 tables 5.3.1.2 and 5.3.2.2, ACI 318-19 26.12.3.1, read as quoted elsewhere; made for concrete`;
  if (sdMpa === undefined || tests === undefined || tests < MULTIPLIERS[0][0]) {
    const requiredAverageMpa =
      specifiedMpa < 21
        ? specifiedMpa + 7
        : specifiedMpa <= 35
          ? specifiedMpa + 8.3
          : 1.1 * specifiedMpa + 5;
    return {
      requiredAverageMpa,
      multiplier: null,
      governs: "no record of tests",
      message: say`No record of at least ${MULTIPLIERS[0][0]} tests: ${formatFixed(requiredAverageMpa, 1)} MPa. This allowance was made for concrete.`,
      source,
    };
  }
  const above = MULTIPLIERS.findIndex(([count]) => tests <= count);
  const [high, low] =
    above < 0
      ? [MULTIPLIERS[3], MULTIPLIERS[3]]
      : [MULTIPLIERS[above], MULTIPLIERS[Math.max(0, above - 1)]];
  const share = high[0] > low[0] ? (tests - low[0]) / (high[0] - low[0]) : 0;
  const multiplier = low[1] + share * (high[1] - low[1]);
  const s = multiplier * sdMpa;
  const three = specifiedMpa + 1.34 * s;
  const single =
    specifiedMpa <= 35 ? specifiedMpa + 2.33 * s - 3.45 : 0.9 * specifiedMpa + 2.33 * s;
  const requiredAverageMpa = Math.max(three, single);
  return {
    requiredAverageMpa,
    multiplier,
    governs: three >= single ? "average of three" : "single test",
    message: say`${formatFixed(requiredAverageMpa, 2)} MPa from s = ${formatFixed(sdMpa, 2)} MPa of ${tests} tests, times ${formatFixed(multiplier, 2)}.`,
    source,
  };
}
