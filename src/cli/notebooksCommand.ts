import { cp, mkdir, mkdtemp, readdir, rename, rm, rmdir, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import {
  joinText,
  type NotebookCell,
  type NotebookFile,
  notebookText,
  openNotebook,
  splitText,
} from "../notebook/notebookFile.js";
import { parseCall } from "./call.js";
import { freshFolder, outputProblem } from "./output.js";
import { packageFolder } from "./packageFiles.js";

const DATA = "data-examples";

/** `loambook notebooks`: a working copy of the notebooks, without results, and the studies that they open. */
export async function notebooksCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("notebooks", words, {}, true);
  const folder = freshFolder({ wanted: call.place, byDefault: "", replace: false });
  const names = await writeWorkingCopy(folder).catch((problem: unknown) => {
    throw outputProblem(folder, problem);
  });
  process.stdout.write(
    `In ${folder}:\n${names.map((name) => `  ${name}`).join("\n")}\n\n` +
      "“loambook kernel --for-jupyter” sets the kernel up once; then “jupyter notebook” in that folder.\n",
  );
  return 0;
}

/** Writes the copy whole or not at all; returns what stands in it. */
async function writeWorkingCopy(folder: string): Promise<string[]> {
  const from = join(packageFolder(), "notebooks");
  const names = (await readdir(from)).filter((name) => name.endsWith(".ipynb")).sort();
  await mkdir(dirname(folder), { recursive: true });
  const draft = await mkdtemp(join(dirname(folder), `.${basename(folder)}-`));
  try {
    const studies = new Set<string>();
    for (const name of names) {
      const { notebook, opened } = workingCopy(await openNotebook(join(from, name)));
      for (const study of opened) studies.add(study);
      await writeFile(join(draft, name), notebookText(notebook), { flag: "wx" });
    }
    const data = [...studies].sort();
    for (const study of data) {
      await cp(join(packageFolder(), DATA, study), join(draft, DATA, study), { recursive: true });
    }
    // an empty folder gives way; a folder filled meanwhile makes this fail, and stays
    await mkdir(folder, { recursive: true });
    await rmdir(folder);
    await rename(draft, folder);
    return [...names, ...data.map((study) => `${DATA}/${study}/`)];
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
}

const PLACE = new RegExp(String.raw`\.\./(${DATA})/([\w-]+)`, "g");

/** A notebook without outputs, whose studies lie beside it; and the names of those studies. */
export function workingCopy(notebook: NotebookFile): {
  readonly notebook: NotebookFile;
  readonly opened: readonly string[];
} {
  const opened: string[] = [];
  const cells = notebook.cells.map((cell): NotebookCell => {
    const source = joinText(cell.source).replace(PLACE, (_, data: string, study: string) => {
      opened.push(study);
      return `${data}/${study}`;
    });
    const own = { ...cell, source: splitText(source) };
    return cell.cell_type === "code" ? { ...own, execution_count: null, outputs: [] } : own;
  });
  return { notebook: { ...notebook, cells }, opened };
}
