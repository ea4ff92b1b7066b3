import { readFileSync, statSync } from "node:fs";
import { basename } from "node:path";
import { blockText } from "../blocks/partText.js";
import { type Finding, hasErrors } from "../findings/finding.js";
import { formatFindings } from "../findings/format.js";
import { readGrid } from "../lab/sheet/grid.js";
import { readTrials, type WorkshopTrial } from "../lab/trials.js";
import { compareTrials, trialFindings } from "../strength/trials.js";
import { openStudy } from "../study/openStudy.js";
import { trialDifferencesTable, trialsTable } from "../tables/trialBlocks.js";
import type { Locale } from "../words/render.js";
import { CommandError, EXIT, parseCall } from "./call.js";

/** `loambook looks`: what was seen on trial blocks, side by side. */
export async function looksCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("looks", words, { json: { type: "boolean" } }, true);
  const { looks, findings, locale } = await looksAt(call.place as string);
  const differences = compareTrials(looks);
  if (call.flag("json")) {
    process.stdout.write(`${JSON.stringify({ looks, differences, findings }, undefined, 2)}\n`);
    return EXIT.ok;
  }
  const blocks = [
    trialsTable(looks),
    ...(differences.length > 0 ? [trialDifferencesTable(differences)] : []),
  ];
  const shown = [
    ...blocks.map((block) => blockText(block, locale)),
    formatFindings(findings, locale),
  ];
  process.stdout.write(`${shown.join("\n\n")}\n`);
  return EXIT.ok;
}

interface SeenBlocks {
  readonly looks: readonly WorkshopTrial[];
  readonly findings: readonly Finding[];
  readonly locale: Locale;
}

/** Of all trials of a study, or of one sheet. */
async function looksAt(place: string): Promise<SeenBlocks> {
  const entry = statSync(place, { throwIfNoEntry: false });
  if (!entry) throw new CommandError(EXIT.badInput, `There is nothing at ${place}.`);
  if (!entry.isDirectory()) return looksOfSheet(place);
  const { trials, config, findings } = await openStudy(place);
  const looks = trials.flatMap((trial) => trial.looks ?? []);
  if (looks.length === 0) {
    throw new CommandError(
      EXIT.badInput,
      `${place} names no sheet of what was seen on its blocks: put it under “looks” of “tested” or of a trial.`,
    );
  }
  const codes = new Set(LOOK_CODES);
  return {
    looks,
    findings: findings.filter(({ code }) => codes.has(code)),
    locale: config.language,
  };
}

/** What `trialFindings` may say. */
const LOOK_CODES = ["repeated-trial", "unknown-colour", "colour-before-dry", "trial-not-strength"];

async function looksOfSheet(path: string): Promise<SeenBlocks> {
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
  return { looks: record, findings: found, locale: "en" };
}
