import { describe, expect, it } from "vitest";
import { whatNext } from "../../src/cli/checkCommand.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { runCli } from "../support/runCli.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

async function nextOf(copy: { folder: string }): Promise<string> {
  const { study, findings } = await readStudy(copy.folder);
  const { result, findings: all } = computeStudy(study as NonNullable<typeof study>, findings);
  if (!result) throw new Error(JSON.stringify(all));
  return whatNext(result as StudyResult, "my-wall");
}

describe("what next after a clean check", () => {
  it("stands under the findings, and not in the JSON or under errors", async () => {
    const copy = copyStudy("bus-shelter");
    const run = await runCli(["check", copy.folder]);
    expect(run.stdout).toMatch(/\d notes\n\nLook at these first\n {2}- sheets\/blocks\.xlsx/);
    expect(run.stdout).toContain(`loambook appendix ${copy.folder} makes`);
    expect(JSON.parse((await runCli(["check", copy.folder, "--json"])).stdout)).toBeInstanceOf(
      Array,
    );
    copy.remove("sheets/blocks.xlsx");
    const broken = await runCli(["check", copy.folder]);
    expect(broken.code).toBe(3);
    expect(broken.stdout).not.toContain("Look at these first");
  });

  it("names the warned sheets by what rests on them", async () => {
    const next = await nextOf(copyStudy("bus-shelter"));
    expect(next).toMatch(
      /Sheets of Site soil from the road cut \(1 warning\): it is \d\d\.\d % of the blend\./,
    );
    expect(next).toMatch(
      /sheets\/blocks\.xlsx \(1 warning\): the least cement, now \d\.\d %, rests on it\./,
    );
    expect(next).not.toContain("Sheets of Concrete sand (");
  });

  it("gives the reason why there is no mix, as compute does", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "\nbatch:\n", "\nmix: { cement: 5 % }\n\nbatch:\n");
    const reason =
      "Next: the mix and its quantities. The mix is set to 5.00 % cement; the blocks meet the requirement from 5.92 % on. So there is no recipe.";
    expect(await nextOf(copy)).toContain(reason);
    expect((await runCli(["compute", copy.folder])).stdout).toContain(reason);
  });

  it("misses the place or the date only where it is not there", async () => {
    const copy = copyStudy("bus-shelter");
    const [place, date] = ["place", "date"].map((key) => new RegExp(`^${key}: .*\\n`, "m"));
    const missed = async () =>
      (await nextOf(copy)).match(/(where the element will stand|the date of the study): /g);
    expect(await missed()).toBeNull();
    copy.edit("study.yaml", place, "");
    expect(await missed()).toEqual(["where the element will stand: "]);
    copy.edit("study.yaml", date, "");
    expect(await missed()).toHaveLength(2);
  });

  it("begins with what speaks against the mix, and ends with the content that was found", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "  crushed: soaked\n  curing", "  crushed: dry\n  curing");
    const next = await nextOf(copy);
    expect(next).toMatch(
      /^Look at these first\n {2}- Do not build from this mix .*\n {2}- The blocks of Trial blend .* were crushed dry;/,
    );
    expect(next.match(/were crushed dry/g)).toHaveLength(1);
    expect(next).toMatch(/The mix\n {2}- Tested: .*\n {2}- From 5\.92 % cement the bound meets/);
    // The fine pit sand is not in the blend: nobody misses how it was sampled.
    expect(next).not.toContain("Fine pit sand");
  });

  it("tells few warnings of other places in full", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "exponent: 0.25", "exponent: 0.9");
    copy.edit("study.yaml", "\nbatch:\n", "\nmix-from: tested\n\nbatch:\n");
    expect(await nextOf(copy)).toMatch(/\n {2}- The blend misses the target by \d/);
  });

  it("names the sheet that would tell what the study does not know", async () => {
    const copy = copyStudy("bus-shelter");
    const whole = await nextOf(copy);
    expect(whole).not.toContain("has no hydrometer");
    expect(whole).not.toContain("has no limits sheet");
    copy.edit("study.yaml", /\n.*hydrometer: sheets.*\n/, "\n");
    copy.edit("study.yaml", /\n.*limits: sheets.*\n/, "\n");
    const less = await nextOf(copy);
    expect(less).toMatch(/has no hydrometer or pipette sheet: below 0\.07\d mm \d+\.\d points/);
    expect(less).toContain("has no limits sheet");
  });

  it("asks for no sheet that is there, though it could not be analysed", async () => {
    const copy = copyStudy("bus-shelter");
    copy.edit("study.yaml", /\n.*particle-density: .*\n/, "\n");
    expect((await runCli(["check", copy.folder])).stdout).toContain("are not analysed");
    expect(await nextOf(copy)).not.toMatch(/Site soil.* has no hydrometer/);
  });

  it("says what stands in the way where there is no mix", async () => {
    const copy = copyStudy("bus-shelter");
    copy.edit("study.yaml", "strength: 300 psi", "strength: 3000 psi");
    const next = await nextOf(copy);
    expect(next).toMatch(/^Look at these first\n {2}- The requirement is not met within/);
    expect(next.match(/no cement content in reach will do/g)).toHaveLength(1);
  });

  it("no longer speaks of what the study has told", async () => {
    const copy = copyStudy("bus-shelter");
    expect(await nextOf(copy)).toContain("“reading-errors”");
    copy.edit("study.yaml", "seed:", "reading-errors: { balance: 0.1 g }\nseed:");
    expect(await nextOf(copy)).toContain("“invented: true”");
    const next = await nextOf(copy);
    expect(next).not.toContain("“reading-errors”");
  });
});
