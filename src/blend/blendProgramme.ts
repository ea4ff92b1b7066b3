import type { BlendMaterial } from "./blendMaterial.js";
import type { BlendLimit } from "./blendTarget.js";
import { type LimitRow, limitRows } from "./limitRows.js";

/** Materials and limits as numbers; shares as parts of one, so that all conditions have one scale. */
export interface BlendProgramme {
  readonly materials: readonly BlendMaterial[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  readonly rows: readonly LimitRow[];
}

/**
 * @throws RangeError where there is no material, a share bound lies outside 0 to 100 or the wrong way
 * round, or a limit asks for what a material does not tell.
 */
export function blendProgramme(
  materials: readonly BlendMaterial[],
  limits: readonly BlendLimit[],
): BlendProgramme {
  if (materials.length === 0)
    throw new RangeError("invalid `materials`: []; expected at least one");
  materials.forEach(({ minSharePct, maxSharePct, curve }, index) => {
    if (!(minSharePct >= 0 && minSharePct <= maxSharePct && maxSharePct <= 100)) {
      throw new RangeError(
        `invalid \`materials[${index}]\` share: ${minSharePct} to ${maxSharePct}; expected 0 to 100, smallest first`,
      );
    }
    if (curve.points.length === 0) {
      throw new RangeError(
        `invalid \`materials[${index}].curve\`: no points; expected at least one`,
      );
    }
  });
  return {
    materials,
    lower: materials.map(({ minSharePct }) => minSharePct / 100),
    upper: materials.map(({ maxSharePct }) => maxSharePct / 100),
    rows: limitRows(materials, limits),
  };
}

/** The same with the materials outside a set held at nothing. */
export function onlyMaterials(
  programme: BlendProgramme,
  used: (index: number) => boolean,
): BlendProgramme {
  return { ...programme, upper: programme.upper.map((most, j) => (used(j) ? most : 0)) };
}
