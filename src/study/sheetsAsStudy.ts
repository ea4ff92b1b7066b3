import { stringify } from "yaml";
import { isMarkedInvented } from "../entries/inventedData.js";
import { MATERIAL_SHEETS } from "../entries/sheets.js";
import { STUDY_FORMAT } from "../entries/study.js";
import { type Finding, finding, hasErrors, STUDY_FILE } from "../findings/finding.js";
import { recogniseSheet, type SheetKindName } from "../lab/recogniseSheet.js";
import { readGrid, type SheetGrid } from "../lab/sheet/grid.js";
import { SAMPLE_LINE } from "../lab/sheet/readSheet.js";
import { say, type Text } from "../words/message.js";
import { slug } from "../words/slug.js";

/** A sheet whose kind is known, and the material that it is of, where its kind is a material's. */
export interface FoundSheet {
  readonly file: string;
  readonly kind: SheetKindName;
  /** Id of the material. */
  readonly material?: string;
}

/** A material that sheets tell of. */
export interface FoundMaterial {
  readonly id: string;
  readonly name: string;
  readonly role: "soil" | "sand" | "gravel";
  readonly sheets: Readonly<Partial<Record<MaterialSheet, string>>>;
}

/** What sheets alone tell of a study. */
export interface SheetsAsStudy {
  /** The text of a `study.yaml` that holds what the sheets tell and nothing else; absent where they tell nothing. */
  readonly text?: string;
  readonly materials: readonly FoundMaterial[];
  readonly sheets: readonly FoundSheet[];
  /** A sheet says that it is invented. */
  readonly invented?: boolean;
  readonly findings: readonly Finding[];
}

type MaterialSheet = (typeof MATERIAL_SHEETS)[number];

/** What a sheet of each kind is called. */
export const KIND_WORDS: Readonly<Record<SheetKindName, Text>> = {
  sieve: say`sieve analysis`,
  hydrometer: say`hydrometer test`,
  pipette: say`pipette test`,
  jar: say`jar test`,
  limits: say`consistency limits`,
  envelope: say`grading envelope`,
  compaction: say`compaction test`,
  specimens: say`crushed blocks`,
  looks: say`what was seen on trial blocks`,
};

/**
 * Makes a study of sheets alone: each is recognised by its columns, and belongs to the material that its line
 * `sample` or `material` names, else its file's name without the words for the test; a sheet that names none
 * belongs to the only soil. What a sheet does not tell is left open: no entry is invented.
 *
 * A compaction or block sheet without any of these is of a soil that nothing else is known of.
 *
 * A material is a gravel or a sand where its name says so and does not call it a soil, else a soil.
 *
 * @param files by their names. @returns the study's text with findings that say what each sheet was taken for;
 * a sheet of no known kind is an error where no other is known, else a warning. Source: own.
 */
export async function sheetsAsStudy(
  files: ReadonlyMap<string, Uint8Array>,
): Promise<SheetsAsStudy> {
  const findings: Finding[] = [];
  const unknown: Finding[] = [];
  const known: KnownSheet[] = [];
  for (const [file, bytes] of files) {
    if (!/\.(csv|xlsx)$/i.test(file)) continue;
    const { grid, findings: opening } = await readGrid(file, bytes);
    if (!grid) {
      findings.push(...opening);
      continue;
    }
    const { kind, row, findings: refused } = recogniseSheet(grid);
    if (kind) known.push({ file, kind, grid, headerRow: row });
    else unknown.push(...refused);
  }
  const severity = known.length > 0 ? "warning" : "error";
  findings.push(...unknown.map((one) => ({ ...one, severity }) as const));
  const rest = known.filter((sheet) => !isOfMaterial(sheet));
  const { materials: sampled, doubled } = materialsOf(known.filter(isOfMaterial));
  const materials = sampled.length > 0 ? sampled : testedSoil(rest);
  const once = rest.filter(
    ({ kind }, index) => rest.findIndex((one) => one.kind === kind) === index,
  );
  findings.push(...[...doubled, ...rest.filter((sheet) => !once.includes(sheet))].map(oneTooMany));
  if (known.length === 0) return { materials: [], sheets: [], findings };
  if (sampled.length === 0) findings.push(noMaterial(known[0], materials));
  const sheets = [
    ...materials.flatMap(({ id, sheets: own }) =>
      MATERIAL_SHEETS.flatMap((kind): FoundSheet[] => {
        const file = own[kind];
        return file === undefined ? [] : [{ file, kind, material: id }];
      }),
    ),
    ...once.map(({ file, kind }): FoundSheet => ({ file, kind })),
  ];
  findings.push(...sheets.map((sheet) => takenFor(sheet, materials)));
  if (hasErrors(findings)) return { materials, sheets, findings };
  const invented = known.some(({ grid }) => grid.rows.some(isMarkedInvented));
  return { text: studyText(materials, once, invented), invented, materials, sheets, findings };
}

interface KnownSheet {
  readonly file: string;
  readonly kind: SheetKindName;
  readonly grid: SheetGrid;
  /** From 1; absent where the sheet has lines alone. */
  readonly headerRow?: number;
}

type KnownMaterialSheet = KnownSheet & { readonly kind: MaterialSheet };

function isOfMaterial(sheet: KnownSheet): sheet is KnownMaterialSheet {
  return MATERIAL_SHEETS.some((kind) => kind === sheet.kind);
}

/** Words of a file's name that say which test it is, and not of what. */
const TEST_WORDS =
  /^(sieves?|sieving|sieved|siv|granulometria|tamiz(ado|es)?|grading|gradation|psd|hydrometer|hidrometro|densimetro|pipette|pipeta|jar|frasco|limits?|limites?|atterberg|consistency|test|tests|sheet|lab|results?|analysis|data|ensayo|hoja|no|nr|\d+)$/;

/** The name in a sheet's line “sample” or “material”. */
function sampleLine({ grid, headerRow = grid.rows.length + 1 }: KnownSheet): string | undefined {
  return grid.rows
    .slice(0, headerRow - 1)
    .find(([first = "", second = ""]) => SAMPLE_LINE.test(first) && second)?.[1];
}

/** The material that a sheet names, in its own words; undefined where it names none. */
function nameOf(sheet: KnownSheet): string | undefined {
  const line = sampleLine(sheet);
  if (line !== undefined) return line;
  const stem = sheet.file.replace(/^.*\//, "").replace(/\.[^.]*$/, "");
  const words = slug(stem).split("-");
  const name = words.filter((word) => !TEST_WORDS.test(word)).join(" ");
  return name === "" ? undefined : name.charAt(0).toUpperCase() + name.slice(1);
}

/** Sorts sheets to materials; a second sheet of one test of one material is left over. */
function materialsOf(sheets: readonly KnownMaterialSheet[]) {
  type Draft = { name: string; sheets: Partial<Record<MaterialSheet, string>> };
  const drafts = new Map<string, Draft>();
  const doubled: KnownSheet[] = [];
  const place = (name: string, sheet: KnownMaterialSheet) => {
    const key = slug(name);
    const draft = drafts.get(key) ?? { name, sheets: {} };
    drafts.set(key, draft);
    if (draft.sheets[sheet.kind] === undefined) draft.sheets[sheet.kind] = sheet.file;
    else doubled.push(sheet);
  };
  const named = sheets.map((sheet) => ({ sheet, name: nameOf(sheet) }));
  const sieved = new Set(
    named.flatMap(({ sheet, name }) =>
      name !== undefined && sheet.kind === "sieve" ? [slug(name)] : [],
    ),
  );
  // A further test whose name fits no sieved material is of the only soil, where there is one.
  const homeless = ({ sheet, name }: (typeof named)[number]) =>
    name === undefined || (sheet.kind !== "sieve" && sieved.size > 0 && !sieved.has(slug(name)));
  for (const one of named) if (!homeless(one)) place(one.name ?? "", one.sheet);
  for (const one of named.filter(homeless)) {
    const soils = [...drafts.values()].filter(({ name }) => roleOf(name) === "soil");
    place(soils.length === 1 ? soils[0].name : (one.name ?? "Soil"), one.sheet);
  }
  const ids = new Set<string>();
  const materials = [...drafts.values()].map(({ name, sheets: own }): FoundMaterial => {
    const role = roleOf(name);
    const first = slug(name, 40).replace(/^[^a-z]+/, "") || role;
    let id = first;
    for (let again = 2; ids.has(id); again++) id = `${first}-${again}`;
    ids.add(id);
    return { id, name, role, sheets: own };
  });
  const order = { soil: 0, sand: 1, gravel: 2 };
  materials.sort((a, b) => order[a.role] - order[b.role]);
  return { materials, doubled };
}

/** The soil that was compacted or made into blocks, where no sheet tells more of it. */
function testedSoil(sheets: readonly KnownSheet[]): FoundMaterial[] {
  const test = sheets.find(({ kind }) => kind === "compaction" || kind === "specimens");
  return test ? [{ id: "soil", name: sampleLine(test) ?? "Soil", role: "soil", sheets: {} }] : [];
}

function roleOf(name: string): FoundMaterial["role"] {
  // A limestone soil is no gravel.
  if (/\bsoil\b|\bearth\b|\bsuelo\b|\btierra\b/i.test(name)) return "soil";
  if (/gravel|stone|chip|grava/i.test(name)) return "gravel";
  return /\bsand\b|\barena\b/i.test(name) ? "sand" : "soil";
}

function takenFor(
  { file, kind, material }: FoundSheet,
  materials: readonly FoundMaterial[],
): Finding {
  const name = materials.find(({ id }) => id === material)?.name;
  const what = KIND_WORDS[kind];
  return finding({ file }, "note", "sheet-recognised", {
    message: name === undefined ? say`Taken as: ${what}.` : say`Taken as: ${what} of ${name}.`,
    expected: say`a sheet whose columns and name say what it is`,
    remedy: say`Nothing to do; if it is something else, say so in a ${STUDY_FILE}: “loambook new” makes one.`,
  });
}

function oneTooMany({ file, kind }: KnownSheet): Finding {
  return finding({ file }, "warning", "sheet-left-out", {
    message: say`This is a second sheet of one test (${KIND_WORDS[kind]}), and it is left out.`,
    expected: say`one sheet of a test, or names that say of which material each is`,
    remedy: say`Name the file after its material, such as river-sand-sieve.csv, or add a line “sample” with its name. Further tested blends stand under “trials” of a ${STUDY_FILE}.`,
  });
}

function noMaterial({ file }: KnownSheet, materials: readonly FoundMaterial[]): Finding {
  return finding({ file }, materials.length > 0 ? "warning" : "error", "no-material", {
    message: say`None of the sheets is of a soil or an aggregate.`,
    expected: say`a sieve, jar, hydrometer, pipette or limits sheet beside this one`,
    remedy: say`Add the sieve analysis of the soil that was compacted or made into blocks.`,
  });
}

function studyText(
  materials: readonly FoundMaterial[],
  once: readonly KnownSheet[],
  invented: boolean,
): string {
  const { envelope, compaction, specimens, looks } = Object.fromEntries(
    once.map(({ kind, file }) => [kind, file]),
  );
  return stringify({
    format: STUDY_FORMAT,
    invented: invented || undefined,
    materials: materials.map(({ sheets, ...named }) => ({ ...named, ...sheets })),
    envelope,
    compaction,
    strength: specimens && { sheet: specimens },
    tested: looks && { looks },
  });
}
