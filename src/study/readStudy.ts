import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Finding } from "../lab/finding.js";
import { mapSheet } from "../lab/mapSheet.js";
import { ownPlaces } from "../lab/ownPlaces.js";
import { readGrid } from "../lab/readGrid.js";
import type { SheetGrid } from "../lab/sheetGrid.js";
import { SHEET_KINDS, type SheetKind } from "../lab/sheetKinds.js";
import type { SheetMapping, SheetSource } from "../lab/sheetMapping.js";
import type { Language } from "../words/language.js";
import { say } from "../words/say.js";
import { inventedFindings } from "./inventedData.js";
import { parseStudyYaml, STUDY_FILE } from "./parseStudyYaml.js";
import { readStudyFile } from "./readStudyFile.js";
import type { InputFile, Study, StudyMaterial } from "./study.js";

export interface StudyReading {
  /** Present where no finding is an error. */
  readonly study?: Study;
  readonly findings: readonly Finding[];
}

/**
 * Reads a study folder: `study.yaml` and every sheet that it names. All problems of all files come
 * back together; a study comes back only where none of them is an error.
 */
export async function readStudy(
  folder: string,
  options: { readonly language?: Language } = {},
): Promise<StudyReading> {
  let text: Buffer;
  try {
    text = await readFile(join(folder, STUDY_FILE));
  } catch (problem) {
    const finding: Finding = {
      severity: "error",
      code: "missing-study",
      file: STUDY_FILE,
      value: folder,
      message: say`The study file cannot be read (${(problem as NodeJS.ErrnoException).code ?? say`unknown reason`}).`,
      expected: say`a folder that holds ${STUDY_FILE}`,
      wayOut: say`Give the study's folder, or create one with “loambook new <folder>”.`,
    };
    return { findings: [finding] };
  }
  const { config, findings } = parseStudyYaml(text.toString("utf8"), options.language);
  if (!config) return { findings };

  const inputs: InputFile[] = [fingerprint(STUDY_FILE, text)];
  const sheets: SheetGrid[] = [];
  const problems: Finding[] = [...findings];
  const open = async <T>(
    source: SheetSource | undefined,
    key: string,
    { read, layouts }: SheetKind<T>,
  ): Promise<T | undefined> => {
    if (source === undefined) return undefined;
    const mapping = typeof source === "string" ? undefined : source;
    const file = typeof source === "string" ? source : source.sheet;
    const opened = await readStudyFile(folder, file, key);
    if ("finding" in opened) {
      problems.push(opened.finding);
      return undefined;
    }
    const { grid, finding } = await readGrid(file, opened.bytes, mapping);
    if (!inputs.some((input) => input.file === file)) inputs.push(fingerprint(file, opened.bytes));
    if (!grid) {
      problems.push(finding);
      return undefined;
    }
    keepForAnnex(sheets, grid, mapping);
    if (!mapping) return read(grid, problems);
    const place = { file: STUDY_FILE, key };
    const found: Finding[] = [];
    const mapped = mapSheet(grid, mapping, layouts(), place, found);
    const record = mapped && read(mapped, found);
    problems.push(...found.map((finding) => ownPlaces(finding, mapping, place, grid)));
    // A reader knows of its own findings only, not of those of the mapping.
    return found.some(({ severity }) => severity === "error") ? undefined : record;
  };

  // One after the other, so that findings and checksums stand in the order of the study.
  const materials: StudyMaterial[] = [];
  for (const [index, material] of config.materials.entries()) {
    const key = `materials.${index}`;
    const sieve = await open(material.sieve, `${key}.sieve`, SHEET_KINDS.sieve);
    const hydrometer = await open(material.hydrometer, `${key}.hydrometer`, SHEET_KINDS.hydrometer);
    const pipette = await open(material.pipette, `${key}.pipette`, SHEET_KINDS.pipette);
    const jar = await open(material.jar, `${key}.jar`, SHEET_KINDS.jar);
    const limits = await open(material.limits, `${key}.limits`, SHEET_KINDS.limits);
    if (sieve) materials.push({ config: material, sieve, hydrometer, pipette, jar, limits });
  }
  const envelope = await open(config.envelope, "envelope", SHEET_KINDS.envelope);
  const compaction = await open(config.compaction, "compaction", SHEET_KINDS.compaction);
  const specimens = await open(config.strength.sheet, "strength.sheet", SHEET_KINDS.specimens);
  const { siteBlocks: site } = config.quality ?? {};
  const siteBlocks = await open(site, "quality.site-blocks", SHEET_KINDS.specimens);

  problems.push(...inventedFindings(text.toString("utf8"), config, sheets));
  if (!specimens || problems.some(({ severity }) => severity === "error")) {
    return { findings: problems };
  }
  return {
    study: { config, materials, envelope, compaction, specimens, siteBlocks, inputs, sheets },
    findings: problems,
  };
}

/** Each file once, with every way in which it was read. */
function keepForAnnex(sheets: SheetGrid[], grid: SheetGrid, mapping?: SheetMapping): void {
  const at = sheets.findIndex(({ file }) => file === grid.file);
  const kept = at < 0 ? grid : sheets[at];
  const readAs = [...(kept.readAs ?? []), ...(mapping ? [mapping] : [])];
  sheets[at < 0 ? sheets.length : at] = readAs.length > 0 ? { ...kept, readAs } : kept;
}

function fingerprint(file: string, bytes: Uint8Array): InputFile {
  return { file, sha256: createHash("sha256").update(bytes).digest("hex") };
}
