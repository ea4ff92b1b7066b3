import { formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { BlendProgramme } from "./blendProgramme.js";
import type { BlendConflict, UnreachableLimit } from "./blendResult.js";
import { leastLimitBreach } from "./leastLimitBreach.js";
import type { LimitRow } from "./limitRows.js";
import { nearestReachable } from "./reachableRange.js";

/** Breaches below this are rounding, in the limit's own unit. */
const ROUNDING = 1e-6;
/** A further material is described as taking up this much of the blend. */
const FURTHER_SHARE_PCT = 20;

export interface ConflictReport {
  readonly conflict: BlendConflict;
  readonly message: string;
}

/** Says in the user's terms which limits these materials cannot meet, by how much, and what would help. */
export function explainConflict(programme: BlendProgramme, mostMaterials: number): ConflictReport {
  const { lower, upper, rows } = programme;
  const least = 100 * lower.reduce((sum, value) => sum + value, 0);
  const most = 100 * upper.reduce((sum, value) => sum + value, 0);
  if (least > 100 + 1e-9 || most < 100 - 1e-9) {
    return {
      message: sharesMessage(least, most),
      conflict: {
        alone: [],
        together: [say`the shares' own bounds`],
        sharesPct: lower.map((value, j) => 50 * (value + upper[j])),
        leastBreach: [],
      },
    };
  }
  const alone = rows.flatMap((row) => unreachable(row, lower, upper));
  const all = leastLimitBreach(programme);
  const sharesPct = all.shares.map((share) => 100 * share);
  if (Math.max(0, ...all.breach) <= ROUNDING) {
    return {
      message: say`No blend of at most ${mostMaterials} materials keeps all limits, though one of more materials does: allow another material.`,
      conflict: { alone: [], together: [say`the number of materials`], sharesPct, leastBreach: [] },
    };
  }
  const together = alone.length > 0 ? [] : smallestConflict(programme);
  // Limits outside the conflict are kept, unless there is a second conflict among them.
  const kept = leastLimitBreach(programme, (row) => alone.length > 0 || together.includes(row));
  const { shares, breach } = kept.status === "ok" ? kept : all;
  const leastBreach = rows.flatMap((row, i) =>
    breach[i] > ROUNDING ? [{ label: nameOf(row), by: breach[i], unit: row.unit }] : [],
  );
  const message =
    alone.length > 0
      ? alone.map(aloneMessage).join(" ")
      : say`Each of these limits can be met, but not all together: ${together.map(nameOf).join("; ")}. The blend that breaks them least misses ${leastBreach
          .map(
            ({ label, by, unit }) =>
              say`${label} by ${amount(by, unit === "%" ? say`points` : unit)}`,
          )
          .join(
            say` and `,
          )}. Relax one of them, or add a material that by itself keeps all of them.`;
  return {
    conflict: {
      alone,
      together: together.map(nameOf),
      sharesPct: shares.map((share) => 100 * share),
      leastBreach,
    },
    message,
  };
}

/** Left out one by one, the limits without which there is still no blend; what stays is a smallest conflict. */
function smallestConflict(programme: BlendProgramme): readonly LimitRow[] {
  let rows = programme.rows;
  for (const row of programme.rows) {
    const rest = rows.filter((other) => other !== row);
    const { breach } = leastLimitBreach({ ...programme, rows: rest });
    if (Math.max(0, ...breach) > ROUNDING) rows = rest;
  }
  return rows;
}

function unreachable(
  row: LimitRow,
  lower: readonly number[],
  upper: readonly number[],
): UnreachableLimit[] {
  const nearest = nearestReachable(row, lower, upper);
  if (nearest === null) return [];
  const shortBy = row.side === "least" ? row.limit - nearest : nearest - row.limit;
  if (!(shortBy > ROUNDING)) return [];
  // The others keep their proportions of the nearest blend.
  const part = FURTHER_SHARE_PCT / 100;
  const value = (row.limit - (1 - part) * nearest) / part;
  const { label, unit, side, limit } = row;
  const furtherMaterial = { sharePct: FURTHER_SHARE_PCT, value };
  return [{ label, unit, side, limit, nearest, shortBy, furtherMaterial }];
}

function aloneMessage(of: UnreachableLimit): string {
  const { label, unit, side, limit, nearest, shortBy, furtherMaterial } = of;
  const { sharePct, value } = furtherMaterial;
  const percentage = unit === "%" && !/index|shrinkage/.test(label);
  const impossible = value < 0 || (percentage && value > 100);
  const needed = impossible
    ? say`A further material must bring ${side === "least" ? say`more` : say`less`} than ${amount(limit, unit)}, and take up more than ${sharePct} % of the blend.`
    : say`A further material that takes up ${sharePct} % of the blend must bring at ${side === "least" ? "least" : "most"} ${amount(value, unit)}.`;
  return say`No allowed blend of these materials has a ${label} of ${side === "least" ? say`at least` : say`at most`} ${amount(limit, unit)}: the nearest is ${amount(nearest, unit)}, ${amount(shortBy, unit === "%" ? say`points` : unit)} away. ${needed}`;
}

function sharesMessage(least: number, most: number): string {
  return least > 100
    ? say`The smallest allowed shares add up to ${formatNumber(least, 4)} %: lower them by ${formatNumber(least - 100, 3)} points in all.`
    : say`The largest allowed shares add up to ${formatNumber(most, 4)} %: raise them by ${formatNumber(100 - most, 3)} points in all, or add a material.`;
}

function nameOf({ label, side, limit, unit }: LimitRow): string {
  return say`${label} at ${side === "least" ? "least" : "most"} ${amount(limit, unit)}`;
}

function amount(value: number, unit: string): string {
  return `${formatNumber(value, 3)} ${unit}`;
}
