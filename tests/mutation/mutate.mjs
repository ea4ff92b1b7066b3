/**
 * Breaks the code on purpose, one small fault at a time, and counts how many the tests notice.
 *
 *   npm run mutate                                    20 faults in each room below
 *   npm run mutate -- --rooms blend,tables --count 50 --seed 7 --jobs 2
 *   npm run mutate -- --rooms soil --near             only the room's own tests and the examples
 *
 * Works on copies in temporary folders; the checkout is not touched. A fault counts as noticed when a
 * test of its room fails, else one of the examples in the docstrings, else a test of the rooms that use it.
 */
import { spawn } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const ts = createRequire(import.meta.url)("@tslab/typescript-for-tslab");

/** Rooms and the share of faults that the quick run is to notice. */
const GOALS = {
  numerics: 0.9,
  grading: 0.9,
  soil: 0.9,
  guidance: 0.9,
  blend: 0.9,
  strength: 0.9,
  batch: 0.8,
  study: 0.8,
  figures: 0.8,
  tables: 0.8,
};

const { values: options } = parseArgs({
  options: {
    rooms: { type: "string", default: Object.keys(GOALS).join(",") },
    count: { type: "string", default: "20" },
    seed: { type: "string", default: "1" },
    jobs: { type: "string", default: "1" },
    near: { type: "boolean", default: false },
    list: { type: "boolean", default: false },
  },
});

const OPERATORS = new Map([
  ["+", "-"],
  ["-", "+"],
  ["*", "/"],
  ["/", "*"],
  ["<", "<="],
  ["<=", "<"],
  [">", ">="],
  [">=", ">"],
  ["&&", "||"],
  ["||", "&&"],
  ["===", "!=="],
  ["!==", "==="],
]);

/** Names that are easily taken for each other. */
const TWINS = [
  ["low", "high"],
  ["min", "max"],
  ["lower", "upper"],
  ["dry", "wet"],
  ["d30", "d60"],
  ["first", "last"],
  ["mean", "sd"],
  ["length", "width"],
];

function twinOf(name) {
  // A list has no width.
  if (name === "length") return undefined;
  for (const [a, b] of TWINS) {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ]) {
      const rest = name.slice(from.length);
      if (name.startsWith(from) && (rest === "" || /^[A-Z0-9]/.test(rest))) return to + rest;
    }
  }
  return undefined;
}

/** Arguments or elements that stand for something, so that two of them can be taken for each other. */
function plain(node) {
  return ts.isIdentifier(node) || ts.isPropertyAccessExpression(node) || ts.isCallExpression(node);
}

/** Two neighbours exchanged. */
function swaps(nodes, source, what) {
  const found = [];
  for (let index = 1; index < nodes.length; index += 1) {
    const [a, b] = [nodes[index - 1], nodes[index]];
    if (!plain(a) || !plain(b) || a.getText(source) === b.getText(source)) continue;
    const between = source.text.slice(a.getEnd(), b.getStart(source));
    const by = b.getText(source) + between + a.getText(source);
    found.push({ start: a.getStart(source), end: b.getEnd(), by, what });
  }
  return found;
}

const changed = (node, source, by, what) => [
  { start: node.getStart(source), end: node.getEnd(), by, what },
];

/** Kinds of fault: what a node can be turned into. */
const FAULTS = [
  (node, source) => {
    if (!ts.isBinaryExpression(node)) return [];
    const by = OPERATORS.get(node.operatorToken.getText(source));
    return by === undefined ? [] : changed(node.operatorToken, source, by, "operator");
  },
  (node, source) => {
    if (!ts.isNumericLiteral(node) || isTolerance(node, source)) return [];
    const value = Number(node.text);
    return changed(node, source, `${Number.isInteger(value) ? value + 1 : value * 1.1}`, "number");
  },
  (node, source) => {
    const by = ts.isPropertyAccessExpression(node) ? twinOf(node.name.text) : undefined;
    // A name that the file never uses would not compile.
    const isName = by !== undefined && new RegExp(`\\b${by}\\b`).test(source.text);
    return isName ? changed(node.name, source, by, "name") : [];
  },
  (node, source) => {
    if (!ts.isCallExpression(node)) return [];
    // Either way round it is the same.
    if (/^Math\.(max|min|hypot)$|^dot$/.test(node.expression.getText(source))) return [];
    return swaps(node.arguments, source, "arguments");
  },
  (node, source) =>
    ts.isArrayLiteralExpression(node) ? swaps(node.elements, source, "elements") : [],
  (node, source) => {
    if (!ts.isIfStatement(node)) return [];
    const { expression } = node;
    return changed(expression, source, `!(${expression.getText(source)})`, "condition");
  },
  (node, source) => {
    if (node.kind === ts.SyntaxKind.TrueKeyword) return changed(node, source, "false", "boolean");
    if (node.kind === ts.SyntaxKind.FalseKeyword) return changed(node, source, "true", "boolean");
    return [];
  },
];

/** Types, imports and the words of an exception say nothing that a test should hold. */
function isLeftAlone(node) {
  return (
    ts.isImportDeclaration(node) ||
    ts.isExportDeclaration(node) ||
    ts.isInterfaceDeclaration(node) ||
    ts.isTypeAliasDeclaration(node) ||
    ts.isTypeNode(node) ||
    ts.isThrowStatement(node)
  );
}

/** Numbers that steer how exactly or how long something is sought, not what is found. */
function isTolerance(node, source) {
  const value = Math.abs(Number(node.text));
  if (value > 0 && value <= 1e-6) return true;
  let { parent } = node;
  while (parent !== undefined && ts.isBinaryExpression(parent)) parent = parent.parent;
  const name = parent?.name?.getText(source) ?? "";
  return /tolerance|iterations|halvings/i.test(name);
}

/** Every small fault that a file can be given: what is replaced, from where to where, by what. */
function faultsOf(file, text) {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const found = [];
  const visit = (node) => {
    if (isLeftAlone(node)) return;
    for (const fault of FAULTS) {
      for (const one of fault(node, source)) found.push({ file, ...one });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
function random(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function filesBelow(folder, ending) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(ending))
    .map((name) => join(folder, name))
    .sort();
}

const sourceFiles = (room) =>
  filesBelow(join(ROOT, "src", room), ".ts").filter((file) => !/[/\\]index\.ts$/.test(file));

/** Test folders of the rooms that import from this one, and of the study for the rooms below it. */
function testsOfUsers(room) {
  const users = readdirSync(join(ROOT, "src")).filter(
    (name) =>
      !/^(cli|notebook|report|index\.ts)$/.test(name) &&
      name !== room &&
      existsSync(join(ROOT, "tests", name)) &&
      sourceFiles(name).some((file) =>
        new RegExp(`from "(\\.\\./)+${room}/`).test(readFileSync(file, "utf8")),
      ),
  );
  const below = /^(tables|study|figures|workshop)$/.test(room) ? [] : ["study"];
  const folders = [...new Set([...users, ...below])].map((name) => `tests/${name}/`);
  // And whoever asks it directly, such as a sheet's test that works out what was read.
  const others = filesBelow(join(ROOT, "tests"), ".test.ts")
    .filter((file) => readFileSync(file, "utf8").includes(`/src/${room}/`))
    .map((file) => relative(ROOT, file))
    .filter((file) => !/^tests.(cli|notebook|report|package)./.test(file))
    .filter((file) => !file.endsWith(".slow.test.ts") && !file.startsWith(`tests/${room}/`))
    .filter((file) => !folders.some((folder) => file.startsWith(folder)));
  return [...folders, ...others];
}

/** A copy of the tree for one job. */
function copyTree() {
  const copy = mkdtempSync(join(tmpdir(), "loambook-mutate-"));
  process.on("exit", () => rmSync(copy, { recursive: true, force: true }));
  for (const name of readdirSync(ROOT)) {
    if (/^(\.git|node_modules|out|coverage)$/.test(name)) continue;
    cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  }
  symlinkSync(join(ROOT, "node_modules"), join(copy, "node_modules"));
  return copy;
}

/** Whether a test of these files or folders fails, and the seconds that it took. A run without end fails. */
function run(copy, tests, limitSeconds, ...more) {
  const cli = join(ROOT, "node_modules/vitest/vitest.mjs");
  const quick = ["--bail=1", "--project=rooms", "--testTimeout=300000"];
  const started = Date.now();
  const child = spawn(process.execPath, [cli, "run", ...quick, ...more, ...tests], {
    cwd: copy,
    stdio: "ignore",
    detached: true,
  });
  running.add(child);
  const timer = setTimeout(() => endOf(child), 1000 * limitSeconds);
  return new Promise((resolve) => {
    child.on("close", (status) => {
      clearTimeout(timer);
      running.delete(child);
      resolve({ fails: status !== 0, seconds: (Date.now() - started) / 1000 });
    });
  });
}

const running = new Set();
/** Ends a run with the workers that it started. */
function endOf(child) {
  try {
    process.kill(-child.pid, "SIGKILL");
  } catch {
    // It has just ended.
  }
}
process.on("exit", () => running.forEach(endOf));
for (const code of ["SIGINT", "SIGTERM"]) process.on(code, () => process.exit(130));

/** The test files of a room, those that are quickly done apart from those that take long. */
async function testsOf(copy, room) {
  const report = join(copy, "mutate-report.json");
  const whole = await run(
    copy,
    [`tests/${room}/`],
    600,
    "--reporter=json",
    `--outputFile=${report}`,
  );
  if (whole.fails) throw new Error(`the tests of ${room} fail before any fault is made`);
  const { testResults } = JSON.parse(readFileSync(report, "utf8"));
  const timed = testResults
    .map(({ name, startTime, endTime }) => ({
      name: relative(copy, name),
      seconds: (endTime - startTime) / 1000,
    }))
    .sort((a, b) => a.seconds - b.seconds);
  const total = timed.reduce((sum, { seconds }) => sum + seconds, 0);
  let sum = 0;
  const quick = timed.filter(({ seconds }) => {
    sum += seconds;
    return sum <= Math.max(3, total / 4);
  });
  const slow = timed.slice(quick.length);
  const stages = [quick, slow].filter((files) => files.length > 0);
  const users = options.near ? [] : testsOfUsers(room);
  const others = [["tests/examples"], users].filter((tests) => tests.length > 0);
  for (const tests of others) {
    if ((await run(copy, tests, 900)).fails) {
      throw new Error(`${tests.join(", ")} fail before any fault is made`);
    }
  }
  return {
    stages: [...stages.map((files) => files.map(({ name }) => name)), ...others],
    limit: 120 + 4 * whole.seconds,
  };
}

/** Whether a test fails, the quickest asked first. */
async function isNoticed(copy, { stages, limit }) {
  for (const tests of stages) {
    if ((await run(copy, tests, limit)).fails) return true;
  }
  return false;
}

function pick(room) {
  const all = sourceFiles(room).flatMap((file) =>
    faultsOf(relative(ROOT, file), readFileSync(file, "utf8")),
  );
  const next = random(Number(options.seed));
  const picked = [];
  while (picked.length < Number(options.count) && all.length > 0) {
    picked.push(...all.splice(Math.floor(next() * all.length), 1));
  }
  return picked;
}

async function scoreOf(room, copies) {
  const [tests] = await Promise.all(copies.map((copy) => testsOf(copy, room)));
  const waiting = pick(room);
  const counts = { room, noticed: 0, missed: 0 };
  const work = async (copy) => {
    for (let fault = waiting.shift(); fault !== undefined; fault = waiting.shift()) {
      const { file, start, end, by, what } = fault;
      const path = join(copy, file);
      const text = readFileSync(path, "utf8");
      writeFileSync(path, text.slice(0, start) + by + text.slice(end));
      const noticed = await isNoticed(copy, tests);
      writeFileSync(path, text);
      counts[noticed ? "noticed" : "missed"] += 1;
      if (noticed && !options.list) continue;
      const line = text.slice(0, start).split("\n").length;
      const was = text.slice(start, end);
      console.log(`${noticed ? "noticed" : "MISSED"}  ${file}:${line}  ${what}: ${was} -> ${by}`);
      console.log(`        ${text.split("\n")[line - 1].trim()}`);
    }
  };
  await Promise.all(copies.map(work));
  return counts;
}

/** Said as soon as a room is done: the run of a later one may end early. */
function tell({ room, noticed, missed }) {
  const share = noticed / (noticed + missed);
  const goal = GOALS[room] === undefined ? "" : `, goal ${100 * GOALS[room]} %`;
  console.log(
    `${room}: ${noticed} of ${noticed + missed} noticed, ${Math.round(100 * share)} %${goal}`,
  );
}

const copies = Array.from({ length: Number(options.jobs) }, copyTree);
for (const room of options.rooms.split(",")) tell(await scoreOf(room, copies));
