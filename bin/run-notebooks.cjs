"use strict";
// Makes the workshop's notebooks of their lessons, then runs every notebook: the designer's keep their outputs,
// the workshop's go without, and what they show is kept for a test. Nothing is written where one fails.
const { mkdirSync, readdirSync, writeFileSync } = require("node:fs");
const { basename, dirname, join } = require("node:path");
const {
  expectedPath,
  shownText,
  workshopNotebooks,
  writeWorkshop,
} = require("./make-workshop.cjs");

const FOLDER = join(__dirname, "..", "notebooks");

async function main() {
  const { formatFailure, notebookText, runNotebook } = await import("../dist/notebook/index.js");
  await writeWorkshop();
  const own = Object.keys(workshopNotebooks());
  const others = readdirSync(FOLDER).filter(
    (name) => name.endsWith(".ipynb") && !own.includes(name),
  );
  const written = [];
  for (const name of [...others, ...own]) {
    const notebookPath = join(FOLDER, name);
    const run = await runNotebook({ notebookPath });
    if (run.status !== "done") throw new Error(`${name}: ${formatFailure(run)}`);
    const { notebook } = run;
    if (own.includes(name)) written.push([expectedPath(name), shownText(notebook)]);
    else written.push([notebookPath, notebookText(notebook)]);
    process.stdout.write(`${basename(name)} ran\n`);
  }
  for (const [path, text] of written) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
}

main().catch((problem) => {
  process.stderr.write(`${problem.message}\n`);
  process.exitCode = 1;
});
