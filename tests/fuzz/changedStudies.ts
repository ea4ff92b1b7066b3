import fc from "fast-check";
import { beforeAll, expect, it } from "vitest";
import type { StudyResult } from "../../src/study/studyResult.js";
import { type Change, changed, changes, formChange, reformed } from "./changes.js";
import { judge, type Verdict } from "./judge.js";
import { BASES, type Base, type FuzzStudy, filesOf, readBases } from "./studies.js";
import { watchdog } from "./watchdog.js";

const SEED = Number(process.env.LOAMBOOK_FUZZ_SEED ?? 16);

/** How many studies are changed, how many of them in form only, and whether it is the long form. */
export interface FuzzCounts {
  readonly cases: number;
  readonly forms: number;
  readonly isLong?: boolean;
}

/** Tests of studies changed at random: the small one in the short form, in the long one each of them. */
export function testChangedStudies({ cases, forms, isLong = false }: FuzzCounts): void {
  let bases: Readonly<Record<Base, FuzzStudy>>;
  const watch = watchdog();
  beforeAll(async () => {
    bases = await readBases();
    return watch.end;
  });
  const base = isLong
    ? fc.oneof(
        { weight: 6, arbitrary: fc.constant<Base>("small") },
        { weight: 1, arbitrary: fc.constantFrom(...BASES) },
      )
    : fc.constant<Base>("small");

  it("are refused or computed with every promise kept", { timeout: 0 }, async () => {
    const drawn = fc.sample(fc.record({ base, changes }), {
      numRuns: cases,
      seed: SEED,
    });
    const tally = new Tally();
    for (const [index, one] of drawn.entries()) {
      watch.begins(JSON.stringify({ index, ...one }));
      const verdict = await judge(changed(bases[one.base], one.changes), {
        appendix: isLong && index % 10 === 0,
      });
      tally.count(one.changes, verdict);
      if (verdict.broken.length > 0) tally.fails(one, verdict.broken);
      if (isLong && verdict.broken.length > 0) console.log(tally.failures.at(-1));
      if (isLong && (index + 1) % 1000 === 0) console.log(tally.report());
    }
    watch.rests();
    if (isLong) console.log(tally.report());
    expect(tally.failures).toEqual([]);
  });

  it("of form only give the same numbers", { timeout: 0 }, async () => {
    const drawn = fc.sample(fc.record({ base, form: formChange }), {
      numRuns: forms,
      seed: SEED,
    });
    const plain = new Map<Base, readonly (readonly [string, number])[]>();
    const failures: string[] = [];
    for (const one of drawn) {
      watch.begins(JSON.stringify(one));
      if (!plain.has(one.base)) {
        const { result } = await judge(filesOf(bases[one.base]));
        plain.set(one.base, numbersOf(result));
      }
      const { result, findings, broken } = await judge(reformed(bases[one.base], one.form));
      const told = findings.filter(({ severity }) => severity === "error").map(({ code }) => code);
      const difference = differs(plain.get(one.base) ?? [], numbersOf(result));
      if (broken.length > 0 || told.length > 0 || difference) {
        failures.push(`${JSON.stringify(one)}: ${[...broken, ...told, difference].join("; ")}`);
      }
    }
    watch.rests();
    if (isLong) console.log(`${drawn.length} changes of form, ${failures.length} failures`);
    expect(failures).toEqual([]);
  });
}

/** Numbers of a result with their paths, but for places in sheets and the sheets themselves. */
function numbersOf(result: StudyResult | undefined): (readonly [string, number])[] {
  const found: (readonly [string, number])[] = [];
  const look = (node: unknown, path: string): void => {
    if (typeof node === "number") found.push([path, node]);
    if (typeof node !== "object" || node === null) return;
    for (const [key, below] of Object.entries(node)) {
      if (key !== "row" && key !== "values" && key !== "findings") look(below, `${path}.${key}`);
    }
  };
  if (result) {
    const { inputs: _, sheets: __, config: ___, ...rest } = result;
    look(rest, "result");
  }
  return found.sort(([a], [b]) => (a < b ? -1 : 1));
}

/** The first number that is another one, beyond what converting a unit rounds. */
function differs(
  before: readonly (readonly [string, number])[],
  after: readonly (readonly [string, number])[],
): string | undefined {
  if (before.length !== after.length) return `${before.length} numbers, then ${after.length}`;
  for (const [index, [path, value]] of before.entries()) {
    const [otherPath, other] = after[index];
    if (path !== otherPath) return `${path} became ${otherPath}`;
    // Errors of a nonlinear fit's parameters carry fewer digits than what they are worked out from.
    const digits = path.includes(".models.") ? 1e-4 : 1e-6;
    if (Math.abs(value - other) > digits * Math.max(1e-3, Math.abs(value))) {
      return `${path}: ${value} became ${other}`;
    }
  }
  return undefined;
}

/** What came out, by kind of change. */
class Tally {
  readonly failures: string[] = [];
  readonly #kinds = new Map<string, Record<Verdict["outcome"] | "told", number>>();
  readonly #codes = new Map<string, number>();
  #slowest = 0;
  #memory = 0;
  #cases = 0;

  count(all: readonly Change[], { outcome, findings, seconds }: Verdict): void {
    this.#cases += 1;
    this.#slowest = Math.max(this.#slowest, seconds);
    this.#memory = Math.max(this.#memory, process.memoryUsage().rss);
    const kind = all.length === 1 ? all[0].do : "several";
    const row = this.#kinds.get(kind) ?? { computed: 0, refused: 0, told: 0 };
    row[outcome] += 1;
    if (outcome === "computed" && findings.some(({ severity }) => severity === "warning"))
      row.told += 1;
    this.#kinds.set(kind, row);
    for (const code of new Set(findings.map((found) => found.code))) {
      this.#codes.set(code, (this.#codes.get(code) ?? 0) + 1);
    }
  }

  fails(
    one: { readonly base: Base; readonly changes: readonly Change[] },
    broken: readonly string[],
  ): void {
    this.failures.push(`${broken.join("; ")} <- ${JSON.stringify(one).slice(0, 600)}`);
  }

  report(): string {
    const rows = [...this.#kinds].map(
      ([kind, { computed, refused, told }]) =>
        `  ${kind}: ${refused} refused, ${computed} computed, ${told} of them with a warning`,
    );
    const memory = Math.round(this.#memory / 2 ** 20);
    return [
      `${this.#cases} cases, ${this.failures.length} failures, slowest ${this.#slowest.toFixed(1)} s, ${memory} MB at most, ${this.#codes.size} kinds of findings`,
      ...rows.sort(),
    ].join("\n");
  }
}
