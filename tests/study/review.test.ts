import { describe, expect, it } from "vitest";
import { APPENDIX_SECTIONS } from "../../src/study/review.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

async function edited(from: string | RegExp, to: string) {
  const copy = copyStudy("reading-room");
  copy.edit("study.yaml", from, to);
  const { study, findings } = await readStudy(copy.folder);
  return study ? computeStudy(study, findings) : { findings, result: undefined };
}

describe("checklist", () => {
  it("warns of a key that no section has, names the near one and lists all", async () => {
    const { result, findings } = await edited("answered-by: strength", "answered-by: strenght");
    expect(result).toBeDefined();
    const [found] = findings.filter(({ code }) => code === "unknown-section");
    expect(found).toMatchObject({
      severity: "warning",
      column: "checklist.3.answered-by",
      value: "strenght",
    });
    expect(found.message).toContain("“strength”");
    for (const { key } of APPENDIX_SECTIONS) expect(found.expected).toContain(key);
  });

  it("keeps an open clause open", async () => {
    const { result, findings } = await edited("answered-by: strength\n", "\n");
    expect(result?.config.checklist?.[3]).not.toHaveProperty("answeredBy");
    expect(findings.filter(({ code }) => code === "unknown-section")).toEqual([]);
  });

  it.each([
    ["    requirement: The mix is stated with its tolerances.\n", "", "checklist.2.requirement"],
    ["answered-by: strength", "answers: strength", "checklist.3.answers"],
    ["- clause: Invented code, clause 3.1", "- clause: ''", "checklist.0.clause"],
  ])("refuses %s → %s", async (from, to, column) => {
    const { result, findings } = await edited(from, to);
    expect(result).toBeUndefined();
    expect(findings.map((finding) => finding.column)).toContain(column);
  });
});

describe("decisions", () => {
  it.each([
    ["date: 2026-01-26", "date: 26 January 2026", "decisions.1.date"],
    ["date: 2026-01-26", "date: 2026-02-30", "decisions.1.date"],
    [/ {4}why: Two contents.*\n/, "", "decisions.1.why"],
  ])("refuses %s → %s", async (from, to, column) => {
    const { result, findings } = await edited(from, to);
    expect(result).toBeUndefined();
    expect(findings.map((finding) => finding.column)).toContain(column);
  });
});

describe("sampling", () => {
  it.each([
    ["  - material: site-soil", "  - material: field-soil", "sampling.0.material"],
    ["    pits: 2\n", "    pits: two\n", "sampling.0.pits"],
    ["    pits: 2\n", "    pits: 0\n", "sampling.0.pits"],
    ["    date: 2026-01-12", "    date: April", "sampling.0.date"],
  ])("refuses %s → %s", async (from, to, column) => {
    const { result, findings } = await edited(from, to);
    expect(result).toBeUndefined();
    expect(findings.map((finding) => finding.column)).toContain(column);
  });
});
