import type { MaterialConfig, StudyConfig } from "../entries/studyConfig.js";
import type { TrialEntry } from "../entries/trials.js";
import type { Finding } from "../findings/finding.js";
import { formatFindings } from "../findings/format.js";
import type { CompactionRecord } from "../lab/compaction.js";
import type { EnvelopeRecord } from "../lab/envelope.js";
import type { HydrometerRecord } from "../lab/hydrometer.js";
import type { JarRecord } from "../lab/jar.js";
import type { LimitsRecord } from "../lab/limits.js";
import type { PipetteRecord } from "../lab/pipette.js";
import type { SheetGrid } from "../lab/sheet/grid.js";
import type { SieveRecord } from "../lab/sieve.js";
import type { SpecimenSheet } from "../lab/specimens.js";
import type { WorkshopTrial } from "../lab/trials.js";
import { say } from "../words/message.js";
import { type Locale, render } from "../words/render.js";

/** A file that the study was computed from. */
export interface InputFile {
  readonly file: string;
  /** SHA-256 of its bytes, hexadecimal. */
  readonly sha256: string;
}

/** A material with a sieve sheet. */
export interface StudyMaterial {
  readonly config: MaterialConfig;
  readonly sieve: SieveRecord;
  readonly hydrometer?: HydrometerRecord;
  /** In place of a hydrometer. */
  readonly pipette?: PipetteRecord;
  readonly jar?: JarRecord;
  readonly limits?: LimitsRecord;
}

/** A material without a sieve sheet: what else is known of it. */
export type UngradedStudyMaterial = Pick<StudyMaterial, "config" | "jar" | "limits">;

/** A blend that was tested: its entry with its sheets, one of them at least. */
export interface StudyTrial {
  readonly entry: TrialEntry;
  readonly compaction?: CompactionRecord;
  readonly specimens?: SpecimenSheet;
  /** What was seen on its blocks. */
  readonly looks?: readonly WorkshopTrial[];
}

/** A study as read: checked configuration, one record a sheet, and the sheets' own cells for the annex. */
export interface Study {
  readonly config: StudyConfig;
  /** Those with a sieve sheet, in the order of the configuration. */
  readonly materials: readonly StudyMaterial[];
  readonly ungraded: readonly UngradedStudyMaterial[];
  readonly envelope?: EnvelopeRecord;
  /** The study's own compaction and block sheets where it has any, then those of `trials`. */
  readonly trials: readonly StudyTrial[];
  /** Blocks made on site, where the study names their sheet. */
  readonly siteBlocks?: SpecimenSheet;
  readonly inputs: readonly InputFile[];
  readonly sheets: readonly SheetGrid[];
}

/** The title of a study; where it has none, the name of its first material. */
export function studyTitle({ title, materials }: Pick<StudyConfig, "title" | "materials">): string {
  return title ?? materials[0].name;
}

/** A study cannot be computed: the message lists every finding. */
export class StudyError extends Error {
  readonly findings: readonly Finding[];

  /** @param locale of the message; default `en`. */
  constructor(findings: readonly Finding[], locale: Locale = "en") {
    const head = render(say`The study has errors.`, locale);
    super(`${head}\n\n${formatFindings(findings, locale)}`);
    this.name = "StudyError";
    this.findings = findings;
  }
}
