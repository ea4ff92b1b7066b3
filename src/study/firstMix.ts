import { DEFAULT_BULK_DENSITIES } from "../batch/bulkDensity.js";
import { type Estimate, type RoughMaterial, sandToAdd } from "../blend/sandToAdd.js";
import type { MaterialConfig, StudyConfig } from "../entries/studyConfig.js";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { jarFines } from "../grading/sedimentation/jar.js";
import type { Interval } from "../quantities/interval.js";
import { say, type Text } from "../words/message.js";
import { unknownMaterial } from "./materialIds.js";
import type { FirstMix, MaterialResult, UngradedMaterial } from "./studyResult.js";

/** Materials as far as each is known. */
interface Known {
  readonly materials: readonly MaterialResult[];
  readonly ungraded: readonly UngradedMaterial[];
}

/**
 * The sand that `add-sand` asks for: from the sieve curves where they are there, else from the jars.
 *
 * Loose densities that the study does not tell are general ones, from memory, with their whole range.
 */
export function computeFirstMix(
  config: StudyConfig,
  known: Known,
): { readonly mix?: FirstMix; readonly findings: readonly Finding[] } {
  const { addSand, materials } = config;
  if (!addSand) return { findings: [] };
  const soils = materials.filter(({ role }) => role === "soil");
  if (addSand.soil === undefined && soils.length !== 1) {
    return { findings: [soilNotTold(materials)] };
  }
  const ofId = (id: string) => materials.find((material) => material.id === id);
  const soil = addSand.soil === undefined ? soils[0] : ofId(addSand.soil);
  const sand = ofId(addSand.sand);
  if (!soil || !sand) {
    const [key, id] = soil ? ["sand", addSand.sand] : ["soil", addSand.soil!];
    return { findings: unknownMaterial(config, `add-sand.${key}`, id) };
  }
  const entered = addSand.sandFinesPct;
  const soilFines = finesOf(soil, known);
  const sandFines =
    finesOf(sand, known) ?? (entered === undefined ? undefined : { low: entered, high: entered });
  if (!soilFines) return { findings: [finesNotKnown(soil, "sieve, jar")] };
  if (!sandFines) return { findings: [finesNotKnown(sand, "sieve, jar, “sand-fines”")] };
  const rough = (material: MaterialConfig, finesPct: Interval): RoughMaterial => ({
    name: material.name,
    finesPct,
    looseDensityKgM3: looseDensity(material),
  });
  const added = sandToAdd({
    soil: rough(soil, soilFines),
    sand: rough(sand, sandFines),
    targetPct: addSand.finesPct,
    batchDryMassKg: addSand.batchDryMassKg,
  });
  const jarred = [soil, sand].filter(({ id }) => known.ungraded.some((one) => one.id === id));
  return {
    mix: { ...added, soil: soil.id, sand: sand.id, basis: basisWords(soil, sand, jarred) },
    findings: [],
  };
}

/** Fines of a material: of its sieve curve, with the reading errors where they were drawn, else of its jar. */
function finesOf({ id }: MaterialConfig, { materials, ungraded }: Known): Interval | undefined {
  const graded = materials.find((one) => one.id === id);
  if (!graded) {
    const jar = ungraded.find((one) => one.id === id)?.jar;
    return jar && jarFines(jar);
  }
  const drawn = graded.uncertainty?.quantities.find(({ quantity }) => quantity === "finesPct");
  if (drawn) return { low: drawn.low, high: drawn.high };
  const { finesPct } = graded.fractions;
  return finesPct === undefined ? undefined : { low: finesPct, high: finesPct };
}

/** As entered, with its bulking; else a general one. */
function looseDensity({ role, looseBulkDensityKgM3, bulkingPct = 0 }: MaterialConfig): Estimate {
  if (looseBulkDensityKgM3 !== undefined) {
    const entered = looseBulkDensityKgM3 / (1 + bulkingPct / 100);
    return { low: entered, middle: entered, high: entered };
  }
  const { low, valueKgM3, high } = DEFAULT_BULK_DENSITIES.find(({ id }) => id === role)!;
  return { low, middle: valueKgM3, high };
}

function basisWords(
  soil: MaterialConfig,
  sand: MaterialConfig,
  jarred: readonly MaterialConfig[],
): Text {
  const weighed =
    soil.looseBulkDensityKgM3 !== undefined && sand.looseBulkDensityKgM3 !== undefined;
  const volumes = weighed
    ? say`Loose volumes by the densities that were entered.`
    : say`Loose volumes by general densities, from memory, with their whole range: a bucket and a scale give better ones (“loose-bulk-density”).`;
  return jarred.length > 0
    ? say`A jar test is a first guide: it shows which soils are worth testing in a laboratory, never what a wall may be built of. Next: a sieve analysis of soil and sand. ${volumes}`
    : say`Of the sieve curves. ${volumes}`;
}

function soilNotTold(materials: readonly MaterialConfig[]): Finding {
  return finding({ file: STUDY_FILE, column: "add-sand.soil" }, "error", "unknown-material", {
    message: say`The study has several soils, or none, and does not say which one the sand is for.`,
    expected: say`one of ${materials.map(({ id }) => id).join(", ")}`,
    remedy: say`Correct the id, or add the material.`,
  });
}

function finesNotKnown({ name }: MaterialConfig, sheets: string): Finding {
  return finding({ file: STUDY_FILE, column: "add-sand" }, "warning", "fines-not-known", {
    message: say`The fines of ${name} are not known, so no sand can be worked out.`,
    expected: say`one of: ${sheets}`,
    remedy: say`Shake a jar of it, or sieve it, and name the sheet under the material.`,
  });
}
