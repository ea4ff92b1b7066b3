import { checkThat } from "../../quantities/checkNumber.js";
import { say, type Text } from "../../words/message.js";

/** The long box of field practice. */
const BOX_LENGTH_MM = 600;

export interface LongBoxRule {
  /** Upper shrinkage of the line, mm of the 600 mm box. */
  readonly uptoMm: number;
  /** Loose volumes of soil to one of cement. */
  readonly soilToCement: number;
}

export interface LongBoxShrinkage {
  readonly shrinkageMm: number;
  /** As if the box were 600 mm long. */
  readonly per600Mm: number;
  readonly shrinkagePct: number;
  /** What two tables of field practice say; they break at different lengths. */
  readonly advice: readonly {
    readonly source: Text;
    readonly basis: "read" | "memory";
    /** Loose volumes of soil to one of cement; absent beyond the table. */
    readonly soilToCement?: number;
  }[];
  readonly caution: Text;
}

const TABLES = [
  {
    source: say`Nyagah, block contractor's page, Kenya, table`,
    basis: "read",
    lines: [
      { uptoMm: 12, soilToCement: 18 },
      { uptoMm: 24, soilToCement: 16 },
      { uptoMm: 39, soilToCement: 14 },
      { uptoMm: 50, soilToCement: 12 },
    ],
  },
  {
    source: say`Adam and Agib (UNESCO) 2001, after Webb and Lockwood, from memory`,
    basis: "memory",
    lines: [
      { uptoMm: 15, soilToCement: 18 },
      { uptoMm: 30, soilToCement: 16 },
      { uptoMm: 45, soilToCement: 14 },
      { uptoMm: 60, soilToCement: 12 },
    ],
  },
] as const;

/**
 * Shrinkage of the long field box (600 × 40 × 40 mm, air-dried), kept apart from the laboratory bar.
 *
 * The box is filled wetter by feel, is longer and dries in the open: its percentage is another number
 * than the linear shrinkage of the bar and must not be held against limits made for the bar. Its own
 * tables give parts of cement for pressed blocks, by loose volume; both are shown because they differ.
 *
 * @param boxLengthMm default 600.
 * @throws RangeError where the length is not positive or the shrinkage not 0 to the length.
 *
 * @example
 * const { shrinkagePct, advice } = longBoxShrinkage(27);
 * shrinkagePct // => 4.5
 * advice.map(({ soilToCement }) => soilToCement) // => [14, 16]
 */
export function longBoxShrinkage(
  shrinkageMm: number,
  boxLengthMm: number = BOX_LENGTH_MM,
): LongBoxShrinkage {
  checkThat(boxLengthMm > 0, { boxLengthMm }, "above 0");
  checkThat(
    shrinkageMm >= 0 && shrinkageMm < boxLengthMm,
    { shrinkageMm },
    `0 to the box's ${boxLengthMm}`,
  );
  const per600Mm = (BOX_LENGTH_MM * shrinkageMm) / boxLengthMm;
  return {
    shrinkageMm,
    per600Mm,
    shrinkagePct: (100 * shrinkageMm) / boxLengthMm,
    advice: TABLES.map(({ source, basis, lines }) => {
      const line: LongBoxRule | undefined = lines.find(({ uptoMm }) => per600Mm <= uptoMm);
      return { source, basis, ...(line ? { soilToCement: line.soilToCement } : {}) };
    }),
    caution: say`Field test for pressed blocks: not the linear shrinkage of the laboratory bar, and no design of a rammed wall. The content of cement follows from crushed blocks of the mix.`,
  };
}
