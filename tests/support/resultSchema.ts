import { createGenerator } from "ts-json-schema-generator";
import { ROOT } from "./runCli.js";

/** Draft 7, which the generator speaks, to 2020-12: `definitions` → `$defs`, a list of `items` → `prefixItems`. */
function translate(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(translate);
  if (typeof node !== "object" || node === null) return node;
  const entries = Object.entries(node).map(([key, value]): [string, unknown] => {
    if (key === "$ref") return [key, String(value).replace("#/definitions/", "#/$defs/")];
    if (key === "items" && Array.isArray(value)) return ["prefixItems", translate(value)];
    if (key === "additionalItems") return ["items", translate(value)];
    return [key, translate(value)];
  });
  return Object.fromEntries(entries);
}

/** The JSON Schema of a study result, from its TypeScript types. */
export function resultSchema(): object {
  const { definitions, $ref } = createGenerator({
    path: `${ROOT}src/study/studyResult.ts`,
    tsconfig: `${ROOT}tsconfig.json`,
    type: "StudyResult",
    topRef: true,
    skipTypeCheck: true,
    sortProps: true,
  }).createSchema("StudyResult");
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: "Result of a loambook study, loambook-result/1",
    $ref: String($ref).replace("#/definitions/", "#/$defs/"),
    $defs: translate(definitions),
  };
}
