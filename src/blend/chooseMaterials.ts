import { type BlendProgramme, onlyMaterials } from "./blendProgramme.js";
import { type BlendAims, type BlendSolution, solveBlend } from "./solveBlend.js";

/** More sets of materials than this would make a person wait. */
const MOST_SETS = 20_000;

/**
 * The best blend of at most so many materials: every set of that size is solved (a smaller set is part
 * of a larger one), so the answer is exact. Materials with a smallest share are in every set.
 *
 * @throws RangeError where the sets to try are more than 20 000, or materials that must be used are more
 * than allowed.
 */
export function chooseMaterials(
  programme: BlendProgramme,
  aims: BlendAims,
  mostMaterials: number,
): BlendSolution {
  const count = programme.lower.length;
  const forced = programme.lower.flatMap((least, j) => (least > 0 ? [j] : []));
  if (!(Number.isInteger(mostMaterials) && mostMaterials >= Math.max(1, forced.length))) {
    throw new RangeError(
      `invalid \`mostMaterials\`: ${mostMaterials}; expected a whole number from ${Math.max(1, forced.length)}, as so many have a smallest share`,
    );
  }
  if (mostMaterials >= count) return solveBlend(programme, aims);
  const free = programme.lower.flatMap((least, j) => (least > 0 ? [] : [j]));
  let best: BlendSolution | null = null;
  let tried = 0;
  const grow = (chosen: readonly number[], from: number): void => {
    if (chosen.length === mostMaterials) {
      tried += 1;
      if (tried > MOST_SETS) {
        throw new RangeError(
          `invalid \`mostMaterials\`: ${mostMaterials} of ${count} makes more than ${MOST_SETS} sets; expected fewer`,
        );
      }
      const found = solveBlend(
        onlyMaterials(programme, (j) => chosen.includes(j)),
        aims,
      );
      if (best === null || isBetter(found, best)) best = found;
      return;
    }
    for (let k = from; k < free.length; k += 1) grow([...chosen, free[k]], k + 1);
  };
  grow(forced, 0);
  return best!;
}

/** Feasible before infeasible, then by the scores in their order; a difference within rounding is none. */
export function isBetter(found: BlendSolution, best: BlendSolution): boolean {
  if ((found.fit.status === "ok") !== (best.fit.status === "ok")) return found.fit.status === "ok";
  for (let i = 0; i < Math.min(found.score.length, best.score.length); i += 1) {
    const gap = found.score[i] - best.score[i];
    if (Math.abs(gap) > 1e-7 * (1 + Math.abs(best.score[i]))) return gap < 0;
  }
  return false;
}
