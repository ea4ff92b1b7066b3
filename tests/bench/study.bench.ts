import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bench, describe } from "vitest";
import { computeStudy } from "../../src/study/computeStudy.js";
import { readStudy } from "../../src/study/readStudy.js";
import { runCli } from "../support/runCli.js";
import { EXAMPLES } from "../support/studyCopy.js";

// Aims: computing a study under 150 ms; --help under 150 ms; a cold appendix under 8 s and 700 MB.

for (const name of ["reading-room", "bus-shelter"]) {
  const { study, findings } = await readStudy(join(EXAMPLES, name));
  if (!study) throw new Error(`${name} has errors`);
  describe("computing a study, warm", () => {
    bench(name, () => {
      computeStudy(study, findings);
    });
  });
}

describe("the command line, cold", () => {
  const folder = mkdtempSync(join(tmpdir(), "loambook-bench-"));
  let count = 0;
  // Every process of a run (command line and kernel) leaves its peak memory here when it ends.
  const hook = `import{writeFileSync}from"node:fs";process.on("exit",()=>writeFileSync(${JSON.stringify(`${folder}/peak-`)}+process.pid,String(process.resourceUsage().maxRSS)))`;
  const once = { iterations: 3, warmupIterations: 0, time: 0, warmupTime: 0 };

  bench(
    "--help",
    async () => {
      await runCli(["--help"]);
    },
    { ...once, iterations: 10 },
  );

  bench(
    "appendix of reading-room",
    async () => {
      process.env.NODE_OPTIONS = `--import=data:text/javascript,${encodeURIComponent(hook)}`;
      count += 1;
      const run = await runCli([
        ...["appendix", "data-examples/reading-room"],
        ...["--out", join(folder, `out-${count}`)],
      ]);
      delete process.env.NODE_OPTIONS;
      if (run.code !== 0) throw new Error(run.stderr);
    },
    {
      ...once,
      teardown() {
        const peaks = readdirSync(folder)
          .filter((file) => file.startsWith("peak-"))
          .map((file) => Math.round(Number(readFileSync(join(folder, file), "utf8")) / 1024));
        console.log(`peak memory of each process of the runs, MB: ${peaks.join(", ")}`);
        rmSync(folder, { recursive: true, force: true });
      },
    },
  );
});
