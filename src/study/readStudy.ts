import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Finding } from "../lab/finding.js";
import { readCompaction } from "../lab/readCompaction.js";
import { readEnvelope } from "../lab/readEnvelope.js";
import { readGrid } from "../lab/readGrid.js";
import { readHydrometer } from "../lab/readHydrometer.js";
import { readLimits } from "../lab/readLimits.js";
import { readSieve } from "../lab/readSieve.js";
import { readSpecimens } from "../lab/readSpecimens.js";
import type { SheetGrid } from "../lab/sheetGrid.js";
import { say } from "../words/say.js";
import { parseStudyYaml, STUDY_FILE } from "./parseStudyYaml.js";
import { readStudyFile } from "./readStudyFile.js";
import type { InputFile, Study, StudyMaterial } from "./study.js";

export interface StudyReading {
  /** Present where no finding is an error. */
  readonly study?: Study;
  readonly findings: readonly Finding[];
}

type SheetReader<T> = (grid: SheetGrid, findings: Finding[]) => T | undefined;

/**
 * Reads a study folder: `study.yaml` and every sheet that it names. All problems of all files come
 * back together; a study comes back only where none of them is an error.
 */
export async function readStudy(folder: string): Promise<StudyReading> {
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
  const { config, findings } = parseStudyYaml(text.toString("utf8"));
  if (!config) return { findings };

  const inputs: InputFile[] = [fingerprint(STUDY_FILE, text)];
  const sheets: SheetGrid[] = [];
  const problems: Finding[] = [...findings];
  const open = async <T>(
    file: string | undefined,
    key: string,
    read: SheetReader<T>,
  ): Promise<T | undefined> => {
    if (file === undefined) return undefined;
    const opened = await readStudyFile(folder, file, key);
    if ("finding" in opened) {
      problems.push(opened.finding);
      return undefined;
    }
    const { grid, finding } = await readGrid(file, opened.bytes);
    if (!inputs.some((input) => input.file === file)) inputs.push(fingerprint(file, opened.bytes));
    if (!grid) {
      problems.push(finding);
      return undefined;
    }
    if (!sheets.some((sheet) => sheet.file === file)) sheets.push(grid);
    return read(grid, problems);
  };

  // One after the other, so that findings and checksums stand in the order of the study.
  const materials: StudyMaterial[] = [];
  for (const [index, material] of config.materials.entries()) {
    const key = `materials.${index}`;
    const sieve = await open(material.sieve, `${key}.sieve`, readSieve);
    const hydrometer = await open(material.hydrometer, `${key}.hydrometer`, readHydrometer);
    const limits = await open(material.limits, `${key}.limits`, readLimits);
    if (sieve) materials.push({ config: material, sieve, hydrometer, limits });
  }
  const envelope = await open(config.envelope, "envelope", readEnvelope);
  const compaction = await open(config.compaction, "compaction", readCompaction);
  const specimens = await open(config.strength.sheet, "strength.sheet", readSpecimens);

  if (!specimens || problems.some(({ severity }) => severity === "error")) {
    return { findings: problems };
  }
  return {
    study: { config, materials, envelope, compaction, specimens, inputs, sheets },
    findings: problems,
  };
}

function fingerprint(file: string, bytes: Uint8Array): InputFile {
  return { file, sha256: createHash("sha256").update(bytes).digest("hex") };
}
