import type { Finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { SheetLayout } from "./sheet/layout.js";
import { readSheet } from "./sheet/readSheet.js";

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

/** What a jar sheet may hold. */
export const JAR_LAYOUT: SheetLayout = {
  title: say`jar sheet`,
  facts: [
    {
      key: "waterDepthMm",
      names: ["water depth"],
      kind: "number",
      dimension: "length",
      required: true,
      positive: true,
    },
    {
      key: "temperatureC",
      names: ["temperature"],
      kind: "number",
      dimension: "temperature",
      min: 5,
      max: 40,
    },
    { key: "passedSizeMm", names: ["passed sieve"], kind: "sieve" },
  ],
  columns: [
    { key: "layer", names: ["layer"], kind: "text", required: true },
    {
      key: "timeMin",
      names: ["time"],
      kind: "number",
      dimension: "duration",
      required: true,
      positive: true,
    },
    {
      key: "topMm",
      names: ["top"],
      kind: "number",
      dimension: "length",
      required: true,
      positive: true,
    },
  ],
};

/**
 * Reads a jar sheet: `water depth (mm)` and, where they apply, `temperature (C)` and `passed sieve (mm)`
 * (through which the soil was put before it went into the jar) above a table of `layer`,
 * `time (min)` and `top (mm)`: the height of the settled soil above the bottom at that time, one row each
 * for `sand and gravel`, `silt` and `clay`, in this order.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readJar(grid: SheetGrid, findings: Finding[]): JarRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, JAR_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts } = sheet;
  const refuse = (finding: Omit<Finding, "severity" | "file">) =>
    findings.push({ severity: "error", file, ...finding });
  const layers: JarLayer[] = [];
  sheet.rows.forEach(({ row, values, written }, index) => {
    const expected = NAMES[index];
    if (written.layer && written.layer.toLowerCase() !== expected) {
      refuse({
        code: "layer-order",
        row,
        column: sheet.headers.layer,
        value: written.layer,
        message: say`This layer is not the next one.`,
        expected: expected ?? say`three rows: sand and gravel, silt, clay`,
        remedy: say`Write the three layers once each, from the bottom up.`,
      });
      return;
    }
    const { timeMin, topMm } = values;
    if (typeof timeMin !== "number" || typeof topMm !== "number") return;
    const below = layers.at(-1);
    for (const [key, value, least] of [
      ["timeMin", timeMin, below?.timeMin ?? 0],
      ["topMm", topMm, below?.topMm ?? 0],
    ] as const) {
      if (!below || value > least || (key === "topMm" && value === least)) continue;
      refuse({
        code: key === "timeMin" ? "time-order" : "layer-sinks",
        row,
        column: sheet.headers[key],
        value: written[key],
        message:
          key === "timeMin"
            ? say`This reading is not later than the one above it.`
            : say`The settled soil stands lower than at the reading before.`,
        expected: key === "timeMin" ? say`more than ${least} min` : say`at least ${least} mm`,
        remedy: say`Heights are those of the top above the bottom of the jar, read in order.`,
      });
    }
    if (expected) layers.push({ name: expected, timeMin, topMm, row });
  });
  if (sheet.rows.length < NAMES.length) {
    refuse({
      code: "missing-layer",
      row: sheet.rows[sheet.rows.length - 1].row,
      message: say`The table does not have all three layers.`,
      expected: NAMES.join(", "),
      remedy: say`Add the missing row; a layer that cannot be seen has the top of the one below it.`,
    });
  }
  const last = layers.at(-1);
  if (last && typeof facts.waterDepthMm === "number" && last.topMm >= facts.waterDepthMm) {
    refuse({
      code: "jar-full-of-soil",
      row: last.row,
      column: sheet.headers.topMm,
      value: String(last.topMm),
      message: say`The soil stands as high as the water.`,
      expected: say`less than the water's ${facts.waterDepthMm} mm; a third of it is usual`,
      remedy: say`Check the heights; repeat the test with less soil.`,
    });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    waterDepthMm: facts.waterDepthMm as number,
    temperatureC: facts.temperatureC as number | undefined,
    ...(typeof facts.passedSizeMm === "number" ? { passedSizeMm: facts.passedSizeMm } : {}),
    layers,
  };
}
