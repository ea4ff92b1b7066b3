/**
 * Makes the JSON Schema of a study result from its TypeScript types.
 *
 *   node tests/support/makeResultSchema.mjs           writes src/study/resultSchema.json
 *   node tests/support/makeResultSchema.mjs --print   prints it
 *
 * The generator (ts-json-schema-generator) speaks draft 7; what draft 2020-12 says in other words is
 * translated here.
 */
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { createGenerator } from "ts-json-schema-generator";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** Draft 7 to 2020-12: `definitions` → `$defs`, a list of `items` → `prefixItems`. */
function translate(node) {
  if (Array.isArray(node)) return node.map(translate);
  if (typeof node !== "object" || node === null) return node;
  const entries = Object.entries(node).flatMap(([key, value]) => {
    if (key === "$ref") return [[key, value.replace("#/definitions/", "#/$defs/")]];
    if (key === "items" && Array.isArray(value)) return [["prefixItems", translate(value)]];
    if (key === "additionalItems") return [["items", translate(value)]];
    return [[key, translate(value)]];
  });
  return Object.fromEntries(entries);
}

const { definitions, $ref } = createGenerator({
  path: `${ROOT}src/study/studyResult.ts`,
  tsconfig: `${ROOT}tsconfig.json`,
  type: "StudyResult",
  topRef: true,
  skipTypeCheck: true,
  sortProps: true,
}).createSchema("StudyResult");

const schema = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  title: "Result of a loambook study, loambook-result/1",
  ...translate({ $ref }),
  $defs: translate(definitions),
};
const text = `${JSON.stringify(schema, undefined, 2)}\n`;
if (process.argv.includes("--print")) process.stdout.write(text);
else {
  const file = `${ROOT}src/study/resultSchema.json`;
  writeFileSync(file, text);
  // The linter asks for its own line breaks.
  execFileSync(process.execPath, [
    `${ROOT}node_modules/@biomejs/biome/bin/biome`,
    "format",
    "--write",
    file,
  ]);
}
