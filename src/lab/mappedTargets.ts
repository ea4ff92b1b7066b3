import { parseHeaderCell } from "../quantities/parseHeaderCell.js";
import { say, sayOf } from "../words/say.js";
import type { Finding } from "./finding.js";
import { headerUnit } from "./headerUnit.js";
import type { CellRule, SheetLayout } from "./sheetLayout.js";
import type { SheetMapping } from "./sheetMapping.js";

/** Where a mapping stands, for findings. */
export interface MappingPlace {
  /** The study file. */
  readonly file: string;
  /** Path of the sheet's entry, such as `materials.0.sieve`. */
  readonly key: string;
}

/** Folded for comparing: spaces and capitals do not count. */
export function foldedCell(text: string): string {
  return text.trim().toLowerCase().replace(/\s+/g, " ");
}

/** The rule that a name of ours belongs to, in any of the layouts. */
export function ruleOf(rules: readonly CellRule[], ours: string): CellRule | undefined {
  return rules.find(({ names }) => names.includes(parseHeaderCell(ours).name));
}

/** What is wrong with the right-hand sides of a mapping: names that we lack, missing units, two for one. */
export function mappedTargets(
  mapping: SheetMapping,
  layouts: readonly SheetLayout[],
  { file, key }: MappingPlace,
): Finding[] {
  const findings: Finding[] = [];
  const check = (
    part: "columns" | "lines" | "facts",
    named: readonly (readonly [own: string, ours: string])[],
    taken: Map<string, string>,
  ) => {
    const rules = layouts.flatMap((layout) => (part === "columns" ? layout.columns : layout.facts));
    for (const [own, ours] of named) {
      const column = `${key}.${part}.${own}`;
      const rule = ruleOf(rules, ours);
      if (!rule) {
        findings.push({
          ...{ severity: "error", code: "unknown-target", file, column, value: ours },
          message:
            part === "columns"
              ? say`The layout of the ${sayOf(layouts[0].title)} has no column “${ours}”.`
              : say`The layout of the ${sayOf(layouts[0].title)} has no line “${ours}” above its table.`,
          expected: say`one of ${[...new Set(rules.map(({ names }) => names[0]))].join(", ")}`,
          wayOut: say`Write the name with its unit in brackets, for example “sieve (mm)”.`,
        });
        continue;
      }
      const units: Finding[] = [];
      headerUnit(rule, { file, text: ours }, units);
      findings.push(...units.map((unit) => ({ ...unit, column })));
      // The three forms of a sieve sheet share a key: only names can be taken.
      const earlier = taken.get(rule.names[0]);
      if (earlier !== undefined) {
        findings.push({
          ...{ severity: "error", code: "mapped-twice", file, column, value: ours },
          message: say`“${ours}” is given twice: also by “${earlier}”.`,
          expected: say`each of our names once`,
          wayOut: say`Take one of the two out.`,
        });
      }
      taken.set(rule.names[0], own);
    }
  };
  check("columns", Object.entries(mapping.columns), new Map());
  const lines = new Map<string, string>();
  check("lines", Object.entries(mapping.lines), lines);
  const names = Object.keys(mapping.facts);
  check(
    "facts",
    names.map((name) => [name, name]),
    lines,
  );
  return findings;
}
