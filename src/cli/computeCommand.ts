import { existsSync } from "node:fs";
import type { StudyConfig } from "../entries/studyConfig.js";
import { countFindings } from "../findings/format.js";
import { formatFixed, formatQuantity } from "../quantities/format.js";
import { openStudy } from "../study/openStudy.js";
import { stageTitle } from "../study/stages.js";
import { studyTitle } from "../study/study.js";
import type { BlendStudy, StudyResult } from "../study/studyResult.js";
import { statisticName } from "../tables/strength.js";
import { say, type Text } from "../words/message.js";
import { render } from "../words/render.js";
import { CommandError, EXIT, parseCall } from "./call.js";
import { writeNewFile } from "./output.js";

/** `loambook compute`: the study result, as a summary or as JSON at full precision. */
export async function computeCommand(words: readonly string[]): Promise<number> {
  const options = { json: { type: "boolean" }, out: { type: "string" } } as const;
  const call = parseCall("compute", words, options, true);
  const out = call.text("out");
  if (out !== undefined && existsSync(out)) {
    throw new CommandError(EXIT.output, `${out} exists already. Give another name.`);
  }
  const result = await openStudy(call.place as string);
  const output = call.flag("json")
    ? `${JSON.stringify(result, undefined, 2)}\n`
    : summariseResult(result);
  if (out === undefined) process.stdout.write(output);
  else {
    await writeNewFile(out, output);
    process.stdout.write(`Written: ${out}\n`);
  }
  return EXIT.ok;
}

/** A study result in a page for the screen, in the study's language: what is known, and what would tell the rest. */
export function summariseResult(result: StudyResult): string {
  const { config, blend, life, findings } = result;
  const lines: Text[] = [studyTitle(config)];
  if (config.invented) lines.push(say`(invented data)`);
  lines.push("");
  if (blend) lines.push(...blendLines(config, blend));
  if (life) lines.push(life.message);
  lines.push(...testLines(result));
  const open = result.stages.flatMap(({ stage, needs }) =>
    needs === undefined ? [] : [say`  ${stageTitle(stage)}: ${needs}`],
  );
  if (open.length > 0) lines.push("", say`Not known yet, and what would tell it:`, ...open);
  lines.push(
    "",
    say`Findings: ${countFindings(findings)} (loambook check shows them)`,
    say`The numbers do not replace a licensed engineer, a laboratory or the local code.`,
  );
  return `${lines.map((line) => render(line, config.language)).join("\n")}\n`;
}

function blendLines({ materials, language }: StudyConfig, blend: BlendStudy): Text[] {
  const nameOf = (id: string) => materials.find((material) => material.id === id)?.name ?? id;
  return [
    say`Blend, percent of the dry mass of soil and aggregate:`,
    ...blend.shares.map(({ id, sharePct }) => {
      if (sharePct === 0) return say`  not used  ${nameOf(id)}`;
      return `  ${render(formatFixed(sharePct, 1), language).padStart(5)} %  ${nameOf(id)}`;
    }),
    say`  differs from the target by ${formatFixed(blend.rmsDifferencePct, 1)} points (root mean square)`,
    "",
  ];
}

/** What compaction and blocks tell of the mix. */
function testLines({ config, compaction, strength, life }: StudyResult): Text[] {
  const { units } = config;
  const { requirement } = config.strength;
  const lines: Text[] = [];
  const tested = life?.state === "tested";
  if (tested && compaction?.peak) {
    const { maximumDryDensityKgM3, optimumWaterPct } = compaction.peak;
    lines.push(
      say`Compaction: ${formatQuantity(maximumDryDensityKgM3, "density", units, 4)} dry at ${formatFixed(optimumWaterPct, 1)} % water`,
    );
  }
  if (!requirement) return lines;
  const { strengthMpa, ageDays, statistic, confidence } = requirement;
  lines.push(
    say`Required: ${formatQuantity(strengthMpa, "stress", units)} at ${ageDays} days, to be met by ${statisticName(statistic, confidence)}`,
    tested && strength?.leastCement
      ? say`Least cement: ${strength.leastCement.message}`
      : say`Least cement: not known before this blend is tested`,
  );
  return lines;
}
