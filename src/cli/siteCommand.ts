import { basename, resolve } from "node:path";
import { formatFindings } from "../findings/format.js";
import { writeSite } from "../report/writeSite.js";
import { openStudy } from "../study/openStudy.js";
import { CommandError, EXIT, parseCall } from "./call.js";
import { freshFolder, outputProblem } from "./output.js";

const OPTIONS = {
  out: { type: "string" },
  replace: { type: "boolean" },
  "field-tests": { type: "boolean" },
} as const;

/** `loambook site`: the sheets that a crew prints. */
export async function siteCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("site", words, OPTIONS, 1);
  const study = call.place as string;
  const result = await openStudy(study);
  if (!result.mix && !result.proposal) {
    throw new CommandError(
      EXIT.badInput,
      `The tests give no mix, so there is nothing to batch.\n\n${formatFindings(result.findings, result.config.language)}`,
    );
  }
  const outFolder = freshFolder({
    wanted: call.text("out"),
    byDefault: resolve(`site-${basename(resolve(study))}`),
    replace: call.flag("replace"),
  });
  const { paths, findings } = await writeSite(result, {
    outFolder,
    replace: call.flag("replace"),
    fieldTests: call.flag("field-tests"),
    orderList: true,
    card: true,
  }).catch((problem: unknown) => {
    throw outputProblem(outFolder, problem);
  });
  const shown =
    findings.length > 0 ? `${formatFindings(findings, result.config.language)}\n\n` : "";
  process.stdout.write(`${shown}${paths.join("\n")}\n`);
  return EXIT.ok;
}
