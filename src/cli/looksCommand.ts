import { readFileSync, statSync } from "node:fs";
import { basename } from "node:path";
import { blockText } from "../blocks/partText.js";
import { type Finding, hasErrors } from "../findings/finding.js";
import { formatFindings } from "../findings/format.js";
import { readGrid } from "../lab/sheet/grid.js";
import { readTrials } from "../lab/trials.js";
import { writeLooks } from "../report/writeLooks.js";
import { compareTrials, trialFindings } from "../strength/trials.js";
import { openStudy, openWithSheets } from "../study/openStudy.js";
import { readPhotographs, seenTrials } from "../study/photographs.js";
import { trialDifferencesTable, trialsTable } from "../tables/trialBlocks.js";
import { type Call, CommandError, EXIT, parseCall } from "./call.js";
import { outFolder, writtenAt } from "./output.js";

/** `loambook looks`: what was seen on trial blocks, side by side. */
export async function looksCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("looks", words, { texts: ["out"], flags: ["json", "replace"] }, 1);
  const { place } = call;
  if (call.text("out") !== undefined) return writePages(place, call);
  const { looks, findings, locale, units } = await looksAt(place);
  const differences = compareTrials(looks);
  if (call.flag("json")) {
    process.stdout.write(`${JSON.stringify({ looks, differences, findings }, undefined, 2)}\n`);
    return EXIT.ok;
  }
  const blocks = [trialsTable(looks, units)];
  if (differences.length > 0) blocks.push(trialDifferencesTable(differences));
  const tables = blocks.map((block) => `${blockText(block, locale)}\n\n`).join("");
  process.stdout.write(`${tables}${formatFindings(findings, locale)}\n`);
  return EXIT.ok;
}

/** HTML and PDF with the photographs beside each other. */
async function writePages(folder: string, call: Call): Promise<number> {
  const { study, result } = await openWithSheets(folder);
  const trials = seenTrials(study.trials);
  if (trials.length === 0) throw nothingSeen(folder);
  const { photographs } = await readPhotographs(folder, trials);
  const options = { outFolder: outFolder(call, "looks"), replace: call.flag("replace") };
  const written = await writtenAt(options.outFolder, writeLooks(result, photographs, options));
  const told = [...ofLooks(result.findings), ...written.findings];
  process.stdout.write(
    `${formatFindings(told, result.config.language)}\n\n${written.paths.join("\n")}\n`,
  );
  return EXIT.ok;
}

function nothingSeen(place: string): CommandError {
  return new CommandError(
    EXIT.badInput,
    `${place} names no sheet of what was seen on its blocks: put it under “looks” of “tested” or of a trial.`,
  );
}

/** Of all trials of a study, or of one sheet. */
async function looksAt(place: string) {
  const entry = statSync(place, { throwIfNoEntry: false });
  if (!entry) throw new CommandError(EXIT.badInput, `There is nothing at ${place}.`);
  if (!entry.isDirectory()) return looksOfSheet(place);
  const { trials, config, findings } = await openStudy(place);
  const looks = trials.flatMap((trial) => trial.looks ?? []);
  if (looks.length === 0) throw nothingSeen(place);
  return { looks, findings: ofLooks(findings), locale: config.language, units: config.units };
}

/** What `trialFindings` and `readPhotographs` may say. */
const LOOK_CODES = new Set([
  "repeated-trial",
  "unknown-colour",
  "colour-before-dry",
  "trial-not-strength",
  "no-photograph",
]);

const ofLooks = (findings: readonly Finding[]) =>
  findings.filter(({ code }) => LOOK_CODES.has(code));

async function looksOfSheet(path: string) {
  const file = basename(path);
  const { grid, findings } = await readGrid(file, readFileSync(path));
  const reading = grid && readTrials(grid);
  const record = reading?.record;
  const found = [
    ...findings,
    ...(reading?.findings ?? []),
    ...(record ? trialFindings(record, file) : []),
  ];
  if (!record || hasErrors(found)) throw new CommandError(EXIT.badInput, formatFindings(found));
  return { looks: record, findings: found, locale: "en", units: "SI" } as const;
}
