import type { GuidanceComparison } from "../guidance/compareGuidance.js";
import type { ClassSoil } from "./classSoil.js";
import { curveExercises } from "./curveExercises.js";
import type { Exercise } from "./exercise.js";
import { guidanceExercises } from "./guidanceExercises.js";
import { jarExercises } from "./jarExercises.js";
import { sieveExercises } from "./sieveExercises.js";

/**
 * The exercises from the jar to the curve and its recommendations, with answers computed from the soil of
 * the class.
 *
 * @param comparison of the same soil's curve, by `compareGuidance`.
 *
 * @example
 * const jar = { waterDepthMm: 240, sandTopMm: 60, siltTopMm: 80, clayTopMm: 100 };
 * const sieve = { dryMassG: 1000, washedDryMassG: 710, retained: [{ sizeMm: 4, massG: 0 }, { sizeMm: 2, massG: 300 }, { sizeMm: 0.063, massG: 400 }], panG: 10 };
 * const soil = classSoil({ jar, sieve });
 * const exercises = gradingExercises(soil, compareGuidance(soil.curve, GUIDANCE_ENTRIES));
 * exercises.map(({ id }) => id) // => ["jar-sand-share", "jar-clay-by-mass", "passing-2-mm", "passing-finest", "sand-share", "d60-of-the-soil", "is-d10-known", "outside-of-how-many", "what-inside-proves"]
 * exercises[2].value // => 70
 */
export function gradingExercises(soil: ClassSoil, comparison: GuidanceComparison): Exercise[] {
  return [
    ...jarExercises(soil),
    ...sieveExercises(soil),
    ...curveExercises(soil),
    ...guidanceExercises(comparison),
  ];
}
