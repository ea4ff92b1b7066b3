import type { ConstrainedFit } from "../numerics/constrainedLeastSquares.js";
import { formatNumber } from "../quantities/format.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import type { BlendConflict, UnreachableLimit } from "./description.js";
import {
  type BlendProgramme,
  type LimitRow,
  type LimitUnit,
  limitCoefficients,
  limitValue,
} from "./limits.js";
import { leastSlack } from "./solve.js";

/** Breaches below this are rounding, in the limit's own unit. */
const ROUNDING = 1e-6;
/** A further material is described as taking up this much of the blend. */
const FURTHER_SHARE_PCT = 20;

/** Says in the user's terms which limits these materials cannot meet, by how much, and what would help. */
export function explainConflict(
  programme: BlendProgramme,
  maxMaterials: number,
): { readonly conflict: BlendConflict; readonly message: Text } {
  const { lower, upper, rows } = programme;
  const minPct = 100 * lower.reduce((sum, value) => sum + value, 0);
  const maxPct = 100 * upper.reduce((sum, value) => sum + value, 0);
  if (minPct > 100 + 1e-9 || maxPct < 100 - 1e-9) {
    return {
      message: sharesMessage(minPct, maxPct),
      conflict: {
        alone: [],
        together: [say`the share limits of the materials`],
        sharesPct: lower.map((value, j) => 50 * (value + upper[j])),
        minBreach: [],
      },
    };
  }
  const missed = rows.flatMap((row) => {
    const found = unreachable(row, lower, upper);
    return found ? [{ found, message: aloneMessage(found, row.estimate) }] : [];
  });
  const alone = missed.map(({ found }) => found);
  const all = minLimitBreach(programme);
  const sharesPct = all.shares.map((share) => 100 * share);
  if (Math.max(0, ...all.breach) <= ROUNDING) {
    return {
      message: say`No blend of at most ${maxMaterials} materials meets all limits, although one of more materials does: allow another material.`,
      conflict: { alone: [], together: [say`the number of materials`], sharesPct, minBreach: [] },
    };
  }
  const together = alone.length > 0 ? [] : smallestConflict(programme);
  // Limits outside the conflict are kept, unless there is a second conflict among them.
  const kept = minLimitBreach(programme, (row) => alone.length > 0 || together.includes(row));
  const { shares, breach } = kept.status === "ok" ? kept : all;
  const minBreach = rows.flatMap((row, i) =>
    breach[i] > ROUNDING ? [{ label: limitName(row), by: breach[i], unit: row.unit }] : [],
  );
  const message =
    alone.length > 0
      ? joinTexts(
          missed.map(({ message }) => message),
          " ",
        )
      : togetherMessage(together, minBreach);
  return {
    conflict: {
      alone,
      together: together.map(limitName),
      sharesPct: shares.map((share) => 100 * share),
      minBreach,
    },
    message,
  };
}

/** Left out one by one, the limits without which there is still no blend; what stays is a smallest conflict. */
function smallestConflict(programme: BlendProgramme): readonly LimitRow[] {
  let rows = programme.rows;
  for (const row of programme.rows) {
    const rest = rows.filter((other) => other !== row);
    const { breach } = minLimitBreach({ ...programme, rows: rest });
    if (Math.max(0, ...breach) > ROUNDING) rows = rest;
  }
  return rows;
}

function unreachable(
  row: LimitRow,
  lower: readonly number[],
  upper: readonly number[],
): UnreachableLimit | undefined {
  const nearest = nearestReachable(row, lower, upper);
  const shortBy = row.side === "min" ? row.limit - nearest : nearest - row.limit;
  if (!(shortBy > ROUNDING)) return undefined;
  // The others keep their proportions of the nearest blend.
  const part = FURTHER_SHARE_PCT / 100;
  const value = (row.limit - (1 - part) * nearest) / part;
  const { label, unit, side, limit } = row;
  const furtherMaterial = { sharePct: FURTHER_SHARE_PCT, value };
  return { label, unit, side, limit, nearest, shortBy, furtherMaterial };
}

/** @param estimate a plasticity index or shrinkage, which may be more than 100 %. */
function aloneMessage(unreached: UnreachableLimit, estimate: boolean): Text {
  const { label, unit, side, limit, nearest, shortBy, furtherMaterial } = unreached;
  const { sharePct, value } = furtherMaterial;
  const impossible = value < 0 || (unit === "%" && !estimate && value > 100);
  const missed = say`No allowed blend of these materials meets the limit “${label} ${sideOf(side, amount(limit, unit))}”: the nearest is ${amount(nearest, unit)}, ${difference(shortBy, unit)} away.`;
  if (!impossible) {
    return say`${missed} A further material that makes up ${sharePct} % of the blend must bring ${sideOf(side, amount(value, unit))}.`;
  }
  return side === "min"
    ? say`${missed} A further material must bring more than ${amount(limit, unit)}, and make up more than ${sharePct} % of the blend.`
    : say`${missed} A further material must bring less than ${amount(limit, unit)}, and make up more than ${sharePct} % of the blend.`;
}

function togetherMessage(
  together: readonly LimitRow[],
  minBreach: BlendConflict["minBreach"],
): Text {
  const misses = minBreach.map(({ label, by, unit }) => say`${label} by ${difference(by, unit)}`);
  return say`Each of these limits can be met, but not all together: ${joinTexts(together.map(limitName), "; ")}. The blend that breaks them least misses ${joinTexts(misses)}. Relax one of them, or add a material that by itself meets all of them.`;
}

function sharesMessage(minPct: number, maxPct: number): Text {
  return minPct > 100
    ? say`The minimum shares add up to ${formatNumber(minPct, 4)} %: lower them by ${formatNumber(minPct - 100, 3)} points in all.`
    : say`The maximum shares add up to ${formatNumber(maxPct, 4)} %: raise them by ${formatNumber(100 - maxPct, 3)} points in all, or add a material.`;
}

/** A side of a limit in words, such as “fines at most 30 %”. */
export function limitName({ label, side, limit, unit }: LimitRow): Text {
  return say`${label} ${sideOf(side, amount(limit, unit))}`;
}

function sideOf(side: LimitRow["side"], value: Text): Text {
  return side === "min" ? say`at least ${value}` : say`at most ${value}`;
}

function amount(value: number, unit: LimitUnit): Text {
  return say`${formatNumber(value, 3)} ${wordFor(unit)}`;
}

/** Between two percentages lie points. */
export function difference(value: number, unit: LimitUnit): Text {
  return unit === "%" ? say`${formatNumber(value, 3)} points` : amount(value, unit);
}

/**
 * The allowed shares that break the limits least (sum of squares, each breach relative to the size of
 * its limit's terms, so that a price and a percentage can stand side by side), and the breach of each
 * limit in its own unit. No limits, no breach. A limit that is not soft must be kept.
 */
function minLimitBreach(
  programme: BlendProgramme,
  soft: (row: LimitRow) => boolean = () => true,
): {
  readonly status: ConstrainedFit["status"];
  readonly shares: readonly number[];
  readonly breach: readonly number[];
} {
  const { rows } = programme;
  const { fit, shares } = leastSlack(programme, {
    hard: [],
    soft: rows.map((row, slack) => {
      const own = limitCoefficients(row);
      const size = Math.max(...own.map(Math.abs));
      return { row: size > 0 ? own.map((value) => value / size) : own, limit: 0, slack };
    }),
    maxSlack: rows.map((row) => (soft(row) ? Infinity : 0)),
  });
  const breach = rows.map((row) => {
    const value = limitValue(row, shares);
    return Math.max(0, row.side === "max" ? value - row.limit : row.limit - value);
  });
  return { status: fit.status, shares, breach };
}

/**
 * The least (or largest) weighted mean that shares within their bounds can reach: by bisection on the
 * mean, because at a trial mean the best shares are found one by one, nearest material first.
 */
function nearestReachable(
  row: LimitRow,
  lower: readonly number[],
  upper: readonly number[],
): number {
  const sign = row.side === "max" ? 1 : -1;
  const used = row.values.filter((_, j) => upper[j] > 0);
  let [low, high] = [Math.min(...used), Math.max(...used)];
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const equalWeights = row.weights.every((weight) => weight === row.weights[0]);
  // The least of Σ share weight (value − mean) is negative just where a mean below is reachable.
  const excess = (mean: number): number => {
    const cost = row.values.map((value, j) => sign * row.weights[j] * (value - mean));
    let left = 1 - sum(lower);
    let total = cost.reduce((so, value, j) => so + lower[j] * value, 0);
    for (const j of cost.map((_, index) => index).sort((a, b) => cost[a] - cost[b])) {
      const take = Math.min(left, upper[j] - lower[j]);
      total += take * cost[j];
      left -= take;
    }
    return total;
  };
  if (equalWeights && row.weights[0] > 0) return (sign * excess(0)) / row.weights[0];
  for (let step = 0; step < 200 && low < high; step += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (excess(middle) <= 0 === (sign === 1)) high = middle;
    else low = middle;
  }
  return sign === 1 ? high : low;
}
