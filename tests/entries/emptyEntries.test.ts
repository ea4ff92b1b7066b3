import { expect, it } from "vitest";
import { formatFindings } from "../../src/findings/format.js";
import { parseStudyYaml } from "../support/saidStudy.js";

it.each([
  ["an empty study", ""],
  ["a list without items", "format: loambook-study/1\nmaterials: []\n"],
])("%s is told without empty names", (_, yaml) => {
  const { findings } = parseStudyYaml(yaml);
  expect(findings.some(({ severity }) => severity === "error")).toBe(true);
  expect(formatFindings(findings)).not.toMatch(/“”|undefined/);
});
