import { createRandom } from "../numerics/random.js";

export interface PlannedBlock {
  readonly id: string;
  readonly batch: string;
  readonly cementPct: number;
  readonly ageDays: number;
  /** Place in the order of crushing, from 1. */
  readonly crushingOrder: number;
}

/** Lays blocks out in batches, the batches in random order of making, the blocks in one of crushing. */
export function planBlocks(of: {
  readonly contentsPct: readonly number[];
  /** A content; a whole number of batches. */
  readonly blocks: number;
  readonly batches: number;
  readonly ageDays: number;
  readonly seed: number;
}): PlannedBlock[] {
  const random = createRandom(of.seed);
  const batches = of.contentsPct.flatMap((cementPct) =>
    Array.from({ length: of.batches }, () => cementPct),
  );
  const perBatch = of.blocks / of.batches;
  // Numbered in the order of making, so that a name does not tell the content to whoever crushes.
  const made = random.shuffle(batches).flatMap((cementPct, batch) =>
    Array.from({ length: perBatch }, (_, block) => ({
      id: `M${batch + 1}-${block + 1}`,
      batch: `M${batch + 1}`,
      cementPct,
      ageDays: of.ageDays,
    })),
  );
  const order = random.shuffle(made.map((_, index) => index + 1));
  return made.map((block, index) => ({ ...block, crushingOrder: order[index] }));
}
