import { blendPassing, measuredTopMm } from "../blend/material.js";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import type { GradingCurve } from "../grading/curve.js";
import { formatFixed, formatNumber } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";

/**
 * The farthest that a share may lie from the tested one, points of the dry mass of soil and aggregate: the
 * worth of batching 40 % of a material to 5 % of its mass. Common practice, no source.
 */
export const CLOSE_SHARE_POINTS = 2;

/**
 * The farthest that the blend's passing may lie from the tested one at any size, points: about what two
 * sieve analyses of one material differ by. Common practice, no source.
 */
export const CLOSE_PASSING_POINTS = 3;

/** A percentage of two blends. */
interface Difference {
  readonly proposedPct: number;
  readonly testedPct: number;
  /** Proposed less tested, points. */
  readonly differencePoints: number;
}

export interface ShareDifference extends Difference {
  readonly id: string;
  readonly name: string;
}

export interface PassingDifference extends Difference {
  readonly sizeMm: number;
}

/** How far a proposed blend lies from a tested one. */
export interface BlendDifference {
  /** In the order of the materials. */
  readonly shares: readonly ShareDifference[];
  /** At each size that any material of either blend was measured at. */
  readonly passing: readonly PassingDifference[];
  /** The largest of each, whichever way. */
  readonly maxShare: ShareDifference;
  readonly maxPassing: PassingDifference;
  /** What was tested holds for the proposed blend too. */
  readonly close: boolean;
}

/** Rounding error is no difference. */
const SLACK = 1e-9;

/** Whether a difference keeps a limit of closeness, rounding aside: the guard and its table ask the same. */
export function isWithin(differencePoints: number, limitPoints: number): boolean {
  return Math.abs(differencePoints) <= limitPoints + SLACK;
}

/**
 * How far a proposed blend lies from a tested one, and whether what was tested holds for it too.
 *
 * Close: every share within 2 points of the dry mass of soil and aggregate, and the passing within 3 points at
 * every size of both curves ({@link CLOSE_SHARE_POINTS}, {@link CLOSE_PASSING_POINTS}). Within that a blend
 * cannot be told from the tested one on site: a batch strays as far by its shovelling, and a second sieve
 * analysis by its repeatability. Beyond it strength, density and moisture are those of another earth.
 *
 * @param proposedPct in the order of the materials, percent of the dry mass of soil and aggregate, summing to 100.
 * @param testedPct likewise.
 * @throws RangeError where a blend has no share above 0. Source: common practice, no source.
 *
 * @example
 * const curve = (finesPct) => ({ points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] });
 * const materials = [{ id: "soil", name: "Soil", curve: curve(50) }, { id: "sand", name: "Sand", curve: curve(0) }];
 * const apart = compareBlends(materials, [61, 39], [54, 46]);
 * apart.maxShare.differencePoints // => 7
 * apart.maxPassing.differencePoints // => 3.5
 * [apart.close, compareBlends(materials, [56, 44], [54, 46]).close] // => [false, true]
 */
export function compareBlends(
  materials: readonly {
    readonly id: string;
    readonly name: string;
    readonly curve: GradingCurve;
  }[],
  proposedPct: readonly number[],
  testedPct: readonly number[],
): BlendDifference {
  const shares = materials.map(({ id, name }, index) => ({
    id,
    name,
    ...apart(proposedPct[index], testedPct[index]),
  }));
  const used = materials.filter((_, index) => proposedPct[index] > 0 || testedPct[index] > 0);
  if (used.length === 0) throw new RangeError("invalid shares: all 0; expected some above 0");
  const top = measuredTopMm(used.map(({ curve }) => curve));
  const measured = used.flatMap(({ curve }) => curve.points.map(({ sizeMm }) => sizeMm));
  const sizes = [...new Set(measured)].filter((sizeMm) => sizeMm <= top).sort((a, b) => a - b);
  const passingOf = (sizeMm: number, sharesPct: readonly number[]) =>
    materials.reduce(
      (sum, { curve }, index) =>
        sharesPct[index] > 0
          ? sum + (sharesPct[index] / 100) * blendPassing(curve, sizeMm).passingPct
          : sum,
      0,
    );
  const passing = sizes.map((sizeMm) => ({
    sizeMm,
    ...apart(passingOf(sizeMm, proposedPct), passingOf(sizeMm, testedPct)),
  }));
  const maxShare = farthest(shares);
  const maxPassing = farthest(passing);
  return {
    shares,
    passing,
    maxShare,
    maxPassing,
    close:
      isWithin(maxShare.differencePoints, CLOSE_SHARE_POINTS) &&
      isWithin(maxPassing.differencePoints, CLOSE_PASSING_POINTS),
  };
}

function apart(proposedPct: number, testedPct: number): Difference {
  return { proposedPct, testedPct, differencePoints: proposedPct - testedPct };
}

/** The first of those that differ most: with two materials both differ alike, but for a last binary digit. */
function farthest<T extends Difference>(differences: readonly T[]): T {
  return differences.reduce((most, one) =>
    Math.abs(one.differencePoints) > Math.abs(most.differencePoints) + SLACK ? one : most,
  );
}

/** How far, against the closer of the two limits; at most 1 where the blends are close. */
export function remoteness({ maxShare, maxPassing }: BlendDifference): number {
  return Math.max(
    Math.abs(maxShare.differencePoints) / CLOSE_SHARE_POINTS,
    Math.abs(maxPassing.differencePoints) / CLOSE_PASSING_POINTS,
  );
}

/** What differs most, in words. */
export function differenceWords({ maxShare, maxPassing }: BlendDifference): Text {
  const pct = (value: number) => formatFixed(value, 1);
  const points = ({ differencePoints }: Difference) => pct(Math.abs(differencePoints));
  return say`${maxShare.name} ${pct(maxShare.proposedPct)} % where ${pct(maxShare.testedPct)} % were tested (${points(maxShare)} points), and ${pct(maxPassing.proposedPct)} % passing ${formatNumber(maxPassing.sizeMm, 3)} mm where ${pct(maxPassing.testedPct)} % were tested (${points(maxPassing)} points)`;
}

/** What “close” asks for, in words. */
const CLOSENESS: Text = say`a tested blend within ${CLOSE_SHARE_POINTS} points of each share and ${CLOSE_PASSING_POINTS} points passing at each size`;

/** A blend that blocks were made of, as the guard needs it. */
interface ComparedTrial {
  readonly id: string;
  readonly name: Text;
  readonly key: string;
  /** Absent where the study does not say which blend was tested. */
  readonly difference?: BlendDifference;
}

/**
 * The guard between blend and strength: what is said where no tested blend is close to the proposed one.
 * Without such a blend nothing that was tested may be carried over: no cement, density, moisture or recipe.
 *
 * @param trials those that blocks were made of.
 * @returns none where one is close.
 *
 * @example
 * testedBlendFindings([{ id: "tested", name: "Tested blend", key: "tested" }])[0].code // => "blend-not-tested"
 */
export function testedBlendFindings(trials: readonly ComparedTrial[]): Finding[] {
  if (trials.some(({ difference }) => difference?.close)) return [];
  const told = (key: string, message: Text, remedy: Text) => [
    finding({ file: STUDY_FILE, column: `${key}.shares` }, "warning", "blend-not-tested", {
      message,
      expected: CLOSENESS,
      remedy,
    }),
  ];
  const known = trials.flatMap(({ difference, ...trial }) =>
    difference ? [{ ...trial, difference }] : [],
  );
  if (known.length === 0) {
    return told(
      "tested",
      say`The study does not say which blend was compacted and crushed, so nothing that was tested is carried over to the proposed blend: no cement content, density, moisture, recipe, cost or card.`,
      say`Write the shares of the tested blend under “tested”. If nothing was tested yet, make a trial of the proposed blend: “loambook site” prints its card.`,
    );
  }
  const { id, name, key, difference } = known.reduce((near, one) =>
    remoteness(one.difference) < remoteness(near.difference) ? one : near,
  );
  return told(
    key,
    say`The proposed blend was not tested. Against ${name} it has ${differenceWords(difference)}. So there is no cement content, density, moisture, recipe, cost or card for it.`,
    say`Make a trial of the proposed blend (“loambook site” prints its card), or build the tested one: “mix-from: ${id}”.`,
  );
}
