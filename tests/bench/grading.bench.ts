import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { bench, describe } from "vitest";
import { fitGrading } from "../../src/grading/models/fit.js";
import type { GradingModelName } from "../../src/grading/models/gradingModel.js";
import { resampleFits } from "../../src/grading/uncertainty/fitBand.js";
import scipy from "../reference/gradingScipy.json" with { type: "json" };

const cases = scipy.cases.map(({ model, passingPct }) => ({
  name: model as GradingModelName,
  curve: {
    points: scipy.sizesMm.map((sizeMm, index) => ({
      sizeMm,
      passingPct: passingPct[index],
      origin: "sieve" as const,
    })),
  },
}));
const fredlund = cases.find(({ name }) => name === "fredlund")!;
const fit = fitGrading(fredlund.curve, "fredlund");

describe("one curve of 20 points", () => {
  for (const { name, curve } of cases) {
    bench(`fit ${name}`, () => {
      fitGrading(curve, name);
    });
  }
  bench("1,000 resamples of the four-parameter fit", () => {
    resampleFits(fit, { seed: 1, resamples: 1000 });
  });
});

compareWithScipy();

/** The same data in the same run, where the machine has SciPy; benches have no place for a table. */
function compareWithScipy(): void {
  const python = "/usr/bin/python3";
  const script = fileURLToPath(new URL("../reference/scripts/gradingScipy.py", import.meta.url));
  const run = existsSync(python)
    ? spawnSync(python, [script, "time"], {
        encoding: "utf8",
        env: { ...process.env, OPENBLAS_NUM_THREADS: "1" },
      })
    : undefined;
  if (run?.status !== 0) {
    console.log("SciPy: not on this machine, nothing to set beside.");
    return;
  }
  const { versions, fitMs, thousandResamplesMs } = JSON.parse(run.stdout);
  console.log(`SciPy ${versions.scipy}, least_squares with bounds, one start; processor ms:`);
  console.table([
    ...cases.map(({ name, curve }) => ({
      what: `fit ${name}`,
      ours: lap(() => fitGrading(curve, name), 40),
      scipy: fitMs[name],
    })),
    {
      what: "1,000 resamples",
      ours: lap(() => resampleFits(fit, { seed: 1, resamples: 1000 }), 3),
      scipy: thousandResamplesMs,
    },
  ]);
}

/** Milliseconds of processor time, which other work on the machine hardly moves. */
function lap(run: () => unknown, times: number): number {
  const spent = () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  };
  // Warm first: a cold run measures the compiler.
  const cold = spent();
  while (spent() - cold < 400) run();
  const start = spent();
  for (let round = 0; round < times; round++) run();
  return (spent() - start) / times;
}
