import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv, type ValidateFunction } from "ajv";
import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { resultJsonSchema } from "../../src/cli/schemaCommand.js";
import { studyJsonSchema } from "../../src/entries/studyJsonSchema.js";
import { EXAMPLE_NAMES, exampleResult } from "../support/exampleResult.js";
import { parseStudyYaml } from "../support/saidStudy.js";
import { EXAMPLES } from "../support/studyCopy.js";

const formats = addFormats as unknown as typeof addFormats.default;

/** The schemas, each compiled once: that takes longer than all that is judged by them. */
const RESULT = compiled(Ajv2020, resultJsonSchema());
const STUDY = compiled(Ajv2020, studyJsonSchema());
const STUDY_DRAFT_7 = compiled(Ajv, studyJsonSchema("7"));

function compiled(Validator: typeof Ajv | typeof Ajv2020, schema: object): ValidateFunction {
  const ajv = new Validator({ allErrors: true, allowUnionTypes: true });
  formats(ajv);
  return ajv.compile(schema);
}

/** What an independent validator says against a value. */
function judge(validate: ValidateFunction, value: unknown): readonly string[] {
  validate(value);
  return (validate.errors ?? []).map(
    ({ instancePath, message, params }) => `${instancePath} ${message} ${JSON.stringify(params)}`,
  );
}

describe("the schema of results", () => {
  it.each(EXAMPLE_NAMES)("holds for the result of %s", async (name) => {
    const result = JSON.parse(JSON.stringify(await exampleResult(name)));
    expect(judge(RESULT, result)).toEqual([]);
  });

  it("refuses what is no result", async () => {
    const result = JSON.parse(JSON.stringify(await exampleResult("reading-room")));
    const broken = { ...result, format: "loambook-result/0", weather: "fair" };
    broken.blend = { ...result.blend, rmsDifferencePct: "3.1 %" };
    const found = judge(RESULT, broken).join("\n");
    expect(found).toContain("/format must be equal to constant");
    expect(found).toContain('"additionalProperty":"weather"');
    expect(found).toContain("/blend/rmsDifferencePct must be number");
  });
});

describe("the schema of study.yaml", () => {
  const text = (name: string) => readFileSync(join(EXAMPLES, name, "study.yaml"), "utf8");

  it.each(EXAMPLE_NAMES)("holds for %s, in both drafts", (name) => {
    const study: unknown = parse(text(name), { schema: "core" });
    expect(judge(STUDY, study)).toEqual([]);
    expect(judge(STUDY_DRAFT_7, study)).toEqual([]);
  });

  it.each([
    ["a missing unit", /moisture: 7.5 %/, "moisture: 7.5"],
    ["a decimal comma", "moisture: 7.5 %", "moisture: 7,5 %"],
    ["a price of nothing", /price: .* per t/, "price: 27"],
    ["a mistyped key", "loose-bulk-density: 1180", "loose-bulk-densty: 1180"],
    ["an unknown kind of element", "length: 6.4 m", "length: 6.4 m\n  kind: dome"],
    ["a key that a wall has not", "length: 6.4 m", "length: 6.4 m\n  depth: 3 m"],
    ["an unknown statistic", "statistic: tolerance", "statistic: best"],
    ["no date", "date: 2026-05-18", "date: 18 May"],
  ])("refuses %s, as the reader does", (_, from, to) => {
    const room = text("reading-room");
    expect(room).toMatch(from);
    const broken = room.replace(from, to);
    expect(judge(STUDY, parse(broken, { schema: "core" }))).not.toEqual([]);
    expect(parseStudyYaml(broken).config).toBeUndefined();
  });

  it.each([
    ["a pier", "kind: pier\n  width: 600 mm\n  depth: 400 mm"],
    ["a round pier", "kind: pier\n  diameter: 600 mm"],
    ["a wall that says so", "kind: wall\n  length: 6 m\n  thickness: 400 mm"],
    ["a round ring", "kind: ring\n  diameter: 5 m\n  thickness: 400 mm"],
  ])("takes %s, as the reader does", (_, keys) => {
    const room = text("reading-room").replace(
      /^element:[\s\S]*?(?=^\S)/m,
      `element:\n  name: One\n  height: 2.7 m\n  compacted-lift: 100 mm\n  waste: 5 %\n  ${keys}\n`,
    );
    const { findings } = parseStudyYaml(room.slice(0, room.indexOf("\nmethods:")));
    expect(findings).toEqual([]);
    const study: unknown = parse(room, { schema: "core" });
    expect(judge(STUDY, study)).toEqual([]);
  });

  it("tells an editor of every key what it is, how it is written and what is taken without it", () => {
    const { properties } = studyJsonSchema() as unknown as {
      properties: Record<string, { items: { properties: Record<string, object> } }>;
    };
    expect(properties.materials.items.properties).toMatchObject({
      moisture: {
        description:
          "Moisture on delivery, of the dry mass. A number with its unit (%), 0 to 60 %, for example “6.5 %”.",
        examples: ["6.5 %"],
      },
      price: { description: expect.stringContaining("“38 per t”") },
      share: { properties: { max: { default: "100 %" } } },
    });
    expect(properties.page).toEqual({
      description: "Paper of the reports. One of A4, us-letter. Default: A4.",
      enum: ["A4", "us-letter"],
      default: "A4",
    });
  });
});
