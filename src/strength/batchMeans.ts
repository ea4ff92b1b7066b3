import type { SpecimenRecord } from "../lab/specimenRecord.js";
import { say } from "../words/say.js";

/**
 * One record a batch, content and age, with the mean strength of its blocks: where blocks of a batch are
 * alike, the batches are the independent readings, and the curve's band should be made from them.
 *
 * Excluded blocks take no part and come back as they are, so that they stay in sight. A bound of the means
 * speaks of batch means, not of single blocks. Blocks without a batch are readings of their own.
 *
 * Source: the balanced nested design, e.g. Montgomery, Design and Analysis of Experiments (from memory).
 *
 * @example
 * const block = (id, batch, strengthMpa) => ({ id, batch, cementPct: 6, strengthMpa, ageDays: 28, row: 2 });
 * batchMeans([block("A", "M1", 2.0), block("B", "M1", 2.4), block("C", "M2", 2.8)]).map(({ id, strengthMpa }) => [id, strengthMpa]) // => [["M1, 6 %, 28 d", 2.2], ["M2, 6 %, 28 d", 2.8]]
 */
export function batchMeans(specimens: readonly SpecimenRecord[]): SpecimenRecord[] {
  const groups = new Map<string, SpecimenRecord[]>();
  const excluded: SpecimenRecord[] = [];
  for (const block of specimens) {
    if (block.excluded) {
      excluded.push(block);
      continue;
    }
    const name = block.batch
      ? `${block.batch}, ${block.cementPct} %, ${block.ageDays} d`
      : block.id;
    const group = groups.get(name);
    if (group) group.push(block);
    else groups.set(name, [block]);
  }
  const means = [...groups].map(([id, blocks]): SpecimenRecord => {
    const { batch, cementPct, ageDays, row } = blocks[0];
    const strengthMpa = blocks.reduce((sum, block) => sum + block.strengthMpa, 0) / blocks.length;
    const remark = say`mean of ${blocks.map((block) => block.id).join(", ")}`;
    return { id, batch, cementPct, ageDays, row, strengthMpa, remark };
  });
  return [...means, ...excluded];
}
