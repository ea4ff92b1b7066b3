import { blendCurve } from "../blend/blendCurve.js";
import { blendMaterials } from "../blend/blendMaterials.js";
import { comparisonSizes } from "../blend/comparisonSizes.js";
import { powerTarget } from "../blend/powerTarget.js";
import { characteristicSizes } from "../grading/characteristicSizes.js";
import { fractions } from "../grading/fractions.js";
import type { Finding } from "../lab/finding.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyConfig } from "./studyConfig.js";
import type { BlendStudy, MaterialResult } from "./studyResult.js";

/** More unmeasured fines than this make the fine end of the blend a guess; common practice, no source. */
const UNMEASURED_FINES_LIMIT_PCT = 5;

/** The blend nearest to the study's target, or findings that say why there is none. */
export function computeBlend(
  config: StudyConfig,
  materials: readonly MaterialResult[],
  findings: Finding[],
): BlendStudy | undefined {
  const short = materials.filter(({ curve }) => !reaches100(curve.points, config.target.topSizeMm));
  for (const { name, curve } of short) {
    const last = curve.points[curve.points.length - 1];
    findings.push({
      severity: "error",
      code: "curve-ends-early",
      file: STUDY_FILE,
      column: "materials",
      value: name,
      message: `The coarsest sieve, ${last.sizeMm} mm, passes only ${last.passingPct.toFixed(1)} %: what is coarser was not measured.`,
      expected: "a coarsest sieve that everything passes",
      wayOut: "Add the next coarser sieve to the sheet, with 0 g retained.",
    });
  }
  if (short.length > 0) return undefined;

  const curves = materials.map(({ curve }) => curve);
  const { exponent, topSizeMm } = config.target;
  const blend = blendMaterials(
    config.materials.map(({ id, minSharePct, maxSharePct }, index) => ({
      id,
      curve: curves[index],
      minSharePct,
      maxSharePct,
    })),
    powerTarget(exponent, topSizeMm, comparisonSizes(curves, topSizeMm)),
  );
  if (blend.status !== "ok") {
    findings.push({
      severity: "error",
      code: "no-blend",
      file: STUDY_FILE,
      column: "materials",
      message: blend.message,
      expected: "shares that can sum to 100 %",
      wayOut: "Change the shares' limits in study.yaml.",
    });
    return undefined;
  }
  const blended = blendCurve(
    curves.map((curve, index) => ({ curve, sharePct: blend.shares[index].sharePct })),
  );
  if (blended.unmeasuredFinesPct > UNMEASURED_FINES_LIMIT_PCT) {
    findings.push({
      severity: "warning",
      code: "unmeasured-fines",
      file: STUDY_FILE,
      column: "materials",
      value: `${blended.unmeasuredFinesPct.toFixed(1)} %`,
      message: "Much of the blend's fines comes from materials without a hydrometer test.",
      expected: `at most ${UNMEASURED_FINES_LIMIT_PCT} % of the blend`,
      wayOut: "Test the fines of the material that brings most of them.",
    });
  }
  const specificVolume = config.materials.reduce(
    (sum, { particleDensityKgM3 }, index) =>
      sum + blend.shares[index].sharePct / 100 / particleDensityKgM3,
    0,
  );
  return {
    ...blend,
    ...blended,
    sizes: characteristicSizes(blended.curve),
    fractions: fractions(blended.curve),
    particleDensityKgM3: 1 / specificVolume,
  };
}

function reaches100(
  points: readonly { readonly sizeMm: number; readonly passingPct: number }[],
  topSizeMm: number,
): boolean {
  const last = points[points.length - 1];
  return last.passingPct >= 100 - 1e-9 || last.sizeMm >= topSizeMm;
}
