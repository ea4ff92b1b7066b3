import { mkdir, mkdtemp, readdir, rename, rm, rmdir, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import type { Finding } from "../lab/finding.js";
import { renderHtml } from "./html/renderHtml.js";
import { notebookToDocument } from "./notebookToDocument.js";
import { renderPdf } from "./pdf/renderPdf.js";
import type { ReportMeta } from "./reportMeta.js";

/** What `writeReport` needs to know. */
export interface WriteReportOptions {
  /** Executed notebook, as parsed from its JSON. */
  readonly notebook: object;
  readonly meta: ReportMeta;
  /** Folder for the files; made when it is not there. */
  readonly outFolder: string;
  /** Whether a report already in the folder may be replaced; default false. */
  readonly replace?: boolean;
  /** Name of the two files without their endings; default `report`. */
  readonly name?: string;
  /** Further files that belong to the report, by their names. */
  readonly companions?: Readonly<Record<string, string | Uint8Array>>;
  /** Default `a-2a`. */
  readonly standard?: "a-2a" | "ua-1" | "none";
}

/** Where the report is and what was found while making it. */
export interface WrittenReport {
  readonly htmlPath: string;
  readonly pdfPath: string;
  readonly findings: readonly Finding[];
}

async function entries(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return [];
    throw error;
  }
}

/** Puts each new file in the place of the old one; on failure the old ones go back. */
async function swap(
  fresh: string,
  old: string,
  folder: string,
  files: readonly string[],
  present: ReadonlySet<string>,
): Promise<void> {
  await mkdir(old);
  const done: string[] = [];
  try {
    for (const name of files) {
      if (present.has(name)) await rename(join(folder, name), join(old, name));
      done.push(name);
      await rename(join(fresh, name), join(folder, name));
    }
  } catch (error) {
    for (const name of done) {
      if (present.has(name)) await rename(join(old, name), join(folder, name));
      else await rm(join(folder, name), { force: true });
    }
    throw error;
  }
}

/**
 * Makes one HTML and one PDF file from an executed notebook, with their companions, whole or not at
 * all: everything is rendered and written beside the wanted folder before anything there is touched.
 * With `replace` these files are exchanged and others in the folder are left alone.
 *
 * @throws RangeError when the folder holds something and `replace` is not set, and when the date
 * is no day of the calendar; TypeError when the notebook is none
 */
export async function writeReport(options: WriteReportOptions): Promise<WrittenReport> {
  const outFolder = resolve(options.outFolder);
  const present = new Set(await entries(outFolder));
  if (present.size > 0 && options.replace !== true) {
    throw new RangeError(
      `invalid \`outFolder\`: ${options.outFolder}; expected an empty or new folder, or \`replace\``,
    );
  }
  const name = options.name ?? "report";
  const document = notebookToDocument(options.notebook, options.meta);
  const html = renderHtml(document);
  const { pdf, findings } = await renderPdf(document, { standard: options.standard });
  const contents: Readonly<Record<string, string | Uint8Array>> = {
    ...options.companions,
    [`${name}.html`]: html,
    [`${name}.pdf`]: pdf,
  };
  const files = Object.keys(contents);

  const parent = dirname(outFolder);
  await mkdir(parent, { recursive: true });
  const work = await mkdtemp(join(parent, `.${basename(outFolder)}-`));
  try {
    const fresh = join(work, "new");
    await mkdir(fresh);
    for (const file of files) await writeFile(join(fresh, file), contents[file]);
    if (present.size > 0) await swap(fresh, join(work, "old"), outFolder, files, present);
    else {
      // an empty folder gives way; a folder filled meanwhile makes this fail, and stays
      await mkdir(outFolder, { recursive: true });
      await rmdir(outFolder);
      await rename(fresh, outFolder);
    }
  } finally {
    await rm(work, { recursive: true, force: true });
  }
  return {
    htmlPath: join(outFolder, `${name}.html`),
    pdfPath: join(outFolder, `${name}.pdf`),
    findings: [...document.findings, ...findings],
  };
}
