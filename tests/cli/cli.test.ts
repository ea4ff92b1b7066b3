import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { COMMAND_HELP } from "../../src/cli/help.js";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy, EXAMPLES } from "../support/studyCopy.js";

const FIXTURES = join(ROOT, "tests/notebook/fixtures");

describe("help and usage", () => {
  it("shows help, and asks for a command where none is given", async () => {
    const asked = await runCli(["--help"]);
    expect(asked).toMatchObject({ code: 0, stderr: "" });
    const bare = await runCli([]);
    expect(bare).toMatchObject({ code: 2, stdout: asked.stdout });
    for (const [name, text] of Object.entries(COMMAND_HELP)) {
      expect(asked.stdout).toContain(`\n  ${name}`);
      expect(await runCli([name, "--help"])).toMatchObject({ code: 0, stdout: text });
    }
  });

  it.each([
    [["weigh"], /no command “weigh”/],
    [["check"], /needs a place/],
    [["check", "a", "b"], /Unexpected argument: “b”/],
    [["page", "a.csv", "b.csv"], /Unexpected argument: “b.csv”/],
    [["check", "a", "--loud"], /Unknown option '--loud'/],
    [["appendix", "a", "--standard", "a-9"], /Unknown PDF standard “a-9”/],
    [["new", "a", "--units", "metric"], /give SI or US/],
    [["run", join(FIXTURES, "done.ipynb"), "--set", "seven"], /--set takes/],
    [["run", join(FIXTURES, "done.ipynb"), "--cell-seconds", "0"], /number of seconds/],
    [["appendix", "x", "--total-seconds", "soon"], /number of seconds/],
    [["export", "x", "--cell-seconds=-1"], /number of seconds/],
  ])("refuses %j", async (words, message) => {
    const { code, stderr } = await runCli(words);
    expect(code).toBe(2);
    expect(stderr).toMatch(message);
  });
});

describe("check", () => {
  it("passes the examples and shows their defects", async () => {
    const room = await runCli(["check", "data-examples/reading-room"]);
    expect(room.code).toBe(0);
    expect(room.stdout).not.toMatch(/pit-sand-sieve\.csv.*1\.30 %/);
    // A jar is no first guide any more where a hydrometer settled the soil.
    expect(room.stdout).not.toMatch(/site-soil-jar\.csv/);
    expect(room.stdout).toMatch(/blocks\.csv, row 27.*1\.78 MPa/);
    expect(room.stdout).toMatch(/Block L13 takes no part/);
    const shelter = await runCli(["check", "data-examples/bus-shelter", "--json"]);
    expect(shelter.code).toBe(0);
    expect(JSON.parse(shelter.stdout)).toContainEqual(
      expect.objectContaining({
        file: "sheets/site-soil-hydrometer.csv",
        column: "reading",
        severity: "warning",
      }),
    );
  });

  it("ends with 3 and lists the errors of reading and of computing", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("sheets/gravel-sieve.csv", "\n10,", "\n10,9");
    copy.edit("sheets/pit-sand-sieve.csv", "\n0.25,", "\n0.25,9");
    const { code, stdout } = await runCli(["check", copy.folder]);
    expect(code).toBe(3);
    expect(stdout).toContain("sheets/gravel-sieve.csv");
    expect(stdout).toContain("sheets/pit-sand-sieve.csv");
    expect(stdout).toMatch(/\n[2-9] errors, /);
  });

  it("shows control characters of a cell instead of sending them", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("sheets/gravel-sieve.csv", "\n10,", "\n10,\u001b[31mred");
    const { stdout } = await runCli(["check", copy.folder]);
    expect(stdout).toContain("\\u001b[31mred");
    expect(stdout).not.toContain("\u001b");
  });
});

describe("compute", () => {
  it("prints the result as JSON at full precision", async () => {
    const { code, stdout, stderr } = await runCli([
      "compute",
      "data-examples/bus-shelter",
      "--json",
    ]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    const { study, findings } = await readStudy(join(EXAMPLES, "bus-shelter"));
    const { result } = computeStudy(study as NonNullable<typeof study>, findings);
    expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(result)));
    expect(JSON.parse(stdout).format).toBe("loambook-result/1");
  });

  it("writes no file over another, and none at all for a study with errors", async () => {
    const folder = temporaryFolder();
    const out = join(folder, "result.json");
    const words = ["compute", "data-examples/reading-room", "--out", out];
    expect((await runCli(words)).code).toBe(0);
    const before = readFileSync(out, "utf8");
    expect(before).toContain("Least cement");
    expect(await runCli(words)).toMatchObject({
      code: 7,
      stderr: expect.stringContaining("exists already"),
    });
    expect(readFileSync(out, "utf8")).toBe(before);
    expect((await runCli(["compute", folder, "--out", join(folder, "x.json")])).code).toBe(3);
    expect(readdirSync(folder)).toEqual(["result.json"]);
  });
});

describe("new", () => {
  it.each(["SI", "US"])("leaves a study in %s units that checks", async (units) => {
    const folder = join(temporaryFolder(), "my wall");
    expect((await runCli(["new", folder, "--units", units])).code).toBe(0);
    expect((await runCli(["check", folder])).code).toBe(0);
    const text = readFileSync(join(folder, "study.yaml"), "utf8");
    expect(text).toContain("invented: true");
    expect(text).toContain("title: A study to start from");
    expect(text).toContain(`units: ${units}`);
  });

  it("writes into no folder that holds something", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "mine.txt"), "mine");
    expect((await runCli(["new", folder])).code).toBe(7);
    expect(readdirSync(folder)).toEqual(["mine.txt"]);
    mkdirSync(join(folder, "empty"));
    expect((await runCli(["new", join(folder, "empty")])).code).toBe(0);
    expect(readdirSync(folder)).toEqual(["empty", "mine.txt"]);
  });
});

describe("run", () => {
  it("says that there is no such notebook, or no such parameter", async () => {
    expect((await runCli(["run", "nothing.ipynb"])).code).toBe(3);
    const { code, stderr } = await runCli([
      "run",
      join(FIXTURES, "parameters.ipynb"),
      "--set",
      "unheardOf=3",
    ]);
    expect(code).toBe(3);
    expect(stderr).toContain("unheardOf");
  });
});

describe("appendix", () => {
  it("writes nothing for a study with errors", async () => {
    const copy = copyStudy("reading-room");
    copy.remove("sheets/blocks.csv");
    const folder = temporaryFolder();
    const { code, stdout, stderr } = await runCli(["appendix", copy.folder], folder);
    expect(code).toBe(3);
    expect(stdout).toBe("");
    expect(stderr).toContain("sheets/blocks.csv");
    expect(stderr).toContain("Nothing was written.");
    expect(readdirSync(folder)).toEqual([]);
  });

  it("writes into no folder that holds something without being asked", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "mine.txt"), "mine");
    const words = ["appendix", join(EXAMPLES, "reading-room"), "--out", folder];
    const { code, stderr } = await runCli(words);
    expect(code).toBe(7);
    expect(stderr).toContain("--replace");
    expect(readdirSync(folder)).toEqual(["mine.txt"]);
  });
});

describe("site", () => {
  it.each(["reading-room", "bus-shelter"])(
    "writes the sheets of %s",
    { timeout: 60_000 },
    async (name) => {
      const out = join(temporaryFolder(), "site");
      const run = await runCli(["site", join(EXAMPLES, name), "--out", out, "--field-tests"]);
      expect(run.code, run.stderr).toBe(0);
      const files = readdirSync(out).sort();
      for (const sheet of [
        "bucket-card",
        "mix-card",
        "making-and-curing-log",
        "block-labels",
        "moisture-check",
        "order-list",
        "field-tests",
      ]) {
        expect(files).toContain(`${sheet}.html`);
        expect(files).toContain(`${sheet}.pdf`);
        expect(
          readFileSync(join(out, `${sheet}.pdf`))
            .subarray(0, 5)
            .toString(),
        ).toBe("%PDF-");
      }
      const card = readFileSync(join(out, "bucket-card.html"), "utf8");
      expect(card).toContain(name === "reading-room" ? " kg" : " lb");
      expect(card).toContain("Wet cement burns");
      expect((await runCli(["site", join(EXAMPLES, name), "--out", out])).code).toBe(7);
    },
  );

  it("writes none where the tests give no mix", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "strength: 1.5 MPa", "strength: 9 MPa");
    const folder = temporaryFolder();
    const run = await runCli(["site", copy.folder], folder);
    expect(run.code).toBe(3);
    expect(run.stderr).toContain("nothing to batch");
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe("a place that cannot be written to", () => {
  it("is told as such, and is no fault of ours", async () => {
    const folder = temporaryFolder();
    const file = join(folder, "a-file");
    writeFileSync(file, "mine");
    const gradings = join(folder, "g.csv");
    writeFileSync(gradings, "id,4,2,1,0.5,0.25,0.063\na,100,80,60,40,30,10\n");
    const room = join(EXAMPLES, "reading-room");
    for (const words of [
      ["site", room, "--out", join(file, "below")],
      ["compute", room, "--out", join(folder, "nowhere", "r.json")],
      ["survey", gradings, "--out", join(folder, "nowhere", "f.csv")],
    ]) {
      const { code, stderr } = await runCli(words);
      expect(code, stderr).toBe(7);
      expect(stderr).toContain("cannot be written");
    }
    expect(readdirSync(folder).sort()).toEqual(["a-file", "g.csv"]);
    expect(readFileSync(file, "utf8")).toBe("mine");
  });
});

describe("plan", () => {
  it("writes a sheet whose filled form is a block sheet", async () => {
    const out = join(temporaryFolder(), "blocks.csv");
    const aim = ["--contents", "4,6,8,10", "--difference", "0.3 MPa", "--sd", "30 psi"];
    const run = await runCli(["plan", out, ...aim]);
    expect(run.code, run.stderr).toBe(0);
    const text = readFileSync(out, "utf8");
    const rows = text.trimEnd().split("\n").slice(2);
    expect(rows.length).toBeGreaterThanOrEqual(16);
    expect(new Set(rows.map((row) => row.split(",")[2]))).toEqual(new Set(["4", "6", "8", "10"]));
    expect((await runCli(["plan", out, ...aim])).code).toBe(7);
    expect(readFileSync(out, "utf8")).toBe(text);
  });

  it("answers in the units of the call", async () => {
    const out = join(temporaryFolder(), "blocks.csv");
    const aim = ["--contents", "4,6,8,10", "--difference", "45 psi", "--sd", "35 psi"];
    const { stdout } = await runCli(["plan", out, ...aim]);
    expect(stdout).toContain("a difference of 45.0 psi");
    expect(stdout).toContain("scatter by 35.0 psi");
    expect(stdout).not.toMatch(/MPa/);
    expect(readFileSync(out, "utf8").split("\n")[1]).toContain("height (in),load (lbf),mass (lb)");
  });

  it.each([
    [["--contents", "4,six", "--difference", "0.3 MPa", "--sd", "0.2 MPa"], 2],
    [["--contents", "4,6,8", "--difference", "0.3", "--sd", "0.2 MPa"], 2],
    [["--contents", "4,6", "--difference", "0.3 MPa", "--sd", "0.2 MPa"], 3],
    [["--contents", "4,6,8", "--difference", "0.001 MPa", "--sd", "2 MPa"], 3],
  ] as const)("refuses %j with %d", async (words, code) => {
    const folder = temporaryFolder();
    expect((await runCli(["plan", join(folder, "b.csv"), ...words])).code).toBe(code);
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe("survey", () => {
  it("refuses a wrong call", async () => {
    const folder = temporaryFolder();
    expect((await runCli(["survey", "x.csv"])).code).toBe(2);
    expect((await runCli(["survey", "x.csv", "--out", join(folder, "o.csv")])).code).toBe(3);
    const words = ["survey", "x.csv", "--out", "o.csv", "--model", "cubic"];
    expect((await runCli(words)).code).toBe(2);
  });
});

describe("kernel", () => {
  it("writes the kernel description into its own folder", async () => {
    const folder = temporaryFolder();
    const { code, stdout } = await runCli(["kernel"], folder);
    expect(code).toBe(0);
    expect(stdout).toContain(`JUPYTER_PATH="${join(folder, ".jupyter")}"`);
    expect(existsSync(join(folder, ".jupyter/kernels/loambook/kernel.json"))).toBe(true);
  });
});
