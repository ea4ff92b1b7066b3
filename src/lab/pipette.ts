import type { Finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import { PRETREATMENT_FACTS, type Pretreatment, readPretreatment } from "./pretreatment.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { SheetLayout } from "./sheet/layout.js";
import { readSheet } from "./sheet/readSheet.js";

/** A pipette analysis as read from its sheet. */
export interface PipetteRecord {
  readonly file: string;
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

const number = { kind: "number", required: true } as const;

/** What a pipette sheet may hold. */
export const PIPETTE_LAYOUT: SheetLayout = {
  title: say`pipette sheet`,
  facts: [
    { key: "dryMassG", names: ["dry mass"], dimension: "mass", positive: true, ...number },
    { key: "separatingSizeMm", names: ["separating sieve"], kind: "sieve", required: true },
    {
      key: "cylinderVolumeCm3",
      names: ["cylinder volume"],
      dimension: "volume",
      positive: true,
      ...number,
    },
    {
      key: "pipetteVolumeCm3",
      names: ["pipette volume"],
      dimension: "volume",
      positive: true,
      ...number,
    },
    { key: "dispersantG", names: ["dispersant mass"], dimension: "mass", min: 0, ...number },
    ...PRETREATMENT_FACTS,
  ],
  columns: [
    { key: "timeMin", names: ["time"], dimension: "duration", positive: true, ...number },
    { key: "depthMm", names: ["depth"], dimension: "length", positive: true, ...number },
    {
      key: "temperatureC",
      names: ["temperature"],
      dimension: "temperature",
      min: 5,
      max: 40,
      ...number,
    },
    { key: "solidsG", names: ["solids"], dimension: "mass", min: 0, ...number },
  ],
};

/**
 * Reads a pipette sheet: `dry mass (g)`, `separating sieve (mm)`, `cylinder volume (ml)`,
 * `pipette volume (ml)` and `dispersant mass (g)` in the whole cylinder, above a table of `time (min)`,
 * `depth (mm)`, `temperature (C)` and `solids (g)`, the dried contents of the pipette; where the soil
 * was treated before, `pretreatment` and `pretreatment loss (%)`.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readPipette(grid: SheetGrid, findings: Finding[]): PipetteRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, PIPETTE_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts } = sheet;
  const refuse = (finding: Omit<Finding, "severity" | "file">) =>
    findings.push({ severity: "error", file, ...finding });
  const samples: PipetteSample[] = [];
  for (const { row, values, written } of sheet.rows) {
    const { timeMin, depthMm, temperatureC, solidsG } = values;
    if (
      typeof timeMin !== "number" ||
      typeof depthMm !== "number" ||
      typeof temperatureC !== "number" ||
      typeof solidsG !== "number"
    ) {
      continue;
    }
    const above = samples.at(-1);
    if (above && timeMin <= above.timeMin) {
      refuse({
        code: "time-order",
        row,
        column: sheet.headers.timeMin,
        value: written.timeMin,
        message: say`This sample is not later than the one above it.`,
        expected: say`more than ${above.timeMin} min`,
        remedy: say`Write the time since the start of sedimentation, in order.`,
      });
    }
    samples.push({ timeMin, depthMm, temperatureC, solidsG, row });
  }
  const pretreatment = readPretreatment(sheet, findings);
  const { cylinderVolumeCm3: cylinder, pipetteVolumeCm3: pipette } = facts;
  if (typeof cylinder === "number" && typeof pipette === "number" && pipette >= cylinder) {
    refuse({
      code: "pipette-volume",
      row: sheet.factRows.pipetteVolumeCm3,
      value: String(pipette),
      message: say`The pipette holds as much as the cylinder.`,
      expected: say`less than ${cylinder} cm³`,
      remedy: say`Check the two volumes and their units.`,
    });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    dryMassG: facts.dryMassG as number,
    separatingSizeMm: facts.separatingSizeMm as number,
    cylinderVolumeCm3: cylinder as number,
    pipetteVolumeCm3: pipette as number,
    dispersantG: facts.dispersantG as number,
    ...(pretreatment ? { pretreatment } : {}),
    samples,
  };
}
