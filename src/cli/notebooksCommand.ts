import { existsSync } from "node:fs";
import { cp, mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { STUDY_FILE } from "../findings/finding.js";
import {
  joinText,
  type NotebookCell,
  type NotebookFile,
  notebookText,
  openNotebook,
  splitText,
} from "../notebook/notebookFile.js";
import type { UnitSystem } from "../quantities/format.js";
import { renderPaper } from "../report/paper.js";
import type { Language } from "../words/render.js";
import { type ClassDay, openClass } from "../workshop/openClass.js";
import { answerPaper, classForms, type Paper, worksheet } from "../workshop/papers.js";
import { CommandError, EXIT, oneOf, parseCall } from "./call.js";
import { freshFolder, writeNewFolder } from "./output.js";
import { packageFolder } from "./packageFiles.js";

const DATA = "data-examples";
/** The study of the class, below `DATA`. */
const CLASS = "class-day";
const PRINT = "print";
const TEACHER = "teacher";
const WORKSHOP = /^workshop-/;

/** What the class's folder holds in Spanish too. */
const SPANISH = [
  ["study.yaml", "study.es.yaml"],
  ["class.csv", "class.es.csv"],
] as const;

const OPTIONS = { flags: ["class", "teacher"], texts: ["from", "language", "units"] };

interface Wanted {
  readonly folder: string;
  /** For whom: everything, or what a class needs. */
  readonly onlyClass: boolean;
  /** A class's own study, in place of the one that comes with the notebooks. */
  readonly from?: string;
  readonly language: Language;
  readonly units: UnitSystem;
}

/**
 * `loambook notebooks`: a working copy of the notebooks, without results, the studies that they open, and the
 * class's sheets to print. With `--teacher` the teacher's page and the key, in a folder of their own.
 */
export async function notebooksCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("notebooks", words, OPTIONS, 1);
  const teacher = call.flag("teacher");
  const folder = freshFolder(call.place);
  const wanted: Wanted = {
    folder,
    onlyClass: call.flag("class") || teacher || call.text("from") !== undefined,
    from: call.text("from"),
    language: oneOf(call, "language", ["en", "es"]) ?? "en",
    units: oneOf(call, "units", ["SI", "US"]) ?? "SI",
  };
  if (wanted.from !== undefined && !existsSync(join(wanted.from, STUDY_FILE))) {
    throw new CommandError(EXIT.badInput, `${wanted.from} holds no ${STUDY_FILE}.`);
  }
  const apart = `${folder}-${TEACHER}`;
  // asked before anything is written
  if (teacher) freshFolder(apart);
  await writeFolder(folder, (draft) => writeWorkingCopy(draft, wanted));
  if (teacher) await writeFolder(apart, (draft) => writeTeachersFolder(draft, wanted));
  process.stdout.write(
    "“loambook kernel --for-jupyter” sets the kernel up once; then “jupyter notebook” in that folder.\n",
  );
  return 0;
}

async function writeFolder(
  folder: string,
  write: (draft: string) => Promise<readonly string[]>,
): Promise<void> {
  const names = await writeNewFolder(folder, write);
  process.stdout.write(`In ${folder}:\n${names.map((name) => `  ${name}`).join("\n")}\n\n`);
}

async function writeWorkingCopy(draft: string, wanted: Wanted): Promise<readonly string[]> {
  const from = join(packageFolder(), "notebooks");
  const all = (await readdir(from)).filter((name) => name.endsWith(".ipynb")).sort();
  const names = wanted.onlyClass ? all.filter((name) => isForClass(name, wanted.language)) : all;
  const studies = new Set<string>();
  for (const name of names) {
    const { notebook, opened } = workingCopy(await openNotebook(join(from, name)));
    for (const study of opened) studies.add(study);
    await writeFile(join(draft, name), notebookText(notebook), { flag: "wx" });
  }
  for (const study of studies) {
    const own = study === CLASS ? wanted.from : undefined;
    const place = own === undefined ? join(packageFolder(), DATA, study) : resolve(own);
    await cp(place, join(draft, DATA, study), { recursive: true });
  }
  const ofClass = join(draft, DATA, CLASS);
  if (wanted.from === undefined) {
    await chooseLanguage(ofClass, wanted.language);
    if (wanted.units === "US") await inUsUnits(join(ofClass, "study.yaml"));
  }
  const day = await openClass(ofClass, { language: wanted.language });
  await mkdir(join(draft, PRINT));
  const printed = await printPapers(join(draft, PRINT), day, [worksheet(day), classForms(day)]);
  return [
    ...names,
    ...[...studies].sort().map((study) => `${DATA}/${study}/`),
    ...printed.map((name) => `${PRINT}/${name}`),
  ];
}

/** A notebook of the workshop in the language of the class. */
function isForClass(name: string, language: Language): boolean {
  return WORKSHOP.test(name) && name.endsWith(".es.ipynb") === (language === "es");
}

/** The study and the sheet of the class in its own language, under the names that the notebooks open. */
async function chooseLanguage(folder: string, language: Language): Promise<void> {
  for (const [name, spanish] of SPANISH) {
    if (language === "es") await rename(join(folder, spanish), join(folder, name));
    else await rm(join(folder, spanish));
  }
}

/** The class of a United States school: what people read is in its units, its paper is its own. */
async function inUsUnits(path: string): Promise<void> {
  const text = await readFile(path, "utf8");
  const changed = text
    .replace(/^units: .*$/m, "units: US")
    .replace(/^page: .*$/m, "page: us-letter");
  await writeFile(path, changed);
}

async function printPapers(
  folder: string,
  { study, language }: ClassDay,
  papers: readonly Paper[],
): Promise<readonly string[]> {
  const { title, date, page, invented } = study.config;
  if (date === undefined) {
    throw new CommandError(
      EXIT.badInput,
      "The study of the class has no date, and its paper needs one.",
    );
  }
  const meta = { title: title ?? CLASS, date, language, page, invented };
  for (const paper of papers) {
    const pdf = await renderPaper(paper, meta);
    await writeFile(join(folder, `${paper.name}.pdf`), pdf, { flag: "wx" });
  }
  return papers.map(({ name }) => `${name}.pdf`);
}

/** The teacher's page reads what the class types: it opens the study in the folder of the class. */
async function writeTeachersFolder(draft: string, wanted: Wanted): Promise<readonly string[]> {
  const { folder, language } = wanted;
  const name = `workshop-${TEACHER}${language === "es" ? ".es" : ""}.ipynb`;
  const page = await openNotebook(join(packageFolder(), "notebooks", TEACHER, name));
  const { notebook } = workingCopy(page, `../${basename(folder)}/${DATA}`);
  await writeFile(join(draft, name), notebookText(notebook), { flag: "wx" });
  const day = await openClass(join(folder, DATA, CLASS), { language });
  return [name, ...(await printPapers(draft, day, [answerPaper(day)]))];
}

const PLACE = new RegExp(String.raw`(?:\.\./)+${DATA}/([\w-]+)`, "g");

/** A notebook without outputs, whose studies lie beside it or where it is said; and the names of those studies. */
function workingCopy(notebook: NotebookFile, data = DATA) {
  const opened: string[] = [];
  const cells = notebook.cells.map((cell): NotebookCell => {
    const source = joinText(cell.source).replace(PLACE, (_, study: string) => {
      opened.push(study);
      return `${data}/${study}`;
    });
    const own = { ...cell, source: splitText(source) };
    return cell.cell_type === "code" ? { ...own, execution_count: null, outputs: [] } : own;
  });
  return { notebook: { ...notebook, cells }, opened };
}
