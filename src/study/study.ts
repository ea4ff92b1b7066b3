import type { CompactionRecord } from "../lab/compactionRecord.js";
import type { EnvelopeRecord } from "../lab/envelopeRecord.js";
import type { HydrometerRecord } from "../lab/hydrometerRecord.js";
import type { JarRecord } from "../lab/jarRecord.js";
import type { LimitsRecord } from "../lab/limitsRecord.js";
import type { PipetteRecord } from "../lab/pipetteRecord.js";
import type { SheetGrid } from "../lab/sheetGrid.js";
import type { SieveRecord } from "../lab/sieveRecord.js";
import type { SpecimenSheet } from "../lab/specimenRecord.js";
import type { MaterialConfig, StudyConfig } from "./studyConfig.js";

/** A file that the study was computed from. */
export interface InputFile {
  readonly file: string;
  /** SHA-256 of its bytes, hexadecimal. */
  readonly sha256: string;
}

export interface StudyMaterial {
  readonly config: MaterialConfig;
  readonly sieve: SieveRecord;
  readonly hydrometer?: HydrometerRecord;
  /** In place of a hydrometer. */
  readonly pipette?: PipetteRecord;
  readonly jar?: JarRecord;
  readonly limits?: LimitsRecord;
}

/** A study as read: checked configuration, one record a sheet, and the sheets' own cells for the annex. */
export interface Study {
  readonly config: StudyConfig;
  readonly materials: readonly StudyMaterial[];
  readonly envelope?: EnvelopeRecord;
  readonly compaction?: CompactionRecord;
  readonly specimens: SpecimenSheet;
  /** Blocks made on site, where the study names their sheet. */
  readonly siteBlocks?: SpecimenSheet;
  readonly inputs: readonly InputFile[];
  readonly sheets: readonly SheetGrid[];
}
