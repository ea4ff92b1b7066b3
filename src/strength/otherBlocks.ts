import type { SpecimenRecord } from "../lab/specimens.js";
import { type LeastCement, leastCement } from "./leastCement.js";
import type { StrengthRequirement } from "./regression/bounds.js";
import { type FitStrengthOptions, fitStrength } from "./regression/fit.js";

/** The least cement content as it would be with other blocks in the regression. */
export interface LeastCementOfOthers {
  /** Names of blocks that take part and were left out here. */
  readonly without: readonly string[];
  /** Names of blocks that somebody excluded and that take part here. */
  readonly withBack: readonly string[];
  readonly status: LeastCement["status"];
  /** Exact, and rounded up as in the study; null without an answer. */
  readonly cementPct: number | null;
  readonly batchablePct: number | null;
}

/** Single blocks that are tried; a sheet with more odd blocks than this has another trouble. */
const MAX_SINGLES = 8;

/**
 * The least cement content without each block that lies far from the others, with each excluded block of the
 * age put back, and without all the far ones at once: whether one block decides it. Nothing is left out of
 * the study by this; that needs a reason which somebody writes down.
 *
 * @param far names of blocks that were found to lie far from the others: see `includedSpecimens`.
 * @returns empty where there is no such block. Source: as `leastCement`.
 *
 * @example
 * const block = (id, cementPct, strengthMpa, excluded) => ({ id, cementPct, strengthMpa, excluded, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 1.4), block("D", 8, 3.0), block("E", 10, 3.6)];
 * const requirement = { strengthMpa: 2, statistic: "mean", confidence: 0.95 };
 * const [without] = leastCementOfOthers(blocks, ["C"], { fit: { model: "linear", ageDays: 28 }, requirement });
 * [without.without, without.batchablePct] // => [["C"], 6]
 */
export function leastCementOfOthers(
  specimens: readonly SpecimenRecord[],
  far: readonly string[],
  asked: {
    readonly fit: FitStrengthOptions;
    readonly requirement: StrengthRequirement;
    readonly roundUpToPct?: number;
    /** What is fitted of the blocks; default the blocks themselves: see `batchMeans`. */
    readonly readings?: (blocks: readonly SpecimenRecord[]) => readonly SpecimenRecord[];
  },
): LeastCementOfOthers[] {
  const { fit, requirement, roundUpToPct, readings = (blocks) => blocks } = asked;
  const allAges = fit.covariates?.includes("ln age") ?? false;
  const excluded = specimens
    .filter((block) => block.excluded && (allAges || block.ageDays === fit.ageDays))
    .map(({ id }) => id);
  const changes = [
    ...far.slice(0, MAX_SINGLES).map((id) => ({ without: [id], withBack: [] })),
    ...excluded.slice(0, MAX_SINGLES).map((id) => ({ without: [], withBack: [id] })),
    ...(far.length > 1 ? [{ without: far, withBack: [] }] : []),
  ];
  return changes.map(({ without, withBack }: Pick<LeastCementOfOthers, "without" | "withBack">) => {
    const blocks = specimens.flatMap((block): SpecimenRecord[] => {
      if (without.includes(block.id)) return [];
      return [withBack.includes(block.id) ? { ...block, excluded: undefined } : block];
    });
    const curve = fitStrength(readings(blocks), fit);
    const { status, cementPct, batchablePct } = leastCement(curve, requirement, { roundUpToPct });
    return { without, withBack, status, cementPct, batchablePct };
  });
}
