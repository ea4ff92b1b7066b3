import type { MaterialConfig, StudyConfig } from "../entries/studyConfig.js";
import { type Finding, findingIf } from "../findings/finding.js";
import { characteristicSizes } from "../grading/characteristics.js";
import { combineGrading } from "../grading/combinedGrading.js";
import { type GradingCurve, type GradingPoint, passingAtSize } from "../grading/curve.js";
import { boundariesOf, fractions } from "../grading/fractions.js";
import { chooseModel } from "../grading/models/modelChoice.js";
import { analyseHydrometer } from "../grading/sedimentation/hydrometer.js";
import { analyseJar, jarComparison } from "../grading/sedimentation/jar.js";
import { analysePipette } from "../grading/sedimentation/pipette.js";
import { analyseSieve } from "../grading/sieveAnalysis.js";
import type { JarRecord } from "../lab/jar.js";
import { consistencyLimits } from "../soil/consistency/limits.js";
import { curveUncertainty } from "../soil/curveUncertainty.js";
import { say } from "../words/message.js";
import { materialPlace } from "./materialIds.js";
import { sampleMaterial } from "./sampledCurves.js";
import type { StudyMaterial, UngradedStudyMaterial } from "./study.js";
import type { MaterialResult, UngradedMaterial } from "./studyResult.js";

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

/** All that a material's grading takes from the study beside its own sheets and entry. */
type StudyEntries = Pick<StudyConfig, "seed" | "readingErrors" | "units" | "sizeReading"> & {
  readonly materials: readonly Pick<MaterialConfig, "id">[];
};

/** A material with what its grading takes from its own entry. */
type SheetsOfMaterial = Omit<StudyMaterial, "config"> & {
  readonly config: Pick<MaterialConfig, "id" | "name" | "role" | "particleDensityKgM3">;
};

export interface GradedMaterial {
  readonly material: MaterialResult;
  readonly findings: readonly Finding[];
  /** Of `sampleMaterial`: curves as the material could have come out. */
  readonly drawn: readonly GradingCurve[];
}

/** Materials of some studies, with hundreds of drawn curves each. */
const KEPT = 32;

/**
 * `computeMaterial` that keeps what it worked out last: a study is computed in many versions, most of which
 * leave the gradings as they are, and these take half of the time.
 */
export const gradeMaterial = gradedOnce(KEPT);

/** @param most materials that are kept. */
export function gradedOnce(most: number): typeof computeMaterial {
  const known = new Map<string, GradedMaterial>();
  return ({ config, ...sheets }, { seed, readingErrors, units, sizeReading, ...study }) => {
    const { id, name, role, particleDensityKgM3 } = config;
    const material: SheetsOfMaterial = {
      ...sheets,
      config: { id, name, role, particleDensityKgM3 },
    };
    const materials = study.materials.map((other) => ({ id: other.id }));
    const entries: StudyEntries = { seed, readingErrors, units, sizeReading, materials };
    const key = JSON.stringify([material, entries]);
    const graded = known.get(key) ?? computeMaterial(material, entries);
    // The one asked for last stands last.
    known.delete(key);
    known.set(key, graded);
    if (known.size > most) known.delete(known.keys().next().value!);
    return graded;
  };
}

/** Works out one material: sieving, sedimentation, the joined curve and what is read off it. */
export function computeMaterial(material: SheetsOfMaterial, study: StudyEntries): GradedMaterial {
  const { config } = material;
  const drawn = sampleMaterial(material, study);
  const sieve = analyseSieve(material.sieve);
  const settled = settle(material, sieve.points, study);
  const { sedimentation, pipette } = settled;
  const { curve, overlap, repairs, ...combined } = combineGrading({
    sieve: sieve.points,
    sedimentation: (sedimentation ?? pipette)?.points,
    file: (material.hydrometer ?? material.pipette ?? material.sieve).file,
  });
  const jar = material.jar && settledJar(material.jar, curve, sedimentation ?? pipette);
  const limits = material.limits && consistencyLimits(material.limits);
  const uncertainty =
    config.role === "soil"
      ? curveUncertainty(curve, drawn, limits, {
          seed: study.seed,
          errors: study.readingErrors,
          boundaries: boundariesOf(study.units),
          reading: study.sizeReading,
        })
      : undefined;
  const { id, name, role } = config;
  return {
    material: {
      id,
      name,
      role,
      sieve,
      sedimentation,
      pipette,
      jar: jar?.analysis,
      curve,
      overlap,
      repairs,
      sizes: characteristicSizes(curve, study.sizeReading),
      fractions: fractions(curve, boundariesOf(study.units)),
      models: role === "soil" ? chooseModel(curve, MODELS) : undefined,
      limits,
      uncertainty,
    },
    findings: [
      ...sieve.findings,
      ...settled.findings,
      ...combined.findings,
      ...(jar?.findings ?? []),
      ...(limits?.findings ?? []),
    ],
    drawn,
  };
}

/** What is known of a material whose grading was not measured. */
export function computeUngraded({ config, ...sheets }: UngradedStudyMaterial): {
  readonly material: UngradedMaterial;
  readonly findings: readonly Finding[];
} {
  const { id, name, role } = config;
  const jar = sheets.jar && analyseJar(sheets.jar);
  const limits = sheets.limits && consistencyLimits(sheets.limits);
  return {
    material: { id, name, role, jar, limits },
    findings: [...(jar?.findings ?? []), ...(limits?.findings ?? [])],
  };
}

type Settled = Pick<MaterialResult, "sedimentation" | "pipette"> & {
  readonly findings: readonly Finding[];
};

/**
 * The sedimentation of what passed the sieve that separated the dispersed material; findings where that
 * passing was not measured, or the density of the grains is not told.
 */
function settle(
  { config, hydrometer, pipette }: SheetsOfMaterial,
  sieve: readonly GradingPoint[],
  study: StudyEntries,
): Settled {
  const sheet = hydrometer ?? pipette;
  if (!sheet) return { findings: [] };
  const { file, separatingSizeMm } = sheet;
  const { id, name, particleDensityKgM3 } = config;
  const passingSeparatingPct = passingAtSize({ points: sieve }, separatingSizeMm);
  const place = { file, column: "separating sieve", value: `${separatingSizeMm} mm` };
  const entry = materialPlace(study, id, "particle-density");
  const isTold = particleDensityKgM3 !== undefined;
  const findings = [
    ...findingIf(
      passingSeparatingPct === undefined,
      place,
      "error",
      "separating-sieve-unmeasured",
      {
        message: say`The sieve analysis does not reach the sieve that separated the dispersed material.`,
        expected: say`a sieve analysis of ${name} that spans ${separatingSizeMm} mm`,
        remedy: say`Give the sieve through which the dispersed material was passed, or sieve to that size.`,
      },
    ),
    ...findingIf(!isTold, entry, "warning", "particle-density-not-told", {
      message: say`The readings of ${file} are not analysed: settling depends on the particle density, which the study does not give.`,
      expected: say`the particle density of ${name}`,
      remedy: say`Have it measured, or enter the value that the laboratory used.`,
    }),
  ];
  if (passingSeparatingPct === undefined || !isTold) return { findings };
  const input = { particleDensityKgM3, passingSeparatingPct };
  const sedimentation = hydrometer && analyseHydrometer(hydrometer, input);
  const drawn = pipette && analysePipette(pipette, input);
  return {
    sedimentation,
    pipette: drawn,
    findings: [...(sedimentation?.findings ?? []), ...(drawn?.findings ?? [])],
  };
}

/** The jar beside the curve that was measured without it. */
function settledJar(jar: JarRecord, curve: GradingCurve, sedimentation: object | undefined) {
  const analysis = analyseJar(jar);
  const against = jarComparison(jar, analysis, curve);
  // That a laboratory is to settle the soil need not be said once it has.
  const own = analysis.findings.filter(({ code }) => !sedimentation || code !== "jar-first-guide");
  return {
    analysis: { ...analysis, laboratory: against.rows },
    findings: [...own, ...against.findings],
  };
}
