import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import type { GradingCurve } from "../grading/curve.js";
import { formatFixed, formatNumber } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import type { BlendDesign } from "./description.js";
import type { BlendInput } from "./design.js";
import { blendPassing, measuredTopMm } from "./material.js";
import type { BandTargetPoint } from "./target.js";

/** A part of a blend. */
export interface BandPart {
  readonly name: Text;
  readonly curve: GradingCurve;
  /** Percent of the dry mass of all parts. */
  readonly sharePct: number;
}

/** A blend against one size of a band. */
export interface BandState {
  readonly sizeMm: number;
  readonly lowPct: number;
  readonly highPct: number;
  readonly passingPct: number;
  /** Points above the upper edge, below the lower one negative; 0 inside. */
  readonly outsidePct: number;
  /**
   * Where the blend is outside: what each part brings to that, in points, in their order. They add up to
   * `outsidePct`. Empty inside.
   */
  readonly broughtPct: readonly number[];
  /** Which part causes most of it; undefined inside. */
  readonly cause?: Text;
}

/** Less than this is rounding of sums and of a solver's room. */
const ROUNDING_PCT = 1e-6;

/**
 * At which sizes a blend leaves a band, by how many points, and which part of it causes that.
 *
 * Formula: blend − edge = Σ share / 100 × (passing of the part − edge), since the shares sum to 100; each
 * term is what its part brings. Own arithmetic.
 *
 * @param parts all of the blend, shares that sum to 100; one part of 100 % for a soil by itself. Passing
 * below a part's finest size is assumed as in `blendPassing`.
 * @param band sizes beyond a curve that does not reach 100 % are left out.
 *
 * @example
 * const clay = { points: [{ sizeMm: 0.063, passingPct: 60, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const parts = [{ name: "Clay", curve: clay, sharePct: 50 }, { name: "Sand", curve: sand, sharePct: 50 }];
 * const [fines] = bandStates(parts, [{ sizeMm: 0.063, lowPct: 10, highPct: 25 }]);
 * fines.outsidePct // => 5
 * fines.broughtPct // => [17.5, -12.5]
 * fines.cause // => "Clay"
 */
export function bandStates(
  parts: readonly BandPart[],
  band: readonly Pick<BandTargetPoint, "sizeMm" | "lowPct" | "highPct">[],
): BandState[] {
  const used = parts.filter(({ sharePct }) => sharePct > 0);
  const coarsest = measuredTopMm(used.map(({ curve }) => curve));
  return band
    .filter(({ sizeMm }) => sizeMm <= coarsest)
    .map(({ sizeMm, lowPct, highPct }): BandState => {
      const passing = parts.map(({ curve, sharePct }) =>
        sharePct > 0 ? blendPassing(curve, sizeMm).passingPct : 0,
      );
      const passingPct = parts.reduce(
        (sum, { sharePct }, j) => sum + (sharePct / 100) * passing[j],
        0,
      );
      const edge = Math.min(Math.max(passingPct, lowPct), highPct);
      const at = { sizeMm, lowPct, highPct, passingPct };
      if (Math.abs(passingPct - edge) < ROUNDING_PCT)
        return { ...at, outsidePct: 0, broughtPct: [] };
      const broughtPct = parts.map(({ sharePct }, j) => (sharePct / 100) * (passing[j] - edge));
      const side = Math.sign(passingPct - edge);
      const most = broughtPct.reduce(
        (best, value, j) => (side * value > side * broughtPct[best] ? j : best),
        0,
      );
      return { ...at, outsidePct: passingPct - edge, broughtPct, cause: parts[most].name };
    });
}

/**
 * Where the best blend still leaves the band that was its target, and which material causes most of it. No
 * allowed blend of these materials leaves it by less in all.
 *
 * @param design of `designBlend` for the same input.
 *
 * @example
 * const clay = { points: [{ sizeMm: 0.002, passingPct: 40, origin: "sedimentation" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const input = { materials: [{ id: "soil", curve: clay, minSharePct: 0, maxSharePct: 100 }], target: { kind: "band", points: [{ sizeMm: 0.002, lowPct: 5, highPct: 15 }] } };
 * bandFindings(input, designBlend(input)).map(({ code, value }) => [code, value]) // => [["blend-outside-band", "0.002 mm"]]
 */
export function bandFindings({ target, materials }: BlendInput, design: BlendDesign): Finding[] {
  if (target.kind !== "band" || design.status !== "ok") return [];
  const parts = materials.map(({ id, name = id, curve }, j) => ({
    name,
    curve,
    sharePct: design.shares[j].sharePct,
  }));
  return bandStates(parts, target.points).flatMap(
    ({ sizeMm, lowPct, highPct, passingPct, outsidePct, cause }): Finding[] => {
      if (cause === undefined) return [];
      const place = { file: STUDY_FILE, column: "target", value: `${sizeMm} mm` };
      const points = formatNumber(Math.abs(outsidePct), 2);
      return [
        finding(place, "warning", "blend-outside-band", {
          message: say`At ${sizeMm} mm the best blend passes ${formatFixed(passingPct, 1)} %, ${points} points outside the band; ${cause} causes most of it.`,
          expected: say`${lowPct} to ${highPct} %`,
          remedy:
            outsidePct > 0
              ? say`Add a material of which less passes ${sizeMm} mm, relax shares or limits, or choose a band that these materials can meet.`
              : say`Add a material of which more passes ${sizeMm} mm, relax shares or limits, or choose a band that these materials can meet.`,
        }),
      ];
    },
  );
}
