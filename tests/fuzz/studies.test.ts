import { describe, expect, it } from "vitest";
import { testChangedStudies } from "./changedStudies.js";
import { judge } from "./judge.js";
import { filesOf, readBases } from "./studies.js";

describe("changed studies", () => {
  // The first of those of the slow form: a fault that breaks one study in seven is noticed with 95 %.
  testChangedStudies({ cases: 20, forms: 4 });

  it("may call a material NaN: a user's own word is no sum gone wrong", async () => {
    const { small } = await readBases();
    const [soil, gravel] = small.entries.materials as readonly Readonly<Record<string, unknown>>[];
    const materials = [soil, { ...gravel, name: "NaN" }];
    const entries = { ...small.entries, materials };
    const { result, broken } = await judge(filesOf({ ...small, entries }), { appendix: true });
    expect(result!.materials[1].name).toBe("NaN");
    expect(broken).toEqual([]);
  });

  it("with one curve for all materials keep every promise, though no share is better than another", async () => {
    const { small } = await readBases();
    const [soil, gravel] = small.entries.materials as readonly Readonly<Record<string, unknown>>[];
    const materials = [{ ...soil, sieve: gravel.sieve }, gravel];
    const { result, broken } = await judge(
      filesOf({ ...small, entries: { ...small.entries, materials } }),
    );
    expect(result!.blend).toMatchObject({ unique: false, condition: null });
    expect(broken).toEqual([]);
  });

  it("with a sheet of another kind in place of one are refused", async () => {
    const { small } = await readBases();
    const names = Object.keys(small.sheets);
    for (const name of names) {
      for (const other of names) {
        if (kindOf(name) === kindOf(other)) continue;
        const sheets = { ...small.sheets, [name]: small.sheets[other] };
        const { outcome, broken } = await judge(filesOf({ ...small, sheets }));
        expect([name, other, outcome, broken]).toEqual([name, other, "refused", []]);
      }
    }
  });
});

const kindOf = (file: string) => /sieve|hydrometer|blocks|compaction|limits|jar/.exec(file)?.[0];
