import { type Finding, finding, findingIf } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  allNumbers,
  cellPlace,
  numberRule,
  numbersAmong,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
  sieveRule,
  textRule,
  timeFindings,
} from "./sheet/layout.js";
import { readRecord, type SheetReading } from "./sheet/readSheet.js";

export type JarLayerName = "sand and gravel" | "silt" | "clay";

/** A jar sedimentation test as read from its sheet. */
export interface JarRecord {
  readonly file: string;
  /** From the surface of the water to the bottom of the jar. */
  readonly waterDepthMm: number;
  /** Absent where nobody measured it; 20 °C is taken then. */
  readonly temperatureC?: number;
  /** Sieve through which the soil was put before; absent where the jar holds the whole sample. */
  readonly passedSizeMm?: number;
  /** Increasing times; the layers from the bottom up. */
  readonly layers: readonly JarLayer[];
}

export interface JarLayer {
  readonly name: JarLayerName;
  readonly timeMin: number;
  /** Height of the layer's top above the bottom of the jar at that time. */
  readonly topMm: number;
  readonly row: number;
}

const NAMES: readonly JarLayerName[] = ["sand and gravel", "silt", "clay"];

const needed = { required: true, positive: true };

/** What a jar sheet may hold. */
export const JAR_LAYOUT: SheetLayout = {
  title: say`jar sheet`,
  facts: [
    numberRule("waterDepthMm", "water depth", "length", needed),
    numberRule("temperatureC", "temperature", "temperature", { min: 5, max: 40 }),
    sieveRule("passedSizeMm", "passed sieve"),
  ],
  columns: [
    textRule("layer", "layer", { required: true }),
    numberRule("timeMin", "time", "duration", needed),
    numberRule("topMm", "top", "length", needed),
  ],
};

/**
 * Reads a jar sheet: `water depth (mm)` and, where they apply, `temperature (C)` and `passed sieve (mm)`
 * (through which the soil was put before it went into the jar) above a table of `layer`,
 * `time (min)` and `top (mm)`: the height of the settled soil above the bottom at that time, one row each
 * for `sand and gravel`, `silt` and `clay`, in this order.
 */
export function readJar(grid: SheetGrid): SheetReading<JarRecord> {
  return readRecord(grid, JAR_LAYOUT, (sheet) => {
    const { file, facts } = sheet;
    const { layers, findings } = readLayers(sheet);
    const record: JarRecord = {
      file,
      waterDepthMm: facts.waterDepthMm as number,
      ...numbersAmong(facts, "temperatureC", "passedSizeMm"),
      layers,
    };
    return { record, findings: [...findings, ...heightFindings(sheet, layers)] };
  });
}

function readLayers(sheet: SheetValues): {
  readonly layers: readonly JarLayer[];
  readonly findings: readonly Finding[];
} {
  const layers: JarLayer[] = [];
  const findings: Finding[] = [];
  for (const [index, entry] of sheet.rows.entries()) {
    const name = NAMES.at(index);
    const { layer } = entry.written;
    if (layer && layer.toLowerCase() !== name) {
      const found = finding(cellPlace(sheet, entry, "layer"), "error", "layer-order", {
        message: say`This layer is not the next one.`,
        expected: name ?? say`three rows: sand and gravel, silt, clay`,
        remedy: say`Write the three layers once each, from the bottom up.`,
      });
      findings.push(found);
      continue;
    }
    const read = allNumbers(entry.values, "timeMin", "topMm");
    if (!read) continue;
    findings.push(...orderFindings(sheet, entry, read, layers.at(-1)));
    if (name) layers.push({ name, ...read, row: entry.row });
  }
  return { layers, findings };
}

/** A layer is read later than the one below it, and its top stands no lower. */
function orderFindings(
  sheet: SheetValues,
  entry: SheetRow,
  { timeMin, topMm }: Pick<JarLayer, "timeMin" | "topMm">,
  below: JarLayer | undefined,
): Finding[] {
  const remedy = say`Heights are those of the top above the bottom of the jar, read in order.`;
  const belowMm = below?.topMm ?? 0;
  return [
    ...timeFindings(cellPlace(sheet, entry, "timeMin"), timeMin, below, { remedy }),
    ...findingIf(topMm < belowMm, cellPlace(sheet, entry, "topMm"), "error", "layer-sinks", {
      message: say`The settled soil stands lower than at the reading before.`,
      expected: say`at least ${belowMm} mm`,
      remedy,
    }),
  ];
}

/** All three layers are there, and leave water above them. */
function heightFindings(
  { file, facts, rows, headers }: SheetValues,
  layers: readonly JarLayer[],
): Finding[] {
  const { topMm = 0, row } = layers.at(-1) ?? {};
  const { waterDepthMm } = facts;
  const isFull = typeof waterDepthMm === "number" && topMm >= waterDepthMm;
  const top = { file, row, column: headers.topMm, value: say`${topMm}` };
  const short = { file, row: rows.at(-1)?.row };
  return [
    ...findingIf(rows.length < NAMES.length, short, "error", "missing-layer", {
      message: say`The table does not have all three layers.`,
      expected: NAMES.join(", "),
      remedy: say`Add the missing row; a layer that cannot be seen has the top of the one below it.`,
    }),
    ...findingIf(isFull, top, "error", "jar-full-of-soil", {
      message: say`The soil stands as high as the water.`,
      expected: say`less than the water's ${Number(waterDepthMm)} mm; a third of it is usual`,
      remedy: say`Check the heights; repeat the test with less soil.`,
    }),
  ];
}
