import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import type { Kind, Path } from "../../src/entries/kinds.js";
import { STUDY } from "../../src/entries/study.js";
import type { StudyConfig } from "../../src/entries/studyConfig.js";
import { studyJsonSchema } from "../../src/entries/studyJsonSchema.js";
import { render } from "../../src/words/render.js";
import { parseStudyYaml } from "../support/saidStudy.js";
import { EXAMPLES } from "../support/studyCopy.js";

const room = readFileSync(join(EXAMPLES, "reading-room/study.yaml"), "utf8");

/** The findings of the example with some of its text replaced. */
function findingsOf(from: string | RegExp, to: string) {
  expect(room).toMatch(from);
  return parseStudyYaml(room.replace(from, () => to)).findings;
}

/** Every kind of the table with its place. */
function kinds(kind: Kind<unknown>, path: Path = []): (readonly [string, Kind<unknown>])[] {
  const { parts } = kind;
  const own = [[path.join("."), kind] as const];
  if (parts?.kind === "list" || parts?.kind === "names")
    return [...own, ...kinds(parts.item, path)];
  if (parts?.kind === "forms") {
    return [...own, ...Object.values(parts.forms).flatMap((form) => kinds(form, path))];
  }
  if (parts?.kind !== "group") return own;
  const below = Object.entries(parts.rows).flatMap(([key, row]) => kinds(row.kind, [...path, key]));
  return [...own, ...below];
}

describe("the table of keys", () => {
  it("has an example for every value, and each example is read", () => {
    for (const [place, { examples, parts, type, read }] of kinds(STUDY)) {
      const isChoice =
        /^("|true|1 \|)/.test(type ?? "") || ["string", "boolean"].includes(type ?? "");
      if (parts === undefined && !isChoice) expect(examples, place).not.toHaveLength(0);
      for (const example of examples) {
        const outcome = read(example, []);
        expect("value" in outcome, `${place}: ${example}`).toBe(true);
      }
    }
  });

  it("has a sentence for every key", () => {
    for (const [place, { parts }] of kinds(STUDY)) {
      if (parts?.kind !== "group") continue;
      for (const [key, { says }] of Object.entries(parts.rows)) {
        expect(says, `${place}.${key}`).toMatch(/^[A-Z].*\.$/);
      }
    }
  });

  it("gives what the interfaces promise, and no more", () => {
    // Checked by the compiler: the other way round is that of the table's own annotation.
    type Read = Extract<ReturnType<typeof STUDY.read>, { value: unknown }>["value"];
    const config: StudyConfig = {} as Read;
    const read: Read = {} as StudyConfig;
    expect([config, read]).toHaveLength(2);
  });
});

describe("a key of an earlier version", () => {
  it.each([
    ["    variability: {", "    varies: {", "variability"],
    ["  model: linear", "  form: linear", "model"],
    ["compare-mix:", "compare-blend:", "compare-mix"],
    ["  truck: {", "  lorry: {", "truck"],
    ["guidance: walker-2005", "guidance: walker-2005\nmost-materials: 3", "max-materials"],
    ["  round-up-to: 0.5 %", "  round-up-to: 0.5 %\n  spread: even", "variance"],
    [/target:\n.*\n.*\n/, "target:\n  band: guidance\n  seek: least-cost\n", "objective"],
    ["sieve: sheets/river-sand-sieve.csv", "sieve: { sheet: a.csv, facts: {} }", "header-values"],
  ])("%s written as %s is told with its name now", (from, to, now) => {
    const findings = findingsOf(from, to);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      code: "renamed-key",
      expected: now,
      remedy: `Write “${now}” in its place.`,
    });
    expect(findings[0].row).toBeGreaterThan(0);
  });

  it("is told for each of the risks, and no new key is missed beside it", () => {
    const designed =
      "acceptance: { rule: designed, good-below: 1 %, poor-below: 20 %, builder-risk: 5 %, owner-risk: 10 % }";
    const found = findingsOf(/acceptance: \{.*\}/, designed);
    expect(found.map(({ code, expected }) => [code, expected])).toEqual([
      ["renamed-key", "acceptable-quality"],
      ["renamed-key", "rejectable-quality"],
      ["renamed-key", "producer-risk"],
      ["renamed-key", "consumer-risk"],
    ]);
  });
});

describe("an unknown key", () => {
  it("that another group knows is told with that place", () => {
    const [found] = findingsOf("seed:", "haul-distance: 3 km\nseed:");
    expect(found).toMatchObject({ code: "unknown-key", value: "haul-distance" });
    expect(found.remedy).toContain("under materials, cement");
  });
});

describe("what is wrong with a value is told of the form that was meant", () => {
  it.each([
    [
      "  exponent: 0.25",
      "  exponent: 1.5",
      "target.exponent",
      /outside the allowed range/,
      /0\.05 to 1/,
    ],
    [
      "  exponent: 0.25",
      "  exponent: 0.35 to 0.2",
      "target.exponent",
      /larger end to its smaller/,
      /or “0\.2 to 0\.35”/,
    ],
    ["  exponent: 0.25", "  exponent: steep", "target.exponent", /not a number/, /a number/],
    ["  top-size: 20 mm", "  top-size: 20", "target.top-size", /no unit/, /grain size/],
    [
      "  top-size: 20 mm",
      "  top-size: 20 mm to 10 mm",
      "target.top-size",
      /larger end/,
      /grain size/,
    ],
    ["  lot: { volume: 1 m3 }", "  lot: { volume: 1 }", "quality.lot.volume", /no unit/, /m3/],
    ["rule: mean-less-ks", "rule: mean", "quality.acceptance.rule", /not known/, /mean-and-least/],
    [
      "rule: mean-less-ks",
      "rule: mean-less-ks, least: 1 MPa",
      "quality.acceptance.least",
      /does not belong/,
      /factor/,
    ],
    ["price: 25 to 31 per t", "price: 31 to 25 per t", "materials.1.price", /larger end/, /per/],
    ["    moisture: 7.5 %", "    moisture:", "materials.0.moisture", /Nothing stands/, /0 to 60 %/],
    ["date: 2026-05-18", "date: 2026-02-30", "date", /year-month-day/, /2026-05-18/],
  ])("%s as %s", (from, to, column, message, expected) => {
    const findings = findingsOf(from, to);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ severity: "error", column });
    expect(findings[0].message).toMatch(message);
    expect(findings[0].expected).toMatch(expected);
  });

  it("in the study's language", () => {
    const [found] = parseStudyYaml(
      room.replace("units: SI", "language: es\nunits: SI").replace("0.25", "1.5"),
    ).findings;
    expect(found.message).toBe("Este valor queda fuera del intervalo admitido.");
    expect(found.expected).toContain("0,05 a 1");
  });

  it("power with a proportional scatter, whose curve is one already", () => {
    const [found] = findingsOf("  model: linear", "  model: power\n  variance: proportional");
    expect(found).toMatchObject({ column: "strength.variance", value: "proportional" });
  });

  it("two materials of one id, at the second", () => {
    const [found] = findingsOf("id: river-sand", "id: site-soil");
    expect(found).toMatchObject({ column: "materials.1.id", value: "site-soil" });
    expect(found.row).toBeGreaterThan(20);
  });
});

it("an example's entries are read from the text as a person writes it", () => {
  const read = STUDY.read(parse(room, { schema: "core" }), []);
  if ("problems" in read)
    throw new Error(read.problems.map(({ message }) => render(message)).join());
  const { target, strength, batchDryMassKg, site } = read.value;
  expect(target).toEqual({ kind: "power", exponent: 0.25, topSizeMm: 20 });
  expect(strength.requirement).toMatchObject({ strengthMpa: 1.5, ageDays: 28, confidence: 0.95 });
  expect(batchDryMassKg).toBe(120);
  expect(site.truck).toEqual({ payloadKg: 9000, bodyM3: 6 });
});

describe("the value of a key, to its limit", () => {
  const configOf = (from: string, to: string) => {
    expect(room).toContain(from);
    return parseStudyYaml(room.replace(from, () => to)).config;
  };

  it("a covariate asks the curve at its own value, or at the mean where it is only named", () => {
    const named =
      "  model: linear\n  covariates: { age: true, dry-density: 1900 kg/m3, moisture: true }";
    expect(configOf("  model: linear", named)?.strength.covariates).toEqual([
      { kind: "ln age" },
      { kind: "dry density", at: 1900 },
      { kind: "moisture at test" },
    ]);
  });

  it("shares sum to 100 % but for their rounding", () => {
    const shares = (gravel: string) =>
      findingsOf("gravel: 32 % }", `gravel: ${gravel} % }`).map(({ column }) => column);
    expect(shares("32.04")).toEqual([]);
    expect(shares("31.96")).toEqual([]);
    expect(shares("32.06")).toEqual(["tested.shares"]);
    expect(shares("31.94")).toEqual(["tested.shares"]);
  });

  it("a window may be one value, and does not stand upside down", () => {
    const limits = (min: string) => configOf("{ max: 30 % }", `{ min: ${min}, max: 30 % }`)?.limits;
    expect(limits("30 %")?.[0]).toEqual({ kind: "fines", minPct: 30, maxPct: 30 });
    expect(limits("30.1 %")).toBeUndefined();
  });

  it("what is no YAML is told in its words at its row", () => {
    const { findings } = parseStudyYaml("seed: 1\ntitle: 'a\n  b': c\n");
    expect(findings.map(({ code, row, message }) => [code, row, message])).toEqual([
      [
        "yaml-error",
        2,
        "This is not valid YAML: Nested mappings are not allowed in compact mappings.",
      ],
      // It goes on in row 3: the row where it begins is told.
      ["yaml-error", 2, "This is not valid YAML: Implicit keys need to be on a single line."],
    ]);
  });
});

/** A part of a JSON Schema, as far as it is looked at here. */
interface SchemaPart {
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly type?: string;
  readonly properties?: Readonly<Record<string, SchemaPart>>;
  readonly items?: SchemaPart;
  readonly additionalProperties?: SchemaPart | boolean;
  readonly anyOf?: readonly SchemaPart[];
  readonly oneOf?: readonly SchemaPart[];
}

it("an editor shows of each key a sentence and what may stand there", () => {
  const bare: string[] = [];
  let keys = 0;
  const below = (part: SchemaPart): SchemaPart[] => [
    ...(part.anyOf ?? []),
    ...(part.oneOf ?? []),
    ...(part.items ? [part.items] : []),
    ...(typeof part.additionalProperties === "object" ? [part.additionalProperties] : []),
  ];
  const tells = (part: SchemaPart): boolean =>
    part.examples !== undefined ||
    part.enum !== undefined ||
    part.const !== undefined ||
    part.type === "boolean" ||
    part.properties !== undefined ||
    below(part).some(tells);
  const visit = (part: SchemaPart, path: string): void => {
    for (const [key, value] of Object.entries(part.properties ?? {})) {
      keys += 1;
      if (!value.description || !tells(value)) bare.push(`${path}.${key}`);
      visit(value, `${path}.${key}`);
    }
    for (const other of below(part)) visit(other, path);
  };
  visit(studyJsonSchema() as SchemaPart, "");
  expect(keys).toBeGreaterThan(300);
  expect(bare).toEqual([]);
});
