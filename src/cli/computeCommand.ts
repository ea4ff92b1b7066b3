import { existsSync } from "node:fs";
import { countFindings } from "../findings/format.js";
import { displayUnit, displayValue, formatFixed, formatNumber } from "../quantities/format.js";
import { openStudy } from "../study/openStudy.js";
import type { StudyResult } from "../study/studyResult.js";
import { statisticName } from "../tables/strength.js";
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

/** A study result in a dozen lines for the screen. */
export function summariseResult(result: StudyResult): string {
  const { config, blend, compaction, strength } = result;
  const { units } = config;
  const { requirement } = config.strength;
  const stress = (mpa: number | null) =>
    mpa === null
      ? "–"
      : `${formatNumber(displayValue(mpa, "stress", units), 3)} ${displayUnit("stress", units)}`;
  const nameOf = (id: string) =>
    config.materials.find((material) => material.id === id)?.name ?? id;
  const lines = [
    config.title,
    config.invented ? "(invented data)" : "",
    "",
    "Blend, percent of the dry mass of soil and aggregate:",
    ...blend.shares.map(({ id, sharePct }) =>
      sharePct === 0
        ? `  not used  ${nameOf(id)}`
        : `  ${formatFixed(sharePct, 1).padStart(5)} %  ${nameOf(id)}`,
    ),
    `  differs from the target by ${formatFixed(blend.rmsDifferencePct, 1)} points (root mean square)`,
    "",
    ...(compaction?.peak
      ? [
          `Compaction: ${formatNumber(displayValue(compaction.peak.maximumDryDensityKgM3, "density", units), 4)} ${displayUnit("density", units)} dry at ${formatFixed(compaction.peak.optimumWaterPct, 1)} % water`,
        ]
      : []),
    `Required: ${stress(requirement.strengthMpa)} at ${requirement.ageDays} days, to be met by ${statisticName(requirement.statistic, requirement.confidence)}`,
    `Least cement: ${strength.leastCement.message}`,
    "",
    `Findings: ${countFindings(result.findings)} (loambook check shows them)`,
    "The numbers do not replace a licensed engineer, a laboratory or the local code.",
  ];
  return `${lines.filter((line, index) => line !== "" || lines[index - 1] !== "").join("\n")}\n`;
}
