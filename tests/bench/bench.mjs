// Times ours beside the usual way, in turn, in one run on one machine, and writes docs/bench.md.
// Processor time, which other work on the machine hardly moves; of commands with all that they start.
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { designBlend } from "../../dist/blend/index.js";
import { fitGrading, resampleFits } from "../../dist/grading/index.js";
import { constrainedLeastSquares, createRandom } from "../../dist/numerics/index.js";
import { fitStrength, strengthBands } from "../../dist/strength/index.js";
import { mixPageBench } from "./mixPage.mjs";
import { quoteOf, README_LINE } from "./quote.mjs";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const PYTHON = "/usr/bin/python3";
const rounds = Number(process.env.LOAMBOOK_ROUNDS ?? 5);
const work = mkdtempSync(join(tmpdir(), "loambook-bench-"));
const cli = [process.execPath, join(ROOT, "bin", "loambook.cjs")];

const python = existsSync(PYTHON)
  ? spawn(PYTHON, [join(ROOT, "tests", "bench", "usual.py")], {
      stdio: ["pipe", "pipe", "inherit"],
      env: { ...process.env, OPENBLAS_NUM_THREADS: "1", OMP_NUM_THREADS: "1" },
    })
  : undefined;
if (python === undefined) throw new Error(`${PYTHON} is not there: it measures the commands.`);
const answers = createInterface({ input: python.stdout })[Symbol.asyncIterator]();
const answer = async () => JSON.parse((await answers.next()).value);
const versions = await answer();
async function usual(task) {
  python.stdin.write(`${JSON.stringify(task)}\n`);
  return answer();
}

function spent() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Seconds of processor time of one call, warm. */
function ours(run, times) {
  const cold = spent();
  while (spent() - cold < 1) run();
  const before = spent();
  for (let round = 0; round < times; round++) run();
  return { cpu: (spent() - before) / times };
}

const { sizesMm: measuredMm, cases } = JSON.parse(
  readFileSync(join(ROOT, "tests", "reference", "gradingScipy.json"), "utf8"),
);
const { passingPct } = cases.find(({ model }) => model === "fredlund");
const curve = {
  points: measuredMm.map((sizeMm, index) => ({
    sizeMm,
    passingPct: passingPct[index],
    origin: "sieve",
  })),
};
const fit = fitGrading(curve, "fredlund");
const sizesMm = Array.from({ length: 20 }, (_, i) => 0.002 * 40_000 ** (i / 19));
const materials = [0.01, 0.3, 1, 5, 20].map((middle, j) => {
  const points = sizesMm.map((sizeMm) => ({
    sizeMm,
    passingPct: 100 / (1 + (middle / sizeMm) ** 1.5),
    origin: "sieve",
  }));
  points[19].passingPct = 100;
  return { id: `m${j}`, curve: { points }, minSharePct: 0, maxSharePct: 100 };
});
const points = sizesMm.map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 80) ** 0.35 }));
const programme = {
  matrix: sizesMm.map((_, i) => materials.map(({ curve }) => curve.points[i].passingPct)),
  target: points.map((point) => point.passingPct),
  equalities: { matrix: [[1, 1, 1, 1, 1]], target: [1] },
  lower: [0, 0, 0, 0, 0],
  upper: [1, 1, 1, 1, 1],
};
const random = createRandom(60);
const blocks = Array.from({ length: 60 }, (_, index) => {
  const cementPct = 4 + 1.5 * (index % 5);
  const strengthMpa = 0.3 + 0.35 * cementPct + 0.25 * random.normal();
  return { id: `B${index}`, cementPct, strengthMpa, ageDays: 28, row: index + 2 };
});
const line = () => fitStrength(blocks, { model: "linear", ageDays: 28 });
const bands = () => strengthBands(line());

let made = 0;
const study = join(ROOT, "data-examples", "reading-room");
const kernels = join(work, "jupyter");
const chromium = ["chromium", "chromium-browser", "google-chrome"]
  .map((name) => `/usr/bin/${name}`)
  .find(existsSync);
const usualAppendix = [
  `jupyter nbconvert --execute --to html --output-dir "$OUT" --output usual "$NOTEBOOK"`,
  `"${chromium}" --headless --no-sandbox --disable-gpu --print-to-pdf="$OUT/usual.pdf" "file://$OUT/usual.html"`,
].join(" && ");

/** Seconds until the first line of a command. */
async function untilFirstLine(words) {
  const start = performance.now();
  const child = spawn(words[0], words.slice(1), { stdio: ["ignore", "pipe", "inherit"] });
  const first = await new Promise((resolve) => child.stdout.once("data", resolve));
  const wall = (performance.now() - start) / 1000;
  child.stdout.resume();
  await new Promise((resolve) => child.once("close", resolve));
  return first ? wall : Number.NaN;
}

await usual({ run: [...cli, "kernel", "--folder", kernels] });
const mixPage = await mixPageBench({ cli, browser: chromium, example: study, work });
const ROWS = [
  {
    what: "appendix of the SI example, cold, as HTML and PDF",
    beside: "the same notebook executed and converted by Jupyter's tools, printed by Chromium",
    rounds: Math.min(rounds, 3),
    ours: () => usual({ run: [...cli, "appendix", study, "--out", join(work, `ours-${++made}`)] }),
    usual: () =>
      usual({
        run: ["sh", "-c", usualAppendix],
        env: {
          JUPYTER_PATH: kernels,
          OUT: join(work, `usual-${made}`),
          NOTEBOOK: join(ROOT, "notebooks", "permit-appendix.ipynb"),
        },
      }),
  },
  {
    what: "until the appendix tells what is known",
    ours: async () => ({
      wall: await untilFirstLine([
        ...cli,
        "appendix",
        study,
        "--out",
        join(work, `first-${++made}`),
      ]),
    }),
  },
  { what: "compute of it, cold", ours: () => usual({ run: [...cli, "compute", study] }) },
  {
    what: "mix page of five materials with 250 draws, from its file until it is shown",
    ours: () => mixPage.open(),
  },
  {
    what: "one step of a slider on it: blend, verdicts, strength and charts, our work",
    ours: () => mixPage.move("ScriptDuration"),
  },
  {
    what: "the same with Chromium's layout and paint",
    ours: () => mixPage.move("TaskDuration"),
  },
  { what: "--help, cold", ours: () => usual({ run: [...cli, "--help"] }) },
  {
    what: "four-parameter fit of a curve of 20 points, the start sought, with errors and warnings",
    beside: "SciPy least_squares with bounds from a start at hand",
    ours: () => ours(() => fitGrading(curve, "fredlund"), 500),
    usual: () => usual({ name: "fit", times: 60 }),
  },
  {
    what: "the same from that start",
    beside: "the same",
    ours: () => ours(() => fitGrading(curve, "fredlund", [[0.6, 2, 1, 0.001]]), 1000),
    usual: () => usual({ name: "fit", times: 60 }),
  },
  {
    what: "1,000 resampled fits of it",
    beside: "the same in SciPy",
    ours: () => ours(() => resampleFits(fit, { seed: 1, resamples: 1000 }), 3),
    usual: () => usual({ name: "resample", times: 1 }),
  },
  {
    what: "blend of 5 materials by 20 sizes, from their curves to the report",
    beside: "SciPy SLSQP on the finished matrix",
    ours: () => ours(() => designBlend({ materials, target: { kind: "curve", points } }), 3000),
    usual: () => usual({ name: "blend", times: 200 }),
  },
  {
    what: "its shares alone, on the finished matrix",
    beside: "SciPy SLSQP",
    ours: () => ours(() => constrainedLeastSquares(programme), 3000),
    usual: () => usual({ name: "blend", times: 200 }),
  },
  {
    what: "line of 60 blocks with all bands at 61 contents, the tolerance bound among them",
    beside: "statsmodels OLS with both its bands, SciPy's noncentral t",
    ours: () => ours(bands, 1000),
    usual: () => usual({ name: "all-bands", times: 5 }),
  },
  {
    what: "the line alone, with intervals, leverages, studentised residuals and Cook's distances",
    beside: "statsmodels OLS with its intervals and influences",
    ours: () => ours(line, 3000),
    usual: () => usual({ name: "line", times: 100 }),
  },
];

const sorted = (values) => values.toSorted((a, b) => a - b);
const median = (values) => sorted(values)[Math.floor(values.length / 2)];
const seconds = (value) => {
  if (value === undefined || Number.isNaN(value)) return "–";
  return value < 0.1 ? `${(1000 * value).toPrecision(3)} ms` : `${value.toPrecision(3)} s`;
};
/** Ours to theirs: below 1 as a part, above as so many times as fast. */
function ratios(mine, theirs) {
  const each = mine.map((value, at) => value / theirs[at]);
  const faster = median(each) < 0.2;
  const shown = sorted(each.map((ratio) => (faster ? 1 / ratio : ratio)));
  const spread = `${shown[0].toPrecision(2)} to ${shown.at(-1).toPrecision(2)}`;
  const middle = median(shown).toPrecision(2);
  return faster ? `${middle} times as fast (${spread})` : `${middle} of its time (${spread})`;
}

const lines = [];
const loads = [loadavg()[0]];
for (const row of ROWS) {
  const [mine, theirs] = [[], []];
  let failed;
  for (let round = 0; round < (row.rounds ?? rounds); round++) {
    const own = await row.ours();
    if (own.failed) throw new Error(`${row.what}: ${own.failed}`);
    mine.push(own);
    if (row.usual === undefined || failed) continue;
    const other = await row.usual();
    failed = other.failed;
    if (!failed) theirs.push(other);
  }
  loads.push(loadavg()[0]);
  if (failed) process.stderr.write(`${row.beside}: ${failed}\n`);
  for (const [key, name] of [
    ["cpu", "processor time"],
    ["wall", "time"],
  ]) {
    const own = mine.flatMap((each) => each[key] ?? []);
    const other = theirs.flatMap((each) => each[key] ?? []);
    // of a calculation the two are the same
    if (own.length === 0) continue;
    const cells = [
      `${row.what}, ${name}`,
      seconds(median(own)),
      row.beside === undefined ? "" : row.beside,
      row.usual === undefined ? "" : seconds(median(other)),
      other.length < own.length ? "" : ratios(own, other),
    ];
    lines.push(`| ${cells.join(" | ")} |`);
    process.stdout.write(`${lines.at(-1)}\n`);
  }
}
python.stdin.end();
await mixPage.close();
rmSync(work, { recursive: true, force: true });
const { missing, ...tools } = versions;
const named = Object.entries(tools).map(([name, version]) => `${name} ${version}`);
const text = `# How long it takes

Made by \`npm run bench\`, which runs ours and the usual way in turn and writes this page. Medians of ${rounds} rounds (of the appendix ${Math.min(rounds, 3)}); in brackets the least and the largest ratio of one round. Processor time counts all that a command starts, and of the mix page its main thread in Chromium; calculations are warm.

Measured with Node.js ${process.versions.node}${named.length > 0 ? `, ${named.join(", ")}` : ""} on ${availableParallelism()} processors (${cpus()[0]?.model.trim()}), with ${Math.min(...loads).toFixed(1)} to ${Math.max(...loads).toFixed(1)} programs waiting for them: above their number times are longer than on a quiet machine, and so, less, is processor time.

| what | ours | the usual way | its time | ours to it |
| --- | --- | --- | --- | --- |
${lines.join("\n")}
`;
writeFileSync(join(ROOT, "docs", "bench.md"), text);
const readme = readFileSync(join(ROOT, "README.md"), "utf8");
writeFileSync(
  join(ROOT, "README.md"),
  readme.replace(README_LINE, () => quoteOf(text)),
);
process.stdout.write("\nWritten: docs/bench.md, and what README.md quotes of it\n");
