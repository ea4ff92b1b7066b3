/** From a sheet of the laboratory to a record. @module */
export type { CompactionPoint, CompactionRecord } from "./compaction.js";
export { COMPACTION_LAYOUT, readCompaction } from "./compaction.js";
export type { EnvelopePoint, EnvelopeRecord } from "./envelope.js";
export { ENVELOPE_LAYOUT, readEnvelope } from "./envelope.js";
export type {
  BulbCalibration,
  DepthCalibration,
  HydrometerCalibration,
  HydrometerCorrections,
  HydrometerReading,
  HydrometerRecord,
  HydrometerType,
} from "./hydrometer.js";
export { readHydrometer } from "./hydrometer.js";
export type { JarLayer, JarLayerName, JarRecord } from "./jar.js";
export { JAR_LAYOUT, readJar } from "./jar.js";
export type { LimitsRecord, LiquidLimitPoint, PlasticLimitPoint } from "./limits.js";
export { readLimits } from "./limits.js";
export type { PipetteRecord, PipetteSample } from "./pipette.js";
export { PIPETTE_LAYOUT, readPipette } from "./pipette.js";
export type { Pretreatment } from "./pretreatment.js";
export { recogniseSheet, type SheetKindName, type SheetRecognition } from "./recogniseSheet.js";
export type { MappedSheet, SheetGrid, SheetMapping, SheetSource } from "./sheet/grid.js";
export { type GridReading, readGrid } from "./sheet/grid.js";
export { type HeaderCell, parseHeaderCell } from "./sheet/layout.js";
export type { SheetReading } from "./sheet/readSheet.js";
export type { SieveRecord, SieveRow, SieveSplit } from "./sieve.js";
export { readSieve } from "./sieve.js";
export type { SpecimenRecord, SpecimenShape, SpecimenSheet } from "./specimens.js";
export { type CementParts, cementFromParts, readSpecimens } from "./specimens.js";
export type { WorkshopTrial } from "./trials.js";
export { readTrials } from "./trials.js";
