import { existsSync } from "node:fs";
import { countFindings } from "../findings/format.js";
import { formatFixed, formatQuantity } from "../quantities/format.js";
import { openStudy } from "../study/openStudy.js";
import type { StudyResult } from "../study/studyResult.js";
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

/** A study result in a dozen lines for the screen, in the study's language. */
export function summariseResult(result: StudyResult): string {
  const { config, blend, compaction, strength, findings, life } = result;
  const { units, language } = config;
  const { requirement } = config.strength;
  const said = (text: Text) => render(text, language);
  const nameOf = (id: string) =>
    config.materials.find((material) => material.id === id)?.name ?? id;
  const shares = blend.shares.map(({ id, sharePct }) => {
    if (sharePct === 0) return said(say`  not used  ${nameOf(id)}`);
    return `  ${said(formatFixed(sharePct, 1)).padStart(5)} %  ${nameOf(id)}`;
  });
  const required = formatQuantity(requirement.strengthMpa, "stress", units);
  const lines: Text[] = [config.title];
  if (config.invented) lines.push(say`(invented data)`);
  lines.push("", say`Blend, percent of the dry mass of soil and aggregate:`, ...shares);
  lines.push(
    say`  differs from the target by ${formatFixed(blend.rmsDifferencePct, 1)} points (root mean square)`,
    "",
  );
  lines.push(life.message);
  if (life.state === "tested" && compaction?.peak) {
    const { maximumDryDensityKgM3, optimumWaterPct } = compaction.peak;
    lines.push(
      say`Compaction: ${formatQuantity(maximumDryDensityKgM3, "density", units, 4)} dry at ${formatFixed(optimumWaterPct, 1)} % water`,
    );
  }
  lines.push(
    say`Required: ${required} at ${requirement.ageDays} days, to be met by ${statisticName(requirement.statistic, requirement.confidence)}`,
    life.state === "tested"
      ? say`Least cement: ${strength.leastCement.message}`
      : say`Least cement: not known before this blend is tested`,
    "",
    say`Findings: ${countFindings(findings)} (loambook check shows them)`,
    say`The numbers do not replace a licensed engineer, a laboratory or the local code.`,
  );
  return `${lines.map(said).join("\n")}\n`;
}
