import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { bench, describe } from "vitest";
import { fitGrading } from "../../src/grading/fitGrading.js";
import type { GradingModelName } from "../../src/grading/models/gradingModel.js";
import { resampleFits } from "../../src/grading/resampleFits.js";
import scipy from "../reference/gradingScipy.json" with { type: "json" };

const asCase = ({ model, passingPct }: { model: string; passingPct: readonly number[] }) => ({
  name: model as GradingModelName,
  curve: {
    points: scipy.sizesMm.map((sizeMm, index) => ({
      sizeMm,
      passingPct: passingPct[index],
      origin: "sieve" as const,
    })),
  },
});
const cases = scipy.cases.map(asCase);
const fredlund = cases.find(({ name }) => name === "fredlund")!;
const fit = fitGrading(fredlund.curve, "fredlund");

describe("one curve of 20 points", () => {
  for (const { name, curve } of cases) {
    bench(`fit ${name}`, () => {
      fitGrading(curve, name);
    });
  }
  bench("1,000 resamples of the four-parameter fit, residuals", () => {
    resampleFits(fit, { seed: 1, resamples: 1000 });
  });
  bench("1,000 resamples of the four-parameter fit, parametric", () => {
    resampleFits(fit, { seed: 1, resamples: 1000, method: "parametric" });
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
  const { versions, fitMs, timedOnly, thousandResamplesMs } = JSON.parse(run.stdout);
  const timed = [...cases, ...timedOnly.map(asCase)];
  const ours = ourLaps(timed);
  const rows: Row[] = timed.map(({ name }) => ({
    what: `fit ${name}`,
    ours: ours.fitMs[name],
    scipy: fitMs[name],
  }));
  const sum = (key: "ours" | "scipy") => rows.reduce((total, row) => total + row[key], 0);
  rows.push({ what: "the eight fits together", ours: sum("ours"), scipy: sum("scipy") });
  rows.push({
    what: "1,000 resamples",
    ours: ours.thousandResamplesMs,
    scipy: thousandResamplesMs,
  });
  console.log(`SciPy ${versions.scipy}, least_squares with bounds, one start; processor ms:`);
  console.table(rows.map((row) => ({ ...row, timesAsFast: row.scipy / row.ours })));
}

interface Row {
  readonly what: string;
  readonly ours: number;
  readonly scipy: number;
}

/** Our side of the table, measured on the built package: `npm run bench` builds it first. */
function ourLaps(timed: readonly (typeof cases)[number][]): {
  readonly fitMs: Readonly<Record<string, number>>;
  readonly thousandResamplesMs: number;
} {
  const script = fileURLToPath(new URL("./gradingLaps.mjs", import.meta.url));
  const run = spawnSync(process.execPath, [script], {
    encoding: "utf8",
    input: JSON.stringify({ cases: timed, resampled: "fredlund" }),
  });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout);
}
