import { type Finding, findingIf } from "../findings/finding.js";
import { say } from "../words/message.js";
import { DISPERSED_MASS, SETTLING_TIME } from "./plausible.js";
import { PRETREATMENT_FACTS, type Pretreatment, readPretreatment } from "./pretreatment.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  allNumbers,
  cellPlace,
  METHOD_FACT,
  numberRule,
  type SheetLayout,
  sieveRule,
  timeFindings,
} from "./sheet/layout.js";
import { readRecord, type SheetReading } from "./sheet/readSheet.js";

/** A pipette analysis as read from its sheet. */
export interface PipetteRecord {
  readonly file: string;
  /** Form of the test as the laboratory names it: it decides whose viscosity of water is taken. */
  readonly method?: string;
  /** Oven-dry mass dispersed in the cylinder, without the dispersant. */
  readonly dryMassG: number;
  /** Sieve that the dispersed material had passed. */
  readonly separatingSizeMm: number;
  readonly cylinderVolumeCm3: number;
  readonly pipetteVolumeCm3: number;
  /** Dry mass of dispersant in the whole cylinder; it dries down with every sample. */
  readonly dispersantG: number;
  readonly pretreatment?: Pretreatment;
  /** Increasing times. */
  readonly samples: readonly PipetteSample[];
}

export interface PipetteSample {
  readonly timeMin: number;
  /** Of the pipette's tip below the surface at that time. */
  readonly depthMm: number;
  readonly temperatureC: number;
  /** Dried contents of the pipette. */
  readonly solidsG: number;
  readonly row: number;
}

const above0 = { required: true, positive: true };
const from0 = { required: true, min: 0 };

/** What a pipette sheet may hold. */
export const PIPETTE_LAYOUT: SheetLayout = {
  title: say`pipette sheet`,
  facts: [
    METHOD_FACT,
    numberRule("dryMassG", "dry mass", "mass", { required: true, ...DISPERSED_MASS }),
    sieveRule("separatingSizeMm", "separating sieve", { required: true }),
    numberRule("cylinderVolumeCm3", "cylinder volume", "volume", above0),
    numberRule("pipetteVolumeCm3", "pipette volume", "volume", above0),
    numberRule("dispersantG", "dispersant mass", "mass", from0),
    ...PRETREATMENT_FACTS,
  ],
  columns: [
    numberRule("timeMin", "time", "duration", { required: true, ...SETTLING_TIME }),
    numberRule("depthMm", "depth", "length", above0),
    numberRule("temperatureC", "temperature", "temperature", { required: true, min: 5, max: 40 }),
    numberRule("solidsG", "solids", "mass", from0),
  ],
};

/**
 * Reads a pipette sheet: `dry mass (g)`, `separating sieve (mm)`, `cylinder volume (ml)`,
 * `pipette volume (ml)` and `dispersant mass (g)` in the whole cylinder, above a table of `time (min)`,
 * `depth (mm)`, `temperature (C)` and `solids (g)`, the dried contents of the pipette; where the soil
 * was treated before, `pretreatment` and `pretreatment loss (%)`. `method` names the form of the test.
 */
export function readPipette(grid: SheetGrid): SheetReading<PipetteRecord> {
  return readRecord(grid, PIPETTE_LAYOUT, (sheet) => {
    const { file, facts } = sheet;
    const findings: Finding[] = [];
    const samples: PipetteSample[] = [];
    for (const entry of sheet.rows) {
      const read = allNumbers(entry.values, "timeMin", "depthMm", "temperatureC", "solidsG");
      if (!read) continue;
      const place = cellPlace(sheet, entry, "timeMin");
      const message = say`This sample is not later than the one above it.`;
      findings.push(...timeFindings(place, read.timeMin, samples.at(-1), { message }));
      samples.push({ ...read, row: entry.row });
    }
    const [cylinder, pipette] = [
      facts.cylinderVolumeCm3 as number,
      facts.pipetteVolumeCm3 as number,
    ];
    const place = { file, row: sheet.factRows.pipetteVolumeCm3, value: say`${pipette} cm³` };
    const volumes = findingIf(pipette >= cylinder, place, "error", "pipette-volume", {
      message: say`The pipette holds as much as the cylinder.`,
      expected: say`less than ${cylinder} cm³`,
      remedy: say`Check the two volumes and their units.`,
    });
    const { pretreatment, findings: treated } = readPretreatment(sheet);
    const record: PipetteRecord = {
      file,
      method: facts.method as string | undefined,
      dryMassG: facts.dryMassG as number,
      separatingSizeMm: facts.separatingSizeMm as number,
      cylinderVolumeCm3: cylinder,
      pipetteVolumeCm3: pipette,
      dispersantG: facts.dispersantG as number,
      pretreatment,
      samples,
    };
    return { record, findings: [...findings, ...volumes, ...treated] };
  });
}
