import { it } from "vitest";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { formatFailure } from "../../src/notebook/formatFailure.js";
for (const name of ["done","compile-error","throw-sync","throw-async","throw-text","exit","endless"])
it(name, async () => {
  const t = performance.now();
  const run = await runNotebook({ notebookPath: `tests/notebook/fixtures/${name}.ipynb`, timeouts: { cellSeconds: 4 } });
  console.log(name, (run.notebook.cells.at(-1)?.outputs?.[0] as {text?: string[]})?.text?.length, (run.notebook.cells.at(-1)?.outputs?.[0] as {text?: string[]})?.text?.at(-1), run.status, performance.now() - t, JSON.stringify(run.notebook.cells.map(c => c.outputs)).slice(0, 600));
  if (run.status !== "done") console.log(formatFailure(run));
});
