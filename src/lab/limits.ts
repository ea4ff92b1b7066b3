import { type Finding, finding, findingIf } from "../findings/finding.js";
import { formatPlain } from "../quantities/format.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  allNumbers,
  type CellValue,
  cellPlace,
  numberRule,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
  textRule,
} from "./sheet/layout.js";
import { readRecord, type SheetReading } from "./sheet/readSheet.js";

/** Liquid limit, plastic limit and linear shrinkage as read from their sheet. */
export interface LimitsRecord {
  readonly file: string;
  /** `cup`: blows (closure at 25). `cone`: penetration in mm (limit at 20 mm, 80 g and 30 degrees). */
  readonly liquidLimitMethod?: "cup" | "cone";
  readonly liquidLimitPoints: readonly LiquidLimitPoint[];
  readonly plasticLimitPoints: readonly PlasticLimitPoint[];
  /** The fines roll to no thread: the lab reports the soil as non-plastic. */
  readonly nonPlastic: boolean;
  /** Values that the laboratory reports without the readings behind them, percent. */
  readonly reported?: ReportedLimits;
  /** Bar mould: wet and dry lengths. */
  readonly shrinkageBar?: { readonly wetLengthMm: number; readonly dryLengthMm: number };
  /** Long box of field practice, 600 mm where the sheet gives no length; not comparable with the bar. */
  readonly longBox?: { readonly shrinkageMm: number; readonly lengthMm: number };
}

interface ReportedLimits {
  readonly liquidLimitPct?: number;
  readonly plasticLimitPct?: number;
  readonly plasticityIndexPct?: number;
  readonly linearShrinkagePct?: number;
}

export interface LiquidLimitPoint {
  /** Blows for the cup, penetration in mm for the cone. */
  readonly measure: number;
  readonly waterContentPct: number;
  readonly row: number;
}

export interface PlasticLimitPoint {
  readonly waterContentPct: number;
  readonly row: number;
}

const positive = { positive: true };

/** Values that a laboratory reports, as lines above the table or as rows of it. */
const REPORTED = [
  { key: "liquidLimitPct", names: ["liquid limit", "ll", "wl"], max: 200 },
  { key: "plasticLimitPct", names: ["plastic limit", "pl", "wp"], max: 200 },
  { key: "plasticityIndexPct", names: ["plasticity index", "plastic index", "pi", "ip"], max: 200 },
  { key: "linearShrinkagePct", names: ["linear shrinkage", "ls"], max: 60 },
] as const;

/** How laboratories write in place of a limit that the soil has none. */
export const NON_PLASTIC = /^(np|n\.p\.?|non[- ]?plastic|no pl[aá]stico)$/i;

/** What a limits sheet may hold. */
export const LIMITS_LAYOUT: SheetLayout = {
  title: say`limits sheet`,
  facts: [
    numberRule("wetLengthMm", "shrinkage bar wet length", "length", positive),
    numberRule("dryLengthMm", "shrinkage bar dry length", "length", positive),
    numberRule("boxShrinkageMm", "long box shrinkage", "length", { min: 0 }),
    numberRule("boxLengthMm", "long box length", "length", positive),
    textRule("nonPlastic", ["non-plastic", "nonplastic", "non plastic", "np"]),
    ...REPORTED.map(({ key, names, max }) =>
      // A limit is in percent wherever it is written: “LL, 34” asks for no unit.
      numberRule(key, names, "ratio", { min: 0, max, words: NON_PLASTIC, unitless: names }),
    ),
  ],
  columns: [
    textRule("test", "test", { required: true }),
    numberRule("blows", "blows", "number", { min: 1, max: 100 }),
    numberRule("penetrationMm", "penetration", "length", { positive: true, max: 40 }),
    numberRule(
      "waterContentPct",
      ["water content", "moisture content", "moisture", "value", "result"],
      "ratio",
      { min: 0, max: 200, words: NON_PLASTIC },
    ),
    numberRule("tinG", "tin", "mass", positive),
    numberRule("wetG", "tin + wet soil", "mass", positive),
    numberRule("dryG", "tin + dry soil", "mass", positive),
  ],
  tableOptional: true,
};

/**
 * Reads a limits sheet: rows named `liquid limit` (with `blows` or `penetration (mm)`) and
 * `plastic limit`, each with `water content (%)` or the three masses `tin (g)`, `tin + wet soil (g)`
 * and `tin + dry soil (g)`; the shrinkage bar's wet and dry length above the table, and apart from them
 * `long box shrinkage (mm)` with, where it is not 600 mm, `long box length (mm)`. Where the fines roll to no
 * thread the line `non-plastic` says yes.
 *
 * What a laboratory reports without its readings stands in lines `liquid limit (%)`, `plastic limit (%)`,
 * `plasticity index (%)`, `linear shrinkage (%)` (or LL, PL, PI, LS), or in rows of those names in a table
 * without blows and penetration. Lines may stand alone, without a table.
 */
export function readLimits(grid: SheetGrid): SheetReading<LimitsRecord> {
  return readRecord(grid, LIMITS_LAYOUT, (sheet) => {
    const given = readReported(sheet);
    const measured = sheet.rows.filter((entry) => !given.rows.includes(entry));
    const rowsOf = (key: ReportedKey) => measured.filter((entry) => testOf(entry) === key);
    const liquid = rowsOf("liquidLimitPct").map((entry) => liquidLimitPoint(sheet, entry));
    const plastic = rowsOf("plasticLimitPct").map((entry) => waterContent(sheet, entry));
    const methods = new Set(liquid.flatMap(({ method }) => method ?? []));
    const nonPlastic = readNonPlastic(sheet);
    const bar = readShrinkageBar(sheet);
    const box = readLongBox(sheet);
    const record: LimitsRecord = {
      file: sheet.file,
      liquidLimitMethod: [...methods][0],
      liquidLimitPoints: liquid.flatMap(({ point }) => point ?? []),
      plasticLimitPoints: plastic.flatMap(({ pct, row }) =>
        pct === undefined ? [] : [{ waterContentPct: pct, row }],
      ),
      nonPlastic: nonPlastic.nonPlastic || given.nonPlastic,
      reported: given.reported,
      shrinkageBar: bar.shrinkageBar,
      longBox: box.longBox,
    };
    const rowFindings = [
      ...[...liquid, ...plastic].flatMap(({ findings }) => findings),
      ...unknownTests(sheet),
    ].sort((a, b) => (a.row ?? 0) - (b.row ?? 0));
    const findings = [
      ...rowFindings,
      ...findingIf(methods.size > 1, { file: sheet.file }, "error", "mixed-methods", {
        message: say`The liquid limit rows mix cup and cone.`,
        expected: say`one method a sheet`,
        remedy: say`Give each method a sheet of its own.`,
      }),
      ...nonPlastic.findings,
      ...given.findings,
      ...bothWays(record),
      ...bar.findings,
      ...box.findings,
    ];
    return { record, findings };
  });
}

type ReportedKey = (typeof REPORTED)[number]["key"];

/** The limit that a row of the table speaks of. */
function testOf({ written }: SheetRow): ReportedKey | undefined {
  const name = written.test.toLowerCase().replace(/\s+/g, " ");
  return REPORTED.find(({ names }) => (names as readonly string[]).includes(name))?.key;
}

interface ReportedValue {
  readonly key: ReportedKey;
  readonly value: CellValue;
  readonly row: number;
}

/**
 * Reported values, from lines and from rows. A liquid limit in a row is one where the table has neither blows
 * nor a penetration; a plastic limit in such a table may as well be one thread: it is the same number.
 */
function readReported(sheet: SheetValues): {
  readonly reported?: ReportedLimits;
  readonly nonPlastic: boolean;
  readonly rows: readonly SheetRow[];
  readonly findings: readonly Finding[];
} {
  const { facts, factRows, headers, file } = sheet;
  const bare = !headers.blows && !headers.penetrationMm;
  const rows = sheet.rows.filter((entry) => {
    const key = testOf(entry);
    const index = key === "plasticityIndexPct" || key === "linearShrinkagePct";
    return index || (bare && key === "liquidLimitPct") || typeof waterCell(entry) === "string";
  });
  const contents = rows.map((entry) => ({ entry, ...waterContent(sheet, entry) }));
  const all: ReportedValue[] = [
    ...REPORTED.flatMap(({ key }) =>
      key in factRows ? [{ key, value: facts[key], row: factRows[key] }] : [],
    ),
    ...contents.flatMap(({ entry, pct, row }) => {
      const key = testOf(entry);
      return key === undefined ? [] : [{ key, value: pct ?? waterCell(entry), row }];
    }),
  ];
  const values: Partial<Record<ReportedKey, number>> = {};
  for (const { key, value } of all) if (typeof value === "number") values[key] = value;
  const findings = [
    ...contents.flatMap(({ findings: found }) => found),
    ...repeatedValues(file, all),
    ...partsOfOne(file, all),
    ...indexFindings(file, factRows, values),
  ];
  return {
    ...(Object.keys(values).length > 0 ? { reported: values } : {}),
    nonPlastic: all.some(({ value }) => typeof value === "string"),
    rows,
    findings,
  };
}

const waterCell = ({ values }: SheetRow) => values.waterContentPct;

function repeatedValues(file: string, all: readonly ReportedValue[]): Finding[] {
  const again = all.filter(({ key }, index) => all.findIndex((other) => other.key === key) < index);
  return again.map(({ key, row }) => {
    const value = REPORTED.find((each) => each.key === key)?.names[0];
    return finding({ file, row, value }, "error", "limit-twice", {
      message: say`This reported value stands twice in the sheet.`,
      expected: say`each reported value once`,
      remedy: say`Keep the one that is right; repeated readings need their blows, penetrations or threads.`,
    });
  });
}

/** A soil with a limit has it at many percent of water: below one the value is a part of one. */
function partsOfOne(file: string, all: readonly ReportedValue[]): Finding[] {
  return all.flatMap(({ key, value, row }) => {
    const isLimit = key === "liquidLimitPct" || key === "plasticLimitPct";
    const isPart = isLimit && typeof value === "number" && value > 0 && value < 1;
    const place = { file, row, value: String(value) };
    return findingIf(isPart, place, "error", "fraction-for-percent", {
      message: say`No soil has a limit below 1 %.`,
      expected: say`percent, 0 to 100`,
      remedy: say`Multiply parts of one by 100.`,
    });
  });
}

/**
 * Points by which a reported index may differ from the difference of the limits: three values, each rounded to
 * a whole number; common practice, no source.
 */
const ROUNDED = 1.5;

/** A plasticity index is the liquid limit less the plastic limit. */
function indexFindings(
  file: string,
  factRows: SheetValues["factRows"],
  { liquidLimitPct, plasticLimitPct, plasticityIndexPct }: ReportedLimits,
): Finding[] {
  if (liquidLimitPct === undefined || plasticityIndexPct === undefined) return [];
  const place = { file, row: factRows.plasticityIndexPct, value: say`${plasticityIndexPct} %` };
  const remedy = say`Check the reported values.`;
  if (plasticityIndexPct > liquidLimitPct) {
    const message = say`The plasticity index is above the liquid limit.`;
    const expected = say`at most ${liquidLimitPct} %`;
    return [finding(place, "error", "limits-disagree", { message, expected, remedy })];
  }
  if (plasticLimitPct === undefined) return [];
  const difference = liquidLimitPct - plasticLimitPct;
  if (Math.abs(difference - plasticityIndexPct) <= ROUNDED) return [];
  const message = say`The reported plasticity index is not the liquid limit less the plastic limit.`;
  const expected = say`${formatPlain(difference)} %, within ${ROUNDED} points for rounding`;
  return [finding(place, "error", "limits-disagree", { message, expected, remedy })];
}

/** A limit that is reported beside its own readings. */
function bothWays({ file, reported = {}, ...measured }: LimitsRecord): Finding[] {
  const isMeasured: Readonly<Record<ReportedKey, boolean>> = {
    liquidLimitPct: measured.liquidLimitPoints.length > 0,
    plasticLimitPct: measured.plasticLimitPoints.length > 0,
    plasticityIndexPct: false,
    linearShrinkagePct: measured.shrinkageBar !== undefined,
  };
  const twice = REPORTED.filter(({ key }) => isMeasured[key] && reported[key] !== undefined);
  return twice.map(({ names }) =>
    finding({ file, value: names[0] }, "error", "limit-twice", {
      message: say`The sheet reports this value and gives its readings.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      remedy: say`Keep the readings, and take the reported value out.`,
    }),
  );
}

function unknownTests(sheet: SheetValues): Finding[] {
  const unknown = sheet.rows.filter((entry) => entry.written.test && !testOf(entry));
  return unknown.map((entry) =>
    finding(cellPlace(sheet, entry, "test"), "error", "unknown-test", {
      message: say`This test is not known.`,
      expected: say`liquid limit, plastic limit, plasticity index or linear shrinkage`,
      remedy: say`Use one of these names, or start the row with # and a space.`,
    }),
  );
}

/** Blows or penetration of a row of the liquid limit, at its water content. */
function liquidLimitPoint(
  sheet: SheetValues,
  entry: SheetRow,
): {
  readonly point?: LiquidLimitPoint;
  readonly method?: "cup" | "cone";
  readonly findings: readonly Finding[];
} {
  const { pct, findings } = waterContent(sheet, entry);
  const { blows, penetrationMm } = entry.values;
  const measure = blows ?? penetrationMm;
  if (typeof measure !== "number") {
    // What is written and could not be read was told at its cell.
    if (entry.written.blows || entry.written.penetrationMm) return { findings };
    const place = { file: sheet.file, row: entry.row, value: "" };
    const found = finding(place, "error", "missing-value", {
      message: say`This row has neither blows nor a penetration.`,
      expected: say`blows of the cup, or the penetration of the cone`,
      remedy: say`Fill in the reading that was taken.`,
    });
    return { findings: [...findings, found] };
  }
  const method = blows === undefined ? "cone" : "cup";
  if (pct === undefined) return { method, findings };
  return { point: { measure, waterContentPct: pct, row: entry.row }, method, findings };
}

/** From the sheet's own column, or from the three masses. */
function waterContent(
  { file }: SheetValues,
  { row, values, written }: SheetRow,
): { readonly row: number; readonly pct?: number; readonly findings: readonly Finding[] } {
  const { waterContentPct } = values;
  if (typeof waterContentPct === "number") return { row, pct: waterContentPct, findings: [] };
  if (typeof waterContentPct === "string") return { row, findings: [] };
  const masses = allNumbers(values, "tinG", "wetG", "dryG");
  if (!masses) {
    if (written.waterContentPct || (written.tinG && written.wetG && written.dryG)) {
      return { row, findings: [] };
    }
    const found = finding({ file, row, value: "" }, "error", "missing-value", {
      message: say`This row has no water content.`,
      expected: say`a water content in percent, or the three masses of tin, wet and dry soil`,
      remedy: say`Fill in the readings.`,
    });
    return { row, findings: [found] };
  }
  const { tinG, wetG, dryG } = masses;
  if (tinG < dryG && dryG <= wetG) {
    return { row, pct: (100 * (wetG - dryG)) / (dryG - tinG), findings: [] };
  }
  const value = `${written.tinG}, ${written.wetG}, ${written.dryG}`;
  const found = finding({ file, row, value }, "error", "masses-disagree", {
    message: say`These masses cannot belong together.`,
    expected: say`tin < tin + dry soil ≤ tin + wet soil`,
    remedy: say`Check which mass stands in which column.`,
  });
  return { row, findings: [found] };
}

const YES = /^(yes|y|true|1|x|np|n\.p\.|non[- ]?plastic|s[ií])$/i;
const NO = /^(no|n|false|0|plastic|[-–—])$/i;

/** Whether the laboratory reports the soil as non-plastic; a finding for a word that could mean either. */
function readNonPlastic({ file, facts, factRows }: SheetValues): {
  readonly nonPlastic: boolean;
  readonly findings: readonly Finding[];
} {
  const value = String(facts.nonPlastic ?? "").trim();
  const nonPlastic = YES.test(value);
  const isUnclear = !nonPlastic && value !== "" && !NO.test(value);
  const place = { file, row: factRows.nonPlastic, column: "non-plastic", value };
  const findings = findingIf(isUnclear, place, "error", "not-yes-or-no", {
    message: say`This line says whether the soil is non-plastic, and the word is not understood.`,
    expected: say`yes or NP where the fines roll to no thread, no where they do`,
    remedy: say`Write yes or no; put the rest in a remark.`,
  });
  return { nonPlastic, findings };
}

/** The two lengths of the shrinkage bar; a finding where one of them is missing. */
function readShrinkageBar({ file, facts, factRows }: SheetValues): {
  readonly shrinkageBar?: LimitsRecord["shrinkageBar"];
  readonly findings: readonly Finding[];
} {
  const isPart = "wetLengthMm" in factRows !== "dryLengthMm" in factRows;
  const findings = findingIf(isPart, { file }, "error", "incomplete-shrinkage", {
    message: say`The shrinkage bar has only one of its two lengths.`,
    expected: say`the wet and the dry length`,
    remedy: say`Add the missing line above the table.`,
  });
  return { shrinkageBar: allNumbers(facts, "wetLengthMm", "dryLengthMm"), findings };
}

/** The long box of field practice where a sheet gives no other length. */
const BOX_LENGTH_MM = 600;

/** The long shrinkage box of a limits sheet; findings where its two lines do not go together. */
function readLongBox({ file, facts, factRows }: SheetValues): {
  readonly longBox?: LimitsRecord["longBox"];
  readonly findings: readonly Finding[];
} {
  const { boxShrinkageMm: shrinkageMm, boxLengthMm: lengthMm = BOX_LENGTH_MM } = facts;
  if (!("boxShrinkageMm" in factRows)) {
    const value = String(facts.boxLengthMm ?? "");
    const place = { file, row: factRows.boxLengthMm, column: "long box length", value };
    const findings = findingIf("boxLengthMm" in factRows, place, "error", "incomplete-shrinkage", {
      message: say`The long box has a length and no shrinkage.`,
      expected: say`“long box shrinkage (mm)” beside it`,
      remedy: say`Add the line: all gaps of the dry bar pushed together, measured at one end.`,
    });
    return { findings };
  }
  if (typeof shrinkageMm !== "number" || typeof lengthMm !== "number") return { findings: [] };
  const row = factRows.boxShrinkageMm;
  const place = { file, row, column: "long box shrinkage", value: say`${shrinkageMm} mm` };
  const findings = findingIf(shrinkageMm >= lengthMm, place, "error", "box-shrank-away", {
    message: say`The soil in the long box shrank by as much as the box is long.`,
    expected: say`less than ${lengthMm} mm`,
    remedy: say`Check whether the dry length stands there in place of the shrinkage.`,
  });
  return { longBox: { shrinkageMm, lengthMm }, findings };
}
