import { readFileSync } from "node:fs";
import type { SchemaNode } from "../entries/kinds.js";

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
  const file = new URL("../../docs/result.schema.json", import.meta.url);
  return JSON.parse(readFileSync(file, "utf8")) as SchemaNode;
}
