import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { resultJsonSchema } from "../../src/cli/schemaCommand.js";
import { type Finding, hasErrors } from "../../src/findings/finding.js";
import { formatFindings } from "../../src/findings/format.js";
import * as loam from "../../src/index.js";
import { computeStudy } from "../../src/study/computeStudy.js";
import { readStudy } from "../../src/study/readStudy.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { renderAll } from "../../src/words/render.js";
import { ROOT } from "../support/runCli.js";
import { type Files, inFolder } from "./studies.js";

/** How a case came out. */
export interface Verdict {
  readonly outcome: "computed" | "refused";
  readonly findings: readonly Finding[];
  readonly result?: StudyResult;
  /** Promises that were broken; none is right. */
  readonly broken: readonly string[];
  /** Time of the processor. */
  readonly seconds: number;
}

/** Nobody waits longer for a study. */
const MAX_SECONDS = 10;
const MAX_HEAP = 2 ** 30;
/** What a person can still read; the limits of findings keep to it. */
const MAX_WORDS = 1_000_000;

let validate: ValidateFunction | undefined;

/** Reads and computes a study, and holds it against every promise. */
export async function judge(files: Files, { appendix = false } = {}): Promise<Verdict> {
  return inFolder(files, async (folder) => {
    const before = fingerprints(folder);
    const start = process.cpuUsage();
    const broken: string[] = [];
    let findings: readonly Finding[] = [];
    let result: StudyResult | undefined;
    try {
      const reading = await readStudy(folder);
      findings = reading.findings;
      if (reading.study) ({ findings, result } = computeStudy(reading.study, findings));
    } catch (problem) {
      broken.push(`crash: ${firstLines(problem)}`);
    }
    // Of the processor: a machine that others use too is no fault of the study's.
    const { user, system } = process.cpuUsage(start);
    const seconds = (user + system) / 1e6;
    if (seconds > MAX_SECONDS) broken.push(`slow: ${seconds.toFixed(1)} s`);
    const { heapUsed } = process.memoryUsage();
    if (heapUsed > MAX_HEAP) broken.push(`memory: ${Math.round(heapUsed / 2 ** 20)} MB`);
    if (!result && broken.length === 0 && !hasErrors(findings)) broken.push("no result, no error");
    if (result && hasErrors(findings)) broken.push("a result beside errors");
    broken.push(...words(findings, folder, String(files["study.yaml"])));
    if (result) broken.push(...numbers(result), ...schema(result));
    if (result && appendix) broken.push(...(await cells(result)));
    if (fingerprints(folder) !== before) broken.push("a file of the study was changed");
    return { outcome: result ? "computed" : "refused", findings, result, broken, seconds };
  });
}

function firstLines(problem: unknown): string {
  const { stack = String(problem) } = problem as Error;
  return stack
    .split("\n")
    .slice(0, 3)
    .map((line) => line.replaceAll(ROOT, "").trim())
    .join(" | ")
    .slice(0, 400);
}

function fingerprints(folder: string): string {
  const hash = createHash("sha256");
  for (const file of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    hash.update(`${file.parentPath}/${file.name}\n`);
    if (file.isFile()) hash.update(readFileSync(join(file.parentPath, file.name)));
  }
  return hash.digest("hex");
}

/** Findings say whole sentences in each language and name no folder of the machine. */
function words(findings: readonly Finding[], folder: string, entries: string): string[] {
  const broken: string[] = [];
  for (const locale of ["en", "es"] as const) {
    let text: string;
    try {
      text = formatFindings(findings, locale);
    } catch (problem) {
      broken.push(`findings cannot be said: ${firstLines(problem)}`);
      continue;
    }
    if (text.length > MAX_WORDS) broken.push(`findings of ${text.length} letters`);
    if (text.includes(folder)) broken.push("a finding names a folder of the machine");
    const ours = findings
      .map(({ message, expected, remedy }) =>
        JSON.stringify(renderAll([message, expected, remedy], locale)),
      )
      .join("\n");
    const [said, word] = /.{0,60}(\[object|undefined|\bInfinity\b).{0,30}/.exec(ours) ?? [];
    // A study may name something so itself.
    if (word !== undefined && !entries.includes(word) && !said?.includes(`“${word}`)) {
      broken.push(`a finding says ${said}`);
    }
  }
  return broken;
}

/** Every number of the result is one. */
function numbers(result: StudyResult): string[] {
  const broken: string[] = [];
  const look = (node: unknown, path: string): void => {
    if (typeof node === "number" && !Number.isFinite(node)) broken.push(`${path} is ${node}`);
    if (typeof node !== "object" || node === null) return;
    for (const [key, below] of Object.entries(node))
      look(below, /^\d+$/.test(key) ? `${path}.*` : `${path}.${key}`);
  };
  look(result, "result");
  return [...new Set(broken)];
}

function schema(result: StudyResult): string[] {
  if (!validate) {
    const ajv = new Ajv2020({ allErrors: true, allowUnionTypes: true });
    (addFormats as unknown as typeof addFormats.default)(ajv);
    validate = ajv.compile(resultJsonSchema());
  }
  validate(JSON.parse(JSON.stringify(result)));
  const errors = (validate.errors ?? []).map(
    ({ instancePath, message, params }) =>
      `schema: ${instancePath.replace(/\/\d+/g, "/*")} ${message} ${JSON.stringify(params)}`,
  );
  return [...new Set(errors)].slice(0, 5);
}

const AsyncFunction = (async () => {}).constructor as new (
  ...names: string[]
) => (...values: unknown[]) => Promise<void>;

/** The code of the appendix's notebook in one piece, without its first line, for all annexes. */
function appendixCode(): string {
  const notebook = JSON.parse(readFileSync(`${ROOT}notebooks/permit-appendix.ipynb`, "utf8"));
  const code = (notebook.cells as { cell_type: string; source: string | string[] }[])
    .filter(({ cell_type }) => cell_type === "code")
    .map(({ source }) => [source].flat().join(""));
  return code
    .join("\n")
    .replace(/^import .*$/gm, "")
    .replace('let annexes = "";', 'let annexes = "all";');
}

let appendixCells: ((...values: unknown[]) => Promise<void>) | undefined;

/** Runs the cells of the appendix with a result, and hands over everything that they show. */
export async function showAppendix(
  result: StudyResult,
  show: (shown: unknown) => void,
): Promise<void> {
  appendixCells ??= new AsyncFunction("loam", appendixCode());
  await appendixCells({ ...loam, openStudy: () => result, showIn: () => show, show });
}

/** Words that a sum or a text gone wrong leaves on a page. */
const NO_VALUE = ["\\[object Object", "undefined", "\\bNaN\\b", "\\bInfinity\\b"];

/** Every table and figure of the appendix can be made, and says no number that is none. */
async function cells(result: StudyResult): Promise<string[]> {
  const broken: string[] = [];
  // A material may be called NaN: what the study itself says is the user's own.
  const own = JSON.stringify([result.config, result.sheets]);
  const strange = NO_VALUE.filter((word) => !new RegExp(word).test(own)).join("|");
  const wrongIn = new RegExp(`.{0,60}(${strange || "$^"}).{0,30}`);
  try {
    await showAppendix(result, (block) => {
      const text = JSON.stringify(renderAll(block, "es")) ?? "";
      const wrong = wrongIn.exec(text);
      if (wrong) broken.push(`the appendix says ${wrong[0]}`);
    });
  } catch (problem) {
    broken.push(`appendix: ${firstLines(problem)}`);
  }
  return broken;
}
