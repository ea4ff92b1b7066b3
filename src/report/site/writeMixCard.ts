import { join, resolve } from "node:path";
import type { StudyResult } from "../../study/studyResult.js";
import { mixCard } from "../../tables/mixCard.js";
import { folderToFill } from "../folderToFill.js";
import { writeWhole } from "../writeWhole.js";
import { renderSite } from "./renderSite.js";
import type { WrittenSite } from "./writeSite.js";

/**
 * Writes the mix card of a study as HTML and PDF, in the study's units and page size.
 *
 * @param options.outFolder made when it is not there; `replace` lets the card in it be exchanged.
 * @throws RangeError when the folder holds something and `replace` is not set.
 */
export async function writeMixCard(
  result: StudyResult,
  options: { readonly outFolder: string; readonly replace?: boolean },
): Promise<WrittenSite> {
  const { outFolder, replace } = options;
  const present = await folderToFill(outFolder, replace);
  const { files, findings } = await renderSite([mixCard(result)], result);
  const folder = resolve(outFolder);
  await writeWhole(folder, files, present);
  return { paths: Object.keys(files).map((name) => join(folder, name)), findings };
}
