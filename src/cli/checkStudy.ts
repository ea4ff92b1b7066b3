import { formatFindings } from "../lab/formatFindings.js";
import { computeStudy } from "../study/computeStudy.js";
import { readStudy } from "../study/readStudy.js";
import { EXIT } from "./exitCodes.js";
import { parseCall } from "./parseCall.js";

/** `loambook check`: all findings of a study; 3 where one of them is an error. */
export async function checkStudy(words: readonly string[]): Promise<number> {
  const call = parseCall("check", words, { json: { type: "boolean" } }, true);
  const { study, findings: reading } = await readStudy(call.place as string);
  const { findings } = study ? computeStudy(study, reading) : { findings: reading };
  const output = call.flag("json")
    ? JSON.stringify(findings, undefined, 2)
    : formatFindings(findings);
  process.stdout.write(`${output}\n`);
  return findings.some(({ severity }) => severity === "error") ? EXIT.badInput : EXIT.ok;
}
