import { COMPACTION_LAYOUT, readCompaction } from "./compaction.js";
import { ENVELOPE_LAYOUT, readEnvelope } from "./envelope.js";
import { HYDROMETER_LAYOUT, readHydrometer } from "./hydrometer.js";
import { JAR_LAYOUT, readJar } from "./jar.js";
import { LIMITS_LAYOUT, readLimits } from "./limits.js";
import { PIPETTE_LAYOUT, readPipette } from "./pipette.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { SheetLayout } from "./sheet/layout.js";
import type { SheetReading } from "./sheet/readSheet.js";
import { readSieve, SIEVE_FORMS, sieveLayout } from "./sieve.js";
import { readSpecimens, SPECIMEN_LAYOUT } from "./specimens.js";
import { readTrials, TRIAL_LAYOUT } from "./trials.js";

/** A kind of sheet: its reader, and the forms that it may have. */
export interface SheetKind<T> {
  readonly read: (grid: SheetGrid) => SheetReading<T>;
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
    layouts: () => SIEVE_FORMS.map(sieveLayout),
  },
  hydrometer: kind(readHydrometer, HYDROMETER_LAYOUT),
  pipette: kind(readPipette, PIPETTE_LAYOUT),
  jar: kind(readJar, JAR_LAYOUT),
  limits: kind(readLimits, LIMITS_LAYOUT),
  envelope: kind(readEnvelope, ENVELOPE_LAYOUT),
  compaction: kind(readCompaction, COMPACTION_LAYOUT),
  specimens: kind(readSpecimens, SPECIMEN_LAYOUT),
  looks: kind(readTrials, TRIAL_LAYOUT),
};
