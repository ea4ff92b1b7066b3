import { mean, sumNthPowerDeviations } from "simple-statistics";
import type { SpecimenRecord } from "../lab/specimens.js";
import { measured } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import { groupBy } from "./groupBy.js";
import { LEVEL, upperTailF } from "./significance.js";

export interface BatchScatter {
  /** `one-batch-a-content`: batches and contents cannot be told apart; `no-replicates`: one block a batch. */
  readonly status: "ok" | "missing-batches" | "one-batch-a-content" | "no-replicates";
  readonly message: Text;
  /** Standard deviation of blocks of one batch, MPa. */
  readonly withinSdMpa: number | null;
  /** Standard deviation of batches of one content beyond that, MPa; 0 where none is seen. */
  readonly betweenSdMpa: number | null;
  readonly fValue: number | null;
  readonly pValue: number | null;
  readonly batches: number;
}

/**
 * Tells the scatter from batch to batch from that of blocks of one batch, within each cement content.
 *
 * Nested analysis of variance: F = (SS_batches/(B − m)) / (SS_within/(n − B)) for n blocks, B batches at m
 * contents; betweenSd = √((MS_batches − MS_within)/n₀), n₀ the mean number of blocks a batch, corrected for
 * unequal numbers: (n − Σ_contents Σ nᵢ²/N_content)/(B − m).
 *
 * @param options.ageDays only blocks of this age; excluded blocks take no part.
 * Source: nested analysis of variance, e.g. Montgomery, Design and Analysis of Experiments (from memory).
 *
 * @example
 * const block = (id, batch, strengthMpa) => ({ id, batch, cementPct: 6, strengthMpa, ageDays: 28, row: 2 });
 * const { fValue, betweenSdMpa } = batchScatter([block("A", "M1", 2.0), block("B", "M1", 2.2), block("C", "M2", 2.8), block("D", "M2", 3.0)], { ageDays: 28 });
 * [fValue, betweenSdMpa] // => [32, 0.5568]
 */
export function batchScatter(
  specimens: readonly SpecimenRecord[],
  { ageDays }: { readonly ageDays: number },
): BatchScatter {
  const used = specimens.filter((block) => !block.excluded && block.ageDays === ageDays);
  const contents = [...groupBy(used, ({ cementPct }) => cementPct).values()].map((blocks) =>
    [...groupBy(blocks, ({ batch }) => batch).values()].map((alike) =>
      alike.map(({ strengthMpa }) => strengthMpa),
    ),
  );
  const batches = contents.flat().length;
  const untold = { withinSdMpa: null, betweenSdMpa: null, fValue: null, pValue: null, batches };
  const without = (status: BatchScatter["status"], message: Text): BatchScatter => {
    return { status, message, ...untold };
  };
  if (used.length === 0 || used.some(({ batch }) => !batch)) {
    return without("missing-batches", say`Not every block names its batch.`);
  }
  const [outer, inner] = [batches - contents.length, used.length - batches];
  if (outer < 1) {
    return without(
      "one-batch-a-content",
      say`Each content was one batch, so the scatter from batch to batch cannot be seen. Mix contents twice.`,
    );
  }
  if (inner < 1) return without("no-replicates", say`Each batch gave one block.`);
  let [between, within, unequal] = [0, 0, 0];
  for (const content of contents) {
    const all = content.flat();
    const grand = mean(all);
    for (const values of content) {
      between += values.length * (mean(values) - grand) ** 2;
      within += sumNthPowerDeviations(values, 2);
      unequal += values.length ** 2 / all.length;
    }
  }
  const [betweenMs, withinMs] = [between / outer, within / inner];
  const perBatch = (used.length - unequal) / outer;
  const fValue = withinMs > 0 ? betweenMs / withinMs : null;
  const pValue = fValue === null ? null : upperTailF(fValue, outer, inner);
  const betweenSdMpa = Math.sqrt(Math.max(0, betweenMs - withinMs) / perBatch);
  const differ = pValue !== null && pValue < LEVEL;
  return {
    status: "ok",
    message: differ
      ? say`Batches of one content differ by more than their blocks (standard deviation ${measured(betweenSdMpa, "stress", 2)}): the blocks are not independent, and bands made from them are too narrow.`
      : say`Batches of one content are not clearly different; few batches show only gross differences.`,
    withinSdMpa: Math.sqrt(withinMs),
    betweenSdMpa,
    fValue,
    pValue,
    batches,
  };
}

/**
 * One record a batch, content and age, with the mean strength of its blocks: where blocks of a batch are
 * alike, the batches are the independent readings, and the curve's band should be made from them.
 *
 * Excluded blocks take no part and come back as they are, so that they stay in sight. A bound of the means
 * speaks of batch means, not of single blocks; `remark` names the blocks that a mean is of. Blocks without a batch are readings of their own.
 *
 * Source: the balanced nested design, e.g. Montgomery, Design and Analysis of Experiments (from memory).
 *
 * @example
 * const block = (id, batch, strengthMpa) => ({ id, batch, cementPct: 6, strengthMpa, ageDays: 28, row: 2 });
 * batchMeans([block("A", "M1", 2.0), block("B", "M1", 2.4), block("C", "M2", 2.8)]).map(({ id, strengthMpa }) => [id, strengthMpa]) // => [["M1, 6 %, 28 d", 2.2], ["M2, 6 %, 28 d", 2.8]]
 */
export function batchMeans(specimens: readonly SpecimenRecord[]): SpecimenRecord[] {
  const used = specimens.filter((block) => !block.excluded);
  const groups = groupBy(used, ({ id, batch, cementPct, ageDays }) =>
    batch ? `${batch}, ${cementPct} %, ${ageDays} d` : id,
  );
  const means = [...groups].map(([id, blocks]): SpecimenRecord => {
    const { batch, cementPct, ageDays, row } = blocks[0];
    const strengthMpa = mean(blocks.map((block) => block.strengthMpa));
    const remark = blocks.map((block) => block.id).join(", ");
    return { id, batch, cementPct, ageDays, row, strengthMpa, remark };
  });
  return [...means, ...specimens.filter((block) => block.excluded)];
}
