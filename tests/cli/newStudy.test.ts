import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { Ajv } from "ajv";
import addFormats from "ajv-formats";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { askAnswers, askMaterials } from "../../src/cli/newQuestions.js";
import { templateAnswers } from "../../src/cli/newStudy.js";
import type { Finding } from "../../src/findings/finding.js";
import { runCli, temporaryFolder } from "../support/runCli.js";
import { readStudy } from "../support/saidStudy.js";
import { EXAMPLES } from "../support/studyCopy.js";

const study = (folder: string) => {
  const text = readFileSync(join(folder, "study.yaml"), "utf8");
  return { text, entries: parse(text, { schema: "core" }) };
};

describe("new, told by options", () => {
  it("writes what was said, a study that computes, and a schema that it keeps to", async () => {
    const folder = join(temporaryFolder(), "wall");
    const run = await runCli([
      "new",
      folder,
      "--title",
      "Gate: “wall” #2",
      "--place",
      "=here",
      "--language",
      "es-MX",
      "--page",
      "us-letter",
      "--currency",
      "MXN",
      "--date",
      "2027-02-28",
      "--length",
      "8 m",
      "--height",
      "2.2 m",
      "--thickness",
      "450 mm",
      "--strength",
      "2.5 MPa",
      "--material",
      "soil: Loma roja",
      "--material",
      "sand: Arena: de río",
      "--material",
      "gravel: Grava",
    ]);
    expect(run.code, run.stderr).toBe(0);
    const { text, entries } = study(folder);
    expect(entries).toMatchObject({
      invented: true,
      title: "Gate: “wall” #2",
      place: "=here",
      language: "es-MX",
      page: "us-letter",
      currency: "MXN",
      date: "2027-02-28",
      units: "SI",
      element: { length: "8 m", height: "2.2 m", thickness: "450 mm" },
      strength: { requirement: { strength: "2.5 MPa" } },
    });
    expect(entries.materials.map(({ name, id }: Record<string, string>) => [id, name])).toEqual([
      ["loma-roja", "Loma roja"],
      ["arena-de-rio", "Arena: de río"],
      ["grava", "Grava"],
    ]);
    // The head says what to replace, and in which order; every file it names is there.
    const head = text.slice(0, text.indexOf("\nformat:"));
    const files = [...head.matchAll(/sheets\/\S+/g)].map(([file]) => file);
    expect(files[0]).toBe("sheets/loma-roja-sieve.csv");
    expect(files.at(-1)).toMatch(/blocks/);
    expect(files.map((file) => existsSync(join(folder, file)))).not.toContain(false);
    expect(readdirSync(join(folder, "sheets")).length).toBe(files.length);
    expect((await runCli(["check", folder])).code).toBe(0);
    const ajv = new Ajv({ allowUnionTypes: true });
    (addFormats as unknown as typeof addFormats.default)(ajv);
    const schema = JSON.parse(readFileSync(join(folder, "study.schema.json"), "utf8"));
    expect(ajv.validate(schema, entries), JSON.stringify(ajv.errors)).toBe(true);
    expect(text).toMatch(/^# yaml-language-server: \$schema=study\.schema\.json\n/);
  });

  it.each([
    ["soil alone", ["soil: Loam"]],
    ["names alike, and a script without letters of ours", ["soil: 土", "sand: 砂", "sand: 砂"]],
    ["more sands than the example has", ["soil: a", "sand: b", "sand: c", "sand: d", "gravel: e"]],
  ])("computes with %s", async (_, materials) => {
    const folder = join(temporaryFolder(), "wall");
    const words = materials.flatMap((text) => ["--material", text]);
    const run = await runCli(["new", folder, "--units", "US", ...words]);
    expect(run.code, run.stderr).toBe(0);
    expect((await runCli(["check", folder])).code).toBe(0);
    expect(study(folder).entries.materials).toHaveLength(materials.length);
  });

  it.each([
    [["--units", "metric"], /SI or US/],
    [["--length", "6.4"], /--length “6.4” will not do: give a value with its unit/],
    [["--strength", "strong"], /--strength/],
    [["--language", "fr"], /--language “fr”/],
    [["--date", "2026-02-31"], /date/],
    [["--page", "A3"], /A4 or us-letter/],
    [["--title", " "], /--title/],
    [["--material", "clay: x"], /--material takes soil, sand or gravel/],
    [["--material", "sand: x"], /must be a soil/],
  ])("refuses %j and writes nothing", async (words, message) => {
    const folder = temporaryFolder();
    const { code, stderr, stdout } = await runCli(["new", join(folder, "wall"), ...words]);
    expect(code).toBe(2);
    expect(stderr + stdout).toMatch(message);
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe("new, in United States units", () => {
  /** Sizes of grains stand in mm there too, and particle densities in g/cm³. */
  const METRIC = /(?<![\w/])(MPa|kg\/m3|kg|per t|m|km|L)(?=\s*[,}\n]|$)/m;

  it("writes no metric entry, also where a line is still open, and its openings are read", async () => {
    const from = temporaryFolder();
    const asked = ["--units", "US", "--no-questions"];
    const folder = join(from, "wall");
    expect((await runCli(["new", folder, ...asked])).code).toBe(0);
    const file = join(folder, "study.yaml");
    const text = readFileSync(file, "utf8");
    expect(text).not.toMatch(METRIC);
    writeFileSync(file, text.replace(/^# {2}openings:\n#( {4}-.*)/m, "  openings:\n$1"));
    const { study: read } = await readStudy(folder);
    const [{ openings = [] }] = read!.config.elements as never as [
      { openings: { widthM: number }[] },
    ];
    expect(openings[0].widthM).toBeCloseTo(4 * 0.3048, 9);

    const sheet = join(EXAMPLES, "bus-shelter/sheets/mason-sand-sieve.csv");
    const ofSheets = join(from, "of-sheets");
    expect((await runCli(["new", ofSheets, "--sheets", sheet, "--units", "US"])).code).toBe(0);
    const open = readFileSync(join(ofSheets, "study.yaml"), "utf8");
    expect(open).toContain("strength: … psi");
    expect(open.replaceAll("top-size: … mm", "")).not.toMatch(METRIC);
  });
});

describe("new, from sheets", () => {
  const SIEVE = "dry mass (g),1000\n\nsieve (mm),retained (g)\n8,0\n2,300\n0.063,400\npan,300\n";

  it("copies them, writes what they tell and nothing else, and keeps to the schema", async () => {
    const from = temporaryFolder();
    writeFileSync(join(from, "hill-loam-sieve.csv"), SIEVE);
    writeFileSync(join(from, "river-sand.csv"), SIEVE.replace("400\npan,300", "690\npan,10"));
    const folder = join(from, "wall");
    const run = await runCli([
      "new",
      folder,
      "--title",
      "Gate",
      "--sheets",
      join(from, "hill-loam-sieve.csv"),
      join(from, "river-sand.csv"),
    ]);
    expect(run.code, run.stderr).toBe(0);
    expect(run.stdout).toContain("Taken as: sieve analysis of River sand.");
    const { text, entries } = study(folder);
    expect(entries).toEqual({
      format: "loambook-study/1",
      title: "Gate",
      materials: [
        {
          id: "hill-loam",
          name: "Hill loam",
          role: "soil",
          sieve: "sheets/hill-loam-sieve.csv",
        },
        { id: "river-sand", name: "River sand", role: "sand", sieve: "sheets/river-sand.csv" },
      ],
    });
    expect(text).toContain("the designer must choose it");
    expect(readFileSync(join(folder, "sheets/river-sand.csv"), "utf8")).toContain("0.063,690");
    const checked = await runCli(["check", folder]);
    expect([checked.code, checked.stdout]).toEqual([0, expect.stringContaining("30.0 % fines")]);
    const ajv = new Ajv({ allowUnionTypes: true });
    (addFormats as unknown as typeof addFormats.default)(ajv);
    const schema = JSON.parse(readFileSync(join(folder, "study.schema.json"), "utf8"));
    expect(ajv.validate(schema, entries), JSON.stringify(ajv.errors)).toBe(true);
  });

  it("writes nothing of a sheet that it does not know, or cannot read", async () => {
    const from = temporaryFolder();
    writeFileSync(join(from, "list.csv"), "name,price\nsand,3\n");
    const unknown = await runCli(["new", join(from, "wall"), "--sheets", join(from, "list.csv")]);
    expect([unknown.code, unknown.stderr]).toEqual([3, expect.stringContaining("No row of this")]);
    const absent = await runCli(["new", join(from, "wall"), "--sheets", join(from, "no.csv")]);
    expect([absent.code, absent.stderr]).toEqual([2, expect.stringContaining("ENOENT")]);
    expect(readdirSync(from)).toEqual(["list.csv"]);
  });
});

describe("a new study that says it is not invented", () => {
  const made = async (...words: string[]) => {
    const folder = join(temporaryFolder(), "wall");
    expect((await runCli(["new", folder, ...words])).code).toBe(0);
    const edit = (file: string, change: (text: string) => string) =>
      writeFileSync(join(folder, file), change(readFileSync(join(folder, file), "utf8")));
    edit("study.yaml", (text) => text.replace("invented: true", "invented: false"));
    const errors = async () => {
      const run = await runCli(["check", folder, "--json"]);
      const findings = JSON.parse(run.stdout) as Finding[];
      return { code: run.code, errors: findings.filter(({ severity }) => severity === "error") };
    };
    return { folder, edit, errors };
  };

  it("has an error for each mark and each text that it began with, and gets no pages", {
    timeout: 60_000,
  }, async () => {
    for (const units of ["SI", "US"]) {
      const { folder, errors } = await made("--units", units, "--no-questions");
      const found = await errors();
      expect(found.code).toBe(3);
      expect(new Set(found.errors.map(({ code }) => code))).toEqual(new Set(["invented-data"]));
      const { text, entries } = study(folder);
      const inSheets = found.errors.filter(({ file }) => file !== "study.yaml");
      const sheets = [...text.matchAll(/: (sheets\/\S+)/g)].map(([, file]) => file);
      expect(inSheets.map(({ file, row }) => [file, row])).toEqual(sheets.map((file) => [file, 1]));
      const keyOf = (value: string) => found.errors.find((one) => one.value === value)?.column;
      expect(keyOf(entries.title)).toBe("title");
      expect(keyOf(entries.place)).toBe("place");
      expect(keyOf(entries.cement.name)).toBe("cement.name");
      expect(keyOf(entries.strength.requirement.basis)).toBe("strength.requirement.basis");
      const rows = text
        .split("\n")
        .flatMap((line, i) => (/# invented\b/i.test(line) ? [i + 1] : []));
      const marked = found.errors.flatMap(({ file, row, column }) =>
        file === "study.yaml" && !column?.match(/^(title|place)$|\./) ? [row] : [],
      );
      expect(marked).toEqual(rows);
      for (const { value, remedy, row } of found.errors) {
        expect([value, remedy, row]).not.toContain(undefined);
      }
      for (const command of ["site", "appendix", "export"]) {
        const out = join(dirname(folder), command);
        const run = await runCli([command, folder, "--out", out]);
        expect([command, run.code, existsSync(out)]).toEqual([command, 3, false]);
        expect(run.stderr).toContain("marked as invented");
      }
    }
  });

  it("passes once all of it is replaced, and not before", async () => {
    const { folder, edit, errors } = await made("--title", "Gate", "--place", "Alcalá");
    for (const file of readdirSync(join(folder, "sheets"))) {
      edit(`sheets/${file}`, (text) => text.replace(/^# Invented.*\n/, "# Read by A. B.\n"));
    }
    edit("study.yaml", (text) =>
      text
        .replace(/ *# invented.*$/gim, "")
        .replace("Portland cement, invented brand", "CEM II/A-L 42.5")
        .replace(/basis: .*/, "basis: '# invented: no, clause 3 of the local code'"),
    );
    expect(await errors()).toEqual({ code: 0, errors: [] });
    // What the blend aims at is never chosen for the designer.
    expect(study(folder).entries.target).toBeUndefined();
    expect(study(folder).entries.guidance).toBeUndefined();
    expect(study(folder).text).toContain("the designer must choose it");
    edit("study.yaml", (text) => `${text}target: { exponent: 0.25, top-size: 31.5 mm }\n`);
    const out = join(dirname(folder), "site");
    expect((await runCli(["site", folder, "--out", out])).code).toBe(0);

    edit("study.yaml", (text) => text.replace(/moisture: (.*)/, "moisture: $1 # Invented"));
    const { code, errors: left } = await errors();
    expect([code, left.length]).toEqual([3, 1]);
    expect(left[0]).toMatchObject({ file: "study.yaml", column: "moisture", value: "7.5 %" });
    edit("study.yaml", (text) => text.replace(/^invented: false/m, "invented: true"));
    expect(await errors()).toEqual({ code: 0, errors: [] });
  });
});

describe("the questions", () => {
  /** Answers in order, and keeps what was asked. */
  function person(...answers: string[]) {
    const asked: string[] = [];
    const ask = async (line: string) => {
      asked.push(line);
      const answer = answers.shift();
      if (answer === undefined) throw new Error(`nothing left to answer: ${line}`);
      return answer;
    };
    return { ask, asked };
  }

  it("ask again until an answer will do, skip what was told, and offer in the units chosen", async () => {
    const { ask, asked } = person(
      "metric",
      "US",
      "",
      "Hill",
      "en",
      "",
      "",
      "",
      "12",
      "12 ft",
      "",
      "",
      "",
    );
    const found = await askAnswers(ask, { title: "Told" }, templateAnswers);
    expect(found).toMatchObject({
      units: "US",
      title: "Told",
      place: "Write where the wall will stand",
    });
    expect(asked[1]).toContain("“metric” will not do: SI or US");
    expect(asked.join("\n")).not.toContain("Title of the study");
    expect(asked.find((line) => line.startsWith("Wall: height"))).toMatch(/ft\]/);
  });

  it("ask for the soil and what can be had near it", async () => {
    const offered = [
      { role: "soil", name: "Site soil" },
      { role: "sand", name: "River sand" },
    ] as const;
    const { ask, asked } = person("", "many", "2", "clay", "", "", "gravel", "Pebbles");
    expect(await askMaterials(ask, offered)).toEqual([
      { role: "soil", name: "Site soil" },
      { role: "sand", name: "River sand" },
      { role: "gravel", name: "Pebbles" },
    ]);
    expect(asked[2]).toContain("“many” will not do: a whole number from 0 to 11");
  });
});
