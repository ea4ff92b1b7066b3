import { analyseHydrometer } from "../grading/analyseHydrometer.js";
import { analyseSieve } from "../grading/analyseSieve.js";
import { characteristicSizes } from "../grading/characteristicSizes.js";
import { chooseModel } from "../grading/chooseModel.js";
import { combineGrading } from "../grading/combineGrading.js";
import { fractions } from "../grading/fractions.js";
import type { GradingPoint } from "../grading/gradingCurve.js";
import type { HydrometerAnalysis } from "../grading/hydrometerAnalysis.js";
import { passingAtSize } from "../grading/passingAtSize.js";
import type { Finding } from "../lab/finding.js";
import { consistencyLimits } from "../soil/consistencyLimits.js";
import { curveUncertainty } from "../soil/curveUncertainty.js";
import { say } from "../words/say.js";
import type { StudyMaterial } from "./study.js";
import type { StudyConfig } from "./studyConfig.js";
import type { MaterialResult } from "./studyResult.js";

/** Enough for 95 % intervals to about a tenth of their width. */
const RESAMPLES = 250;

/**
 * The models tried on a soil. The two-mode Fredlund model is left to notebooks: with nine parameters it
 * takes as long as the others together and the points of one analysis seldom carry it.
 */
const MODELS = [
  "power",
  "lognormal",
  "weibull",
  "haverkamp-parlange",
  "skaggs",
  "fredlund",
  "bimodal-lognormal",
] as const;

/** Works out one material: sieving, sedimentation, the joined curve and what is read off it. */
export function computeMaterial(
  material: StudyMaterial,
  study: StudyConfig,
  findings: Finding[],
): MaterialResult {
  const { config } = material;
  const sieve = analyseSieve(material.sieve);
  findings.push(...sieve.findings);
  const sedimentation = sediment(material, sieve.points, findings);
  const { curve, overlap, repairs, ...combined } = combineGrading({
    sieve: sieve.points,
    sedimentation: sedimentation?.points,
    file: material.hydrometer?.file ?? material.sieve.file,
  });
  findings.push(...combined.findings);
  const limits = material.limits && consistencyLimits(material.limits);
  if (limits) findings.push(...limits.findings);
  const uncertainty =
    config.role === "soil"
      ? curveUncertainty(
          curve,
          {
            sieve: material.sieve,
            hydrometer: sedimentation && material.hydrometer,
            particleDensityKgM3: config.particleDensityKgM3,
          },
          limits,
          { seed: study.seed, resamples: RESAMPLES, errors: study.readingErrors },
        )
      : undefined;
  return {
    id: config.id,
    name: config.name,
    role: config.role,
    sieve,
    sedimentation,
    curve,
    overlap,
    repairs,
    sizes: characteristicSizes(curve),
    fractions: fractions(curve),
    models: config.role === "soil" ? chooseModel(curve, MODELS) : undefined,
    limits,
    uncertainty,
  };
}

function sediment(
  { config, hydrometer }: StudyMaterial,
  sieve: readonly GradingPoint[],
  findings: Finding[],
): HydrometerAnalysis | undefined {
  if (!hydrometer) return undefined;
  const passing = passingAtSize({ points: sieve }, hydrometer.separatingSizeMm);
  if (passing === undefined) {
    findings.push({
      severity: "error",
      code: "separating-sieve-unmeasured",
      file: hydrometer.file,
      column: "separating sieve",
      value: `${hydrometer.separatingSizeMm} mm`,
      message: say`The sieve analysis does not reach the sieve that separated the dispersed material.`,
      expected: say`a sieve analysis of ${config.name} that spans ${hydrometer.separatingSizeMm} mm`,
      wayOut: say`Give the sieve through which the dispersed material was passed, or sieve to that size.`,
    });
    return undefined;
  }
  const analysis = analyseHydrometer(hydrometer, {
    particleDensityKgM3: config.particleDensityKgM3,
    passingSeparatingPct: passing,
  });
  findings.push(...analysis.findings);
  return analysis;
}
