/**
 * Breaks the code on purpose, one small fault at a time, and counts how many the tests notice.
 *
 *   npm run mutate                                    20 faults in each room below
 *   npm run mutate -- --rooms blend,tables --count 50 --seed 7
 *
 * Works on a copy in a temporary folder; the checkout is not touched. A fault counts as noticed when a
 * test of its room fails, else when any other test of the quick run does.
 */
import { spawnSync } from "node:child_process";
import {
  cpSync,
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
  blend: 0.9,
  strength: 0.9,
  batch: 0.8,
  study: 0.8,
  tables: 0.8,
};

const { values: options } = parseArgs({
  options: {
    rooms: { type: "string", default: Object.keys(GOALS).join(",") },
    count: { type: "string", default: "20" },
    seed: { type: "string", default: "1" },
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
    if (!ts.isNumericLiteral(node)) return [];
    const value = Number(node.text);
    return changed(node, source, `${Number.isInteger(value) ? value + 1 : value * 1.1}`, "number");
  },
  (node, source) => {
    const by = ts.isPropertyAccessExpression(node) ? twinOf(node.name.text) : undefined;
    return by === undefined ? [] : changed(node.name, source, by, "name");
  },
  (node, source) => (ts.isCallExpression(node) ? swaps(node.arguments, source, "arguments") : []),
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

function sourceFiles(folder) {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !/(^|\/)index\.ts$/.test(name))
    .map((name) => join(folder, name))
    .sort();
}

const copy = mkdtempSync(join(tmpdir(), "loambook-mutate-"));
process.on("exit", () => rmSync(copy, { recursive: true, force: true }));
for (const code of ["SIGINT", "SIGTERM"]) process.on(code, () => process.exit(130));
for (const name of readdirSync(ROOT)) {
  if (/^(\.git|node_modules|out|coverage)$/.test(name)) continue;
  cpSync(join(ROOT, name), join(copy, name), { recursive: true });
}
symlinkSync(join(ROOT, "node_modules"), join(copy, "node_modules"));

const QUICK = ["--project=pure", "--project=rooms"];
const fails = (...words) => {
  const cli = join(ROOT, "node_modules/vitest/vitest.mjs");
  const run = spawnSync(process.execPath, [cli, "run", "--bail=1", ...QUICK, ...words], {
    cwd: copy,
    encoding: "utf8",
    timeout: 300_000,
  });
  return run.status !== 0;
};

const rooms = options.rooms.split(",");
const score = [];
for (const room of rooms) {
  if (fails(`tests/${room}/`))
    throw new Error(`the tests of ${room} fail before any fault is made`);
  const all = sourceFiles(join(copy, "src", room)).flatMap((file) =>
    faultsOf(file, readFileSync(file, "utf8")),
  );
  const next = random(Number(options.seed));
  const picked = [];
  while (picked.length < Math.min(Number(options.count), all.length)) {
    picked.push(...all.splice(Math.floor(next() * all.length), 1));
  }
  const counts = { room, noticed: 0, missed: 0 };
  for (const { file, start, end, by, what } of picked) {
    const text = readFileSync(file, "utf8");
    writeFileSync(file, text.slice(0, start) + by + text.slice(end));
    const noticed = fails(`tests/${room}/`, "tests/examples") || fails();
    writeFileSync(file, text);
    counts[noticed ? "noticed" : "missed"] += 1;
    if (!noticed || options.list) {
      const line = text.slice(0, start).split("\n").length;
      const place = `${relative(copy, file)}:${line}`;
      console.log(
        `${noticed ? "noticed" : "MISSED"}  ${place}  ${what}: ${text.slice(start, end)} -> ${by}`,
      );
    }
  }
  score.push(counts);
}
for (const { room, noticed, missed } of score) {
  const share = noticed / (noticed + missed);
  const goal = GOALS[room] === undefined ? "" : `, goal ${100 * GOALS[room]} %`;
  console.log(
    `${room}: ${noticed} of ${noticed + missed} noticed, ${Math.round(100 * share)} %${goal}`,
  );
}
