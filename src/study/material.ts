import type { StudyConfig } from "../entries/studyConfig.js";
import type { Finding } from "../findings/finding.js";
import { characteristicSizes } from "../grading/characteristics.js";
import { combineGrading } from "../grading/combinedGrading.js";
import { type GradingCurve, type GradingPoint, passingAtSize } from "../grading/curve.js";
import { fractions } from "../grading/fractions.js";
import { chooseModel } from "../grading/models/modelChoice.js";
import { analyseHydrometer } from "../grading/sedimentation/hydrometer.js";
import { analyseJar, jarComparison } from "../grading/sedimentation/jar.js";
import { analysePipette } from "../grading/sedimentation/pipette.js";
import { analyseSieve } from "../grading/sieveAnalysis.js";
import { consistencyLimits } from "../soil/consistency/limits.js";
import { curveUncertainty } from "../soil/curveUncertainty.js";
import { say } from "../words/message.js";
import { sampleMaterial } from "./sampledCurves.js";
import type { StudyMaterial } from "./study.js";
import type { MaterialResult } from "./studyResult.js";

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

/**
 * Works out one material: sieving, sedimentation, the joined curve and what is read off it.
 *
 * @param drawn curves as the material could have come out; default those of `sampleMaterial`.
 */
export function computeMaterial(
  material: StudyMaterial,
  study: StudyConfig,
  findings: Finding[],
  drawn: readonly GradingCurve[] = sampleMaterial(material, study),
): MaterialResult {
  const { config } = material;
  const sieve = analyseSieve(material.sieve);
  findings.push(...sieve.findings);
  const passing = separated(material, sieve.points, findings);
  const { sedimentation, pipette } = settle(material, passing, findings);
  const { curve, overlap, repairs, ...combined } = combineGrading({
    sieve: sieve.points,
    sedimentation: (sedimentation ?? pipette)?.points,
    file: (material.hydrometer ?? material.pipette ?? material.sieve).file,
  });
  findings.push(...combined.findings);
  const jar = settledJar(material, curve, findings);
  const limits = material.limits && consistencyLimits(material.limits);
  if (limits) findings.push(...limits.findings);
  const uncertainty =
    config.role === "soil"
      ? curveUncertainty(curve, drawn, limits, {
          seed: study.seed,
          errors: study.readingErrors,
        })
      : undefined;
  return {
    id: config.id,
    name: config.name,
    role: config.role,
    sieve,
    sedimentation,
    ...(pipette ? { pipette } : {}),
    ...(jar ? { jar } : {}),
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

/** The passing of the sieve that separated the dispersed material; a finding where it was not measured. */
function separated(
  { config, hydrometer, pipette }: StudyMaterial,
  sieve: readonly GradingPoint[],
  findings: Finding[],
): number | undefined {
  const sheet = hydrometer ?? pipette;
  if (!sheet) return undefined;
  const passing = passingAtSize({ points: sieve }, sheet.separatingSizeMm);
  if (passing === undefined) {
    findings.push({
      severity: "error",
      code: "separating-sieve-unmeasured",
      file: sheet.file,
      column: "separating sieve",
      value: `${sheet.separatingSizeMm} mm`,
      message: say`The sieve analysis does not reach the sieve that separated the dispersed material.`,
      expected: say`a sieve analysis of ${config.name} that spans ${sheet.separatingSizeMm} mm`,
      remedy: say`Give the sieve through which the dispersed material was passed, or sieve to that size.`,
    });
  }
  return passing;
}

function settle(
  { config, hydrometer, pipette }: StudyMaterial,
  passingSeparatingPct: number | undefined,
  findings: Finding[],
): Pick<MaterialResult, "sedimentation" | "pipette"> {
  if (passingSeparatingPct === undefined) return {};
  const { particleDensityKgM3 } = config;
  const input = { particleDensityKgM3, passingSeparatingPct };
  const sedimentation = hydrometer && analyseHydrometer(hydrometer, input);
  const drawn = pipette && analysePipette(pipette, input);
  for (const analysis of [sedimentation, drawn]) findings.push(...(analysis?.findings ?? []));
  return { sedimentation, pipette: drawn };
}

/** The jar beside the curve that was measured without it. */
function settledJar(
  { jar }: StudyMaterial,
  curve: GradingCurve,
  findings: Finding[],
): MaterialResult["jar"] {
  if (!jar) return undefined;
  const analysis = analyseJar(jar);
  const against = jarComparison(jar, analysis, curve);
  findings.push(...analysis.findings, ...against.findings);
  return { ...analysis, laboratory: against.rows };
}
