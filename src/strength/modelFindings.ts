import { mean } from "simple-statistics";
import { type Finding, finding, findingIf, STUDY_FILE } from "../findings/finding.js";
import { formatFixed, formatNumber, formatPlain, measured } from "../quantities/format.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import type { BatchScatter } from "./batches.js";
import { groupBy } from "./groupBy.js";
import {
  boundOffset,
  knownSds,
  type StrengthRequirement,
  strengthBound,
} from "./regression/bounds.js";
import { type FittedStrength, fromFittedScale, toFittedScale } from "./regression/curve.js";
import type { LackOfFit } from "./regression/lackOfFit.js";
import { relativeSd } from "./regression/model.js";
import type { ModelsCompared } from "./regression/modelComparison.js";
import type { ResidualCheck } from "./regression/residuals.js";
import { LEVEL } from "./significance.js";

/** A model whose AICc is larger by this has "considerably less support": Burnham & Anderson 2002 (from memory). */
const CLEARLY_WORSE = 4;

/** All that was computed about one curve, and what rests on it. */
export interface ModelEvidence {
  readonly fit: FittedStrength;
  readonly lackOfFit: LackOfFit;
  readonly models: ModelsCompared;
  readonly checks: readonly ResidualCheck[];
  /** Of the blocks in the curve; left out where batches are a term of the regression. */
  readonly scatter?: BatchScatter;
  /** Left out where nothing is required. */
  readonly requirement?: StrengthRequirement;
  /** The content that is to be batched; null where none was found. */
  readonly cementPct: number | null;
}

/**
 * What speaks against the curve that the least cement rests on: lack of fit (p below 0.05), another model
 * that is clearly better (AICc smaller by 4 or more), residuals that are not normal or not of one spread,
 * batches that differ. Where any of them does, the content found is held against the blocks nearest to
 * it, without the curve: see `nearestBlocks`.
 *
 * @param file the block sheet, as findings name it.
 * Source: as `lackOfFit`, `compareModels`, `residualChecks` and `batchScatter`.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.0), block("B", 4, 1.2), block("C", 6, 2.4), block("D", 6, 2.6), block("E", 8, 2.9), block("F", 8, 3.1)];
 * const fit = fitStrength(blocks, { model: "linear", ageDays: 28 });
 * const evidence = { fit, lackOfFit: lackOfFit(fit), models: compareModels(blocks, { ageDays: 28 }), checks: residualChecks(fit) };
 * const requirement = { strengthMpa: 2.9, statistic: "mean", confidence: 0.95 };
 * modelFindings({ ...evidence, requirement, cementPct: 8 }, "blocks.csv").map(({ code }) => code) // => ["lack-of-fit", "nearest-blocks-miss"]
 */
export function modelFindings(evidence: ModelEvidence, file: string): Finding[] {
  const doubts = [
    ...shapeFindings(evidence),
    ...residualFindings(evidence, file),
    ...scatterFindings(evidence, file),
  ];
  return doubts.length > 0 ? [...doubts, ...nearestFindings(evidence)] : [];
}

const DOUBTS: ReadonlySet<string> = new Set([
  "lack-of-fit",
  "clearly-better-model",
  "residuals-not-normal",
  "uneven-scatter",
  "scatter-grows",
  "batches-differ",
]);

/** Whether one of the findings that `modelFindings` gives speaks against the curve and its bounds. */
export function curveInDoubt(findings: readonly Pick<Finding, "code">[]): boolean {
  return findings.some(({ code }) => DOUBTS.has(code));
}

/**
 * What of `modelFindings` whoever builds with a content must read: that the blocks nearest to it speak against
 * it, or, where no blocks can tell without the curve, what speaks against the curve.
 */
export function curveDoubts(evidence: ModelEvidence): Text[] {
  const findings = modelFindings(evidence, "");
  const ofBlocks = findings.filter(({ code }) => code.startsWith("nearest-blocks"));
  const against = ofBlocks.filter(({ code }) => code === "nearest-blocks-against");
  return (ofBlocks.length > 0 ? against : findings).map(({ message }) => message);
}

/** Fewer contents do not show the shape of a curve; common practice, no source. */
const MIN_CONTENTS = 3;
/** With fewer the scatter is hardly known; common practice, no source. */
const MIN_DEGREES = 6;

/** That a curve rests on too few cement contents, or too few blocks, to be relied on. */
export function fewBlocksFindings(fit: FittedStrength, file: string): Finding[] {
  const { contentsPct, degreesOfFreedom, points } = fit;
  const [few, hardly] = [contentsPct.length < MIN_CONTENTS, degreesOfFreedom < MIN_DEGREES];
  return [
    ...findingIf(few, { file, column: "cement" }, "warning", "few-contents", {
      message: say`The curve of strength against cement rests on blocks of ${contentsPct.length}{0, plural, one { cement content} other { cement contents}} only (${contentsWords(contentsPct)}): its shape between them was not tested.`,
      expected: say`${MIN_CONTENTS} cement contents or more (common practice, no source)`,
      remedy: say`Make and crush blocks with a content near that of the mix.`,
    }),
    ...findingIf(hardly, { file }, "warning", "few-degrees-of-freedom", {
      message: say`The curve of strength against cement rests on ${points.length} blocks only (degrees of freedom: ${degreesOfFreedom}): how far blocks scatter is hardly known.`,
      expected: say`${MIN_DEGREES} degrees of freedom or more (common practice, no source)`,
      remedy: say`Make and crush more blocks of each content.`,
    }),
  ];
}

/** Of the shape of the curve: it misses the blocks, or another one is clearly better. */
function shapeFindings({ fit, lackOfFit, models: { models } }: ModelEvidence): Finding[] {
  const place = { file: STUDY_FILE, column: "strength.model", value: fit.model };
  const lackP = lackOfFit.pValue ?? 1;
  const [best] = models;
  const difference = models.find(({ model }) => model === fit.model)?.aiccDifference ?? 0;
  return [
    ...findingIf(lackP < LEVEL, place, "warning", "lack-of-fit", {
      message: say`The ${wordFor(fit.model)} curve misses the means of the contents by more than the scatter of the blocks explains (lack of fit, p ${pWords(lackP)}): its bounds, and the least cement, are in doubt.`,
      expected: say`p of at least 0.05`,
      remedy: say`Look at the curve among the blocks, and choose a model that fits them (strength.model).`,
    }),
    ...findingIf(difference >= CLEARLY_WORSE, place, "warning", "clearly-better-model", {
      message: say`The ${wordFor(best.model)} model fits these blocks clearly better than the ${wordFor(fit.model)} one: its AICc is smaller by ${formatFixed(difference, 1)}.`,
      expected: say`a model whose AICc is less than ${CLEARLY_WORSE} above the best`,
      remedy: say`Set strength.model: ${best.model}, or say in the report why the ${wordFor(fit.model)} model is kept.`,
    }),
  ];
}

const CHECK_CODES: Readonly<Record<ResidualCheck["check"], string>> = {
  normality: "residuals-not-normal",
  "equal spread of the contents": "uneven-scatter",
  "spread that grows with strength": "scatter-grows",
};

function residualFindings({ checks }: ModelEvidence, file: string): Finding[] {
  return checks
    .filter(({ status }) => status === "doubt")
    .map(({ check, test, pValue, message }) =>
      finding({ file, column: "strength" }, "warning", CHECK_CODES[check], {
        message: say`The residuals of the curve fail a check, so its bounds may be wrong: ${wordFor(check)} (${test}, p ${pWords(pValue!)}).`,
        expected: say`p of at least 0.05`,
        remedy: message,
      }),
    );
}

function scatterFindings({ scatter }: ModelEvidence, file: string): Finding[] {
  if (!scatter || scatter.pValue === null || scatter.pValue >= LEVEL) return [];
  return [
    finding({ file, column: "batch" }, "warning", "batches-differ", {
      message: scatter.message,
      expected: say`batches of one content that differ no more than their blocks`,
      remedy: say`Look for what changed between the batches; set strength.batches: block, or mix more batches.`,
    }),
  ];
}

function nearestFindings(evidence: ModelEvidence): Finding[] {
  const { fit, requirement, cementPct } = evidence;
  if (cementPct === null || !requirement) return [];
  const nearest = nearestBlocks({ ...evidence, requirement }, cementPct);
  if (!nearest) return [];
  const { contentsPct, blocks, meanMpa, boundMpa } = nearest;
  const { strengthMpa } = requirement;
  // All the blocks of the curve are no second opinion on it.
  const all = blocks === fit.points.length;
  const found = say`Without the curve, the ${blocks} blocks nearest to it (at ${contentsWords(contentsPct)}) give at ${cementPct} % cement a mean of ${measured(meanMpa, "stress", 2)} and a bound of ${measured(boundMpa, "stress", 2)}`;
  const place = { file: STUDY_FILE, column: "strength.requirement", value: `${cementPct} %` };
  const expected = say`a bound of at least ${measured(strengthMpa, "stress", 2)} from the nearest blocks alone, as the curve is in doubt`;
  if (boundMpa >= strengthMpa) {
    return findingIf(!all, place, "note", "nearest-blocks-agree", {
      message: say`${found}: it reaches the required strength too.`,
      expected,
      remedy: say`Nothing to do here; the doubts about the curve remain.`,
    });
  }
  const curveMpa = strengthBound(fit, cementPct, requirement);
  const against = nearest.knownMpa < strengthMpa;
  return [
    finding(place, "warning", against ? "nearest-blocks-against" : "nearest-blocks-miss", {
      message: say`${found}; the curve gives a bound of ${measured(curveMpa, "stress", 2)}. The content found rests on the curve, not on the blocks.`,
      expected,
      remedy: against
        ? say`Do not build on this content before the curve is in order: choose a model that fits, or make more blocks with about ${cementPct} % cement.`
        : say`These blocks do not speak against the content, but are too few to prove it by themselves: make more blocks with about ${cementPct} % cement, or put the curve in order.`,
    }),
  ];
}

export interface NearestBlocks {
  /** One content, or the two about the content asked for. */
  readonly contentsPct: readonly number[];
  readonly blocks: number;
  /** Between two contents: on the straight line between their means. The median for the power model. */
  readonly meanMpa: number;
  /** What the requirement speaks of, were mean and scatter known to be just these, MPa. */
  readonly knownMpa: number;
  /** The requirement's own bound, MPa. */
  readonly boundMpa: number;
}

/**
 * What the blocks nearest to a content say of it without the curve: their mean, on the straight line
 * between the means of the contents on either side, and the requirement's bound from the scatter of
 * blocks of one content.
 *
 * Formula: m = (1 − w) m₁ + w m₂ with w = (c − c₁)/(c₂ − c₁); the bound as in `strengthBound` with
 * h = (1 − w)²/n₁ + w²/n₂, s and its degrees of freedom from the pure error of `lackOfFit`.
 *
 * @returns null without replicates, or where covariates or batches tell blocks of one content apart.
 * Source: own arithmetic on the textbook formulas of `strengthBound` and `lackOfFit`.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.0), block("B", 4, 1.2), block("C", 6, 2.4), block("D", 6, 2.6), block("E", 8, 2.9), block("F", 8, 3.1)], { model: "linear", ageDays: 28 });
 * const requirement = { strengthMpa: 2.6, statistic: "mean", confidence: 0.95 };
 * const { meanMpa, boundMpa } = nearestBlocks({ fit, lackOfFit: lackOfFit(fit), requirement }, 7);
 * [meanMpa, boundMpa] // => [2.75, 2.5836]
 */
export function nearestBlocks(
  {
    fit,
    lackOfFit,
    requirement,
  }: Pick<ModelEvidence, "fit" | "lackOfFit"> & { readonly requirement: StrengthRequirement },
  cementPct: number,
): NearestBlocks | null {
  const { pureSumOfSquares, pureDegreesOfFreedom: degreesOfFreedom } = lackOfFit;
  if (lackOfFit.status === "other-terms" || degreesOfFreedom < 1) return null;
  const { contentsPct, basis } = fit;
  const groups = groupBy(fit.points, (point) => point.cementPct);
  const below = contentsPct.findLast((content) => content <= cementPct) ?? contentsPct[0];
  const above = contentsPct.find((content) => content >= cementPct) ?? below;
  const way = above > below ? (cementPct - below) / (above - below) : 0;
  const sides = (above > below ? [below, above] : [below]).map((content) => {
    const values = groups.get(content)!.map(({ strengthMpa }) => toFittedScale(fit, strengthMpa));
    const part = content === below ? 1 - way : way;
    return { content, count: values.length, part, ofContent: mean(values) };
  });
  const value = sides.reduce((sum, { part, ofContent }) => sum + part * ofContent, 0);
  const leverage = sides.reduce((sum, { part, count }) => sum + part ** 2 / count, 0);
  const pureSd = Math.sqrt(pureSumOfSquares / degreesOfFreedom);
  const sd = pureSd * relativeSd(basis.variance, value, basis.reference);
  const { statistic, confidence, coverage = 0.95 } = requirement;
  const probability = 1 - confidence;
  const offset = boundOffset({ statistic, probability, coverage, leverage, degreesOfFreedom });
  return {
    contentsPct: sides.map(({ content }) => content),
    blocks: sides.reduce((sum, { count }) => sum + count, 0),
    meanMpa: fromFittedScale(fit, value),
    knownMpa: fromFittedScale(fit, value - knownSds(requirement) * sd),
    boundMpa: fromFittedScale(fit, value + offset * sd),
  };
}

function contentsWords(contentsPct: readonly number[]): Text {
  return joinTexts(contentsPct.map((content) => say`${formatPlain(content, 3)} %`));
}

/** `= 0.012`, or `below 0.001`. */
function pWords(pValue: number): Text {
  return pValue < 0.001 ? say`below 0.001` : say`= ${formatNumber(pValue, 2)}`;
}
