import { formatFixed } from "../quantities/formatNumber.js";
import { say, sayOf } from "../words/say.js";
import { ASPECT_RATIO_TABLES, type AspectRatioTable } from "./aspectRatioTables.js";
import { checkPositive } from "./checkOption.js";

export interface AspectCorrected {
  /** `outside-table`: the ratio is not covered; nothing is extrapolated. */
  readonly status: "ok" | "outside-table";
  readonly message: string;
  readonly table: AspectRatioTable;
  readonly ratio: number;
  readonly factor: number | null;
  readonly uncorrectedMpa: number;
  readonly correctedMpa: number | null;
}

/**
 * Corrects a block's strength for its shape: squat blocks are held by the plates and read too strong.
 *
 * Formula: corrected = factor × measured, the factor interpolated straight between the table's points.
 *
 * @param block heights and thickness in mm; the thickness is the least side, or the diameter.
 * @param tableId a name from `ASPECT_RATIO_TABLES`.
 * @throws RangeError for a size or strength not above 0, or an unknown table. Source: in `table.source`.
 *
 * @example
 * const { ratio, factor, uncorrectedMpa, correctedMpa } = correctAspectRatio({ strengthMpa: 3, heightMm: 100, thicknessMm: 100 }, "nzs4298");
 * [ratio, factor, uncorrectedMpa, correctedMpa] // => [1, 0.7, 3, 2.1]
 */
export function correctAspectRatio(
  block: {
    readonly strengthMpa: number;
    readonly heightMm: number;
    readonly thicknessMm: number;
  },
  tableId: string,
): AspectCorrected {
  const table = ASPECT_RATIO_TABLES.find(({ id }) => id === tableId);
  if (!table) {
    const known = ASPECT_RATIO_TABLES.map(({ id }) => id).join(", ");
    throw new RangeError(`invalid \`tableId\`: ${tableId}; expected one of ${known}`);
  }
  checkPositive("strengthMpa", block.strengthMpa);
  checkPositive("heightMm", block.heightMm);
  checkPositive("thicknessMm", block.thicknessMm);
  const ratio = block.heightMm / block.thicknessMm;
  const first = table.points[0];
  const last = table.points[table.points.length - 1];
  const head = { table, ratio, uncorrectedMpa: block.strengthMpa };
  if (ratio < first.ratio || (ratio > last.ratio && !table.openAbove)) {
    return {
      status: "outside-table",
      message: say`Ratio ${formatFixed(ratio, 2)} lies outside this table, ${first.ratio} to ${last.ratio}; no factor is given.`,
      ...head,
      factor: null,
      correctedMpa: null,
    };
  }
  const above = table.points.find((point) => point.ratio >= ratio) ?? last;
  const below = table.points.findLast((point) => point.ratio <= ratio)!;
  const share = above.ratio > below.ratio ? (ratio - below.ratio) / (above.ratio - below.ratio) : 0;
  const factor = below.factor + share * (above.factor - below.factor);
  return {
    status: "ok",
    message: say`${sayOf(table.name)}: factor ${formatFixed(factor, 3)} at height over thickness ${formatFixed(ratio, 2)}. ${sayOf(table.source)}.`,
    ...head,
    factor,
    correctedMpa: factor * block.strengthMpa,
  };
}
