import { studyJsonSchema } from "../entries/studyJsonSchema.js";
import { CommandError, EXIT, parseCall } from "./call.js";
import { printOrWrite } from "./output.js";
import { resultJsonSchema } from "./resultJsonSchema.js";

const OPTIONS = {
  out: { type: "string" },
  draft: { type: "string", default: "2020-12" },
} as const;

/** `loambook schema`: the JSON Schema of what goes in or of what comes out. */
export async function schemaCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("schema", words, OPTIONS, true);
  const { place } = call;
  const draft = call.text("draft");
  if (place !== "study" && place !== "result") {
    throw new CommandError(EXIT.usage, `Unknown schema “${place}”: give study or result.`);
  }
  if (draft !== "2020-12" && draft !== "7") {
    throw new CommandError(EXIT.usage, `Unknown draft “${draft}”: give 2020-12 or 7.`);
  }
  if (place === "result" && draft !== "2020-12") {
    throw new CommandError(EXIT.usage, "The schema of results is there in draft 2020-12 only.");
  }
  const schema = place === "study" ? studyJsonSchema(draft) : resultJsonSchema();
  const text = `${JSON.stringify(schema, undefined, 2)}\n`;
  const out = call.text("out");
  await printOrWrite(out, text);
  return EXIT.ok;
}
