import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { expect, it } from "vitest";
import * as loambook from "../../src/index.js";
import { joinText, notebookText } from "../../src/notebook/notebookFile.js";
import { formatFailure } from "../../src/notebook/notebookRun.js";
import { runNotebookHere } from "../../src/notebook/runHere.js";
import { metric, textsOf } from "../support/metricUnits.js";
import { ROOT } from "../support/runCli.js";

// What stands there is what the kernel gives: see `allNotebooks.slow.test.ts`.
it.each(["permit-appendix.ipynb", "permit-appendix.es.ipynb"])(
  "%s gives the same here as under the kernel",
  { timeout: 120_000 },
  async (name) => {
    const notebookPath = join(ROOT, "notebooks", name);
    // as the kernel has it: the built package
    const loam = await import(join(ROOT, "dist", "index.js"));
    const here = await runNotebookHere({
      notebookPath,
      lend: async (_, showIn) => ({
        ...loam,
        showIn,
        show: showIn("en"),
        openStudy: (folder: string, options: object) =>
          loam.openStudy(resolve(dirname(notebookPath), folder), options),
      }),
    });
    expect(here?.status).toBe("done");
    expect(notebookText(here!.notebook) === readFileSync(notebookPath, "utf8")).toBe(true);
  },
);

const NODE = "application/vnd.loambook.node+json";
const CHART = "application/vnd.plotly.v1+json";

const STAGES = readdirSync(join(ROOT, "data-examples/garden-wall")).map((name) =>
  join("garden-wall", name),
);

it.each(["bus-shelter", "class-day", "two-blends", "untested-blend", ...STAGES])(
  "mix-design.ipynb runs with %s and says whether the mix was tested",
  { timeout: 120_000 },
  async (name) => {
    const run = await runNotebookHere({
      notebookPath: join(ROOT, "notebooks/mix-design.ipynb"),
      parameters: { studyFolder: join(ROOT, "data-examples", name) },
      lend: async (module, showIn) =>
        module === "loambook" ? { ...loambook, showIn } : import(module),
    });
    expect(run?.status === "cell-failed" ? formatFailure(run) : run?.status).toBe("done");
    const shown = (run?.notebook.cells ?? []).flatMap(({ outputs = [] }) =>
      outputs.flatMap((output) =>
        "data" in output ? [joinText(output.data["text/plain"] as string)] : [],
      ),
    );
    if (/bus-shelter|untested-blend/.test(name)) {
      const drawn = (run?.notebook.cells ?? []).flatMap(({ outputs = [] }) =>
        outputs.flatMap((output) =>
          "data" in output ? [NODE, CHART].flatMap((type) => textsOf(output.data[type] ?? [])) : [],
        ),
      );
      expect(drawn.length).toBeGreaterThan(300);
      const frames = shown.join("\n").split("\n");
      expect(metric([...drawn, ...frames])).toEqual([]);
      expect(frames.join("\n")).not.toMatch(/strengthMpa|\bMPa_/);
    }
    const state = shown.filter((text) => /^(?:Note|Warning): (?:Tested|Proposed)\b/.test(text));
    const early = /[12]-/.test(name);
    expect(state.length > 0).toBe(!early);
    if (early) expect(shown.join("\n")).toContain("Not known yet: the blend");
    else {
      const tested = /bus-shelter|class-day|two-blends|5-/.test(name);
      expect(state[0]).toContain(tested ? "Note: Tested" : "Warning: Proposed");
      // another target is a proposal, but for the mix that is that of a trial whatever the target
      expect(state.at(-1)).toContain(name === "two-blends" ? "Note: Tested" : "Warning: Proposed");
    }
  },
);
