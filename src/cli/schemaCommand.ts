import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { SchemaNode } from "../entries/kinds.js";
import { studyJsonSchema } from "../entries/studyJsonSchema.js";
import { EXIT, misuse, parseCall } from "./call.js";
import { printOrWrite } from "./output.js";
import { packageFolder } from "./packageFiles.js";

const OPTIONS = { texts: ["out"], defaults: { draft: "2020-12" } };

/** `loambook schema`: the JSON Schema of what goes in or of what comes out. */
export async function schemaCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("schema", words, OPTIONS, 1);
  const { place } = call;
  const draft = call.text("draft");
  if (place !== "study" && place !== "result") {
    throw misuse(`Unknown schema “${place}”: give study or result.`);
  }
  if (draft !== "2020-12" && draft !== "7") {
    throw misuse(`Unknown draft “${draft}”: give 2020-12 or 7.`);
  }
  if (place === "result" && draft !== "2020-12") {
    throw misuse("The schema of results is there in draft 2020-12 only.");
  }
  const schema = place === "study" ? studyJsonSchema(draft) : resultJsonSchema();
  await printOrWrite(call.text("out"), `${JSON.stringify(schema, undefined, 2)}\n`);
  return EXIT.ok;
}

/**
 * The JSON Schema of a study result (`result.json`, `loambook compute --json`), made from the types of
 * this version: every key with its meaning and unit.
 *
 * Source: JSON Schema draft 2020-12.
 *
 * @example
 * resultJsonSchema().$schema // => "https://json-schema.org/draft/2020-12/schema"
 */
export function resultJsonSchema(): SchemaNode {
  const file = join(packageFolder(), "docs", "result.schema.json");
  return JSON.parse(readFileSync(file, "utf8")) as SchemaNode;
}
