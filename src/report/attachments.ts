import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { extname, join } from "node:path";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/message.js";
import { render } from "../words/render.js";

/** A file inside the PDF: allowed by PDF/A-3 (ISO 19005-3, from memory), not by PDF/A-2. */
export interface PdfAttachment {
  /** As a reader lists it; may hold a folder, `sheets/sand.csv`. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly mimeType: string;
  /** One phrase for who opens the PDF. */
  readonly description: string;
  /** `source`: the report was computed from it; `data`: it holds what the report shows. */
  readonly relationship: "source" | "data";
}

const MIME: Readonly<Record<string, string>> = {
  ".csv": "text/csv",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  ".yaml": "application/yaml",
};

/**
 * The data behind a study's report, to stand inside its PDF: the result as JSON, and every file that the
 * study was computed from, byte for byte.
 *
 * @param folder the study folder
 * @param result of that study
 * @throws RangeError where a file is no longer the one that the result was computed from
 */
export async function studyAttachments(
  folder: string,
  result: StudyResult,
): Promise<PdfAttachment[]> {
  const { language } = result.config;
  const json = `${JSON.stringify(result, undefined, 2)}\n`;
  const attachments: PdfAttachment[] = [
    {
      name: "result.json",
      bytes: new TextEncoder().encode(json),
      mimeType: "application/json",
      description: render(say`The result of the study at full precision`, language),
      relationship: "data",
    },
  ];
  for (const { file, sha256 } of result.inputs) {
    const bytes = new Uint8Array(await readFile(join(folder, file)));
    if (createHash("sha256").update(bytes).digest("hex") !== sha256) {
      throw new RangeError(`invalid \`folder\`: ${file} has changed since the study was computed`);
    }
    attachments.push({
      name: file,
      bytes,
      mimeType: MIME[extname(file).toLowerCase()] ?? "application/octet-stream",
      description: render(say`File of the study: ${file}`, language),
      relationship: "source",
    });
  }
  return attachments;
}
