import type { Finding } from "./finding.js";
import { HYDROMETER_LAYOUT } from "./hydrometerLayout.js";
import { LIMITS_LAYOUT } from "./limitsLayout.js";
import { COMPACTION_LAYOUT, readCompaction } from "./readCompaction.js";
import { ENVELOPE_LAYOUT, readEnvelope } from "./readEnvelope.js";
import { readHydrometer } from "./readHydrometer.js";
import { JAR_LAYOUT, readJar } from "./readJar.js";
import { readLimits } from "./readLimits.js";
import { PIPETTE_LAYOUT, readPipette } from "./readPipette.js";
import { readSieve } from "./readSieve.js";
import { readSpecimens } from "./readSpecimens.js";
import type { SheetGrid } from "./sheetGrid.js";
import type { SheetLayout } from "./sheetLayout.js";
import { sieveLayout } from "./sieveLayout.js";
import { SPECIMEN_LAYOUT } from "./specimenLayout.js";

/** A kind of sheet: its reader, and the forms that it may have. */
export interface SheetKind<T> {
  readonly read: (grid: SheetGrid, findings: Finding[]) => T | undefined;
  readonly layouts: () => readonly SheetLayout[];
}

const kind = <T>(read: SheetKind<T>["read"], layout: SheetLayout): SheetKind<T> => ({
  read,
  layouts: () => [layout],
});

/** The kinds of sheets that a study may name. */
export const SHEET_KINDS = {
  sieve: {
    read: readSieve,
    layouts: () => (["retained", "cumulative", "passing"] as const).map(sieveLayout),
  },
  hydrometer: kind(readHydrometer, HYDROMETER_LAYOUT),
  pipette: kind(readPipette, PIPETTE_LAYOUT),
  jar: kind(readJar, JAR_LAYOUT),
  limits: kind(readLimits, LIMITS_LAYOUT),
  envelope: kind(readEnvelope, ENVELOPE_LAYOUT),
  compaction: kind(readCompaction, COMPACTION_LAYOUT),
  specimens: kind(readSpecimens, SPECIMEN_LAYOUT),
};
