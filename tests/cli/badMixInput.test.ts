import { describe, expect, it } from "vitest";
import { runCli } from "../support/runCli.js";
import { copyStudy } from "../support/studyCopy.js";

/** What makes amounts impossible, each in a whole study folder: text to replace, and what is said of it. */
const CASES: [name: string, from: string | RegExp, to: string, said: RegExp][] = [
  [
    "a density of zero",
    "loose-bulk-density: 97 lb/ft3",
    "loose-bulk-density: 0 lb/ft3",
    /materials\.3\.loose-bulk-density.*0 lb\/ft3/s,
  ],
  ["moisture over saturation", "moisture: 5.0 %", "moisture: 59 %", /59/],
  ["a negative length", "length: 14 ft", "length: -14 ft", /element\.length.*-14 ft/s],
  ["a thickness of zero", "thickness: 14 in", "thickness: 0 in", /element\.thickness/],
  [
    "an opening larger than the wall",
    "width: 3 ft, height: 1.5 ft",
    "width: 30 ft, height: 1.5 ft",
    /element\.openings/,
  ],
  [
    "openings as large as the wall",
    "width: 3 ft, height: 1.5 ft",
    "width: 14 ft, height: 7 ft",
    /element\.openings/,
  ],
  ["a price without unit", "price: 41 per yd3", "price: 41", /price has no unit/],
  [
    "a haul without unit",
    "price: 41 per yd3",
    "price: 41 per yd3\n    haul: 5 to 7",
    /materials\.3\.haul/,
  ],
  [
    "a pier with a hole through it",
    /name: Back wall\n {2}length: 14 ft/,
    "name: Pier\n  kind: pier\n  diameter: 2 ft",
    /element\.thickness.*does not belong to this kind.*element\.openings/s,
  ],
];

describe("loambook check on a study whose amounts are impossible", () => {
  it.each(CASES)("%s", async (_, from, to, said) => {
    const copy = copyStudy("bus-shelter");
    copy.edit("study.yaml", from, to);
    const { code: exit, stdout, stderr } = await runCli(["check", copy.folder]);
    const shown = stdout + stderr;
    expect(exit, shown).not.toBe(0);
    expect(shown).toContain("study.yaml");
    expect(shown).toMatch(said);
    expect(shown).not.toMatch(/Internal error|undefined|NaN/);
  });
});
