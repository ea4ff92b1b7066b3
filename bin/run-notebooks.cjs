"use strict";
// Runs every notebook of notebooks/ and writes it back with its outputs; none is written where one fails.
const { readdirSync, writeFileSync } = require("node:fs");
const { join } = require("node:path");

const FOLDER = join(__dirname, "..", "notebooks");

async function main() {
  const { formatFailure, notebookText, runNotebook } = await import("../dist/notebook/index.js");
  const written = [];
  for (const name of readdirSync(FOLDER).filter((file) => file.endsWith(".ipynb"))) {
    const notebookPath = join(FOLDER, name);
    const run = await runNotebook({ notebookPath });
    if (run.status !== "done") throw new Error(`${name}: ${formatFailure(run)}`);
    written.push([notebookPath, notebookText(run.notebook)]);
    process.stdout.write(`${name} ran\n`);
  }
  for (const [path, text] of written) writeFileSync(path, text);
}

main().catch((problem) => {
  process.stderr.write(`${problem.message}\n`);
  process.exitCode = 1;
});
