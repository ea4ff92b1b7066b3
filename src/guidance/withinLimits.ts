import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { CriterionCheck } from "./guidanceCheck.js";

export interface Limits {
  readonly minPct?: number;
  readonly maxPct?: number;
  /** The largest value itself no longer counts as inside. */
  readonly below?: boolean;
}

/** Holds a measured percentage against limits and says by how much it lies within or beyond them. */
export function withinLimits(
  what: string,
  kind: CriterionCheck["kind"],
  measuredPct: number | undefined,
  { minPct, maxPct, below = false }: Limits,
): CriterionCheck {
  const limits = { lowPct: minPct, highPct: maxPct };
  const range =
    minPct === undefined
      ? `${below ? "below" : say`up to`} ${maxPct} %`
      : maxPct === undefined
        ? say`from ${minPct} %`
        : say`${minPct} to ${below ? "below " : ""}${maxPct} %`;
  if (measuredPct === undefined) {
    const text = say`${what}: not measured; asked for ${range}.`;
    return { what, kind, verdict: "not measured", ...limits, text };
  }
  const margin = Math.min(
    measuredPct - (minPct ?? Number.NEGATIVE_INFINITY),
    (maxPct ?? Number.POSITIVE_INFINITY) - measuredPct,
  );
  const atTop = below && measuredPct === maxPct;
  // Percentages come out of sums and interpolation: a last binary digit decides nothing.
  const inside = margin >= -1e-9 && !atTop;
  const byPct = Math.abs(margin);
  const told = say`${what}: ${formatFixed(measuredPct, 1)} %, asked for ${range}`;
  const text = inside
    ? say`${told}: inside by ${formatFixed(byPct, 1)} points.`
    : say`${told}: outside by ${formatFixed(byPct, 1)} points.`;
  return {
    what,
    kind,
    verdict: inside ? "inside" : "outside",
    measuredPct,
    ...limits,
    byPct,
    text,
  };
}
