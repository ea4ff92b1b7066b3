import { formatFindings } from "../findings/format.js";
import { writeSite } from "../report/writeSite.js";
import { openStudy } from "../study/openStudy.js";
import { CommandError, EXIT, parseCall } from "./call.js";
import { findingsFirst, outFolder, writtenAt } from "./output.js";

const OPTIONS = { texts: ["out"], flags: ["replace", "field-tests"] };

/** `loambook site`: the sheets that a crew prints. */
export async function siteCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("site", words, OPTIONS, 1);
  const result = await openStudy(call.place);
  if (!result.mix && !result.proposal) {
    throw new CommandError(
      EXIT.badInput,
      `The tests give no mix, so there is nothing to batch.\n\n${formatFindings(result.findings, result.config.language)}`,
    );
  }
  const folder = outFolder(call, "site");
  const writing = writeSite(result, {
    outFolder: folder,
    replace: call.flag("replace"),
    fieldTests: call.flag("field-tests"),
    orderList: true,
    card: true,
  });
  const { paths, findings } = await writtenAt(folder, writing);
  const shown = findingsFirst(findings, result.config.language);
  process.stdout.write(`${shown}${paths.join("\n")}\n`);
  return EXIT.ok;
}
