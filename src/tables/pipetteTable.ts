import type { PipetteAnalysis } from "../grading/pipetteAnalysis.js";
import { say } from "../words/say.js";
import { digits, fixed, numberColumn, plain } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";
import { pretreatmentNotes } from "./sedimentationNotes.js";

/**
 * A pipette analysis in the order of time.
 *
 * @example
 * const record = { file: "p.csv", dryMassG: 20, separatingSizeMm: 0.063, cylinderVolumeCm3: 500, pipetteVolumeCm3: 10, dispersantG: 1, samples: [{ timeMin: 4.7, depthMm: 100, temperatureC: 20, solidsG: 0.22, row: 7 }] };
 * pipetteTable("Clay", analysePipette(record, { particleDensityKgM3: 2650, passingSeparatingPct: 40 })).rows // => [["4.7", "20.0", "100", "0.0199", "10.00", "50.0", "20.0"]]
 */
export function pipetteTable(name: string, analysis: PipetteAnalysis): TableBlock {
  const notes = pretreatmentNotes(analysis.pretreatment);
  return {
    kind: "table",
    caption: say`Sedimentation with the pipette: ${name}`,
    columns: [
      numberColumn(say`Time`, "min"),
      numberColumn(say`Temperature`, "°C"),
      numberColumn(say`Depth of the tip`, "mm"),
      numberColumn(say`Size`, "mm"),
      numberColumn(say`Finer, in the cylinder`, "g"),
      numberColumn(say`Finer, of the dispersed mass`, "%"),
      numberColumn(say`Passing, of the whole`, "%"),
    ],
    rows: analysis.rows.map((row) => [
      plain(row.timeMin),
      fixed(row.temperatureC, 1),
      plain(row.depthMm),
      digits(row.sizeMm, 3),
      fixed(row.finerG, 2),
      fixed(row.finerOfDispersedPct, 1),
      fixed(row.passingPct, 1),
    ]),
    ...(notes.length > 0 ? { notes } : {}),
  };
}
