import { checkPositive, checkThat } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";

export interface AspectCorrected {
  /** `outside-table`: the ratio is not covered; nothing is extrapolated. */
  readonly status: "ok" | "outside-table";
  readonly message: Text;
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
  const known = ASPECT_RATIO_TABLES.map(({ id }) => id).join(", ");
  checkThat(table !== undefined, { tableId }, `one of ${known}`);
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
    message: say`${table.name}: factor ${formatFixed(factor, 3)} at height over thickness ${formatFixed(ratio, 2)}. ${table.source}.`,
    ...head,
    factor,
    correctedMpa: factor * block.strengthMpa,
  };
}

export interface AspectRatioTable {
  readonly id: string;
  readonly name: Text;
  /** Height over least thickness, ascending, with the factor that the strength is multiplied by. */
  readonly points: readonly { readonly ratio: number; readonly factor: number }[];
  /** True where the last factor holds for all higher ratios. */
  readonly openAbove: boolean;
  readonly source: Text;
  readonly basis: "read" | "memory";
}

const points = (ratios: readonly number[], factors: readonly number[]) =>
  ratios.map((ratio, index) => ({ ratio, factor: factors[index] }));

/**
 * Aspect-ratio factors as data. They disagree, and one study of cement-stabilised rammed earth found no
 * correction needed from ratio 2 upwards; so a corrected strength never stands without the measured one.
 *
 * @example
 * ASPECT_RATIO_TABLES.map(({ id }) => id) // => ["nzs4298", "heathcote-1992", "cylinder-c39", "none-2017"]
 */
export const ASPECT_RATIO_TABLES: readonly AspectRatioTable[] = [
  {
    id: "nzs4298",
    name: say`NZS 4298:1998 and HB 195`,
    points: points([0.4, 0.7, 1, 3, 5], [0.5, 0.6, 0.7, 0.85, 1]),
    openAbove: true,
    source: say`NZS 4298:1998 and HB 195, after Krefeld; from memory: check against the standard`,
    basis: "memory",
  },
  {
    id: "heathcote-1992",
    name: say`Heathcote and Jankulovski 1992`,
    points: points([0.4, 0.7, 1, 3, 5], [0.25, 0.4, 0.58, 0.9, 1]),
    openAbove: true,
    source: say`Heathcote & Jankulovski 1992; from memory, with low confidence`,
    basis: "memory",
  },
  {
    id: "cylinder-c39",
    name: say`Concrete cylinders and cores, length over diameter`,
    points: points([1, 1.25, 1.5, 1.75, 2], [0.87, 0.93, 0.96, 0.98, 1]),
    openAbove: false,
    source: say`ASTM C39/C42 factors, read as coded in open software; the factor 1 at ratio 2 is from memory. Made for concrete`,
    basis: "read",
  },
  {
    id: "none-2017",
    name: say`No correction, cement-stabilised rammed earth`,
    points: points([2, 5.81], [1, 1]),
    openAbove: false,
    source: say`Venkatarama Reddy, Suresh & Nanjunda Rao 2017, abstract read: from ratio 2 to 5.81 the loss is 1 % at 1800 kg/m³, 3 to 5 % at 1700 kg/m³`,
    basis: "read",
  },
];
