import { existsSync } from "node:fs";
import { openStudy } from "../study/openStudy.js";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";
import { parseCall } from "./parseCall.js";
import { summariseResult } from "./summariseResult.js";
import { writeNewFile } from "./writeNewFile.js";

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
