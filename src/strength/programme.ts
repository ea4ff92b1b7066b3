import type { SheetGrid } from "../lab/sheet/grid.js";
import { tQuantile } from "../numerics/distributions.js";
import { leastSquares } from "../numerics/leastSquares.js";
import { noncentralTCdf } from "../numerics/noncentralT.js";
import { createRandom } from "../numerics/random.js";
import {
  checkFraction,
  checkNotNegative,
  checkPositive,
  checkThat,
} from "../quantities/checkNumber.js";
import { formatFixed, measured, type UnitSystem } from "../quantities/format.js";
import { say, type Text, wordFor } from "../words/message.js";
import { basisRow, contentBasis, STRENGTH_MODELS, type StrengthModel } from "./regression/model.js";
import { LEVEL } from "./significance.js";

export interface TestProgramme {
  readonly status: "ok" | "too-many-blocks" | "too-few-contents" | "outside-contents";
  readonly message: Text;
  readonly contentsPct: readonly number[];
  readonly blocksAContent: number | null;
  readonly batchesAContent: number;
  /** Reached with that number, by calculation; null where it is not the aim. */
  readonly power: number | null;
  readonly halfWidthMpa: number | null;
  /** In the order of making. */
  readonly blocks: readonly PlannedBlock[];
}

export interface TestProgrammeOptions {
  readonly aim: ProgrammeAim;
  readonly contentsPct: readonly number[];
  /** Expected standard deviation of blocks of one content: from earlier work, or a cautious guess. */
  readonly sdMpa: number;
  readonly ageDays: number;
  /** Default `linear`; the power model is not planned for, its scatter being on ln f. */
  readonly model?: Exclude<StrengthModel, "power">;
  /** Mixed on different days; default 2. */
  readonly batchesAContent?: number;
  /** Default 1. */
  readonly seed?: number;
}

/** More than this many a content nobody crushes. */
const MAX_BLOCKS = 60;

/**
 * Plans how many blocks to make at which contents, and in which order to make and crush them.
 *
 * The fewest blocks a content, in whole batches, that reach the aim: the power of a t test between two
 * contents (s pooled over all), or the half width of the mean's band at a content. Both as `sdMpa` and
 * independent blocks would have it: where batches differ, count batches and not blocks. The order is
 * random by `seed`, so that a drift of moisture or weather is not taken for cement.
 *
 * @throws RangeError for numbers not above 0, or a power outside 0 to 1.
 * Source: noncentral t, e.g. Montgomery, Design and Analysis of Experiments (from memory); proved beside
 * SciPy in `tests/strength`.
 *
 * @example
 * const plan = testProgramme({ aim: { kind: "difference", differenceMpa: 0.3 }, contentsPct: [4, 6, 8, 10], sdMpa: 0.2, ageDays: 28 });
 * [plan.blocksAContent, plan.power] // => [10, 0.9038]
 */
export function testProgramme(options: TestProgrammeOptions): TestProgramme {
  options.contentsPct.forEach((content, index) => {
    checkNotNegative(`contentsPct[${index}]`, content);
  });
  const contentsPct = [...new Set(options.contentsPct)].sort((a, b) => a - b);
  const { model = "linear", batchesAContent = 2, seed = 1 } = options;
  const asked = { ...options, contentsPct, model, batchesAContent, seed };
  checkProgramme(asked);
  const { aim } = asked;
  const unplanned = { blocksAContent: null, batchesAContent, power: null, halfWidthMpa: null };
  const without = (status: TestProgramme["status"], message: Text): TestProgramme => {
    return { status, message, contentsPct, ...unplanned, blocks: [] };
  };
  const minContents = STRENGTH_MODELS[model].coefficientNames.length + 1;
  if (contentsPct.length < minContents) {
    return without(
      "too-few-contents",
      say`Plan at least ${minContents} contents for the ${wordFor(model)} model, so that its shape can be tested; there are ${contentsPct.length}.`,
    );
  }
  const [first, last] = [contentsPct[0], contentsPct[contentsPct.length - 1]];
  if (aim.kind === "width" && !(aim.atPct >= first && aim.atPct <= last)) {
    return without(
      "outside-contents",
      say`${aim.atPct} % lies outside the planned contents, ${first} to ${last} %, and nothing is extrapolated.`,
    );
  }
  for (let blocks = batchesAContent; blocks <= MAX_BLOCKS; blocks += batchesAContent) {
    const { reached, enough, result } = reach(asked, blocks);
    if (!enough) continue;
    return {
      status: "ok",
      message: say`${blocks} blocks at each of ${contentsPct.length} contents, from ${batchesAContent} batches each: ${result}, if blocks of one content scatter by ${measured(asked.sdMpa, "stress")} and batches do not differ.`,
      contentsPct,
      blocksAContent: blocks,
      batchesAContent,
      power: aim.kind === "difference" ? reached : null,
      halfWidthMpa: aim.kind === "width" ? reached : null,
      blocks: planBlocks(asked, blocks),
    };
  }
  return without(
    "too-many-blocks",
    say`More than ${MAX_BLOCKS} blocks a content would be needed. Ask for less, or bring the scatter down first: mixing, moisture, compaction, capping.`,
  );
}

/** What was asked, each content once and ascending. */
type Asked = Required<TestProgrammeOptions>;

function checkProgramme({ aim, sdMpa, ageDays, batchesAContent }: Asked): void {
  checkPositive("sdMpa", sdMpa);
  checkPositive("ageDays", ageDays);
  const whole = Number.isInteger(batchesAContent) && batchesAContent > 0;
  checkThat(whole, { batchesAContent }, "a whole number above 0");
  if (aim.kind === "width") checkPositive("aim.halfWidthMpa", aim.halfWidthMpa);
  else {
    checkPositive("aim.differenceMpa", aim.differenceMpa);
    checkFraction("aim.power", aim.power ?? DEFAULT_POWER);
  }
}

const DEFAULT_POWER = 0.9;

/** What so many blocks a content reach of an aim, and whether that is enough. */
function reach(
  asked: Asked,
  blocks: number,
): { readonly reached: number; readonly enough: boolean; readonly result: Text } {
  const { aim, contentsPct, sdMpa } = asked;
  if (aim.kind === "width") {
    const reached = meanHalfWidth(asked, blocks, aim.atPct);
    const result = say`the mean at ${aim.atPct} % is known to ±${measured(reached, "stress", 2)}`;
    return { reached, enough: reached <= aim.halfWidthMpa, result };
  }
  const { differenceMpa, power = DEFAULT_POWER } = aim;
  const reached = differencePower({ contents: contentsPct.length, blocks, sdMpa, differenceMpa });
  const result = say`a difference of ${measured(differenceMpa, "stress")} is seen with a chance of ${formatFixed(100 * reached, 0)} %`;
  return { reached, enough: reached >= power, result };
}

/** What the blocks are made for. */
type ProgrammeAim =
  | {
      /** Tell two contents apart whose true means differ by this much, at 5 %, two-sided. */
      readonly kind: "difference";
      readonly differenceMpa: number;
      /** Chance of seeing it; default 0.9. */
      readonly power?: number;
    }
  | {
      /** Know the mean at a content to plus or minus this much, at 95 % confidence. */
      readonly kind: "width";
      readonly halfWidthMpa: number;
      readonly atPct: number;
    };

/**
 * Power of the two-sided t test between two of `contents` contents with `blocks` blocks each, s pooled
 * over all: noncentral t with δ = difference/(σ √(2/blocks)).
 */
export function differencePower(options: {
  readonly contents: number;
  readonly blocks: number;
  readonly sdMpa: number;
  readonly differenceMpa: number;
}): number {
  const df = options.contents * (options.blocks - 1);
  if (df < 1) return 0;
  const t = tQuantile(1 - LEVEL / 2, df);
  const delta = options.differenceMpa / (options.sdMpa * Math.sqrt(2 / options.blocks));
  return noncentralTCdf(-t, df, -delta) + noncentralTCdf(-t, df, delta);
}

/**
 * Half width of the 95 % band of the mean at a content, were the residual standard deviation σ:
 * t σ √(h₁/blocks), h₁ the leverage with one block a content. Infinite without degrees of freedom.
 */
function meanHalfWidth({ contentsPct, model, sdMpa }: Asked, blocks: number, atPct: number) {
  const facts = STRENGTH_MODELS[model];
  const basis = contentBasis(facts, contentsPct);
  const df = blocks * contentsPct.length - facts.coefficientNames.length;
  if (df < 1) return Infinity;
  const { unscaledCovariance } = leastSquares(
    contentsPct.map((content) => basisRow(facts, basis, content)),
    contentsPct.map(() => 0),
  );
  const row = basisRow(facts, basis, atPct);
  const leverage = row.reduce(
    (sum, left, i) =>
      sum + row.reduce((inner, right, j) => inner + left * right * unscaledCovariance[i][j], 0),
    0,
  );
  return tQuantile(1 - LEVEL / 2, df) * sdMpa * Math.sqrt(leverage / blocks);
}

interface PlannedBlock {
  readonly id: string;
  readonly batch: string;
  readonly cementPct: number;
  readonly ageDays: number;
  /** Place in the order of crushing, from 1. */
  readonly crushingOrder: number;
}

/**
 * Lays `blocks` of each content out in its batches, the batches in random order of making, the blocks in
 * one of crushing.
 */
function planBlocks(asked: Asked, blocks: number): PlannedBlock[] {
  const { contentsPct, batchesAContent, ageDays } = asked;
  const random = createRandom(asked.seed);
  const batches = contentsPct.flatMap((cementPct) =>
    Array<number>(batchesAContent).fill(cementPct),
  );
  // Numbered in the order of making, so that a name does not tell the content to whoever crushes.
  const made = random.shuffle(batches).flatMap((cementPct, index) => {
    const batch = `M${index + 1}`;
    return Array.from({ length: blocks / batchesAContent }, (_, block) => {
      return { id: `${batch}-${block + 1}`, batch, cementPct, ageDays };
    });
  });
  const order = random.shuffle(made.map((_, index) => index + 1));
  return made.map((block, index) => ({ ...block, crushingOrder: order[index] }));
}

/** Columns of what was planned, then those to be filled in. */
function headerOf(units: UnitSystem): readonly string[] {
  const [side, force, mass] = units === "US" ? ["in", "lbf", "lb"] : ["mm", "kN", "g"];
  return [
    "block",
    "batch",
    "cement (%)",
    "age (d)",
    "crushing order",
    `length (${side})`,
    `width (${side})`,
    `height (${side})`,
    `load (${force})`,
    `mass (${mass})`,
    "moisture at making (%)",
    "moisture at test (%)",
    "excluded",
    "remark",
  ];
}

/**
 * The programme as a making-and-crushing sheet: its filled form is the block sheet of a study.
 *
 * Rows stand in the order of making; sizes, load, mass and moistures are to be filled in.
 *
 * @param file what the sheet is to be called. Source: own layout.
 *
 * @example
 * const sheet = programmeSheet([{ id: "M1-1", batch: "M1", cementPct: 6, ageDays: 28, crushingOrder: 2 }], "blocks.csv");
 * sheet.rows[2].slice(0, 6) // => ["M1-1", "M1", "6", "28", "2", ""]
 */
export function programmeSheet(
  blocks: readonly PlannedBlock[],
  file: string,
  units: UnitSystem = "SI",
): SheetGrid {
  const header = headerOf(units);
  return {
    file,
    rows: [
      [
        "# Make in the order of the rows. Crush in the order of “crushing order”. Leave no block out: write the reason under “excluded”.",
      ],
      header,
      ...blocks.map(({ id, batch, cementPct, ageDays, crushingOrder }) => {
        const known = [id, batch, String(cementPct), String(ageDays), String(crushingOrder)];
        return [...known, ...header.slice(known.length).map(() => "")];
      }),
    ],
  };
}

/**
 * A sheet's cells as CSV text, with commas, and quotes where a cell needs them.
 *
 * Source: RFC 4180 (from memory), with line feeds alone.
 *
 * @example
 * sheetCsv({ file: "blocks.csv", rows: [["block", "remark"], ["A", "dry, \"crumbly\""]] }) // => "block,remark\nA,\"dry, \"\"crumbly\"\"\"\n"
 */
export function sheetCsv({ rows }: SheetGrid): string {
  const cell = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return rows.map((row) => `${row.map(cell).join(",")}\n`).join("");
}
