import { existsSync } from "node:fs";
import { readFile, rename, rm } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { shrunkPhotograph } from "../figures/photographs.js";
import { countFindings } from "../findings/format.js";
import { pageHtml } from "../page/pageHtml.js";
import type { StudyFiles } from "../page/studyFiles.js";
import { openWithSheets } from "../study/openStudy.js";
import { openPhotographs } from "../study/photographs.js";
import { render } from "../words/render.js";
import { CommandError, EXIT, isSheet, parseCall } from "./call.js";
import { outputProblem, writeNewFile } from "./output.js";
import { packageFolder } from "./packageFiles.js";

/** `loambook page`: the mix page of a study, or an empty bench, as one HTML file. */
export async function pageCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("page", words, { texts: ["out"], flags: ["replace"] }, "optional");
  const [study] = call.places;
  const name = study === undefined ? "page.html" : `page-${basename(resolve(study))}.html`;
  const out = resolve(call.text("out") ?? name);
  const taken = existsSync(out);
  if (taken && !call.flag("replace")) {
    throw new CommandError(EXIT.output, `${out} exists already. Give another name, or --replace.`);
  }
  const script = await pageScript();
  const opened = study === undefined ? undefined : await openFiles(study);
  const html = fittingPage(script, opened);
  if (!taken) await writeNewFile(out, html);
  else await replaceFile(out, html);
  process.stdout.write(opened ? `${out}\n${opened.told}\n` : `${out}\n`);
  return EXIT.ok;
}

/** So large a page may be: it is sent, and kept on telephones (common practice, no source). */
const MAX_BYTES = 4 * 1024 * 1024;
/** Widths of the photographs of trial blocks, from what shows a texture to what tells one block from another. */
const PHOTOGRAPH_PX = [420, 300, 210, 150, 105];

/** The page with photographs as wide as its size allows; they are carried as files of the study. */
function fittingPage(
  script: string,
  opened: Awaited<ReturnType<typeof openFiles>> | undefined,
): string {
  const { files = new Map(), photographs = [], ...about } = opened ?? {};
  for (const widthPx of PHOTOGRAPH_PX) {
    const small = photographs.map(
      (photograph) => [photograph.file, shrunkPhotograph(photograph, widthPx)] as const,
    );
    const html = pageHtml({ script, ...about, files: new Map([...files, ...small]) });
    if (photographs.length === 0 || Buffer.byteLength(html) <= MAX_BYTES) return html;
  }
  throw new CommandError(
    EXIT.output,
    `The photographs of trial blocks (${photographs.length}) do not fit into a page of 4 MB: name fewer in the sheets of looks.`,
  );
}

/** Whole or not at all. */
async function replaceFile(out: string, html: string): Promise<void> {
  const fresh = `${out}.${process.pid}.new`;
  try {
    await writeNewFile(fresh, html);
    await rename(fresh, out);
  } catch (problem) {
    throw outputProblem(out, problem);
  } finally {
    await rm(fresh, { force: true });
  }
}

/** The page's program, which the build made. */
async function pageScript(): Promise<string> {
  const path = join(packageFolder(), "dist", "page", "page.js.txt");
  if (!existsSync(path)) {
    throw new CommandError(EXIT.fault, "The page's program was not built: run “npm run build”.");
  }
  return readFile(path, "utf8");
}

/** The files of a study that computes, as they lie in its folder. */
async function openFiles(place: string) {
  const { study, result } = await openWithSheets(place);
  const locale = result.config.language;
  const files: StudyFiles = new Map(
    await Promise.all(
      study.inputs.map(async ({ file }) => [file, await readFile(fileIn(place, file))] as const),
    ),
  );
  const photographs = await openPhotographs(place, result);
  const told = render(countFindings(result.findings), locale);
  const { title } = study.config;
  return { files, photographs, locale, told, ...(title ? { title } : {}) };
}

/** A study may be a sheet alone, which is then its only file. */
function fileIn(place: string, file: string): string {
  return isSheet(place) ? place : join(place, file);
}
