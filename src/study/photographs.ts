import { readFile } from "node:fs/promises";
import { sheetsOf } from "../entries/sheets.js";
import { type Finding, finding } from "../findings/finding.js";
import type { WorkshopTrial } from "../lab/trials.js";
import { type PictureSize, pictureSize } from "../quantities/pictureSize.js";
import { say, type Text } from "../words/message.js";
import { fileOfFolder } from "./folder.js";
import type { StudyTrial } from "./study.js";
import type { StudyResult } from "./studyResult.js";

/** A photograph of a trial block, as its file holds it. */
export interface Photograph extends PictureSize {
  /** Name of the block. */
  readonly id: string;
  /** Name of the blend. */
  readonly trial: Text;
  /** Who noted what is seen, and when, as written. */
  readonly seenBy?: string;
  readonly seenOn?: string;
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** A photograph of a good camera has up to 12 MB. */
const MAX_BYTES = 20 * 1024 * 1024;

/** A trial whose blocks somebody looked at. */
interface SeenTrial {
  readonly name: Text;
  /** Sheet of what was seen. */
  readonly file: string;
  readonly looks: readonly WorkshopTrial[];
}

/** The trials of a study that name a sheet of looks. */
export function seenTrials(trials: readonly StudyTrial[]): SeenTrial[] {
  return trials.flatMap(({ entry, looks }) =>
    looks && entry.looks
      ? [{ name: entry.name ?? entry.id, file: sheetsOf(entry.looks)[0], looks }]
      : [],
  );
}

/**
 * Opens the photographs that sheets of looks name: PNG or JPEG files inside the study folder.
 *
 * @param folder of the study.
 * @returns those that can be shown, and a warning for each that cannot: a study computes without them.
 */
export async function readPhotographs(
  folder: string,
  trials: readonly SeenTrial[],
): Promise<{ readonly photographs: readonly Photograph[]; readonly findings: readonly Finding[] }> {
  const named = trials.flatMap(({ name, file, looks }) =>
    looks.map((look) => ({ name, file, look })),
  );
  const photographs: Photograph[] = [];
  const findings: Finding[] = [];
  for (const { name, file, look } of named) {
    const { id, seenBy, seenOn, photograph } = look;
    if (photograph === undefined) continue;
    const opened = await openPicture(folder, photograph);
    if ("problem" in opened) findings.push(noPhotograph(file, look, opened.problem));
    else photographs.push({ id, trial: name, seenBy, seenOn, file: photograph, ...opened });
  }
  return { photographs, findings };
}

/**
 * Opens the photographs of the trial blocks of a computed study; what cannot be shown stands among its
 * findings.
 *
 * @param folder of the study, as `openStudy` takes it.
 */
export async function openPhotographs(
  folder: string,
  { trials }: Pick<StudyResult, "trials">,
): Promise<readonly Photograph[]> {
  const seen = trials.flatMap(({ name, looks = [] }) => ({ name, file: "", looks }));
  return (await readPhotographs(folder, seen)).photographs;
}

function noPhotograph(file: string, look: WorkshopTrial, message: Text): Finding {
  const place = { file, row: look.row, column: "photograph", value: look.photograph };
  return finding(place, "warning", "no-photograph", {
    message,
    expected: say`a PNG or JPEG file in the study folder, of at most ${MAX_BYTES / 1024 / 1024} MB`,
    remedy: say`Copy the photograph into the study folder and name it there, or leave the cell empty. Capital letters count.`,
  });
}

type OpenedPicture = (PictureSize & { readonly bytes: Uint8Array }) | { readonly problem: Text };

async function openPicture(folder: string, file: string): Promise<OpenedPicture> {
  const found = await fileOfFolder(folder, file);
  if ("problem" in found) return { problem: found.message };
  if (found.size > MAX_BYTES) return { problem: say`The file has ${found.size} bytes.` };
  const bytes = await readFile(found.path);
  const size = pictureSize(bytes);
  return size ? { ...size, bytes } : { problem: say`This is not a PNG or JPEG picture.` };
}
