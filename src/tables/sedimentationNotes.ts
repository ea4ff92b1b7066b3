import type { HydrometerAnalysis } from "../grading/hydrometerAnalysis.js";
import type { Pretreatment } from "../lab/pretreatment.js";
import { say } from "../words/say.js";
import { fixed, plain } from "./cell.js";

/** What was done to the soil before, as a line below a sedimentation table. */
export function pretreatmentNotes(pretreatment: Pretreatment | undefined): string[] {
  if (!pretreatment) return [];
  const { text, lossPct } = pretreatment;
  return [
    lossPct === undefined
      ? say`Before dispersing: ${text}; the mass lost by it is not given.`
      : say`Before dispersing: ${text}; ${fixed(lossPct, 1)} % of the dry mass was lost by it. Percentages are of the mass after it.`,
  ];
}

/** Lines below a hydrometer table: what of it is not as with a standard instrument and a control cylinder. */
export function sedimentationNotes(
  analysis: Pick<HydrometerAnalysis, "corrections" | "calibration" | "pretreatment" | "rows">,
): string[] {
  const { corrections, calibration, pretreatment, rows } = analysis;
  const bs = rows.some(({ bsSizeMm }) => bsSizeMm !== undefined);
  const notes = pretreatmentNotes(pretreatment);
  if (corrections) {
    const { dispersant, calibrationC = 20 } = corrections;
    const added = bs ? 1000 * dispersant : dispersant;
    notes.push(
      say`No control cylinder was read: the control is computed from the dispersant's ${plain(added)} units, the meniscus and the temperature (scale right at ${plain(calibrationC)} °C).`,
    );
  }
  if (calibration && "depths" in calibration) {
    notes.push(
      say`Effective depth by the instrument's own calibration: ${calibration.depths
        .map(({ reading, depthCm }) => say`${scale(reading, bs)} at ${fixed(depthCm, 2)} cm`)
        .join("; ")}.`,
    );
  } else if (calibration) {
    const { bulbLengthCm, bulbVolumeCm3, cylinderAreaCm2, marks } = calibration;
    notes.push(
      say`Effective depth by the instrument's own dimensions: bulb ${fixed(bulbLengthCm, 2)} cm and ${fixed(bulbVolumeCm3, 1)} cm³, cylinder ${fixed(cylinderAreaCm2, 1)} cm²; to the neck ${marks
        .map(({ reading, toNeckCm }) => say`${fixed(toNeckCm, 2)} cm at ${scale(reading, bs)}`)
        .join("; ")}.`,
    );
  }
  if (bs) {
    notes.push(
      say`Readings are thousandths above 1. The form of BS 1377-2 (read) takes water as 1 Mg/m³; the curve has the sizes by the density of water at the temperature of the reading.`,
    );
  }
  return notes;
}

function scale(reading: number, bs: boolean): string {
  return bs ? plain(1000 * (reading - 1)) : plain(reading, 5);
}
