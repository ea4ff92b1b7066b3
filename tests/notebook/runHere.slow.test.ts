import { dirname, join, resolve } from "node:path";
import { expect, it } from "vitest";
import { notebookText } from "../../src/notebook/notebookFile.js";
import { runNotebookHere } from "../../src/notebook/runHere.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { ROOT } from "../support/runCli.js";

it.each(["permit-appendix.ipynb", "permit-appendix.es.ipynb"])(
  "%s gives the same here and under the kernel",
  { timeout: 120_000 },
  async (name) => {
    const notebookPath = join(ROOT, "notebooks", name);
    // as the kernel has it: the built package
    const loam = await import(join(ROOT, "dist", "index.js"));
    const [here, kernel] = await Promise.all([
      runNotebookHere({
        notebookPath,
        lend: async (_, showIn) => ({
          ...loam,
          showIn,
          show: showIn("en"),
          openStudy: (folder: string, options: object) =>
            loam.openStudy(resolve(dirname(notebookPath), folder), options),
        }),
      }),
      runNotebook({ notebookPath }),
    ]);
    expect(here?.status).toBe("done");
    expect(kernel.status).toBe("done");
    expect(notebookText(here!.notebook) === notebookText(kernel.notebook)).toBe(true);
  },
);
