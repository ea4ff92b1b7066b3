import { max, mean, min, sampleStandardDeviation } from "simple-statistics";
import type { TableBlock } from "../blocks/block.js";
import { isMarkedInvented } from "../entries/inventedData.js";
import type { Figure } from "../figures/figure.js";
import { gradingChart } from "../figures/grading/gradingChart.js";
import { type Finding, hasErrors } from "../findings/finding.js";
import { type GradingCurve, passingAtSize } from "../grading/curve.js";
import { fractions } from "../grading/fractions.js";
import { analyseJar, type JarAnalysis } from "../grading/sedimentation/jar.js";
import { recogniseSheet } from "../lab/recogniseSheet.js";
import { readGrid } from "../lab/sheet/grid.js";
import { SHEET_KINDS } from "../lab/sheetKinds.js";
import { fixed, numberColumn } from "../tables/cell.js";
import { say, type Text, wordFor } from "../words/message.js";
import { type ClassGroup, readClassSheet } from "../workshop/classSheet.js";
import { classSoil } from "../workshop/classSoil.js";

/** What a group of a class handed in: the bytes of its sheets, or of a sheet with the columns of several groups. */
export interface GroupSheets {
  readonly name: string;
  readonly sheets: readonly { readonly file: string; readonly bytes: Uint8Array }[];
}

/** What a group found. */
export interface GroupResult {
  readonly name: string;
  readonly jar?: JarAnalysis;
  readonly curve?: GradingCurve;
  readonly findings: readonly Finding[];
  /** Whether a sheet is marked as invented. */
  readonly invented?: boolean;
}

/**
 * Reads the sheets of a group: its jar, its sieves, or both; of two of one kind the later one counts. A sieving
 * is worked out with the jar as in the class notebooks, so that a jar far from it is told. A sheet of the class,
 * one column a group, gives each of its groups.
 *
 * @example
 * const bytes = new TextEncoder().encode(csvOfTyped("jar", ["200", "20", ""], [["sand and gravel", "1", "50"], ["silt", "45", "75"], ["clay", "1440", "100"]]));
 * const [{ jar }] = await groupResults({ name: "East", sheets: [{ file: "jar.csv", bytes }] });
 * jar.shares.map(({ heightSharePct }) => heightSharePct) // => [50, 25, 25]
 */
export async function groupResults({ name, sheets }: GroupSheets): Promise<GroupResult[]> {
  const read = await Promise.all(sheets.map(({ file, bytes }) => readHanded(file, bytes)));
  const own = read.filter(({ groups }) => groups === undefined);
  const { jar, sieve }: Handed = Object.assign({}, ...own);
  const findings = own.flatMap((each) => each.findings);
  const invented = own.some((each) => each.invented);
  const classes = read.flatMap(({ groups = [], ...sheet }) =>
    groups.map((group) => ({ ...worked(group), invented: sheet.invented })),
  );
  if (own.length === 0) return classes;
  return [{ ...worked({ name, jar, sieve, findings }), invented }, ...classes];
}

/** What follows from the readings of a group. */
function worked({ name, jar, sieve, findings }: ClassGroup): GroupResult {
  if (sieve) {
    const soil = classSoil({ sieve, jar });
    return { name, jar: soil.jar, curve: soil.curve, findings: [...findings, ...soil.findings] };
  }
  if (!jar) return { name, findings };
  const settled = analyseJar(jar);
  return { name, jar: settled, findings: [...findings, ...settled.findings] };
}

/** What one sheet tells: of its group, or of the groups in its columns. */
interface Handed extends Omit<ClassGroup, "name"> {
  readonly groups?: readonly ClassGroup[];
  readonly invented?: boolean;
}

async function readHanded(file: string, bytes: Uint8Array): Promise<Handed> {
  const { grid, findings } = await readGrid(file, bytes);
  if (!grid) return { findings };
  const invented = grid.rows.some(isMarkedInvented);
  const { kind, findings: unknown } = recogniseSheet(grid);
  if (kind === undefined) {
    const { groups, findings: told } = readClassSheet(grid);
    if (groups.some(({ jar, sieve }) => jar || sieve)) {
      const [first, ...others] = groups;
      const whole = { ...first, findings: [...told, ...first.findings] };
      return { groups: [whole, ...others], findings, invented };
    }
  }
  if (kind !== "jar" && kind !== "sieve") return { findings: [...findings, ...unknown] };
  const { record, findings: told } = SHEET_KINDS[kind].read(grid);
  const all = [...findings, ...told];
  return record && !hasErrors(all)
    ? { [kind]: record, findings: all, invented }
    : { findings: all };
}

/** Sizes at which the passings of a class are set side by side. */
const SIZES_MM = [0.063, 0.25, 0.5, 1, 2, 4, 8, 16] as const;

/**
 * The groups side by side, with mean, standard deviation (n − 1) and range of the class: a table of the jars and
 * one of the sieves, each where a group has them.
 *
 * @example
 * const curve = (passingPct) => ({ points: [{ sizeMm: 0.063, passingPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] });
 * const [table] = classTables([{ name: "East", curve: curve(30), findings: [] }, { name: "West", curve: curve(40), findings: [] }]);
 * renderAll(table).rows[0] // => ["passing 0.063 mm", "30.0", "40.0", "35.0", "7.1", "30.0", "40.0"]
 */
export function classTables(groups: readonly GroupResult[]): TableBlock[] {
  const jars = groups.flatMap(({ name, jar }) => (jar ? [{ name, jar }] : []));
  const curves = groups.flatMap(({ name, curve }) => (curve ? [{ name, curve }] : []));
  const layers = ["sand and gravel", "silt", "clay"] as const;
  const jarRows = layers.map((layer) => ({
    label: wordFor(layer),
    values: jars.map(({ jar }) => jar.shares.find(({ name }) => name === layer)?.heightSharePct),
  }));
  const sieveRows = SIZES_MM.map((sizeMm) => ({
    label: say`passing ${sizeMm} mm`,
    values: curves.map(({ curve }) => passingAtSize(curve, sizeMm)),
  })).filter(({ values }) => values.some((value) => value !== undefined));
  const parts = curves.map(({ curve }) => fractions(curve));
  const fractionRows = [
    { label: say`silt and clay`, values: parts.map(({ finesPct }) => finesPct) },
    { label: say`sand`, values: parts.map(({ sandPct }) => sandPct) },
    { label: say`gravel`, values: parts.map(({ gravelPct }) => gravelPct) },
  ];
  const tables: TableBlock[] = [];
  if (jars.length > 0) {
    const note = say`Heights are not masses: a layer of clay is mostly water. A jar is a first guide and no grading.`;
    tables.push(spreadTable(say`Jars: share of the settled height`, jars, jarRows, [note]));
  }
  if (curves.length > 0) {
    const rows = [...sieveRows, ...fractionRows];
    tables.push(spreadTable(say`Sieves: passing and fractions by dry mass`, curves, rows));
  }
  return tables;
}

function spreadTable(
  caption: Text,
  groups: readonly { readonly name: string }[],
  rows: readonly { readonly label: Text; readonly values: readonly (number | undefined)[] }[],
  notes: readonly Text[] = [],
): TableBlock {
  const spread = [say`Mean`, say`Standard deviation`, say`Minimum`, say`Maximum`];
  const headers = [...groups.map(({ name }) => name), ...spread];
  return {
    kind: "table",
    caption,
    columns: [{ header: say`Quantity` }, ...headers.map((header) => numberColumn(header, "%"))],
    rows: rows.map(({ label, values }) => {
      const known = values.filter((value) => value !== undefined);
      const of = (work: (list: number[]) => number, least = 1) =>
        known.length < least ? undefined : work(known);
      const ends = [of(mean), of(sampleStandardDeviation, 2), of(min), of(max)];
      return [label, ...[...values, ...ends].map((value) => fixed(value, 1))];
    }),
    notes,
  };
}

/** The gradings of the groups in one chart; undefined where none sieved. */
export function classFigure(groups: readonly GroupResult[]): Figure | undefined {
  const curves = groups.flatMap(({ name, curve }) => (curve ? [{ name, curve }] : []));
  return curves.length === 0 ? undefined : gradingChart(say`Gradings of the class`, curves);
}
