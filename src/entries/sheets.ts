import type { MappedSheet, SheetSource } from "../lab/sheet/grid.js";
import type { SHEET_KINDS } from "../lab/sheetKinds.js";
import { byDefault, forms, group, names, optional, required } from "./groups.js";
import { isGroup, type Kind, label, number, oneOf, shaped, text } from "./kinds.js";
import type { StudyConfig } from "./studyConfig.js";

const DELIMITERS = { comma: ",", semicolon: ";", tab: "\t" } as const;

const mapped: Kind<MappedSheet> = group({
  sheet: required("sheet", text("sheets/sand.csv"), "File of the sheet, inside the study folder."),
  columns: byDefault(
    "columns",
    names(text("retained (g)"), "residue (g)"),
    {},
    "Your header cells, each with ours.",
  ),
  lines: byDefault(
    "lines",
    names(text("dry mass (g)"), "oven-dry sample (g)"),
    {},
    "First cells of your lines above the table, each with our name of the line.",
  ),
  cells: byDefault(
    "cells",
    names(text("pan"), "bottom"),
    {},
    "Your texts below the header, each with ours, such as that of the pan.",
  ),
  "header-values": byDefault(
    "facts",
    names(label("812.4"), "dry mass (g)"),
    {},
    "Lines above the table that your sheet lacks: our name, and the value with a decimal point.",
    { earlier: ["facts"] },
  ),
  "skip-rows": byDefault(
    "skipRows",
    number({ whole: true, min: 0, max: 1000, example: 2 }),
    0,
    "Rows at the top that are not looked at.",
  ),
  delimiter: optional(
    "delimiter",
    shaped(oneOf("comma", "semicolon", "tab"), '"," | ";" | "\\t"', (name) => DELIMITERS[name]),
    "What stands between the cells of a CSV file; left out, the mark that most lines hold.",
  ),
  decimal: byDefault(
    "decimalComma",
    shaped(oneOf("point", "comma"), "boolean", (sign) => sign === "comma"),
    "point",
    "Whether numbers are written 1,234.5 or 1.234,5.",
  ),
});

/** A sheet inside the study folder: its name, or a group with its name and how to read its own layout. */
export function sheet(example: string): Kind<SheetSource> {
  return forms(
    { name: text(example), mapped },
    (written) => (isGroup(written) ? "mapped" : "name"),
    { type: "SheetSource" },
  );
}

/** The files of sheets, whether named bare or with how they are read; those that are not given are left out. */
export function sheetsOf(...sources: readonly (SheetSource | undefined)[]): string[] {
  return sources.flatMap((source) => {
    if (source === undefined) return [];
    return [typeof source === "string" ? source : source.sheet];
  });
}

/** A sheet that a study names. */
export interface NamedSheet {
  /** Where `study.yaml` names it, such as `materials.0.sieve`. */
  readonly key: string;
  readonly kind: keyof typeof SHEET_KINDS;
  readonly source: SheetSource;
}

/** What a material names sheets by, which are of one kind each. */
export const MATERIAL_SHEETS = ["sieve", "hydrometer", "pipette", "jar", "limits"] as const;

type SheetEntry = [key: string, kind: NamedSheet["kind"], source: SheetSource | undefined];

/** All sheets that a study names, in the order in which they are read. */
export function sheetsOfStudy(config: StudyConfig): NamedSheet[] {
  const { materials, envelope, compaction, strength, tested, trials = [], quality } = config;
  const sheets: SheetEntry[] = [
    ...materials.flatMap((material, index) =>
      MATERIAL_SHEETS.map(
        (kind): SheetEntry => [`materials.${index}.${kind}`, kind, material[kind]],
      ),
    ),
    ["envelope", "envelope", envelope],
    ["compaction", "compaction", compaction],
    ["strength.sheet", "specimens", strength.sheet],
    ["tested.looks", "looks", tested?.looks],
    ...trials.flatMap((trial, index): SheetEntry[] => [
      [`trials.${index}.compaction`, "compaction", trial.compaction],
      [`trials.${index}.blocks`, "specimens", trial.blocks],
      [`trials.${index}.looks`, "looks", trial.looks],
    ]),
    ["quality.site-blocks", "specimens", quality?.siteBlocks],
  ];
  return sheets.flatMap(([key, kind, source]) =>
    source === undefined ? [] : [{ key, kind, source }],
  );
}
