"use strict";
// Makes the workshop's notebooks, in each language, from the lessons in notebooks/lessons: one code, two texts.
const { mkdirSync, readdirSync, readFileSync, writeFileSync } = require("node:fs");
const { basename, join } = require("node:path");

const ROOT = join(__dirname, "..");
const LESSONS = join(ROOT, "notebooks", "lessons");
const LANGUAGES = ["en", "es"];
/** The teacher's page stands apart from what a class opens. */
const APART = "teacher";

/** Path of a lesson's notebook below `notebooks/`. */
function pathOf(name, language) {
  const file = `workshop-${name}${language === "en" ? "" : `.${language}`}.ipynb`;
  return name === APART ? join(APART, file) : file;
}

/** The parts of a lesson: what each is, with the tags of its cell. */
function partsOf(name, text) {
  const [, ...found] = text.split(/^::: (.*)\n/m);
  const parts = [];
  for (let at = 0; at < found.length; at += 2) {
    const [kind, ...tags] = found[at].trim().split(/\s+/);
    parts.push({ kind, tags, source: found[at + 1].trimEnd() });
  }
  parts.forEach(({ kind }, at) => {
    const follows = parts[at + 1]?.kind;
    const known = kind === "code" || LANGUAGES.includes(kind);
    if (!known || (kind === "en" && follows !== "es") || (kind !== "en" && follows === "es")) {
      throw new Error(`${name}, part ${at + 1}: “${kind}” cannot stand before “${follows}”`);
    }
  });
  return parts;
}

/**
 * The notebook of a lesson in a language. A lesson is a row of parts, each under a line `::: en`, `::: es` or
 * `::: code`, with tags of the cell behind it; each English part is followed by its Spanish one.
 */
function notebookOf(name, text, language) {
  const data = name === APART ? "../../data-examples" : "../data-examples";
  const parts = partsOf(name, text).filter(({ kind }) => kind === "code" || kind === language);
  const cells = parts.map(({ kind, tags, source }, index) => {
    const said = source.replaceAll("{{language}}", language).replaceAll("{{data}}", data);
    const shared = {
      id: `${name}-${String(index + 1).padStart(2, "0")}`,
      metadata: tags.length > 0 ? { tags } : {},
      source: said.split(/(?<=\n)/),
    };
    return kind === "code"
      ? { cell_type: "code", execution_count: null, ...shared, outputs: [] }
      : { cell_type: "markdown", ...shared };
  });
  const kernelspec = { display_name: "TypeScript (loambook)", name: "loambook" };
  return { cells, metadata: { kernelspec }, nbformat: 4, nbformat_minor: 5 };
}

/** Every notebook of the workshop by its path below `notebooks/`. */
function workshopNotebooks() {
  const made = {};
  for (const file of readdirSync(LESSONS).filter((entry) => entry.endsWith(".md"))) {
    const name = basename(file, ".md");
    const text = readFileSync(join(LESSONS, file), "utf8");
    for (const language of LANGUAGES)
      made[pathOf(name, language)] = notebookOf(name, text, language);
  }
  return made;
}

/** What a run of a workshop notebook shows, as text: kept for a test, as the notebooks themselves hold no result. */
function shownText(notebook) {
  const cells = notebook.cells.filter(({ cell_type }) => cell_type === "code");
  const shown = cells.map(({ outputs }, index) => {
    const texts = outputs.map(({ data, text, evalue }) =>
      [data?.["text/plain"] ?? text ?? evalue].flat().join(""),
    );
    return `[${index + 1}]\n${texts.map((one) => `${one.trimEnd()}\n`).join("\n")}`;
  });
  return shown.join("\n");
}

/** Where that text stands. */
function expectedPath(path) {
  return join(ROOT, "tests", "workshop", "expected", `${basename(path, ".ipynb")}.txt`);
}

/** Writes the notebooks, without results. */
async function writeWorkshop() {
  const { notebookText, executedNotebook, asNotebook } = await import(
    "../dist/notebook/notebookFile.js"
  );
  mkdirSync(join(ROOT, "notebooks", APART), { recursive: true });
  for (const [path, notebook] of Object.entries(workshopNotebooks())) {
    const written = notebookText(executedNotebook(asNotebook(notebook), []));
    writeFileSync(join(ROOT, "notebooks", path), written);
  }
}

module.exports = { expectedPath, shownText, workshopNotebooks, writeWorkshop };
