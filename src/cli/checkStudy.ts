import { formatFindings } from "../lab/formatFindings.js";
import { computeStudy } from "../study/computeStudy.js";
import { readStudy } from "../study/readStudy.js";
import { EXIT } from "./exitCodes.js";
import { parseCall } from "./parseCall.js";
import { whatNext } from "./whatNext.js";

/** `loambook check`: all findings of a study; 3 where one of them is an error. */
export async function checkStudy(words: readonly string[]): Promise<number> {
  const call = parseCall("check", words, { json: { type: "boolean" } }, true);
  const place = call.place as string;
  const { study, findings: reading } = await readStudy(place);
  const computed = study ? computeStudy(study, reading) : { findings: reading, result: undefined };
  const { findings, result } = computed;
  if (call.flag("json")) process.stdout.write(`${JSON.stringify(findings, undefined, 2)}\n`);
  else {
    const next = result ? `\n${plain(whatNext(result, place))}\n` : "";
    process.stdout.write(`${formatFindings(findings)}\n${next}`);
  }
  return findings.some(({ severity }) => severity === "error") ? EXIT.badInput : EXIT.ok;
}

/** Names come from the study: what would steer the terminal is shown, not sent. */
function plain(text: string): string {
  return text.replace(
    /(?!\n)\p{Cc}/gu,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}
