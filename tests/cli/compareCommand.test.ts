import { cpSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";
import { copyStudy } from "../support/studyCopy.js";

const ROOM = "data-examples/reading-room";

describe("compare", () => {
  it("sets the second study against the first, with what each difference is due to", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "strength: 1.5 MPa", "strength: 1.8 MPa");
    copy.edit("study.yaml", "length: 6.4 m", "length: 8 m");
    const { code, stdout, stderr } = await runCli(["compare", ROOM, copy.folder]);
    expect([code, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(/Cement, as specified, % +6\.00 +7\.00 +\+1\.00/);
    expect(stdout).toMatch(/Fines of the blend, % +24\.32 +24\.32 +same/);
    expect(stdout).toMatch(/Result +Requirement +Element and site/);
    expect(stdout).toMatch(/Rammed volume to make, m³ +– +\+1\.814/);
    expect(stdout).toMatch(/strength \/ requirement \/ strength mpa +1\.5 +1\.8/);
    const file = join(temporaryFolder(), "comparison.json");
    const json = await runCli(["compare", ROOM, copy.folder, "--json", "--out", file]);
    expect(json).toMatchObject({ code: 0, stdout: `Written: ${file}\n` });
    const { results, dueTo } = JSON.parse(readFileSync(file, "utf8"));
    const made = results.find(({ key }: { key: string }) => key === "made");
    expect(dueTo[1]).toMatchObject({ parts: ["element"], changes: { made: made.difference } });
    expect((await runCli(["compare", ROOM, copy.folder, "--out", file])).code).toBe(7);
  }, 60_000);

  it("needs two studies, and both without errors", async () => {
    expect(await runCli(["compare", ROOM])).toMatchObject({
      code: 2,
      stderr: expect.stringContaining("needs 2 places"),
    });
    expect((await runCli(["compare", ROOM, ROOM, ROOM])).stderr).toContain("Unexpected argument");
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "exponent: 0.25", "exponent: 9");
    const { code, stderr, stdout } = await runCli(["compare", ROOM, copy.folder]);
    expect([code, stdout]).toEqual([3, ""]);
    expect(stderr).toContain("target.exponent");
  }, 60_000);
});

describe("looks", () => {
  it("shows what was seen on the blocks of a study's trials, and their colours apart", async () => {
    const { code, stdout } = await runCli(["looks", "data-examples/two-blends"]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/more-sand +50 soil.*open, sandy +sharp +none/);
    expect(stdout).toMatch(/first +more-sand +7\.7 +seen at a glance/);
    expect(stdout).toContain("strength is that of blocks, cured and crushed");
    const none = await runCli(["looks", ROOM]);
    expect(none).toMatchObject({ code: 3, stdout: "" });
    expect(none.stderr).toContain("under “looks”");
  }, 60_000);

  it("writes a page with the photographs, and tells which are missing", async () => {
    const copy = join(temporaryFolder(), "two-blends");
    cpSync(join(ROOT, "data-examples/two-blends"), copy, { recursive: true });
    // One dot across, one down; nothing that a photograph could be mistaken for.
    const dot =
      "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";
    writeFileSync(join(copy, "dot.png"), Buffer.from(dot, "base64"));
    writeFileSync(join(copy, "text.jpg"), "no picture");
    writeFileSync(
      join(copy, "sheets/more-sand-looks.csv"),
      "# Invented data\nblock,cracks,photograph\nL1,none,dot.png\nL2,none,text.jpg\nL3,none,../two-blends/gone.png\nL4,none,../../etc/passwd\n",
    );
    const out = join(temporaryFolder(), "looks");
    const { code, stdout, stderr } = await runCli(["looks", copy, "--out", out]);
    expect([code, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(/row 4, column “photograph”: “text.jpg”\n *This is not a PNG or JPEG/);
    expect(stdout).toMatch(/row 5, column “photograph”.*\n *This file is not there/);
    expect(stdout).toMatch(/row 6, column “photograph”.*\n *This file (lies outside|is not there)/);
    const html = readFileSync(join(out, "trial-blocks.html"), "utf8");
    expect(html.match(/<image[^>]*href="data:image\/png;base64,/g)).toHaveLength(1);
    expect(html).toContain("Blend with more sand, L1");
    expect(readFileSync(join(out, "trial-blocks.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
    expect((await runCli(["looks", copy, "--out", out])).code).toBe(7);
    const checked = await runCli(["check", copy]);
    expect(checked.stdout).toContain("This is not a PNG or JPEG picture.");
  }, 60_000);

  it("reads one sheet alone, with what is amiss in it", async () => {
    const copy = copyStudy("reading-room");
    const sheet = join(copy.folder, "looks.csv");
    copy.write("looks.csv", "block,texture,colour\nL1,open,dark brown\nL2,fine,light brown\n");
    const { code, stdout } = await runCli(["looks", sheet]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/L1 +open +dark brown +not known to be dry/);
    expect(stdout).toContain("taken without knowing that it was dry");
    const json = JSON.parse((await runCli(["looks", sheet, "--json"])).stdout);
    expect(json.looks).toEqual([
      { id: "L1", row: 2, texture: "open", colour: "dark brown" },
      { id: "L2", row: 3, texture: "fine", colour: "light brown" },
    ]);
    copy.write("looks.csv", "block,dry\nL1,perhaps\n");
    expect(await runCli(["looks", sheet])).toMatchObject({
      code: 3,
      stderr: expect.stringContaining("yes, no, or empty"),
    });
    const missing = join(copy.folder, "nothing.csv");
    expect(existsSync(missing)).toBe(false);
    expect((await runCli(["looks", missing])).code).toBe(3);
  });
});
